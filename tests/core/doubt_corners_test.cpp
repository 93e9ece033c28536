// SPDX-License-Identifier: GPL-3.0-or-later
// Corners in which a doubt was once stated too well, or a correction taken off twice.
#include "core/results/results.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

bool warns(const Workbook& workbook, const std::string& survey, const std::string& part) {
    const Results results = compute(workbook, DisplayUnits::inch());
    return std::ranges::any_of(
        findResult(results, survey)->doubts.warnings,
        [&](const std::string& warning) { return warning.find(part) != std::string::npos; });
}

TEST(DoubtCorners, TimesThatRunBackwardsAreSaid) {
    Workbook workbook = inchBlock(1);
    const std::string id = addSurvey(workbook, SurveyKind::asFound, "found");
    typeShape(workbook, id, 1, [](double, const std::string&) { return 1.0; });
    SurveyHeader& header = findSurvey(workbook, id)->header;
    EXPECT_FALSE(warns(workbook, id, "backwards"));
    Timestamp early = header.time;
    early.secondsSinceEpoch -= 86400;
    header.zeroChecks = {{typedThou("0.1"), early, {}}};
    EXPECT_TRUE(warns(workbook, id, "backwards"));
}

// A knock accepted takes the shift off the readings; nothing takes it off again.
TEST(DoubtCorners, AnAcceptedKnockIsTakenOffOnce) {
    Workbook workbook = demo::rushmere();
    const auto suspicions = findSlips(workbook, *findSurvey(workbook, "s2"));
    ASSERT_EQ(suspicions.size(), 1U);
    ASSERT_EQ(suspicions[0].stories.front().slip, Slip::gaugeKnocked);
    ASSERT_TRUE(
        borewright::apply(workbook, acceptStory(workbook, "s2", suspicions[0].stories.front(),
                                                findSurvey(workbook, "s2")->header.time)));
    const Results results = compute(workbook, DisplayUnits::metric());
    const BoreResult* bore = findBoreResult(*findResult(results, "s2"), 3);
    // Typed 54 at 8 mm on A; less 6 is 48 to go.
    EXPECT_EQ(bore->stations.front().toGo, um("48"));
    EXPECT_TRUE(findResult(results, "s2")->suspicions.empty());
}

TEST(DoubtCorners, ARepeatabilityFromTwoReadingsWidensTheBandAsTheTrialsDo) {
    FigureDoubt doubt;
    doubt.u_um = 1;
    doubt.freedom = 20; // what Welch and Satterthwaite make of it
    doubt.below_um = doubt.above_um = 5;
    EXPECT_GT(tailWidening(doubt), 2) << "the trials hold 5 µm, Student's t 2.1";
    EXPECT_GT(guardOf(doubt, {}).within, um("3"));
    doubt.below_um = doubt.above_um = 1;
    EXPECT_EQ(tailWidening(doubt), 1);
}

TEST(DoubtCorners, AStraightBoreIsNoShapeForLackOfReadingsBehindTheNoise) {
    Workbook workbook = inchBlock(1);
    const std::string id = addSurvey(workbook, SurveyKind::asFound, "found");
    GaugeSetting& gauge = findSurvey(workbook, id)->header.gauge;
    gauge.gear = tenthDialAndRing();
    typeShape(workbook, id, 1, [](double depth, const std::string&) { return depth / 5; });
    const auto kind = [&] {
        return compute(workbook, DisplayUnits::inch()).surveys[0].bores[0].shape->kind;
    };
    EXPECT_EQ(kind(), ShapeKind::vee) << "0.6 thou at a noise known well";
    gauge.gear.repeatabilityFreedom = 1;
    EXPECT_EQ(kind(), ShapeKind::straight) << "two readings tell little of the noise";
}

TEST(DoubtCorners, RepeatsAreInTheHeadLine) {
    Workbook workbook = inchBlock(1);
    const std::string id = addSurvey(workbook, SurveyKind::asFound, "found");
    findSurvey(workbook, id)->header.gauge.gear = tenthDialAndRing();
    const auto flat = [](double, const std::string&) { return 1.0; };
    typeShape(workbook, id, 1, flat);
    const double one = compute(workbook, DisplayUnits::inch()).surveys[0].doubts.budget.own_um;
    typeShape(workbook, id, 1, flat);
    EXPECT_LT(compute(workbook, DisplayUnits::inch()).surveys[0].doubts.budget.own_um, 0.8 * one);
}

} // namespace
} // namespace borewright
