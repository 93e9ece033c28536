// SPDX-License-Identifier: GPL-3.0-or-later
// The rings' half of the Fit page by keys: entering, the gaps by depth, dealing, filing.
#include "app/fit/fit_page.h"
#include "app/fit/fit_verbs.h"
#include "app/fit/record_form.h"
#include "app/fit/ring_model.h"
#include "app/fit/text_table.h"
#include "tests/app/form_hands.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QTabWidget>

namespace borewright {
namespace {

using namespace test;

Ring ring(const std::string& label, const std::string& gap_thou) {
    Ring ring;
    ring.id = "g" + label;
    ring.label = label;
    ring.measuredIn = 1;
    ring.measuredAt = typedIn("2");
    ring.gap = typedThou(gap_thou);
    return ring;
}

class FittingRings : public testing::Test {
protected:
    FittingRings()
        : bench(made())
        , page(bench.context()) {
        page.resize(1150, 740);
        page.findChild<QTabWidget*>()->setCurrentIndex(1);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
        entry = named<RecordTable>(page, "Rings as measured");
        gaps = named<TextTable>(page, "Ring gaps, a row a bore and groove");
    }
    // Two bores 1 thou larger at 0.5 in down than elsewhere.
    static Workbook made() {
        Workbook workbook = inchBlock(2);
        const std::string survey = addSurvey(workbook, SurveyKind::final, "read");
        for (int bore = 1; bore <= 2; ++bore)
            typeShape(workbook, survey, bore,
                      [](double depth_in, const std::string&) { return depth_in < 1 ? 1.0 : 0.0; });
        workbook.fit.rings = {ring("1", "14"), ring("2", "11")};
        workbook.fit.ringGap.lower = typedThou("12");
        workbook.fit.ringGap.upper = typedThou("20");
        workbook.fit.ringGap.aim = typedThou("14");
        return workbook;
    }
    const FitRecord& fit() { return bench.document.workbook().fit; }
    int steps() { return bench.document.undoStack().index(); }
    std::string gap(int row, int column) {
        return gaps->model()->index(row, column).data().toString().toStdString();
    }
    int columnOf(const QString& head) {
        for (int i = 0; i < gaps->model()->columnCount(); ++i)
            if (gaps->model()->headerData(i, Qt::Horizontal).toString().startsWith(head)) return i;
        ADD_FAILURE() << "no column " << head.toStdString();
        return 0;
    }
    void typeInto(int row, int column, const char* text) {
        entry->setFocus();
        entry->setCurrentIndex(entry->model()->index(row, column));
        QTest::keyClick(entry, Qt::Key_F2);
        auto* editor = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        ASSERT_NE(editor, nullptr) << "no cell is open at row " << row << ", column " << column;
        editor->selectAll();
        QTest::keyClick(editor, Qt::Key_Delete);
        QTest::keyClicks(editor, QString::fromUtf8(text));
        QTest::keyClick(editor, Qt::Key_Return);
        QApplication::processEvents();
    }

