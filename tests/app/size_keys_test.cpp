// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of the Size page worked by keys alone: where the cursor goes on, what Delete and
// Escape take away, and what they leave.
#include "tests/app/size_support.h"

#include <QAbstractItemModelTester>
#include <QApplication>

namespace borewright {
namespace {

using namespace test;

class SizingByKeys : public Sizing {
protected:
    static void press(Qt::Key key) {
        QTest::keyClick(QApplication::focusWidget(), key);
        QTest::qWait(1); // an open cell is kept in its own time
    }
    static void type(const char* text) {
        for (const char* each = text; *each != '\0'; ++each)
            QTest::keyClick(QApplication::focusWidget(), *each);
    }
    static void goTo(QTableView* table, int row, int column) {
        table->setFocus();
        table->setCurrentIndex(table->model()->index(row, column));
    }
    static std::pair<int, int> at(const QTableView* table) {
        return {table->currentIndex().row(), table->currentIndex().column()};
    }
    static std::string refusals(const QTableView* table) {
        return qobject_cast<EntryModel*>(table->model())->refusals().toStdString();
    }
};

using Place = std::pair<int, int>;

TEST_F(SizingByKeys, ANewSizeIsTypedAlongItsRowWhereverThatIsSorted) {
    offer({"0", "0.010", "0.020"});
    auto* table = sizes();
    const QAbstractItemModelTester tester(table->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    struct Typed {
        Qt::Key key;
        const char *oversize, *smallest, *largest;
        int row;
    };
    int entries = 3;
    for (const Typed& typed : {Typed{Qt::Key_Tab, "0.005", "3.4245", "3.4255", 1},
                               {Qt::Key_Return, "0.015", "3.4345", "3.4355", 3},
                               {Qt::Key_Enter, "0.030", "3.4495", "3.4505", 5}}) {
        goTo(table, entries, SizesModel::oversize);
        type(typed.oversize);
        press(typed.key);
        EXPECT_EQ(at(table), Place(typed.row, SizesModel::smallest)) << typed.oversize;
        type(typed.smallest);
        press(typed.key);
        EXPECT_EQ(at(table), Place(typed.row, SizesModel::largest)) << typed.oversize;
        type(typed.largest);
        press(typed.key);
        EXPECT_EQ(at(table), Place(++entries, 0)) << "on to the next new size";
        EXPECT_EQ(refusals(table), "");
        const SizeOnOffer& size = plan().sizes[static_cast<std::size_t>(typed.row)];
        EXPECT_EQ(size.oversize, typedIn(typed.oversize));
        EXPECT_EQ(size.lower, typedIn(typed.smallest));
        EXPECT_EQ(size.upper, typedIn(typed.largest));
        press(Qt::Key_Escape);
    }
}

TEST_F(SizingByKeys, AnOversizeTypedOverKeepsTheCursorInItsRow) {
    offer({"0", "0.010", "0.020"});
    auto* table = sizes();
    const QAbstractItemModelTester tester(table->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    goTo(table, 0, SizesModel::oversize);
    type("0.030");
    press(Qt::Key_Return);
    EXPECT_EQ(at(table), Place(2, SizesModel::smallest));
    goTo(table, 2, SizesModel::oversize);
    type("0.005");
    press(Qt::Key_Tab);
    EXPECT_EQ(at(table), Place(0, SizesModel::smallest));
    EXPECT_EQ(offered(), (std::vector<std::string>{"0.005 in", "0.010 in", "0.020 in"}));
}

TEST_F(SizingByKeys, ALimitTypedTooSoonStandsOnceItsOversizeIsGiven) {
    offer({"0", "0.020"});
    auto* table = sizes();
    typeCell(table, 2, SizesModel::smallest, "3.4295");
    EXPECT_NE(refusals(table), "");
    typeCell(table, 2, SizesModel::oversize, "0.010");
    EXPECT_EQ(plan().sizes[1].lower, typedIn("3.4295"));
    EXPECT_EQ(refusals(table), "");
}

TEST_F(SizingByKeys, ADamageIsTypedAlongItsRow) {
    bench.selection.setBore(4);
    auto* table = damages();
    const QAbstractItemModelTester tester(table->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    std::size_t row = 0;
    for (const Qt::Key key : {Qt::Key_Tab, Qt::Key_Return}) {
        goTo(table, static_cast<int>(row), DamagesModel::depth);
        for (const char* text : {"1.40", "B", "6 thou", "felt", "score"}) {
            type(text);
            press(key);
        }
        ASSERT_EQ(plan().bores.at(4).damages.size(), row + 1);
        const Damage& damage = plan().bores.at(4).damages[row];
        EXPECT_EQ(damage.depth, typedIn("1.40"));
        EXPECT_EQ(damage.axis, "B");
        EXPECT_EQ(damage.deep, typedThou("6"));
        EXPECT_TRUE(damage.felt);
        EXPECT_EQ(damage.what, "score");
        EXPECT_EQ(at(table), Place(static_cast<int>(++row), 0)) << "on to the next damage";
        press(Qt::Key_Escape);
        EXPECT_EQ(table->model()->index(static_cast<int>(row), 3).data().toString(), "");
    }
}

TEST_F(SizingByKeys, TabLeavesTheTableAtItsEnd) {
    auto* table = sizes();
    goTo(table, 0, SizesModel::largest);
    press(Qt::Key_F2);
    press(Qt::Key_Tab);
    EXPECT_FALSE(table->hasFocus());
    EXPECT_FALSE(table->isAncestorOf(QApplication::focusWidget()));
}

TEST_F(SizingByKeys, DeleteEmptiesALimitAndLeavesItsSize) {
    offer({"0", "0.010"});
    auto* table = sizes();
    typeCell(table, 1, SizesModel::smallest, "3.4295");
    typeCell(table, 1, SizesModel::largest, "3.4305");
    goTo(table, 1, SizesModel::smallest);
    press(Qt::Key_Delete);
    EXPECT_FALSE(plan().sizes[1].lower);
    EXPECT_EQ(plan().sizes[1].upper, typedIn("3.4305"));
    const int steps = bench.document.undoStack().count();
    goTo(table, 1, SizesModel::oversize);
    press(Qt::Key_Delete);
    EXPECT_EQ(offered(), (std::vector<std::string>{"0 in", "0.010 in"}));
    EXPECT_EQ(bench.document.undoStack().count(), steps);
    EXPECT_EQ(table->currentIndex().data().toString(), "0.010 in");
    EXPECT_EQ(refusals(table), "Oversize of size 0.010 in stays: a size has an oversize; "
                               "“Take size off” takes the whole row.");
    goTo(table, 1, SizesModel::largest);
    EXPECT_EQ(refusals(table), "") << "read, and gone with the cursor";
    button(page, "Take size off")->click();
    EXPECT_EQ(offered(), (std::vector<std::string>{"0 in"}));
    bench.document.undoStack().undo();
    EXPECT_EQ(offered(), (std::vector<std::string>{"0 in", "0.010 in"}));
    table->selectAll();
    press(Qt::Key_Delete);
    EXPECT_FALSE(plan().sizes[1].upper) << "many cells at once";
    EXPECT_EQ(offered().size(), 2U);
}

TEST_F(SizingByKeys, DeleteEmptiesOnlyWhatADamageCanDoWithout) {
    damageBoreFour();
    bench.selection.setBore(4);
    auto* table = damages();
    for (const int needed : {DamagesModel::depth, DamagesModel::deep, DamagesModel::felt}) {
        const SizingPlan before = plan();
        goTo(table, 0, needed);
        press(Qt::Key_Delete);
        EXPECT_TRUE(plan() == before) << needed;
        EXPECT_NE(refusals(table), "") << needed;
    }
    for (const int spare : {DamagesModel::axis, DamagesModel::what}) {
        goTo(table, 0, spare);
        press(Qt::Key_Delete);
        EXPECT_EQ(refusals(table), "") << spare;
    }
    const Damage& damage = plan().bores.at(4).damages.at(0);
    EXPECT_EQ(damage.axis, "");
    EXPECT_EQ(damage.what, "");
    EXPECT_EQ(damage.depth, typedIn("1.40"));
}

TEST_F(SizingByKeys, WhatWasRefusedGoesWithEscapeUndoAndAnotherPage) {
    offer({"0", "0.010"});
    auto* table = sizes();
    const auto refuseOne = [&] {
        typeCell(table, 1, SizesModel::smallest, "small");
        EXPECT_NE(refusals(table), "");
        EXPECT_EQ(at(table), Place(1, SizesModel::smallest)) << "stays to be mended";
    };
    refuseOne();
    press(Qt::Key_Escape);
    EXPECT_EQ(refusals(table), "") << "Escape in the table";
    EXPECT_EQ(table->currentIndex().data().toString(), "");
    refuseOne();
    press(Qt::Key_F2);
    press(Qt::Key_Escape);
    EXPECT_EQ(refusals(table), "") << "Escape in the open cell";
    refuseOne();
    bench.document.undoStack().undo();
    EXPECT_EQ(refusals(table), "") << "undo";
    bench.document.undoStack().redo();
    refuseOne();
    page.hide();
    page.show();
    EXPECT_EQ(refusals(table), "") << "another page and back";
}

TEST_F(SizingByKeys, EscapeGivesUpADamageHalfTyped) {
    bench.selection.setBore(4);
    auto* table = damages();
    goTo(table, 0, DamagesModel::depth);
    type("1.40");
    press(Qt::Key_Return);
    press(Qt::Key_Escape);
    EXPECT_EQ(table->model()->index(0, DamagesModel::depth).data().toString(), "");
    typeCell(table, 0, DamagesModel::deep, "6 thou");
    EXPECT_TRUE(plan().bores.empty()) << "its depth was given up";
}

} // namespace
} // namespace borewright
