// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/clearance.h"

#include "tests/support/fitted.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// Unworn land above; smallest of what the piston runs in is 3.4400, across, at 3.00.
MeasuredBore finished() {
    return boreRead(4, {{"0.20", {"3.4200", "3.4200"}, Zone::ridgeLand},
                        {"0.75", {"3.4405", "3.4404"}},
                        {"1.60", {"3.4403"}, Zone::portBand},
                        {"3.00", {"3.4402", "3.4400"}},
                        {"4.00", {"3.4401", "3.4401"}, Zone::skirtOnly}});
}

Clearance between(const MeasuredBore& bore, const Piston& piston, const FitLimits& limits = {}) {
    const auto clearance = clearanceOf(bore, piston, limits);
    EXPECT_TRUE(clearance) << clearance.error().message();
    return clearance.value_or(Clearance{});
}

std::string refusalOf(const MeasuredBore& bore, const Piston& piston) {
    const auto clearance = clearanceOf(bore, piston, {});
    return clearance ? "not refused" : clearance.error().message();
}

TEST(Clearance, IsLeastWhereTheBoreIsSmallestInItsTravel) {
    const Clearance clearance = between(finished(), pistonOf("3.4358"));
    EXPECT_EQ(clearance.value, thou("4.2"));
    EXPECT_EQ(clearance.depth, in("3"));
    EXPECT_EQ(clearance.axis, "B");
    EXPECT_EQ(clearance.verdict, Verdict::notJudged) << "no limits are given";
    EXPECT_EQ(clearance.why, "");
    EXPECT_FALSE(clearance.u) << "the readings' doubt is not known";
}

TEST(Clearance, ByDepthLeavesTheRidgeLandOut) {
    const Clearance clearance = between(finished(), pistonOf("3.4358"));
    ASSERT_EQ(clearance.at.size(), 7U) << "ports and skirt belong to it";
    EXPECT_EQ(clearance.at.front().depth, in("0.75"));
    EXPECT_EQ(clearance.at.front().value, thou("4.7"));
    EXPECT_EQ(clearance.at[2].value, thou("4.5")) << "the wall between ports";
    for (const ClearanceAt& at : clearance.at)
        EXPECT_GE(at.value, clearance.value);
}

TEST(Clearance, TheSkirtsPartOfTheBoreCounts) {
    MeasuredBore bore = finished();
    bore.at.back().diameter = in("3.4390");
    EXPECT_EQ(between(bore, pistonOf("3.4358")).value, thou("3.2"));
}

TEST(Clearance, TiesGoToTheShallower) {
    const MeasuredBore bore = boreRead(1, {{"1", {"3.4400", "3.4400"}}, {"2", {"3.4400"}}});
    EXPECT_EQ(between(bore, pistonOf("3.4358")).depth, in("1"));
    EXPECT_EQ(between(bore, pistonOf("3.4358")).axis, "A");
}

TEST(Clearance, InchesAndMillimetresMeetExactly) {
    Piston piston = pistonOf("3.4358");
    piston.size = typedMm("87.26932"); // 3.4358 in
    EXPECT_EQ(between(finished(), piston).value, thou("4.2"));
}

TEST(Clearance, EachLimitIsJudgedAndNamed) {
    const auto judged = [](const char* size_in, const FitLimits& limits) {
        return between(finished(), pistonOf(size_in), limits);
    };
    const FitLimits limits = limitsOf("0.0038", "0.0048");
    EXPECT_EQ(judged("3.4358", limits).verdict, Verdict::within);
    EXPECT_EQ(judged("3.4352", limits).verdict, Verdict::within) << "4.8 is on the limit";
    EXPECT_EQ(judged("3.4362", limits).verdict, Verdict::within) << "3.8 is on the limit";
    EXPECT_EQ(judged("3.4351", limits).verdict, Verdict::outside);
    EXPECT_EQ(judged("3.4351", limits).why, "too loose");
    EXPECT_EQ(judged("3.4363", limits).verdict, Verdict::outside);
    EXPECT_EQ(judged("3.4363", limits).why, "too tight");
    EXPECT_EQ(judged("3.4300", limitsOf("0.0038", "")).verdict, Verdict::within);
    EXPECT_EQ(judged("3.4399", limitsOf("", "0.0048")).verdict, Verdict::within);
}