    Bench bench;
    FitPage page;
    RecordTable* entry = nullptr;
    TextTable* gaps = nullptr;
};

TEST_F(FittingRings, TheModelsKeepTheirPromises) {
    RingModel rings(bench.document);
    TextModel texts;
    using Tester = QAbstractItemModelTester;
    const Tester a(&rings, Tester::FailureReportingMode::Fatal);
    const Tester b(&texts, Tester::FailureReportingMode::Fatal);
    EXPECT_EQ(rings.rowCount(), 3);
    rings.add();
    rings.refresh();
    EXPECT_EQ(rings.rowCount(), 4);
    rings.remove({1});
    rings.refresh();
    EXPECT_EQ(rings.rowCount(), 3);
    texts.show({{"a", "b"}, {{{"1"}, {"2"}}, {{"3"}}}, {0}}, {});
    texts.show({{"a", "b"}, {{{"1"}, {"2"}}, {{"3"}, {"4"}}}, {0}}, {});
    texts.show({{"a"}, {}, {}}, {});
    EXPECT_EQ(texts.rowCount(), 0);
}

TEST_F(FittingRings, AGapFollowsTheBoreByPi) {
    ASSERT_EQ(gaps->model()->rowCount(), 2) << "a bore and groove each";
    EXPECT_EQ(gap(0, columnOf("Smallest")), "14.0") << "measured where the bore is smallest";
    // 1 thou of bore opens the gap by π thou.
    EXPECT_EQ(gap(0, columnOf("Largest")), "17.1");
    gaps->setFocus();
    gaps->setCurrentIndex(gaps->model()->index(0, 0));
    auto* depths = named<TextTable>(page, "Gap by depth of the chosen ring")->model();
    EXPECT_EQ(depths->rowCount(), 5) << "a row a level";
    EXPECT_EQ(depths->index(0, 1).data().toString().toStdString(), "17.1");
    EXPECT_TRUE(named<QLabel>(page, "What to do with the chosen ring")
                    ->text()
                    .contains("where it is smallest: 14.0"));
}

TEST_F(FittingRings, WhatIsToBeFiledIsSaidInSteps) {
    const int row = gap(0, 2) == "2" ? 0 : 1;
    EXPECT_EQ(gap(row, columnOf("File off")), "3.0") << "from 11 to the aim of 14";
    gaps->setCurrentIndex(gaps->model()->index(row, 0));
    const QString words = named<QLabel>(page, "What to do with the chosen ring")->text();
    EXPECT_TRUE(words.contains("2.0 + 1.0")) << words.toStdString();
    fillIn(page, "File in steps of", "1");
    EXPECT_EQ(fit().fileStep->value(), thou("1"));
    EXPECT_TRUE(
        named<QLabel>(page, "What to do with the chosen ring")->text().contains("1.0 + 1.0 + 1.0"));
    EXPECT_EQ(steps(), 1);
    for (const char* bad : {"0", "-1", "small"}) {
        fillIn(page, "File in steps of", bad);
        EXPECT_EQ(fit().fileStep->value(), thou("1")) << bad;
        EXPECT_FALSE(named<QLineEdit>(page, "File in steps of")->accessibleDescription().isEmpty());
    }
}

TEST_F(FittingRings, RingsAreDealtFixedAndFreedByKeys) {
    button(page, "Take these rings")->click();
    EXPECT_TRUE(fit().rings[0].bore && fit().rings[1].bore);
    EXPECT_EQ(steps(), 1);
    EXPECT_FALSE(button(page, "Take these rings")->isEnabled());
    gaps->setFocus();
    gaps->setCurrentIndex(gaps->model()->index(0, 0));
    QTest::keyClick(gaps, Qt::Key_Return);
    EXPECT_EQ(steps(), 2);
    EXPECT_NE(fit().rings[0].bore.has_value(), fit().rings[1].bore.has_value()) << "one is free";
    QTest::keyClick(gaps, Qt::Key_Return);
    EXPECT_TRUE(fit().rings[0].bore && fit().rings[1].bore);
    button(page, "Free all rings")->click();
    EXPECT_FALSE(fit().rings[0].bore || fit().rings[1].bore);
    bench.document.undoStack().undo();
    EXPECT_TRUE(fit().rings[0].bore && fit().rings[1].bore);
}

TEST_F(FittingRings, ANewRingTakesOverGrooveAndPlace) {
    typeInto(1, RingModel::groove, "2");
    typeInto(1, RingModel::doubt, "0.5");
    typeInto(2, RingModel::gap, "15");
    ASSERT_EQ(fit().rings.size(), 3U);
    EXPECT_EQ(fit().rings[2].label, "3");
    EXPECT_EQ(fit().rings[2].groove, 2);
    EXPECT_EQ(fit().rings[2].measuredIn, 1);
    EXPECT_EQ(fit().rings[2].measuredAt->text(), "2");
    EXPECT_EQ(fit().rings[2].doubt->text(), "0.5");
    EXPECT_EQ(steps(), 3);
}

TEST_F(FittingRings, WhatIsRefusedStaysInItsCell) {
    struct Bad {
        int column;
        const char* text;
        const char* words;
    };
    const FitRecord before = fit();
    for (const Bad& bad : {
             Bad{RingModel::groove, "0", "between 1 and 9"},
             {RingModel::groove, "1.5", "whole number"},
             {RingModel::groove, "", "whole number"},
             {RingModel::measuredIn, "9", "no bore"},
             {RingModel::measuredAt, "-1", "not be below zero"},
             {RingModel::gap, "wide", "not a number"},
             {RingModel::gap, "-3", "not be below zero"},
             {RingModel::doubt, "-1", "not be below zero"},
             {RingModel::bore, "0", "no bore"},
         }) {
        const QModelIndex cell = entry->model()->index(0, bad.column);
        typeInto(0, bad.column, bad.text);
        EXPECT_EQ(cell.data().toString().toStdString(), bad.text);
        EXPECT_TRUE(cell.data(RecordModel::refusalRole).toString().contains(bad.words))
            << bad.text << ": " << cell.data(RecordModel::refusalRole).toString().toStdString();
        EXPECT_TRUE(fit() == before) << bad.text << " reached the record";
    }
    fillIn(page, "Most ring gap", "10");
    EXPECT_TRUE(fit() == before) << "crossed limits are refused";
}

TEST(FitVerbs, ALabelIsCountedOnUntilItIsNobodys) {
    EXPECT_EQ(nextLabel({}), "1");
    EXPECT_EQ(nextLabel({"1", "2"}), "3");
    EXPECT_EQ(nextLabel({"4", "3"}), "5");
    EXPECT_EQ(nextLabel({"top 9"}), "top 10");
    EXPECT_EQ(nextLabel({"P07"}), "P8");
    EXPECT_EQ(nextLabel({"spare"}), "spare 2");
    EXPECT_EQ(nextLabel({""}), "2");
    EXPECT_EQ(nextLabel({"99999999999999999999"}), "999999999999991000000");
}

TEST(FitVerbs, ABoreTakesOneRingAGroove) {
    FitRecord fit;
    fit.rings = {ring("1", "14"), ring("2", "14"), ring("3", "14")};
    fit.rings[2].groove = 2;
    fit = withRingFixed(fit, 0, 1);
    fit = withRingFixed(fit, 2, 1);
    EXPECT_EQ(fit.rings[0].bore, 1) << "another groove's ring leaves it alone";
    fit = withRingFixed(fit, 1, 1);
    EXPECT_FALSE(fit.rings[0].bore);
    EXPECT_EQ(fit.rings[1].bore, 1);
    EXPECT_TRUE(withRingFixed(fit, 7, 1) == fit) << "no such ring";
    EXPECT_TRUE(checkFit(fit));
}

} // namespace
} // namespace borewright
