// SPDX-License-Identifier: GPL-3.0-or-later
// The history in its window: called by its key, found as typed, followed, copied and saved; a long
// one never holds the window up.
#include "app/shell/history_view.h"
#include "core/storage/history_log.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/shop.h"

#include <QAbstractItemModelTester>
#include <QClipboard>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>

#include <gtest/gtest.h>

#include <ctime>

namespace borewright {
namespace {

using namespace test;

class HistoryWindow : public testing::Test {
protected:
    HistoryWindow() {
        workbook = inchBlock(3);
        survey = addSurvey(workbook, SurveyKind::asFound, "as found");
        type(workbook, survey, 3, "1.25", "B", "-1.5");
    }
    void open() {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(writeWorkbook(workbook)));
        file.close();
        EXPECT_TRUE(shop.window.openPath(path));
        shop.workshop.document().setPerson("A. Example");
    }
    void strike(const std::string& reason) {
        EXPECT_TRUE(shop.workshop.document().edit(SetStrike{survey, 0, Strike{reason, {}, {}}},
                                                  "strike out"));
    }
    // Ctrl+H, and waits until it is read.
    HistoryView* call() {
        QTest::keyClick(&shop.window, Qt::Key_H, Qt::ControlModifier);
        auto* view = shop.window.findChild<HistoryView*>();
        EXPECT_NE(view, nullptr) << "Ctrl+H calls it";
        EXPECT_TRUE(view == nullptr ||
                    QTest::qWaitFor([&] { return !view->told().contains("being read"); }, 20'000));
        return view;
    }
    static std::string row(const HistoryView& view, int row) {
        QStringList cells;
        for (int column = HistoryModel::who; column < HistoryModel::columns; ++column)
            cells += view.model().index(row, column).data().toString();
        return cells.join(" | ").toStdString();
    }
    static bool comesTo(const HistoryView& view, int rows) {
        return QTest::qWaitFor([&] { return view.model().rowCount() == rows; }, 20'000);
    }

    Shop shop;
    const QString path = shop.folder.filePath("job.borebook");
    Workbook workbook;
    std::string survey;
};

TEST_F(HistoryWindow, IsExplainedWhereItIsEmptyAndFollowsTheWork) {
    open();
    HistoryView* view = call();
    ASSERT_NE(view, nullptr);
    QAbstractItemModelTester tester(const_cast<HistoryModel*>(&view->model()),
                                    QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_TRUE(view->told().startsWith("Nothing has been changed yet and no sheet was printed."))
        << view->told().toStdString();
    strike("chip");
    ASSERT_TRUE(comesTo(*view, 1));
    EXPECT_EQ(row(*view, 0), "A. Example | strike out | as found, bore 3, 1.25 in, B: reading | "
                             "-1.5 thou | -1.5 thou, struck out (chip)");
    PrintedSheet sheet;
    sheet.code = "9KWW-4Y4T-7RYG";
    shop.workshop.document().noteSheet(sheet);
    ASSERT_TRUE(comesTo(*view, 2));
    EXPECT_EQ(row(*view, 0), "A. Example | sheet printed | check code 9KWW-4Y4T-7RYG |  | ");
    QTest::keyClick(&shop.window, Qt::Key_H, Qt::ControlModifier);
    EXPECT_EQ(shop.window.findChildren<HistoryView*>().size(), 1) << "one is enough";
}

TEST_F(HistoryWindow, IsFoundAsTypedCopiedAndSavedAsShown) {
    open();
    strike("chip");
    Job job = workbook.job;
    job.customer = "Ash & Son";
    EXPECT_TRUE(shop.workshop.document().edit(SetJob{job}, "customer"));
    const std::uint64_t revision = shop.workshop.document().revision();
    HistoryView* view = call();
    ASSERT_NE(view, nullptr);
    ASSERT_TRUE(comesTo(*view, 2));
    auto* find = view->findChild<QLineEdit*>();
    QTest::keyClicks(find, "BORE 3 chip");
    EXPECT_EQ(view->model().rowCount(), 1);
    EXPECT_EQ(view->told(), "1 of 2.");
    auto* table = view->findChild<QTableView*>();
    table->setFocus();
    table->selectRow(0);
    QTest::keyClick(table, Qt::Key_C, Qt::ControlModifier);
    EXPECT_TRUE(QGuiApplication::clipboard()->text().endsWith(
        "\tas found, bore 3, 1.25 in, B: reading\t-1.5 thou\t-1.5 thou, struck out (chip)\n"))
        << QGuiApplication::clipboard()->text().toStdString();
    shop.dialogs.answer = shop.folder.filePath("history");
    view->findChild<QPushButton*>()->click();
    QFile file(shop.folder.filePath("history.csv"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly)) << view->told().toStdString();
    const QByteArray csv = file.readAll();
    EXPECT_TRUE(csv.contains("chip")) << csv.toStdString();
    EXPECT_FALSE(csv.contains("Ash")) << "only what is shown";
    EXPECT_TRUE(view->told().startsWith("Written: ")) << view->told().toStdString();
    shop.dialogs.answer = "/nowhere/at all.csv";
    view->findChild<QPushButton*>()->click();
    EXPECT_TRUE(view->told().contains("was not written")) << view->told().toStdString();
    QTest::keyClicks(find, " nobody");
    EXPECT_EQ(view->told(), "Nothing in the history holds all of these words.");
    EXPECT_EQ(shop.workshop.document().revision(), revision) << "nothing is changed by looking";
}

// 10 000 entries: the window answers while they are read, and typing in the field finds at once.
TEST_F(HistoryWindow, TenThousandEntriesDoNotHoldItUp) {
    for (int i = 0; i < 10'000; ++i) {
        const std::string before = workbook.job.customer;
        workbook.job.customer = "customer " + std::to_string(i);
        HistoryEntry entry{
            {1'774'000'000 + i, 60}, i % 2 == 0 ? "A. Example" : "B. Example", "customer"};
        entry.was.push_back({"/job/customer", '"' + before + '"'});
        ASSERT_TRUE(noteChange(workbook, entry));
    }
    open();
    // What the window's thread does between two beats, however busy the machine is.
    const auto work_ms = [] {
        timespec spent{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &spent);
        return static_cast<double>(spent.tv_sec) * 1e3 + static_cast<double>(spent.tv_nsec) / 1e6;
    };
    double last = work_ms();
    double longest = 0;
    QTimer beat;
    QObject::connect(&beat, &QTimer::timeout, [&] {
        const double now = work_ms();
        longest = std::max(longest, now - std::exchange(last, now));
    });
    beat.start(1);
    HistoryView* view = call();
    ASSERT_NE(view, nullptr);
    ASSERT_TRUE(comesTo(*view, 10'000));
    EXPECT_EQ(row(*view, 1),
              "A. Example | customer | job: customer | customer 9997 | customer 9998");
    auto* find = view->findChild<QLineEdit*>();
    for (const char key : std::string("customer 77")) {
        QTest::keyClick(find, key);
        QTest::qWait(1);
    }
    EXPECT_GT(view->model().rowCount(), 100);
    auto* table = view->findChild<QTableView*>();
    for (int i = 0; i < 20; ++i) {
        table->scrollToBottom();
        table->scrollToTop();
        QTest::qWait(1);
    }
    std::printf("10 000 entries: the window stood still for %.0f ms at most\n", longest);
    EXPECT_LT(longest, 50);
}

TEST_F(HistoryWindow, PicturesOfItLieInTheBuild) {
    open();
    strike("a chip under the foot");
    Job job = workbook.job;
    job.customer = "A. Example";
    EXPECT_TRUE(shop.workshop.document().edit(SetJob{job}, "customer"));
    PrintedSheet sheet;
    sheet.code = "9KWW-4Y4T-7RYG";
    shop.workshop.document().noteSheet(sheet);
    HistoryView* view = call();
    ASSERT_NE(view, nullptr);
    ASSERT_TRUE(comesTo(*view, 3));
    const QString pictures = QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures");
    ASSERT_TRUE(QDir().mkpath(pictures));
    QTest::qWait(20);
    EXPECT_TRUE(view->grab().save(pictures + "/history.png"));
}

} // namespace
} // namespace borewright
