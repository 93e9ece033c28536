// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of sizes on offer and of damages, typed in by keys.
#include "tests/app/size_support.h"

#include <QAbstractItemModelTester>

namespace borewright {
namespace {

using namespace test;

TEST_F(Sizing, SizesAreTypedOneBelowTheOther) {
    auto* table = sizes();
    const QAbstractItemModelTester tester(table->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    for (const char* text : {"0.020", "0", "0,010"})
        typeCell(table, table->model()->rowCount() - 1, SizesModel::oversize, text);
    EXPECT_EQ(offered(), (std::vector<std::string>{"0 in", "0,010 in", "0.020 in"}))
        << "by rising oversize, as typed";
    EXPECT_EQ(bench.document.undoStack().count(), 3);
    typeCell(table, 1, SizesModel::smallest, "3.4295");
    typeCell(table, 1, SizesModel::largest, "3.4310");
    EXPECT_EQ(plan().sizes[1].lower, typedIn("3.4295"));
    EXPECT_EQ(table->currentIndex().row(), 3) << "Enter at the end of a row goes on to a new one";
    EXPECT_EQ(plan().sizes[1].upper, typedIn("3.4310"));
    EXPECT_EQ(bench.document.undoStack().count(), 5);
    table->setCurrentIndex(table->model()->index(0, 0));
    button(page, "Take size off")->click();
    EXPECT_EQ(offered(), (std::vector<std::string>{"0,010 in", "0.020 in"}));
    bench.document.undoStack().undo();
    EXPECT_EQ(offered().size(), 3U);
    typeCell(table, 1, SizesModel::smallest, "");
    EXPECT_FALSE(plan().sizes[1].lower) << "an empty cell is not given";
}

TEST_F(Sizing, WhatNoSizeCanBeIsRefusedInItsCellAndNothingIsLost) {
    offer({"0", "0.010"});
    typeCell(sizes(), 1, SizesModel::smallest, "3.4295");
    const SizingPlan before = plan();
    struct Bad {
        int row, column;
        const char* text;
        const char* words;
    };
    for (const Bad& bad : {
             Bad{2, SizesModel::oversize, "o.020", "not a number"},
             {2, SizesModel::oversize, "-0.010", "counted from the standard size up"},
             {2, SizesModel::oversize, "20", "20 thou"},
             {2, SizesModel::oversize, "10 thou", "given twice"},
             {1, SizesModel::oversize, "", "has an oversize"},
             {2, SizesModel::smallest, "3.43", "first give the oversize"},
             {1, SizesModel::smallest, "34.3", "far from the standard size"},
             {1, SizesModel::largest, "3.4290", "below the smallest"},
             {1, SizesModel::largest, "large", "not a number"},
         }) {
        auto* table = sizes();
        typeCell(table, bad.row, bad.column, bad.text);
        EXPECT_TRUE(why(table, bad.row, bad.column).contains(bad.words))
            << bad.text << ": " << why(table, bad.row, bad.column).toStdString();
        EXPECT_EQ(table->model()->index(bad.row, bad.column).data().toString(), bad.text);
        EXPECT_TRUE(plan() == before) << bad.text;
        typeCell(table, bad.row, bad.column,
                 bad.row == 1 && bad.column == SizesModel::oversize   ? "0.010 in"
                 : bad.row == 1 && bad.column == SizesModel::smallest ? "3.4295 in"
                                                                      : "");
        EXPECT_EQ(why(table, bad.row, bad.column), "") << "mended after " << bad.text;
    }
    EXPECT_TRUE(plan() == before);
}

TEST_F(Sizing, ARefusedTextWaitsWhileOthersChange) {
    auto* table = sizes();
    typeCell(table, 0, SizesModel::oversize, "ten");
    fillIn(page, "Made to", "wide");
    fillIn(page, "Engine maker's greatest oversize", "0.030");
    EXPECT_EQ(table->model()->index(0, 0).data().toString(), "ten");
    EXPECT_EQ(named<QLineEdit>(page, "Made to")->text(), "wide");
    EXPECT_TRUE(refusalAt("Made to").contains("not a number"))
        << refusalAt("Made to").toStdString();
    EXPECT_EQ(plan().greatest, typedIn("0.030"));
}

TEST_F(Sizing, TheTableShowsTheLimitsThatAreInForce) {
    offer({"0", "0.020"});
    auto sets = bench.document.workbook().limitSets;
    LimitSet finish;
    finish.id = freshLimitSetId(bench.document.workbook());
    finish.name = "0.020 over";
    finish.purpose = LimitPurpose::finish;
    finish.oversize = typedIn("0.020");
    finish.limits.sizeLower = typedIn("3.4395");
    sets.push_back(finish);
    EXPECT_TRUE(bench.document.edit(SetLimitSets{sets}, "limits"));
    const auto* model = sizes()->model();
    const auto hint = [&](int row, int column) {
        return model->index(row, column).data(EntryModel::hintRole).toString().toStdString();
    };
    EXPECT_EQ(hint(1, SizesModel::smallest), "3.4395 in");
    EXPECT_EQ(hint(0, SizesModel::smallest), "not given");
}

TEST_F(Sizing, ADamageIsTypedByKeysAsOneStep) {
    bench.selection.setBore(4);
    auto* table = damages();
    const QAbstractItemModelTester tester(table->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    typeCell(table, 0, DamagesModel::depth, "1.40");
    EXPECT_EQ(bench.document.undoStack().count(), 0) << "not enough to reckon with yet";
    table->setCurrentIndex(table->model()->index(0, DamagesModel::axis));
    QTest::keyClick(table, Qt::Key_Space);
    QTest::keyClick(table, Qt::Key_Space);
    EXPECT_EQ(table->currentIndex().data().toString(), "B");
    typeCell(table, 0, DamagesModel::deep, "6 thou");
    ASSERT_EQ(plan().bores.count(4), 1U);
    ASSERT_EQ(plan().bores.at(4).damages.size(), 1U);
    EXPECT_EQ(bench.document.undoStack().count(), 1);
    typeCell(table, 0, DamagesModel::what, "score, exhaust side");
    table->setCurrentIndex(table->model()->index(0, DamagesModel::felt));
    QTest::keyClick(table, Qt::Key_Space);
    const Damage& damage = plan().bores.at(4).damages[0];
    EXPECT_EQ(damage.depth, typedIn("1.40"));
    EXPECT_EQ(damage.axis, "B");
    EXPECT_EQ(damage.deep, typedThou("6"));
    EXPECT_TRUE(damage.felt);
    EXPECT_EQ(damage.what, "score, exhaust side");
    bench.selection.setBore(1);
    EXPECT_EQ(table->model()->rowCount(), 1) << "another bore has none";
    bench.selection.setBore(4);
    table->setCurrentIndex(table->model()->index(0, 0));
    button(page, "Take damage off")->click();
    EXPECT_EQ(plan().bores.count(4), 0U) << "a bore of which nothing is said is not kept";
}

TEST_F(Sizing, WhatNoDamageCanBeIsRefused) {
    damageBoreFour();
    bench.selection.setBore(4);
    auto* table = damages();
    const SizingPlan before = plan();
    struct Bad {
        int column;
        const char* text;
        const char* words;
    };
    for (const Bad& bad : {
             Bad{DamagesModel::depth, "-1", "down"},
             {DamagesModel::depth, "40", "deep"},
             {DamagesModel::depth, "", "at a depth"},
             {DamagesModel::axis, "Q", "only A, B"},
             {DamagesModel::deep, "0", "more than zero"},
             {DamagesModel::deep, "-2 thou", "more than zero"},
             {DamagesModel::deep, "6 in", "6 thou"},
             {DamagesModel::deep, "a bit", "not a number"},
             {DamagesModel::felt, "guessed", "felt or measured"},
         }) {
        typeCell(table, 0, bad.column, bad.text);
        EXPECT_TRUE(why(table, 0, bad.column).contains(bad.words))
            << bad.text << ": " << why(table, 0, bad.column).toStdString();
        EXPECT_TRUE(plan() == before) << bad.text;
    }
}

} // namespace
} // namespace borewright
