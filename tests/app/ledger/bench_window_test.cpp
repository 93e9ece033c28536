// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger beside the bench: called by its key, it opens workbooks in the main window, which
// first keeps what is still being typed there; the bench's status line says what the ledger lacks.
#include "app/jobs/ledger_window.h"
#include "app/jobs/place_dialog.h"
#include "app/sheet/summary_field.h"
#include "app/shell/ledger_beside.h"
#include "app/shell/window.h"
#include "tests/app/form_hands.h"
#include "tests/app/ledger/ledger_desk_support.h"
#include "tests/support/bench_context.h"

#include <QTableView>

namespace borewright {
namespace {

using namespace test;

class BenchWindow : public LedgerBenchTest {
protected:
    BenchWindow()
        : workshop(outside())
        , window(workshop) {
        workshop.ledger().setDelay(std::chrono::milliseconds(20));
        window.show();
        window.activateWindow();
        QTest::qWait(1);
    }
    LedgerWindow* callLedger() {
        QTest::keyClick(&window, Qt::Key_L, Qt::ControlModifier);
        EXPECT_NE(window.ledger().window(), nullptr) << "Ctrl+L calls it";
        return window.ledger().window();
    }

    Workshop workshop;
    Window window;
};

TEST_F(BenchWindow, OpensAJobAndKeepsWhatIsStillTypedInTheOneThatIsLeft) {
    const QString first = write("first.borebook", "Ash");
    const QString second = write("second.borebook", "Birch");
    ASSERT_TRUE(window.openPath(first));
    workshop.ledger().saved(first);
    workshop.ledger().saved(second);
    ASSERT_TRUE(comesTo("Ash, Birch")) << customers();
    window.showPage(Page::sheet);
    auto* field = window.page(Page::sheet)->findChild<SummaryField*>();
    ASSERT_NE(field, nullptr);
    field->setFocus();
    QTest::keyClicks(field, "for the first");
    LedgerWindow* ledger = callLedger();
    auto* find = named<QLineEdit>(*ledger, "Find");
    QTest::keyClicks(find, "birch");
    QTest::keyClick(find, Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return workshop.autosaver().path() == second; }))
        << ledger->notice().toStdString();
    EXPECT_FALSE(workshop.document().undoStack().canUndo());
    const auto left = loadWorkbook(files, first.toStdString());
    ASSERT_TRUE(left) << left.error().message();
    EXPECT_NE(writeWorkbook(*left).find("for the first"), std::string::npos)
        << "lost from its own workbook";
    EXPECT_EQ(writeWorkbook(workshop.document().workbook()).find("for the first"),
              std::string::npos)
        << "went into the other";
}

TEST_F(BenchWindow, AJobThatCannotBeOpenedIsSaidInTheLedgersWindow) {
    const QString file = write("a.borebook", "Ash");
    workshop.ledger().saved(file);
    ASSERT_TRUE(comesTo("Ash")) << customers();
    QFile broken(file);
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly) && broken.write("{") > 0);
    broken.close();
    LedgerWindow* ledger = callLedger();
    QTest::keyClick(named<QLineEdit>(*ledger, "Find"), Qt::Key_Return);
    EXPECT_TRUE(QTest::qWaitFor([&] { return ledger->notice().contains("was not opened"); }))
        << ledger->notice().toStdString();
    EXPECT_FALSE(workshop.isOpen());
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
}

TEST_F(BenchWindow, TheStatusLineSaysQuietlyWhatTheLedgerLacks) {
    const auto says = [&](const QString& text) {
        return QTest::qWaitFor(
            [&] {
                for (const QLabel* label : window.findChildren<QLabel*>())
                    if (label->isVisible() && label->text() == text) return true;
                return false;
            },
            20'000);
    };
    LedgerSettings gone;
    gone.onServer = true;
    gone.host = "127.0.0.1";
    gone.port = 1;
    gone.database = "jobs";
    gone.user = "anna";
    workshop.ledgerSettings().set(gone);
    ASSERT_TRUE(window.openPath(write("a.borebook", "Ash")));
    Job job = workshop.document().workbook().job;
    job.customer = "Birch";
    ASSERT_TRUE(workshop.document().edit(SetJob{job}, "customer"));
    EXPECT_TRUE(says("Ledger: 1 to enter"));
    EXPECT_EQ(window.notice(), "") << "nobody is stopped for it";
    workshop.ledgerSettings().set({});
    EXPECT_TRUE(comesTo("Birch")) << customers();
    EXPECT_TRUE(QTest::qWaitFor([&] { return workshop.ledger().word().isEmpty(); }));
}

TEST_F(BenchWindow, WhereItLiesIsAskedFromTheLedgerAndItClosesWithTheWindow) {
    LedgerWindow* ledger = callLedger();
    button(*ledger, "Where it lies …")->click();
    EXPECT_EQ(ledger->findChildren<PlaceDialog*>().size(), 1);
    window.close();
    EXPECT_FALSE(ledger->isVisible());
}

} // namespace
} // namespace borewright
