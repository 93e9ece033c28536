// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger's window by real keys and clicks: found as it is typed, sorted, opened, taken in,
// exported.
#include "tests/app/ledger/ledger_window_support.h"

#include <QCheckBox>
#include <QHeaderView>
#include <QProgressBar>
#include <QTabWidget>

#include <nlohmann/json.hpp>

namespace borewright {
namespace {

using namespace test;

TEST_F(LedgerWindowTest, FindsAsItIsTypedAndEnterOpensWhatIsChosen) {
    put(three());
    open();
    EXPECT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    QTest::keyClicks(window->focusWidget(), "saltm 42");
    EXPECT_TRUE(shows(customer, "Ash & Son")) << column(customer);
    EXPECT_EQ(named<QLabel>(*window, "Jobs found")->text(), "1 job");
    QTest::keyClick(window->focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(says("/shop/jobs/000001.borebook is not there")) << window->notice().toStdString();
}

TEST_F(LedgerWindowTest, EnterAtOnceOpensWhatWasTypedForNotWhatStoodThereBefore) {
    std::vector<JobEntry> jobs = three();
    for (JobEntry& job : jobs) {
        job.file = path(QString::fromStdString(job.serial) + ".borebook").toStdString();
        write(QString::fromStdString(job.serial) + ".borebook", job.customer);
    }
    put(jobs);
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    find->setText("0042"); // as fast as nobody types
    QTest::keyClick(find, Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !opened.isEmpty(); }));
    EXPECT_EQ(opened, QStringList{path("SM-0042.borebook")});
    EXPECT_EQ(window->notice(), "");
    refusal = "SM-0042.borebook was not opened: it is damaged.";
    const QPoint at = table->visualRect(table->model()->index(0, 1)).center();
    QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, at);
    QTest::mouseDClick(table->viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(says(refusal)) << "not said where he looks";
    EXPECT_EQ(opened.size(), 2);
}

TEST_F(LedgerWindowTest, SortsByAHeadAndByKeysAlone) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    const QHeaderView* head = table->horizontalHeader();
    const QPoint at(head->sectionViewportPosition(customer) + 10, head->height() / 2);
    QTest::mouseClick(head->viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(shows(customer, "Ash & Son | Birch | Cedar")) << column(customer);
    QTest::mouseClick(head->viewport(), Qt::LeftButton, {}, at);
    EXPECT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    choose(*window, "Sorted by", engine);
    EXPECT_TRUE(shows(engine, "Saltmarsh V6 | Saltmarsh V4 | Rushmere 3")) << column(engine);
    QTest::keyClick(window->findChild<QCheckBox*>(), Qt::Key_Space);
    EXPECT_TRUE(shows(engine, "Rushmere 3 | Saltmarsh V4 | Saltmarsh V6")) << column(engine);
}

TEST_F(LedgerWindowTest, DownLeadsIntoTheListAndUpBackAgain) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    EXPECT_EQ(window->focusWidget(), find) << "what is typed first looks for a job";
    QTest::keyClick(find, Qt::Key_Down);
    EXPECT_EQ(window->focusWidget(), table);
    QTest::keyClick(table, Qt::Key_Down);
    EXPECT_EQ(table->currentIndex().row(), 1);
    QTest::keyClick(table, Qt::Key_Up);
    QTest::keyClick(table, Qt::Key_Up);
    EXPECT_EQ(window->focusWidget(), find);
    QTest::keyClick(find, Qt::Key_Escape);
    EXPECT_FALSE(window->isVisible());
}

TEST_F(LedgerWindowTest, AFileThatIsGoneIsExplainedHereAndTakenOutOnceAsked) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    QTest::keyClick(find, Qt::Key_Return);
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    ASSERT_TRUE(says("/shop/jobs/000003.borebook is not there any more"))
        << window->notice().toStdString();
    EXPECT_TRUE(opened.isEmpty());
    button(*window, "Take it out of the list")->click();
    EXPECT_TRUE(shows(customer, "Birch | Ash & Son")) << column(customer);
    EXPECT_EQ(window->notice(), "");
}

