// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan has to be whatever the figures: safe, the same each time, and at an end where there
// is nothing to gain. How good plans are is for closed_loop_test.cpp.
#include "core/honing/planning.h"

#include <cmath>
#include <gtest/gtest.h>

namespace borewright {
namespace {

const std::vector<double> depths{6, 23, 40, 57, 74, 91};

// Full rough, short rough, full finish in a bore of 100 mm; `lowest_mm` beyond it where it is open.
Bench threeStones(double lowest_mm = 98) {
    Bench bench;
    bench.grid = wallGridToStop(100, std::min(lowest_mm, 98.0));
    for (const double length : {75.0, 25.0, 75.0}) {
        BenchStone stone;
        stone.grid = stoneOnGrid(bench.grid, length, length * 2 / 3, lowest_mm);
        stone.logRateDoubt = 0.1;
        bench.stones.push_back(stone);
    }
    bench.stones.back().finish = true;
    bench.stones.back().logRate = std::log(0.4);
    return bench;
}

HoneAim stationsAt(const std::vector<double>& where) {
    HoneAim aim;
    for (const double axis : {1.0, -1.0})
        for (const double depth : where)
            aim.stations.push_back({depth, axis});
    aim.readable = aim.stations;
    return aim;
}

// A bore whose wall stands at level + slope per 100 mm, read there.
HoneLearner read(const Bench& bench, double level_um, double slope_um,
                 const std::vector<double>& where = depths) {
    HoneLearner learner(bench, 1);
    std::vector<BoreReading> readings;
    for (const double axis : {1.0, -1.0})
        for (const double depth : where)
            readings.push_back({{depth, axis}, level_um + slope_um * depth / 100, 1.0});
    learner.survey(0, readings, 0.3);
    return learner;
}

double strokesOf(const SetUp& setUp) {
    double sum = 0;
    for (const Stroking& window : setUp.windows)
        sum += window.strokes + window.held;
    return sum;
}

TEST(Planning, ABoreNeverReadIsNotPlanned) {
    const HoneLearner learner(threeStones(), 1);
    const HonePlan plan = planBore(learner, 0, stationsAt(depths), {});
    EXPECT_EQ(plan.outcome, HoneOutcome::notMeasured);
    EXPECT_TRUE(plan.setUps.empty());
}

TEST(Planning, AWornBoreGetsWholeStrokesWithinTheReachOfTheStone) {
    const Bench bench = threeStones();
    const HonePlan plan = planBore(read(bench, -150, -40), 0, stationsAt(depths), {});
    ASSERT_EQ(plan.outcome, HoneOutcome::next);
    ASSERT_FALSE(plan.setUps.empty());
    const borewright::SetUp& first = plan.setUps.front();
    EXPECT_GE(strokesOf(first), 1);
    EXPECT_LE(first.windows.size(), 3U);
    const StoneOnGrid& stone = bench.stones[first.stone].grid;
    for (const Stroking& window : first.windows) {
        EXPECT_EQ(window.strokes, std::round(window.strokes)) << "strokes are counted";
        EXPECT_LE(window.from_mm, window.to_mm);
        EXPECT_GE(window.from_mm, stone.highest_mm - 1e-9) << "stands too far out";
        EXPECT_LE(window.to_mm, stone.lowest_mm + 1e-9) << "through the closed end";
    }
    EXPECT_LE(plan.foreseen.front().chanceOver, 0.01);
    EXPECT_FALSE(plan.measure.empty()) << "what is not measured is not learned";
}

// The closed end is far behind, so that the short stone is going to be needed.
// Whoever is told so has a hone in his hands: but for short strokes against the stop, which he
// feels, a stroke goes somewhere.
TEST(Planning, AStrokeAwayFromTheStopIsOneThatAHandCanDrive) {
    for (const double slope_um : {-60.0, -30.0, 20.0}) {
        const auto bench = threeStones();
        const HonePlan plan = planBore(read(bench, -150, slope_um), 0, stationsAt(depths), {});
        ASSERT_EQ(plan.outcome, HoneOutcome::next) << "slope " << slope_um;
        for (const auto& setUp : plan.setUps)
            for (const Stroking& window : setUp.windows) {
                const double lowest_mm = bench.stones[setUp.stone].grid.lowest_mm;
                if (window.to_mm >= lowest_mm - 1) continue;
                EXPECT_GE(window.to_mm - window.from_mm, 3) // 4 mm, its ends rounded
                    << "slope " << slope_um << ": " << window.from_mm << "–" << window.to_mm;
            }
    }
}

TEST(Planning, AStoneThatWillBeNeededIsTriedWhileThereIsFarToGo) {
    Bench bench = threeStones();
    bench.stones[1].logRateDoubt = 1;
    const HonePlan plan = planBore(read(bench, -150, -60), 0, stationsAt(depths), {});
    ASSERT_EQ(plan.outcome, HoneOutcome::next);
    EXPECT_EQ(plan.setUps.front().stone, 1U) << "the short stone's rate is not known";
    EXPECT_LE(strokesOf(plan.setUps.front()), 20) << "its first pass is short";
}

// Full rough stones stop early where their stage says so; the short one may go on.
TEST(Planning, AFullRoughStoneStopsWhereItsStageSays) {
    const HoneLearner learner = read(threeStones(), -260, 20);
    HoneAim aim = stationsAt(depths);
    aim.fullStops_um = 110;
    const HonePlan plan = planBore(learner, 0, aim, {});
    ASSERT_EQ(plan.outcome, HoneOutcome::next);
    bool cut = false;
    for (std::size_t k = 0; k < plan.setUps.size(); ++k) {
        if (plan.setUps[k].stone != 0) continue;
        const Eigen::VectorXd& before = k > 0 ? plan.foreseen[k - 1].wall : plan.now.wall;
        for (Eigen::Index i = 0; i < before.size(); ++i) {
            const double taken = plan.foreseen[k].wall[i] - before[i];
            cut = cut || taken > 5;
            if (taken > 1) {
                EXPECT_LE(plan.foreseen[k].wall[i], -aim.fullStops_um + 2)
                    << "µm beyond the size, in cell " << i << " after set-up " << k;
            }
        }
    }
    EXPECT_TRUE(cut) << "a stone that is never used stops anywhere";
}

// With no short one to go on, the stage cannot be kept.
TEST(Planning, AFullRoughStoneGoesOnWhereNoShortOneIsThere) {
    const HoneLearner learner = read(threeStones(), -150, 20);
    HoneAim aim = stationsAt(depths);
    aim.fullStops_um = 110;
    PlanOptions options;
    options.mayUse = {true, false, true};
    const HonePlan plan = planBore(learner, 0, aim, options);
    ASSERT_EQ(plan.outcome, HoneOutcome::next);
    EXPECT_GT(plan.foreseen.back().wall.maxCoeff(), -60) << "µm: it was left rough";
}

TEST(Planning, TheSameBeliefGivesTheSamePlan) {
    const HoneLearner learner = read(threeStones(), -120, 30);
    const HonePlan one = planBore(learner, 0, stationsAt(depths), {});
    const HonePlan other = planBore(learner, 0, stationsAt(depths), {});
    ASSERT_EQ(one.setUps.size(), other.setUps.size());
    EXPECT_EQ(one.cost_um, other.cost_um);
    for (std::size_t k = 0; k < one.setUps.size(); ++k) {
        ASSERT_EQ(one.setUps[k].windows.size(), other.setUps[k].windows.size());
        for (std::size_t w = 0; w < one.setUps[k].windows.size(); ++w) {
            EXPECT_EQ(one.setUps[k].windows[w].to_mm, other.setUps[k].windows[w].to_mm);
            EXPECT_EQ(one.setUps[k].windows[w].strokes, other.setUps[k].windows[w].strokes);
        }
    }
}

TEST(Planning, AStraightBoreAtItsSizeGetsStop) {
    HoneLearner learner = read(threeStones(), -0.5, 0);
    for (int again = 0; again < 2; ++again) { // sure of it
        std::vector<BoreReading> readings;
        for (const double depth : depths)
            for (const double axis : {1.0, -1.0})
                readings.push_back({{depth, axis}, -0.5, 0.5});
        learner.survey(0, readings, 0.2);
    }
    const HonePlan plan = planBore(learner, 0, stationsAt(depths), {});
    EXPECT_NE(plan.outcome, HoneOutcome::next) << "there is no stock left to take";
    EXPECT_TRUE(plan.setUps.empty());
}

TEST(Planning, FarToGoEveryStationIsReadAndMoreSetUpsAreToldThanPlanned) {
    const HonePlan far = planBore(read(threeStones(), -250, 20), 0, stationsAt(depths), {});
    ASSERT_EQ(far.outcome, HoneOutcome::next);
    EXPECT_EQ(far.measure.size(), 2 * depths.size()) << "a reading less costs a set-up more";
    EXPECT_GE(far.setUpsLeft, 6) << far.setUps.size() << " are planned";
    EXPECT_LE(far.setUpsLeft, 11);
    // Beyond fourteen the most telling are read.
    const std::vector<double> many{6, 15, 24, 33, 42, 51, 60, 69, 78, 91};
    const HonePlan some = planBore(read(threeStones(), -250, 20, many), 0, stationsAt(many), {});
    EXPECT_EQ(some.measure.size(), 14U);
}

TEST(Planning, ABoreOverItsLimitIsSaidToBe) {
    const HonePlan plan = planBore(read(threeStones(), 20, 0), 0, stationsAt(depths), {});
    EXPECT_EQ(plan.outcome, HoneOutcome::overAlready);
}

TEST(Planning, WithNoStoneAllowedThereIsNone) {
    PlanOptions none;
    none.mayUse = {false, false, false};
    const HonePlan plan = planBore(read(threeStones(), -100, 0), 0, stationsAt(depths), none);
    EXPECT_EQ(plan.outcome, HoneOutcome::noStone);
}

TEST(Planning, AThroughBoreNeedsNoShortStone) {
    const Bench through = threeStones(125); // a third of the full stone may stand out below
    const HonePlan plan = planBore(read(through, -120, 0), 0, stationsAt(depths), {});
    ASSERT_EQ(plan.outcome, HoneOutcome::next);
    for (const borewright::SetUp& setUp : plan.setUps) {
        EXPECT_NE(setUp.stone, 1U) << "the short stone is for closed ends";
        for (const Stroking& window : setUp.windows)
            EXPECT_GE(window.to_mm - window.from_mm, 3) << "there is no stop to stroke against";
    }
}

TEST(Planning, TwoStationsMakeItMoreCautious) {
    const std::vector<double> two{23, 91};
    const HoneAim aim = stationsAt(two);
    const HoneLearner sparse = read(threeStones(), -40, 0, two);
    const HoneLearner full = read(threeStones(), -40, 0);
    const Foreseen little = asItStands(sparse, 0, aim), much = asItStands(full, 0, aim);
    EXPECT_GT(little.deviation.maxCoeff(), much.deviation.maxCoeff())
        << "what lies between two stations is not known";
    const HonePlan plan = planBore(sparse, 0, aim, {});
    if (plan.outcome == HoneOutcome::next) {
        EXPECT_LE(plan.foreseen.front().chanceOver, 0.01);
    }
}

TEST(Planning, MoreStrokesNeverLeaveMoreStock) {
    const HoneLearner learner = read(threeStones(), -150, -30);
    const HoneAim aim = stationsAt(depths);
    Foreseen before = asItStands(learner, 0, aim);
    for (const double strokes : {5.0, 10.0, 20.0, 40.0}) {
        const Foreseen after = foresee(learner, 0, aim, {0, {{60, 98, strokes, 0}}});
        EXPECT_GE((after.wall - before.wall).minCoeff(), -1e-6) << strokes << " strokes";
        before = after;
    }
}

TEST(Planning, ASetUpThatWouldGoOverIsForeseenToDoSo) {
    const HoneLearner learner = read(threeStones(), -10, 0);
    const Foreseen after = foresee(learner, 0, stationsAt(depths), {0, {{60, 98, 60, 0}}});
    EXPECT_GT(after.chanceOver, 0.9);
}

TEST(Planning, GivingUpReturnsWhatWasFound) {
    const HonePlan plan = planBore(read(threeStones(), -150, -40), 0, stationsAt(depths), {},
                                   nullptr, [](double) { return false; });
    EXPECT_EQ(plan.outcome, HoneOutcome::next);
    EXPECT_LE(plan.foreseen.front().chanceOver, 0.01);
}

} // namespace
} // namespace borewright