TEST(Clearance, APistonLargerThanTheBoreDoesNotGoIn) {
    const Clearance large = between(finished(), pistonOf("3.4412"), limitsOf("0.0038", "0.0048"));
    EXPECT_EQ(large.value, thou("-1.2"));
    EXPECT_EQ(large.verdict, Verdict::outside);
    EXPECT_EQ(large.why, "does not go in: larger than the bore by 1.2 thou");
    const Clearance unlimited = between(finished(), pistonOf("3.4400"), limitsOf("", "0.0048"));
    EXPECT_EQ(unlimited.verdict, Verdict::outside) << "an upper limit alone must not pass it";
    EXPECT_EQ(unlimited.why, "does not go in: as large as the bore");
}

TEST(Clearance, TheUnitOfTheWordsIsThePistons) {
    Piston piston = pistonOf("3.4358");
    piston.size = typedMm("87.476"); // 3.4400 in is 87.376
    EXPECT_EQ(between(finished(), piston).why, "does not go in: larger than the bore by 100 µm");
}

TEST(Clearance, WordsAreInTheUnitAskedFor) {
    const auto clearance = clearanceOf(finished(), pistonOf("3.4410"), {}, DisplayUnits::metric());
    ASSERT_TRUE(clearance);
    EXPECT_EQ(clearance->why, "does not go in: larger than the bore by 25 µm");
}

TEST(Clearance, BothDoubtsCountAndGuardTheLimits) {
    const MeasuredBore bore = withDoubt(finished(), "0.12", "0.08");
    Piston piston = pistonOf("3.4358");
    piston.doubt = typedThou("0.1"); // ±, 95 %: u 0.05; √(0.12² + 0.05²) = 0.13, w = 0.2145
    const Clearance both = between(bore, piston, limitsOf("0.0040", "0.0048"));
    ASSERT_TRUE(both.u);
    EXPECT_NEAR(both.u->in(Unit::thou), 0.13, 1e-6);
    EXPECT_TRUE(both.pistonDoubtKnown);
    EXPECT_EQ(both.verdict, Verdict::tooCloseToCall) << "4.2 lies 0.2 over 4.0, w is 0.2145";
    EXPECT_EQ(between(bore, piston, limitsOf("0.00398", "0.0048")).verdict, Verdict::within);
    EXPECT_EQ(between(bore, piston, limitsOf("0.00442", "")).verdict, Verdict::outside);
    FitLimits plain = limitsOf("0.0040", "0.0048");
    plain.decision.kind = DecisionRule::Kind::plain;
    EXPECT_EQ(between(bore, piston, plain).verdict, Verdict::within);
}

TEST(Clearance, APistonOfUnknownDoubtLeavesTheBoresAlone) {
    const Clearance clearance = between(withDoubt(finished(), "0.12", "0.08"), pistonOf("3.4358"));
    EXPECT_EQ(clearance.u, thou("0.12"));
    EXPECT_FALSE(clearance.pistonDoubtKnown);
}

TEST(Clearance, ABoreOfUnknownDoubtIsNotGivenThePistons) {
    Piston piston = pistonOf("3.4358");
    piston.doubt = typedThou("0.1");
    const Clearance clearance = between(finished(), piston, limitsOf("0.0042", "0.0048"));
    EXPECT_FALSE(clearance.u);
    EXPECT_TRUE(clearance.pistonDoubtKnown);
    EXPECT_EQ(clearance.verdict, Verdict::within) << "no guard where the doubt is not known";
}

TEST(Clearance, WhatWasNotAllReadIsNeverWithin) {
    MeasuredBore bore = finished();
    bore.complete = false;
    const FitLimits limits = limitsOf("0.0038", "0.0048");
    EXPECT_EQ(between(bore, pistonOf("3.4358"), limits).verdict, Verdict::notMeasured);
    EXPECT_EQ(between(bore, pistonOf("3.4370"), limits).verdict, Verdict::outside)
        << "too tight stays so";
}

TEST(PistonSizes, AWarmPistonIsBroughtTo20) {
    Piston piston = pistonOf("3.4358");
    piston.temperature = *readTemperature("30 C", Scale::celsius);
    const auto size = sizeOf(piston);
    ASSERT_TRUE(size);
    EXPECT_TRUE(size->corrected);
    // The steel micrometer beside it has grown by 115e-6.
    EXPECT_NEAR((in("3.4358") - size->at20).in(Unit::thou), 3435.8 * 100e-6 / 1.000215, 1e-6);
    piston.expansion = 18.5; // a hypereutectic alloy, as the user gave it
    EXPECT_NEAR((in("3.4358") - sizeOf(piston)->at20).in(Unit::thou), 3435.8 * 70e-6 / 1.000185,
                1e-6);
    piston.expansion = 11.5;
    EXPECT_EQ(sizeOf(piston)->at20, in("3.4358")) << "a piston that grows as its micrometer does";
    piston.expansion = 18.5;
    piston.temperature = *readTemperature("68 F", Scale::celsius);
    EXPECT_EQ(sizeOf(piston)->at20, in("3.4358")) << "68 °F is 20 °C";
}

