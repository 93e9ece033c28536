// SPDX-License-Identifier: GPL-3.0-or-later
// The edits of sizes, targets, pistons and rings: undone by their inverses, refused without a
// trace, and carried along when the bores are numbered anew.
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "tests/support/fitted_block.h"
#include "tests/support/lengths.h"

#include <cmath>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class SizingEdits : public testing::Test {
protected:
    // Applies, checks that something changed, undoes, redoes, and compares.
    void roundTrip(const Edit& edit) {
        const Workbook before = workbook;
        const auto inverse = borewright::apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        const Workbook after = workbook;
        EXPECT_FALSE(after == before) << "the edit changed nothing";
        const auto back = readWorkbook(writeWorkbook(workbook));
        ASSERT_TRUE(back) << "it could not be opened again: " << back.error().message();
        const auto again = borewright::apply(workbook, *inverse);
        ASSERT_TRUE(again) << again.error().message();
        EXPECT_TRUE(workbook == before) << "undo did not bring back what was there";
        ASSERT_TRUE(borewright::apply(workbook, *again));
        EXPECT_TRUE(workbook == after) << "redo did not come to the same";
    }
    std::string refused(const Edit& edit) {
        const Workbook before = workbook;
        const auto result = borewright::apply(workbook, edit);
        EXPECT_TRUE(workbook == before) << "a refusal left a trace";
        return result ? "accepted" : result.error().message();
    }
    // Each refusal of a plan, targets or a fit as `change` makes them.
    template<class Change>
    std::string plan(Change change) {
        SizingPlan plan = workbook.sizing;
        change(plan);
        return refused(SetSizing{plan});
    }
    template<class Change>
    std::string target(Change change) {
        FinishTargets targets = workbook.targets;
        change(targets[1]);
        return refused(SetTargets{targets});
    }
    template<class Change>
    std::string fit(Change change) {
        FitRecord fit = workbook.fit;
        change(fit);
        return refused(SetFit{fit});
    }

    Workbook workbook = fittedBlock();
};

TEST_F(SizingEdits, AreUndoneByTheirInverses) {
    roundTrip(SetSizing{});
    roundTrip(SetTargets{});
    roundTrip(SetFit{});
    const Workbook whole = fittedBlock();
    roundTrip(EditGroup{{SetSizing{whole.sizing}, SetTargets{whole.targets}, SetFit{whole.fit}}});
    EXPECT_TRUE(workbook == whole);
}

TEST_F(SizingEdits, APlanThatCannotStandIsRefused) {
    EXPECT_EQ(plan([](SizingPlan& it) { std::swap(it.sizes[0], it.sizes[1]); }),
              "size 0 in: sizes go from the smallest to the largest, and this one is below the "
              "one before it");
    EXPECT_EQ(plan([](SizingPlan& it) { it.sizes[1].oversize = typedMm("0.5"); }),
              "size 0,50 mm: is given twice")
        << "the same in other words";
    EXPECT_EQ(plan([](SizingPlan& it) { it.sizes[1].lower = typedIn("3.52"); }),
              "size .010 in: largest: the largest size allowed is below the smallest");
    EXPECT_EQ(plan([](SizingPlan& it) { it.bores[2].damages[1].deep = typedThou("0"); }),
              "bore 2: damage: deep: how far it goes into the wall is more than zero");
    EXPECT_EQ(plan([](SizingPlan& it) { it.bores[2].damages[1].depth = typedIn("-1"); }),
              "bore 2: damage: depth: lies between the open end (0) and the closed end");
    EXPECT_EQ(plan([](SizingPlan& it) { it.bores[2].madeTo = typedIn("0"); }),
              "bore 2: made to: a size is more than zero and at most three metres");
    EXPECT_EQ(plan([](SizingPlan& it) { it.bores[0]; }), "bore 0: is no number of a bore");
    EXPECT_EQ(plan([](SizingPlan& it) { it.finishAllowance = typedThou("-0.1"); }),
              "finish allowance: is nothing or more");
}

TEST_F(SizingEdits, ATargetThatCannotStandIsRefused) {
    EXPECT_EQ(target([](FinishTarget& it) { it.size = typedIn("0"); }),
              "target of bore 1: a size is more than zero and at most three metres");
    EXPECT_EQ(target([](FinishTarget& it) { it.upper = typedIn("3.5"); }),
              "target of bore 1: largest: the largest size allowed is below the smallest");
    EXPECT_EQ(target([](FinishTarget& it) { it.size = typedMm("3.51"); }),
              "target of bore 1: its limits are more than a tenth away from it")
        << "inches taken for millimetres";
}

