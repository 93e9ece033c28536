// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons and their skirts entered by keys: one step a cell, nothing lost, every refusal in words.
#include "app/fit/skirt_model.h"
#include "tests/app/fit_hands.h"

#include <QAbstractItemModelTester>
#include <QClipboard>

namespace borewright {
namespace {

using namespace test;

using EnteringPistons = FitHands;

TEST_F(EnteringPistons, TheModelsKeepTheirPromises) {
    using Tester = QAbstractItemModelTester;
    PistonModel pistons(bench.document);
    MatchModel matching(bench.document);
    SkirtModel skirt(bench.document);
    const Tester a(&pistons, Tester::FailureReportingMode::Fatal);
    const Tester b(&matching, Tester::FailureReportingMode::Fatal);
    const Tester c(&skirt, Tester::FailureReportingMode::Fatal);
    const auto refresh = [&] {
        pistons.refresh();
        matching.refresh();
        skirt.refresh();
    };
    skirt.setPiston(1);
    EXPECT_EQ(pistons.rowCount(), 4) << "three pistons and a row for the next";
    EXPECT_EQ(matching.rowCount(), 3);
    pistons.add();
    refresh();
    EXPECT_EQ(pistons.rowCount(), 5);
    pistons.remove({0, 3, 3, 7});
    refresh();
    EXPECT_EQ(pistons.rowCount(), 3);
    EXPECT_EQ(matching.columnCount(), 2);
    skirt.setData(skirt.index(0, SkirtModel::height), "0.5", Qt::EditRole);
    skirt.setData(skirt.index(0, SkirtModel::size), "3.4950", Qt::EditRole);
    refresh();
    EXPECT_EQ(skirt.rowCount(), 2);
    bench.document.open(emptyWorkbook());
    refresh();
    EXPECT_EQ(pistons.rowCount(), 1);
    EXPECT_EQ(matching.rowCount(), 0);
}

TEST_F(EnteringPistons, ACellIsOneStepAndEnterGoesDown) {
    typeInto(*entry, 0, PistonModel::size, "3,4963");
    EXPECT_EQ(fit().pistons[0].size->text(), "3,4963") << "kept as typed";
    EXPECT_EQ(entry->currentIndex().row(), 1);
    EXPECT_EQ(steps(), 1);
    typeInto(*entry, 0, PistonModel::size, "3,4963");
    EXPECT_EQ(steps(), 1) << "opening and leaving changes nothing";
    typeInto(*entry, 0, PistonModel::size, "88.81 mm");
    EXPECT_EQ(cell(0, PistonModel::size), "88.81 mm") << "another unit is named";
    typeInto(*entry, 1, PistonModel::doubt, "0.2");
    EXPECT_EQ(fit().pistons[1].doubt->value(), thou("0.2"));
    typeInto(*entry, 1, PistonModel::temperature, "68 F");
    EXPECT_DOUBLE_EQ(fit().pistons[1].temperature->celsius(), 20);
    typeInto(*entry, 2, PistonModel::bore, "1");
    EXPECT_EQ(bores(), "--1");
}

TEST_F(EnteringPistons, ANewRowTakesOverWhatSeldomDiffers) {
    typeInto(*entry, 2, PistonModel::instrument, "micrometer 3 to 4");
    typeInto(*entry, 2, PistonModel::temperature, "21");
    typeInto(*entry, 2, PistonModel::doubt, "0.2");
    fillIn(page, "Expansion of the piston", "19.5");
    const int before = steps();
    typeInto(*entry, 3, PistonModel::size, "3.4964");
    ASSERT_EQ(fit().pistons.size(), 4U);
    EXPECT_EQ(steps(), before + 1);
    EXPECT_EQ(cell(3, PistonModel::label), "4");
    EXPECT_EQ(cell(3, PistonModel::height), "") << "a height is never guessed";
    EXPECT_FALSE(fit().pistons[3].expansion) << "nor what it is made of";
    EXPECT_EQ(cell(3, PistonModel::instrument), "micrometer 3 to 4");
    EXPECT_EQ(cell(3, PistonModel::temperature), "21 °C");
    EXPECT_EQ(cell(3, PistonModel::doubt), "0.2");
    EXPECT_EQ(entry->currentIndex(), entry->model()->index(3, PistonModel::height))
        << "the height is what is asked for next";
}

TEST_F(EnteringPistons, AnEmptyHeightIsNotGivenAndGivesNoClearance) {
    entry->setFocus();
    entry->setCurrentIndex(entry->model()->index(1, PistonModel::height));
    QTest::keyClick(entry, Qt::Key_Delete);
    EXPECT_FALSE(fit().pistons[1].height);
    EXPECT_EQ(entry->model()->index(1, PistonModel::height).data(RecordModel::hintRole),
              "not given");
    EXPECT_EQ(matches->model()->index(0, 1).data().toString().toStdString(), "–");
}

TEST_F(EnteringPistons, WhatIsRefusedStaysInItsCellUntilItIsMended) {
    struct Bad {
        int column;
        const char* text;
        const char* words;
    };
    const FitRecord before = fit();
    auto* refusals = named<QLabel>(page, "Why a piston was not kept");
    for (const Bad& bad : {
             Bad{PistonModel::size, "3.49o", "not a number"},
             {PistonModel::size, "0", "more than zero"},
             {PistonModel::size, "-3.4", "more than zero"},
             {PistonModel::height, "-1", "not be below zero"},
             {PistonModel::height, "high", "not a number"},
             {PistonModel::temperature, "warm", "not a number"},
             {PistonModel::temperature, "400", "temperature"},
             {PistonModel::doubt, "-0.1", "not be below zero"},
             {PistonModel::bore, "4", "no bore"},
             {PistonModel::bore, "one", "no bore"},
         }) {
        typeInto(*entry, 1, bad.column, bad.text);
        EXPECT_EQ(cell(1, bad.column), bad.text) << "what was typed is not lost";
        EXPECT_TRUE(refusals->isVisible());
        EXPECT_TRUE(refusals->text().contains(bad.words))
            << bad.text << ": " << refusals->text().toStdString();
        EXPECT_TRUE(refusals->text().contains("piston 2")) << refusals->text().toStdString();
        EXPECT_EQ(entry->currentIndex().row(), 1) << "a refused cell is not left";
        EXPECT_TRUE(fit() == before) << bad.text << " reached the record";
        entry->setCurrentIndex(entry->model()->index(1, bad.column));
        typeInto(*entry, 1, bad.column,
                 bad.column == PistonModel::size     ? "3.4961"
                 : bad.column == PistonModel::height ? "0.7"
                                                     : "");
        EXPECT_FALSE(refusals->isVisible()) << refusals->text().toStdString();
    }
    EXPECT_EQ(steps(), 0);
}

TEST_F(EnteringPistons, TwoPistonsInOneBoreAreRefused) {
    typeInto(*entry, 0, PistonModel::bore, "2");
    typeInto(*entry, 1, PistonModel::bore, "2");
    EXPECT_EQ(bores(), "2--");
    EXPECT_TRUE(
        named<QLabel>(page, "Why a piston was not kept")->text().contains("another piston"));
}

TEST_F(EnteringPistons, ARefusalInTheLastRowGoesWithThePieceItBecomes) {
    typeInto(*entry, 3, PistonModel::size, "3.49o");
    EXPECT_EQ(fit().pistons.size(), 3U);
    typeInto(*entry, 3, PistonModel::label, "spare");
    ASSERT_EQ(fit().pistons.size(), 4U);
    EXPECT_EQ(cell(3, PistonModel::size), "3.49o");
    EXPECT_EQ(cell(4, PistonModel::size), "");
}

TEST_F(EnteringPistons, AColumnOfSizesIsPastedAsOneStep) {
    QGuiApplication::clipboard()->setText("3.4970\r\n3.4971\r\n3.4972\r\n3.4973\r\n3.4974\r\n");
    entry->setFocus();
    entry->setCurrentIndex(entry->model()->index(1, PistonModel::size));
    QTest::keySequence(entry, QKeySequence::Paste);
    ASSERT_EQ(fit().pistons.size(), 6U);
    EXPECT_EQ(fit().pistons[1].size->text(), "3.4970");
    EXPECT_EQ(fit().pistons[5].size->text(), "3.4974");
    EXPECT_EQ(fit().pistons[5].label, "6");
    EXPECT_FALSE(fit().pistons[5].height) << "nobody has measured it";
    EXPECT_EQ(steps(), 1);
    bench.document.undoStack().undo();
    EXPECT_EQ(fit().pistons.size(), 3U);
}

TEST_F(EnteringPistons, APasteWithOneWrongCellIsRefusedWhole) {
    const FitRecord before = fit();
    auto* refusals = named<QLabel>(page, "Why a piston was not kept");
    struct Bad {
        const char* text;
        int column;
        const char* words;
    };
    for (const Bad& bad : {Bad{"3.4970\n3.497x\n", PistonModel::size, "line 2"},
                           {"3.4970\n0\n", PistonModel::size, "line 2"},
                           {"1\t2", PistonModel::bore, "no such column"},
                           {" \n", PistonModel::size, "nothing to paste"}}) {
        QGuiApplication::clipboard()->setText(bad.text);
        entry->setCurrentIndex(entry->model()->index(1, bad.column));
        QTest::keySequence(entry, QKeySequence::Paste);
        EXPECT_TRUE(refusals->text().contains(bad.words)) << refusals->text().toStdString();
        EXPECT_TRUE(fit() == before);
    }
}

TEST_F(EnteringPistons, PistonsAreAddedAndTakenOffByButtons) {
    button(page, "Add piston")->click();
    ASSERT_EQ(fit().pistons.size(), 4U);
    EXPECT_FALSE(fit().pistons[3].size) << "its size is its own";
    EXPECT_EQ(entry->currentIndex().row(), 3);
    entry->selectionModel()->setCurrentIndex(entry->model()->index(0, PistonModel::size),
                                             QItemSelectionModel::ClearAndSelect);
    button(page, "Take piston off")->click();
    ASSERT_EQ(fit().pistons.size(), 3U);
    EXPECT_EQ(fit().pistons[0].label, "2");
}

TEST_F(EnteringPistons, MaterialAndSkirtAreOfTheChosenPiston) {
    entry->setCurrentIndex(entry->model()->index(1, 0));
    fillIn(page, "Expansion of the piston", "19.5");
    EXPECT_DOUBLE_EQ(fit().pistons[1].expansion.value_or(0), 19.5);
    fillIn(page, "Expansion of the piston", "90");
    EXPECT_DOUBLE_EQ(fit().pistons[1].expansion.value_or(0), 19.5);
    fillIn(page, "Notes on the piston", "scuffed once");
    EXPECT_EQ(fit().pistons[1].notes, "scuffed once");
    unfold("Material, skirt and notes");
    auto* skirt = named<RecordTable>(page, "Skirt at other heights");
    const int before = steps();
    typeInto(*skirt, 0, SkirtModel::height, "1.5");
    EXPECT_EQ(steps(), before) << "half a row is nothing yet";
    EXPECT_EQ(skirt->model()->index(0, SkirtModel::height).data(), "1.5");
    typeInto(*skirt, 0, SkirtModel::size, "3.4940");
    ASSERT_EQ(fit().pistons[1].skirt.size(), 1U);
    EXPECT_EQ(fit().pistons[1].skirt[0].height.text(), "1.5");
    EXPECT_EQ(fit().pistons[1].skirt[0].size.text(), "3.4940");
    EXPECT_EQ(steps(), before + 1);
}

} // namespace
} // namespace borewright
