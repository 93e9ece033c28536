// SPDX-License-Identifier: GPL-3.0-or-later
// The page at the bench driven by real keys.
#include "app/measure/grid_model.h"
#include "app/measure/grid_view.h"
#include "app/measure/measure_page.h"
#include "app/measure/survey_form.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QAbstractItemModelTester>
#include <QClipboard>
#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class Page : public testing::Test {
protected:
    Page()
        : bench(made())
        , page(bench.context()) {
        page.resize(1100, 700);
        page.show();
        entry = page.findChild<QLineEdit*>("entry");
        grid = page.findChild<GridView*>();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
    }
    static Workbook made() {
        Workbook workbook = inchBlock(6);
        addWornLimits(workbook, "3.504", "3", "2");
        addSurvey(workbook, SurveyKind::asFound, "found");
        return workbook;
    }
    void type(const char* keys) {
        for (const char* key = keys; *key != 0; ++key)
            *key == '\n' ? QTest::keyClick(entry, Qt::Key_Enter, Qt::KeypadModifier)
                         : QTest::keyClick(entry, *key, Qt::KeypadModifier);
    }
    const Survey& survey() const { return bench.document.workbook().surveys[0]; }
    QString cell(int row, int column) const {
        return grid->model()->index(row, column).data().toString();
    }
    QString message() const {
        for (const QLabel* label : page.findChildren<QLabel*>())
            if (label->accessibleName() == "Message") return label->text();
        return "no message line";
    }

    Bench bench;
    MeasurePage page;
    QLineEdit* entry = nullptr;
    GridView* grid = nullptr;
};

TEST_F(Page, TheNumberPadAloneTypesAWholeBlock) {
    for (int i = 0; i < 60; ++i)
        type(i % 2 == 0 ? "1.5\n" : "-,5\n");
    EXPECT_EQ(survey().readings.size(), 60U);
    EXPECT_EQ(bench.document.results().surveys[0].measured, 60);
    EXPECT_EQ(cell(0, 0), "1.5");
    EXPECT_EQ(cell(1, 0), "−0.5");
}

// The grid looked into results that had been computed anew, and marked readings at random as odd.
TEST_F(Page, NothingIsMarkedOddWhereResultsAreComputedAnewUnderIt) {
    SurveyHeader known = survey().header;
    known.gauge.gear = tenthDialAndRing();
    known.gauge.stoodTogether = true;
    ASSERT_TRUE(bench.document.edit(SetSurveyHeader{known.id, known}, "gear"));
    for (int i = 0; i < 60; ++i)
        type("1.5\n");
    for (int again = 0; again < 3; ++again) {
        (void)bench.document.settledResults();
        emit bench.document.changed(Change::doubts);
        std::vector<std::string> litter(2000, std::string(200, 'x')); // where the old ones were
        for (int row = 0; row < grid->model()->rowCount(); ++row)
            for (int column = 0; column < grid->model()->columnCount(); ++column)
                EXPECT_FALSE(grid->model()->index(row, column).data(GridModel::oddRole).toBool())
                    << "row " << row << ", column " << column;
        type("/");
        type("1.5\n");
    }
}

TEST_F(Page, BackSkipRepeatAndNoWallHaveKeysOnThePad) {
    type("1.5\n");
    type("/");
    type("1.6\n"); // replaces
    type("*");
    type("1.8\n"); // repeat
    type("-\n");   // no wall at the second level
    type("\n");    // skip
    EXPECT_EQ(survey().readings.size(), 3U);
    EXPECT_EQ(cell(0, 0), "1.70") << "mean of two, with one digit more";
    EXPECT_EQ(grid->model()->index(1, 0).data(GridModel::stateRole).toInt(),
              static_cast<int>(GridModel::State::noWall));
    EXPECT_EQ(bench.selection.station()->depth, in("2.75"));
}

TEST_F(Page, ARefusalStaysAtTheFieldWithWhatWasTyped) {
    type("3.5015\n");
    EXPECT_EQ(entry->text(), "3.5015");
    EXPECT_TRUE(message().contains("looks like a diameter")) << message().toStdString();
    type("1\n"); // typed over the selected text
    EXPECT_EQ(survey().readings.size(), 1U);
    EXPECT_EQ(message(), "");
}

TEST_F(Page, ArrowsAndEnterInTheGridAsInASpreadsheet) {
    grid->setCurrentIndex(grid->model()->index(0, 0));
    grid->setFocus();
    const auto typeCell = [&](const char* text, Qt::Key end) {
        QTest::keyClick(grid, *text); // opens the cell
        auto* editor = grid->findChild<QLineEdit*>();
        ASSERT_NE(editor, nullptr);
        QTest::keyClicks(editor, text + 1);
        QTest::keyClick(editor, end);
        // The closed editor goes with the event loop, as between two keys of a hand.
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QCoreApplication::processEvents();
    };
    typeCell("1.5", Qt::Key_Return);
    EXPECT_EQ(grid->currentIndex(), grid->model()->index(1, 0));
    typeCell("1.4", Qt::Key_Tab);
    EXPECT_EQ(grid->currentIndex(), grid->model()->index(1, 1));
    typeCell("1.3", Qt::Key_Up);
    EXPECT_EQ(grid->currentIndex(), grid->model()->index(0, 1));
    EXPECT_EQ(cell(0, 0) + cell(1, 0) + cell(1, 1), "1.51.41.3");
}