TEST_F(SizingEdits, AFitThatCannotStandIsRefused) {
    EXPECT_EQ(fit([](FitRecord& it) { it.pistons[2].bore = 1; }),
              "piston 3: another piston is to go in bore 1 already");
    EXPECT_EQ(fit([](FitRecord& it) { it.pistons[2].id = "p1"; }),
              "piston 3: needs an id of its own");
    EXPECT_EQ(fit([](FitRecord& it) { it.pistons[0].expansion = std::nan(""); }),
              "piston 1: expansion: lies between 1 and 40 millionths per °C");
    EXPECT_EQ(fit([](FitRecord& it) { it.pistons[0].skirt[1].height = typedIn("0.250"); }),
              "piston 1: skirt: height: 0.250 in is given twice");
    EXPECT_EQ(fit([](FitRecord& it) { it.rings[1].groove = 1; }),
              "ring second: another ring of groove 1 is to go in bore 3 already");
    EXPECT_EQ(fit([](FitRecord& it) { it.clearance.aim = typedThou("5"); }),
              "clearance: aim: is over the most allowed");
    EXPECT_EQ(fit([](FitRecord& it) {
                  it.ringGap.decision = {DecisionRule::Kind::own, 0};
              }),
              "ring gap: chance of a wrong verdict: lies between 0.001 and 50 %");
    EXPECT_EQ(fit([](FitRecord& it) { it.fileStep = typedThou("0"); }),
              "file in steps of: must be more than zero");
}

TEST_F(SizingEdits, AGroupThatEndsInARefusalTakesTheRestBack) {
    FitRecord crossed = workbook.fit;
    crossed.clearance.lower = typedThou("9");
    EXPECT_EQ(refused(EditGroup{{SetSizing{}, SetTargets{}, SetFit{crossed}}}),
              "clearance: most: the most allowed is less than the least");
}

TEST_F(SizingEdits, NewNumbersCarryDamageTargetsPistonsAndRings) {
    roundTrip(Renumber{{{1, 2}, {2, 3}, {3, 1}}});
    EXPECT_EQ(workbook.sizing.bores.at(3).damages.size(), 2U) << "the score was in bore 2";
    EXPECT_EQ(workbook.sizing.bores.at(1).side, WearSide::bothSides);
    EXPECT_EQ(workbook.sizing.bores.size(), 2U);
    EXPECT_EQ(workbook.targets.at(2).from, "0.010 in over");
    EXPECT_EQ(workbook.targets.at(3).from, "piston 2 and 4.2 thou");
    EXPECT_EQ(workbook.fit.pistons[0].bore, 2);
    EXPECT_EQ(workbook.fit.pistons[1].bore, 1);
    EXPECT_EQ(workbook.fit.pistons[2].bore, std::nullopt);
    EXPECT_EQ(workbook.fit.rings[0].measuredIn, 3);
    EXPECT_EQ(workbook.fit.rings[0].bore, 1);
}

// Bore 3 leaves the block, what was said of it stays, and bore 1 becomes number 3.
TEST_F(SizingEdits, ANumberThatIsFreeAgainKeepsBothBoresApart) {
    Block block = workbook.block;
    block.bores.pop_back();
    roundTrip(SetBlock{block});
    roundTrip(Renumber{{{1, 3}}});
    EXPECT_EQ(workbook.fit.pistons[0].bore, 3);
    EXPECT_EQ(workbook.fit.pistons[1].bore, 1) << "two pistons in one bore";
    EXPECT_EQ(workbook.targets.at(3).from, "0.010 in over");
    EXPECT_EQ(workbook.sizing.bores.at(1).side, WearSide::bothSides);
    EXPECT_TRUE(checkFit(workbook.fit));
}

TEST_F(SizingEdits, NumbersThatCannotBeAreRefused) {
    EXPECT_EQ(refused(Renumber{{{1, 2}}}), "two bores cannot both be number 2");
    EXPECT_EQ(refused(Renumber{{{1, 7}, {2, 7}}}), "two bores cannot both be number 7");
    EXPECT_EQ(refused(Renumber{{{8, 7}, {9, 7}}}), "two bores cannot both be number 7");
    EXPECT_EQ(refused(Renumber{{{1, 0}}}), "0 is no number of a bore") << "no file could hold it";
    EXPECT_EQ(refused(Renumber{{{1, 1000}}}), "1000 is no number of a bore");
    roundTrip(Renumber{{{1, 5}, {5, 1}}}); // there is no bore 5 so far
}

TEST(FitEdits, APistonInTheWrongUnitIsRefusedAndUndoStillWorks) {
    Workbook workbook = test::fittedBlock();
    FitRecord fit = workbook.fit;
    fit.pistons.front().size = *readTyped("87.27", Unit::inch);
    const auto done = borewright::apply(workbook, SetFit{fit});
    ASSERT_FALSE(done) << "87.27 in beside bores of a twentieth of that";
    EXPECT_NE(done.error().message().find("is the unit right?"), std::string::npos)
        << done.error().message();

    const FitRecord good = workbook.fit;
    workbook.fit = fit; // as a file may have it
    const Workbook before = workbook;
    const auto undo = borewright::apply(workbook, SetFit{good});
    ASSERT_TRUE(undo);
    ASSERT_TRUE(borewright::apply(workbook, *undo));
    EXPECT_EQ(workbook, before);
}

} // namespace
} // namespace borewright