TEST_F(LedgerWindowTest, AnEmptyLedgerSaysWhatToDoAndFillsFromTheFolderChosen) {
    open();
    EXPECT_TRUE(says("No job is in the ledger yet"));
    write("jobs/a.borebook", "Ash");
    write("jobs/b.borebook", "Birch");
    QFile broken(path("jobs/broken.borebook"));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly) && broken.write("{") > 0);
    broken.close();
    dialogs.answer = path("jobs");
    button(*window, "Take in a folder …")->click();
    choose(*window, "Sorted by", customer);
    EXPECT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == 2; }, 10'000));
    EXPECT_TRUE(window->notice().contains(path("jobs/broken.borebook")))
        << window->notice().toStdString();
    QTest::keyClicks(find, "nobody");
    EXPECT_TRUE(says("No job holds nobody."));
    find->clear();
    ASSERT_TRUE(QFile::remove(path("jobs/a.borebook")));
    ASSERT_TRUE(QFile::remove(path("jobs/broken.borebook")));
    button(*window, "Take in once more")->click();
    EXPECT_TRUE(QTest::qWaitFor([&] { return table->model()->rowCount() == 1; }, 10'000))
        << "from the folder of last time";
    EXPECT_EQ(window->notice(), "");
}

TEST_F(LedgerWindowTest, TakingInIsGivenUpAndTheLedgerIsAsItWas) {
    put(three());
    for (int i = 0; i < 400; ++i)
        write(QStringLiteral("jobs/%1.borebook").arg(i), "Dogwood");
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son")) << column(customer);
    dialogs.answer = path("jobs");
    button(*window, "Take in a folder …")->click();
    ASSERT_TRUE(window->takeInBar().isUnderWay());
    EXPECT_TRUE(window->findChild<QProgressBar*>()->isVisible());
    button(*window, "Give up")->click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !window->takeInBar().isUnderWay(); }, 20'000));
    EXPECT_FALSE(window->findChild<QProgressBar*>()->isVisible());
    EXPECT_EQ(customers(), "Ash & Son, Birch, Cedar");
}

TEST_F(LedgerWindowTest, SizesStandInTheUnitsOfEachJobOrAsHeWants) {
    put(three());
    open();
    ASSERT_TRUE(shows(customer, "Cedar | Birch | Ash & Son"));
    // 3.5020 to 3.5033 in by made_jobs.cpp; 25.4 mm an inch.
    EXPECT_EQ(table->model()->index(0, 5).data().toString(), u"3.5020 – 3.5033\u00a0in");
    choose(*window, "Sizes in", 2);
    EXPECT_EQ(table->model()->index(0, 5).data().toString(), u"88.951 – 88.984");
    EXPECT_EQ(table->model()->headerData(5, Qt::Horizontal, Qt::DisplayRole).toString(),
              "Before, mm");
    EXPECT_EQ(settings->value().units, LedgerSettings::Units::metric) << "kept for next time";
}

TEST_F(LedgerWindowTest, TotalsAnswerWhatARebuilderAsks) {
    put(three());
    open();
    auto* tabs = window->findChild<QTabWidget*>();
    const auto rows = [&](int tab) { return tabs->widget(tab)->findChild<QTableView*>()->model(); };
    tabs->setCurrentIndex(1);
    QTest::keyClicks(window->focusWidget(), "rushmere"); // the field of the page that came up
    ASSERT_TRUE(QTest::qWaitFor([&] { return rows(1)->rowCount() == 3; })) << rows(1)->rowCount();
    EXPECT_EQ(rows(1)->index(0, 5).data().toString(), "3.5031 in");
    tabs->setCurrentIndex(2);
    // Three jobs, each 4 thou in 72.5 strokes: 4 × 25.4 / 72.5 µm.
    ASSERT_TRUE(QTest::qWaitFor([&] { return rows(2)->rowCount() == 1; })) << rows(2)->rowCount();
    EXPECT_EQ(rows(2)->index(0, 7).data().toString(), "1.401 µm");
    choose(*window, "Sizes in", 1);
    EXPECT_TRUE(QTest::qWaitFor([&] {
        return rows(2)->index(0, 7).data().toString() == "0.0552 thou";
    })) << rows(2)->index(0, 7).data().toString().toStdString();
    tabs->setCurrentIndex(3);
    fillIn(*tabs->widget(3), "Gauge or master", "gauge no. 3");
    ASSERT_TRUE(QTest::qWaitFor([&] { return rows(3)->rowCount() == 3; })) << rows(3)->rowCount();
    tabs->widget(3)->findChild<QTableView*>()->setFocus();
    QTest::keyClick(tabs->widget(3)->findChild<QTableView*>(), Qt::Key_Down);
    QTest::keyClick(tabs->widget(3)->findChild<QTableView*>(), Qt::Key_Return);
    EXPECT_TRUE(says("is not there any more")) << "Enter did not open the job";
}

TEST_F(LedgerWindowTest, ExportsWhatIsFoundAsCsvAndJson) {
    put(three());
    open();
    find->setText("saltmarsh");
    ASSERT_TRUE(shows(customer, "Cedar | Ash & Son"));
    const auto exported = [&](const QString& name) {
        dialogs.answer = path(name);
        button(*list, "Export …")->click();
        EXPECT_TRUE(QTest::qWaitFor([&] { return QFile::exists(path(name)); }));
        QTest::qWait(50);
        QFile file(path(name));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll().toStdString();
    };
    const std::string csv = exported("jobs.csv");
    EXPECT_EQ(std::ranges::count(csv, '\n'), 3) << csv;
    EXPECT_NE(csv.find(",Cedar,Saltmarsh V4,SM-7,"), std::string::npos) << csv;
    const auto json = nlohmann::json::parse(exported("jobs.json"));
    ASSERT_EQ(json["jobs"].size(), 2U);
    EXPECT_EQ(json["jobs"][1]["serial"], "SM-0042");
}

} // namespace
} // namespace borewright