TEST_F(Page, OpeningAndLeavingACellChangesNothing) {
    type("1.50\n");
    const auto revision = bench.document.revision();
    grid->setCurrentIndex(grid->model()->index(0, 0));
    grid->edit(grid->currentIndex());
    auto* editor = grid->findChild<QLineEdit*>();
    ASSERT_NE(editor, nullptr);
    EXPECT_EQ(editor->text(), "1.50") << "as typed, not as shown";
    QTest::keyClick(editor, Qt::Key_Return);
    EXPECT_EQ(bench.document.revision(), revision);
}

TEST_F(Page, ABlockPastesAsOneStepOrNotAtAll) {
    grid->setCurrentIndex(grid->model()->index(0, 0));
    QGuiApplication::clipboard()->setText("1.5\t1.6\n1.4\t–\n1.3\t1,7\n");
    grid->paste();
    EXPECT_EQ(survey().readings.size(), 5U);
    EXPECT_EQ(bench.document.undoStack().count(), 1);
    const Workbook before = bench.document.workbook();
    QGuiApplication::clipboard()->setText("1.5\t1.6\n1.4\t6o\n");
    grid->paste();
    EXPECT_TRUE(bench.document.workbook() == before);
    EXPECT_TRUE(message().startsWith("row 2, column 2: '6o'")) << message().toStdString();
    bench.document.undoStack().undo();
    EXPECT_TRUE(survey().readings.empty());
}

TEST_F(Page, CopyGivesWhatPasteTakes) {
    type("1.5\n1.4\n");
    grid->setCurrentIndex(grid->model()->index(0, 0));
    grid->selectionModel()->select(
        QItemSelection(grid->model()->index(0, 0), grid->model()->index(1, 1)),
        QItemSelectionModel::ClearAndSelect);
    grid->copy();
    EXPECT_EQ(QGuiApplication::clipboard()->text(), "1.5\t\n1.4\t");
}

TEST_F(Page, StrikingOutAsksWhyAndKeepsTheReading) {
    type("1.5\n");
    grid->setCurrentIndex(grid->model()->index(0, 0));
    grid->setFocus();
    QTest::keyClick(grid, Qt::Key_Delete);
    QLineEdit* reason = nullptr;
    for (QLineEdit* edit : page.findChildren<QLineEdit*>())
        if (edit->accessibleName().startsWith("Why")) reason = edit;
    ASSERT_NE(reason, nullptr);
    ASSERT_TRUE(reason->isVisible());
    reason->setText("gauge knocked");
    QTest::keyClick(reason, Qt::Key_Return);
    ASSERT_EQ(survey().readings.size(), 1U);
    EXPECT_EQ(survey().readings[0].struck->reason, "gauge knocked");
    EXPECT_EQ(cell(0, 0), "");
}

TEST_F(Page, FillDownCopiesTheTopCell) {
    type("1.5\n");
    grid->selectionModel()->select(
        QItemSelection(grid->model()->index(0, 0), grid->model()->index(4, 0)),
        QItemSelectionModel::ClearAndSelect);
    grid->fillDown();
    EXPECT_EQ(survey().readings.size(), 5U);
    EXPECT_EQ(bench.document.undoStack().count(), 2);
}

TEST_F(Page, ModelKeepsItsPromises) {
    QAbstractItemModelTester tester(grid->model(),
                                    QAbstractItemModelTester::FailureReportingMode::Fatal);
    type("1.5\n-\n1.4\n");
    bench.document.undoStack().undo();
    bench.document.setUnits(DisplayUnits::metric());
    bench.document.open(made());
    EXPECT_EQ(grid->model()->rowCount(), 5);
}

TEST_F(Page, BenchModeGivesTheWindowToTheNextReading) {
    page.setBench(true);
    EXPECT_FALSE(grid->isVisible());
    type("1.5\n");
    EXPECT_EQ(survey().readings.size(), 1U);
    for (const QLabel* label : page.findChildren<QLabel*>()) {
        if (label->accessibleName() != "Next reading") continue;
        EXPECT_GE(label->font().pixelSize(), 80) << "legible across the shop";
    }
    page.setBench(false);
    EXPECT_TRUE(grid->isVisible());
}

TEST_F(Page, ANewSurveyStartsWithTheGaugeLastUsed) {
    page.startSurvey();
    auto* form = page.findChild<SurveyForm*>();
    ASSERT_TRUE(form->isVisible());
    QTest::keyClick(form->focusWidget(), Qt::Key_Return);
    EXPECT_EQ(bench.document.workbook().surveys.size(), 1U) << "no set size, no survey";
    QTest::keyClicks(form->focusWidget(), "3.5200");
    QTest::keyClick(form->focusWidget(), Qt::Key_Return);
    ASSERT_EQ(bench.document.workbook().surveys.size(), 2U);
    EXPECT_EQ(bench.document.workbook().surveys[1].header.kind, SurveyKind::check);
    EXPECT_EQ(bench.selection.survey(), "s2");
    EXPECT_FALSE(form->isVisible());
}

} // namespace
} // namespace borewright
