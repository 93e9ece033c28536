// SPDX-License-Identifier: GPL-3.0-or-later
// The pistons' half of the Fit page by keys: pairs fixed and taken, swaps, limits, finish sizes
// handed on.
#include "tests/app/fit_hands.h"

namespace borewright {
namespace {

using namespace test;

using FittingPistons = FitHands;

TEST_F(FittingPistons, TheTableSaysClearanceMissAndChoice) {
    const QAbstractItemModel& model = *matches->model();
    ASSERT_EQ(model.rowCount(), 3);
    ASSERT_EQ(model.columnCount(), 3);
    // Bore 3 of 3.5002 in, piston 1 of 3.4960: 4.2 thou, 0.2 from 4.0, half-way from 3 to 5.
    const QModelIndex far = model.index(2, 0);
    EXPECT_EQ(far.data().toString().toStdString(), "4.2");
    EXPECT_EQ(far.data(MatchModel::missRole).toString().toStdString(), "0.2");
    EXPECT_FALSE(far.data(MatchModel::chosenRole).toBool());
    for (int i = 0; i < 3; ++i)
        EXPECT_TRUE(model.index(i, i).data(MatchModel::chosenRole).toBool()) << "bore " << i + 1;
    EXPECT_EQ(model.headerData(1, Qt::Horizontal, MatchModel::spareRole).toString().toStdString(),
              "3.4961");
}

TEST_F(FittingPistons, ASwapSaysWhatItWouldCost) {
    chooseMatch(2, 0);
    EXPECT_EQ(says("The chosen pair"), "Piston 1 in bore 3");
    // Exchanged with piston 3, which then has 3.8 thou in bore 1: 0.2 off each, 0.4 in all.
    EXPECT_EQ(says("What this pair would cost"),
              "Piston 1 here instead: worst miss 0.2 thou, sum 0.4; as chosen: 0.0, sum 0.0.");
    EXPECT_NE(says("Clearance of the chosen pair").find("Least clearance 4.2 thou"),
              std::string::npos)
        << says("Clearance of the chosen pair");
    auto* depths = named<QTableView>(page, "Clearance by depth of the chosen pair");
    EXPECT_EQ(depths->model()->rowCount(), 5) << "a row a level";
    EXPECT_EQ(bench.selection.bore(), 3) << "choosing here chooses everywhere";
}

TEST_F(FittingPistons, EnterFixesAPairAndFreesItAgain) {
    chooseMatch(0, 2);
    QTest::keyClick(matches, Qt::Key_Return);
    EXPECT_EQ(bores(), "--1");
    EXPECT_EQ(says("What this pair would cost"), "Fixed here by you.");
    QTest::keyClick(matches, Qt::Key_Down);
    QTest::keyClick(matches, Qt::Key_Return);
    EXPECT_EQ(bores(), "--2") << "a piston goes in one bore";
    QTest::keyClick(matches, Qt::Key_Left);
    QTest::keyClick(matches, Qt::Key_Return);
    EXPECT_EQ(bores(), "-2-") << "a bore takes one piston";
    QTest::keyClick(matches, Qt::Key_Enter);
    EXPECT_EQ(bores(), "---");
    EXPECT_EQ(steps(), 4) << "each an undo step";
    bench.document.undoStack().undo();
    EXPECT_EQ(bores(), "-2-");
}

TEST_F(FittingPistons, TakingTheMatchingAndFreeingAllAreOneStepEach) {
    button(page, "Take this matching")->click();
    EXPECT_EQ(bores(), "123");
    EXPECT_EQ(steps(), 1);
    EXPECT_FALSE(button(page, "Take this matching")->isEnabled()) << "it is taken";
    button(page, "Free all pairs")->click();
    EXPECT_EQ(bores(), "---");
    EXPECT_EQ(steps(), 2);
    bench.document.undoStack().undo();
    EXPECT_EQ(bores(), "123");
}

TEST_F(FittingPistons, LimitsAreKeptOneStepAFieldAndRefusedAtTheirField) {
    auto* aim = named<QLineEdit>(page, "Aim clearance");
    EXPECT_EQ(aim->placeholderText().toStdString(), "half-way: 4.0");
    fillIn(page, "Aim clearance", "6");
    EXPECT_FALSE(fit().clearance.aim);
    EXPECT_EQ(aim->accessibleDescription().toStdString(), "is over the most allowed");
    EXPECT_EQ(aim->text(), "6") << "what was typed is not lost";
    fillIn(page, "Aim clearance", "3.5");
    EXPECT_EQ(fit().clearance.aim->value(), thou("3.5"));
    EXPECT_EQ(steps(), 1);
    fillIn(page, "Least clearance", "5.5");
    EXPECT_EQ(fit().clearance.lower->text(), "3.0") << "crossed limits are refused";
    fillIn(page, "Least clearance", "");
    EXPECT_FALSE(fit().clearance.lower);
    fillIn(page, "Most clearance", "-1");
    EXPECT_EQ(fit().clearance.upper->text(), "5.0");
    fillIn(page, "Most clearance", "lots");
    EXPECT_EQ(fit().clearance.upper->text(), "5.0");
    fillIn(page, "Aim clearance", "");
    EXPECT_FALSE(fit().clearance.aim);
}

TEST_F(FittingPistons, TheWarmClearanceIsAModelOfTwoGuesses) {
    unfold("At working temperature");
    auto* warm = named<QTableView>(page, "Clearance at working temperature, by the model")->model();
    EXPECT_EQ(warm->rowCount(), 0);
    fillIn(page, "Skirt warmer than 20 °C by", "100");
    fillIn(page, "Bore warmer than 20 °C by", "60");
    ASSERT_EQ(warm->rowCount(), 3);
    // 4.0 thou + 3500 thou · (11.4e-6 · 60 − 21.5e-6 · 100) = 4.0 + 2.394 − 7.525 = −1.131 thou.
    EXPECT_EQ(warm->index(0, 3).data().toString().toStdString(), "−1.1");
    EXPECT_EQ(steps(), 0) << "nothing of it is kept";
    fillIn(page, "Skirt warmer than 20 °C by", "1000");
    EXPECT_EQ(named<QLineEdit>(page, "Skirt warmer than 20 °C by")->accessibleDescription(),
              "degrees over 20 °C lie between −50 and 400");
}

TEST_F(FittingPistons, CautionsStandInViewAndEveryControlHasAName) {
    EXPECT_NE(says("Cautions").find("engine maker"), std::string::npos) << says("Cautions");
    EXPECT_TRUE(named<QLabel>(page, "Cautions")->isVisible());
    EXPECT_FALSE(named<QLabel>(page, "Which piston in which bore")->text().isEmpty());
    for (const QTableView* table : page.findChildren<QTableView*>())
        EXPECT_FALSE(table->accessibleName().isEmpty()) << "a table without a name";
    for (const QLineEdit* edit : page.findChildren<QLineEdit*>())
        EXPECT_FALSE(edit->accessibleName().isEmpty()) << "a field without a name";
    for (const QComboBox* box : page.findChildren<QComboBox*>())
        EXPECT_FALSE(box->accessibleName().isEmpty()) << "a list without a name";
}

TEST_F(FittingPistons, EmptyListsAndOtherWorkbooksAreNoTrouble) {
    typeInto(*entry, 0, PistonModel::size, "3.49o");
    bench.document.open(emptyWorkbook());
    EXPECT_EQ(entry->model()->rowCount(), 1);
    EXPECT_FALSE(named<QLabel>(page, "Why a piston was not kept")->isVisible())
        << "what was refused was of the other workbook";
    bench.document.open(inchBlock(2));
    EXPECT_FALSE(matches->isVisible());
    typeInto(*entry, 0, PistonModel::size, "3.4960");
    ASSERT_EQ(fit().pistons.size(), 1U);
    EXPECT_EQ(fit().pistons[0].label, "1");
    EXPECT_FALSE(fit().pistons[0].height) << "never guessed";
}

TEST_F(FittingPistons, UnitsChangeOnlyWhatIsShown) {
    const Workbook before = bench.document.workbook();
    bench.document.setUnits(DisplayUnits::metric());
    EXPECT_EQ(cell(0, PistonModel::size), "3.4960 in") << "as typed, with its unit";
    EXPECT_EQ(matches->model()->index(2, 0).data().toString().toStdString(), "107")
        << "4.2 thou are 106.68 µm";
    EXPECT_EQ(named<QLineEdit>(page, "Least clearance")->text(), "3.0 thou");
    EXPECT_TRUE(bench.document.workbook() == before);
}

class FittingUnfinished : public FittingPistons {
protected:
    FittingUnfinished()
        : FittingPistons(unfinished()) {}
    static Workbook unfinished() {
        Workbook workbook = threeBores(SurveyKind::asFound);
        // Pistons that go into none of the bores as they are: they were bought first.
        workbook.fit = made().fit;
        const char* sizes[] = {"3.5160", "3.5161", "3.5162"};
        for (std::size_t i = 0; i < 3; ++i)
            workbook.fit.pistons[i].size = typedIn(sizes[i]);
        return workbook;
    }
};

TEST_F(FittingUnfinished, BoresAreHonedToThesePistonsInOneStep) {
    auto* sizes = named<QTableView>(page, "Finish sizes for these pistons")->model();
    ASSERT_EQ(sizes->rowCount(), 3);
    EXPECT_TRUE(named<QTableView>(page, "Finish sizes for these pistons")->isVisible());
    EXPECT_EQ(sizes->index(1, 2).data().toString().toStdString(), "3.5201")
        << "3.5161 and 4.0 thou";
    auto* hone = button(page, "Hone the bores to these pistons");
    hone->click();
    const FinishTargets& targets = bench.document.workbook().targets;
    ASSERT_EQ(targets.size(), 3U);
    EXPECT_EQ(targets.at(2).size.value(), in("3.5201"));
    EXPECT_EQ(steps(), 1);
    EXPECT_FALSE(hone->isEnabled()) << "it is done";
    bench.document.undoStack().undo();
    EXPECT_TRUE(bench.document.workbook().targets.empty());
}

} // namespace
} // namespace borewright