// Taking the micrometer as if it were at 20 °C made the piston 0.4 thou too small at 30 °C, and the
// clearance as much too large.
TEST(PistonSizes, TheMicrometerIsAsWarmAsThePiston) {
    Piston cold = pistonOf("3.4358");
    Piston warm = cold;
    warm.temperature = *readTemperature("30 C", Scale::celsius);
    // At 30 °C the piston has grown to 3436.5387 thou, and a steel micrometer reads 3436.1435.
    warm.size = typedThou("3436.1435");
    EXPECT_NEAR(between(finished(), warm).value.in(Unit::thou),
                between(finished(), cold).value.in(Unit::thou), 1e-4);
}

TEST(PistonSizes, NoTemperatureNoCorrection) {
    const auto size = sizeOf(pistonOf("3.4358"));
    ASSERT_TRUE(size);
    EXPECT_FALSE(size->corrected);
    EXPECT_EQ(size->at20, in("3.4358"));
    EXPECT_FALSE(size->u);
}

TEST(PistonSizes, WhatIsMissingIsSaidNeverGuessed) {
    Piston noSize = pistonOf("3.4358");
    noSize.size.reset();
    EXPECT_EQ(refusalOf(finished(), noSize), "piston 1: its size is not given");
    Piston noHeight = pistonOf("3.4358");
    noHeight.height.reset();
    EXPECT_NE(refusalOf(finished(), noHeight).find("the height it was measured at is not given"),
              std::string::npos)
        << refusalOf(finished(), noHeight);
    EXPECT_EQ(refusalOf(finished(), pistonOf("0")), "piston 1: its size must be more than nothing");
    Piston unlabelled = noSize;
    unlabelled.label.clear();
    EXPECT_EQ(refusalOf(finished(), unlabelled), "piston p1: its size is not given");
    Piston odd = pistonOf("3.4358");
    odd.temperature = *readTemperature("30 C", Scale::celsius);
    odd.expansion = -1e9;
    EXPECT_EQ(refusalOf(finished(), odd), "piston 1: no metal expands as is given for it");
}

TEST(Clearance, ABoreWithNothingReadInItsTravelIsRefused) {
    EXPECT_EQ(refusalOf(boreRead(3, {}), pistonOf("3.4358")),
              "bore 3: nothing was read where the piston runs");
    const MeasuredBore land = boreRead(3, {{"0.2", {"3.44", "3.44"}, Zone::ridgeLand}});
    EXPECT_EQ(refusalOf(land, pistonOf("3.4358")),
              "bore 3: nothing was read where the piston runs");
}

TEST(Clearance, DoesNotDependOnTheOrderOfReadings) {
    MeasuredBore bore = finished();
    const Clearance straight = between(bore, pistonOf("3.4358"));
    std::ranges::reverse(bore.at);
    EXPECT_EQ(between(bore, pistonOf("3.4358")).value, straight.value);
    EXPECT_EQ(between(bore, pistonOf("3.4358")).depth, straight.depth);
}

// A thou more of bore is a thou more of clearance, a thou more of piston a thou less.
TEST(Clearance, FollowsBoreAndPistonThouForThou) {
    for (int k = -20; k <= 20; ++k) {
        const Length by = Length::whole(k, Unit::tenth);
        MeasuredBore bore = finished();
        for (MeasuredAt& at : bore.at)
            at.diameter += by;
        EXPECT_EQ(between(bore, pistonOf("3.4358")).value, thou("4.2") + by);
        Piston piston = pistonOf("3.4358");
        piston.size = typedFrom(in("3.4358") + by, Unit::inch);
        EXPECT_EQ(between(finished(), piston).value, thou("4.2") - by);
    }
}

TEST(HotClearance, StaysWhereNothingIsWarm) {
    EXPECT_EQ(hotClearance(thou("4.2"), in("3.44"), 16e-6, 0, 21e-6, 0), thou("4.2"));
    EXPECT_EQ(hotClearance(thou("4.2"), in("3.44"), 20e-6, 50, 20e-6, 50), thou("4.2"))
        << "both of one metal, both as warm";
}

} // namespace
} // namespace borewright
