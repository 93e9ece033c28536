// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/ring_gap.h"

#include "tests/support/fitted.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

const Length step = thou("2");

// Mean diameters 3.4400, 3.4402, 3.4406 down ring travel; the land and the skirt are no part of it.
MeasuredBore tapered(int number = 1) {
    return boreRead(number, {{"0.25", {"3.4200", "3.4200"}, Zone::ridgeLand},
                             {"1.00", {"3.4400", "3.4400"}},
                             {"2.00", {"3.4401", "3.4403"}},
                             {"3.00", {"3.4406", "3.4406"}},
                             {"4.00", {"3.4300", "3.4300"}, Zone::skirtOnly}});
}

RingGap gapIn(const MeasuredBore& bore, const MeasuredBore& measured, const Ring& ring,
              const FitLimits& limits = {}) {
    const auto gap = ringGapOf(bore, measured, ring, limits, step);
    EXPECT_TRUE(gap) << gap.error().message();
    return gap.value_or(RingGap{});
}
RingGap gapOf(const char* gap_in, const FitLimits& limits = {}) {
    return gapIn(tapered(), tapered(), ringOf(gap_in, 1, "1"), limits);
}

std::string refusalOf(const Ring& ring, const MeasuredBore& bore = tapered(),
                      const MeasuredBore& measured = tapered()) {
    const auto gap = ringGapOf(bore, measured, ring, {}, step);
    return gap ? "not refused" : gap.error().message();
}

Length pi(Length diameter) {
    return Length::nearest(std::numbers::pi * diameter.in(Unit::millimetre), Unit::millimetre);
}

TEST(RingGaps, GrowByPiTimesTheDiameter) {
    const RingGap gap = gapOf("0.012");
    ASSERT_EQ(gap.at.size(), 3U) << "ring travel alone";
    EXPECT_EQ(gap.at[0].gap, in("0.012")) << "as measured, where it was measured";
    EXPECT_EQ(gap.at[1].gap, in("0.012") + pi(thou("0.2"))) << "the mean over the axes";
    EXPECT_EQ(gap.at[2].gap, in("0.012") + pi(thou("0.6")));
    EXPECT_EQ(gap.smallest.depth, in("1"));
    EXPECT_EQ(gap.largest.depth, in("3"));
    EXPECT_EQ(gap.why, "");
    EXPECT_FALSE(gap.filing) << "nothing is aimed at";
    EXPECT_EQ(gap.smallestVerdict, Verdict::notJudged);
}

TEST(RingGaps, MeasuredInTheUnwornSkirtOrBetweenLevels) {
    const RingGap skirt = gapIn(tapered(), tapered(), ringOf("0.002", 1, "4"));
    EXPECT_EQ(skirt.smallest.gap, in("0.002") + pi(thou("10")));
    const RingGap half = gapIn(tapered(), tapered(), ringOf("0.012", 1, "2.5")); // 3.4404 there
    EXPECT_EQ(half.smallest.gap, in("0.012") - pi(thou("0.4")));
}

TEST(RingGaps, MeasuredInAnotherBore) {
    const MeasuredBore other = boreRead(2, {{"1", {"3.4395", "3.4395"}}, {"3", {"3.4395"}}});
    const RingGap gap = gapIn(tapered(), other, ringOf("0.012", 2, "1"));
    EXPECT_EQ(gap.smallest.gap, in("0.012") + pi(thou("0.5")));
    EXPECT_EQ(gap.largest.gap, in("0.012") + pi(thou("1.1")));
}

TEST(RingGaps, AMissingReadingIsBridgedAlongItsAxis) {
    // B is 1 thou larger all along; its reading at 2.00 was left out.
    const MeasuredBore oval = boreRead(
        1, {{"1", {"3.4400", "3.4410"}}, {"2", {"3.4400", ""}}, {"3", {"3.4400", "3.4410"}}});
    const RingGap gap = gapIn(oval, oval, ringOf("0.012", 1, "1"));
    EXPECT_EQ(gap.at[1].gap, in("0.012")) << "the bore is no smaller there";
}

TEST(RingGaps, BetweenPortsTheWallsThatAreLeftCount) {
    const MeasuredBore ported = boreRead(1, {{"1", {"3.4400", "3.4404"}},
                                             {"2", {"3.4410"}, Zone::portBand},
                                             {"3", {"3.4403", "3.4403"}}});
    const RingGap gap = gapIn(ported, ported, ringOf("0.012", 1, "1")); // 3.4402 there
    EXPECT_EQ(gap.at[1].gap, in("0.012") + pi(thou("0.8")));
    ASSERT_TRUE(gap.abovePorts);
    ASSERT_TRUE(gap.belowPorts);
    EXPECT_EQ(gap.abovePorts->depth, in("1"));
    EXPECT_EQ(gap.belowPorts->gap, in("0.012") + pi(thou("0.1")));
    EXPECT_EQ(gapIn(ported, ported, ringOf("0.012", 1, "2")).at[1].gap, in("0.012"))
        << "measured between the ports, it is that there";
}

TEST(RingGaps, PortsOfTheMapCountWhereNothingWasReadInThem) {
    MeasuredBore ported = boreRead(
        1, {{"1", {"3.4400"}}, {"1.8", {"3.4398"}}, {"2.6", {"3.4405"}}, {"3", {"3.4403"}}});
    EXPECT_FALSE(gapIn(ported, ported, ringOf("0.012", 1, "1")).abovePorts) << "no ports";
    ported.ports = {{in("1.9"), in("2.1")}, {in("2.3"), in("2.5")}};
    const RingGap gap = gapIn(ported, ported, ringOf("0.012", 1, "1"));
    EXPECT_EQ(gap.abovePorts->depth, in("1.8"));
    EXPECT_EQ(gap.belowPorts->depth, in("3"));
    ported.ports = {{in("2.5"), in("3.5")}};
    EXPECT_FALSE(gapIn(ported, ported, ringOf("0.012", 1, "1")).belowPorts)
        << "nothing was read below";
}

TEST(RingGaps, AreJudgedSmallestByTheLowerLargestByTheUpperLimit) {
    // Gaps 12 … 13.885 thou.
    const RingGap good = gapOf("0.012", limitsOf("0.012", "0.0139", "0.012"));
    EXPECT_EQ(good.smallestVerdict, Verdict::within);
    EXPECT_EQ(good.largestVerdict, Verdict::within);
    const RingGap small = gapOf("0.012", limitsOf("0.0121", "0.020"));
    EXPECT_EQ(small.smallestVerdict, Verdict::outside);
    EXPECT_EQ(small.largestVerdict, Verdict::within);
    EXPECT_EQ(small.why, "the gap is too small at 1.00 in");
    const RingGap large = gapOf("0.012", limitsOf("0.010", "0.0138", "0.011"));
    EXPECT_EQ(large.largestVerdict, Verdict::outside);
    EXPECT_EQ(large.why, "the gap is too large at 3.00 in");
    EXPECT_FALSE(large.filing) << "the smallest is over the aim";
}

TEST(RingGaps, ABoreThatDiffersByMoreThanTheLimitsAllowIsNamed) {
    const RingGap gap = gapOf("0.012", limitsOf("0.012", "0.0135", "0.012"));
    EXPECT_NE(gap.why.find("the bore differs by more along its depth than the limits allow: the "
                           "gap by 1.9 thou, the limits by 1.5 thou"),
              std::string::npos)
        << gap.why;
}

TEST(RingGaps, ARingThatButtsSaysSo) {
    const MeasuredBore narrow = boreRead(1, {{"1", {"3.4400"}}, {"2", {"3.4390"}}});
    const RingGap gap = gapIn(narrow, narrow, ringOf("0.002", 1, "1"), limitsOf("", "0.02"));
    EXPECT_EQ(gap.smallest.gap, in("0.002") - pi(thou("1")));
    EXPECT_EQ(gap.smallestVerdict, Verdict::outside) << "an upper limit alone must not pass it";
    EXPECT_EQ(gap.why, "the ring butts at 2.00 in: 1.1 thou too long");
    const RingGap aimed = gapIn(narrow, narrow, ringOf("0.002", 1, "1"), limitsOf("0.010", "0.02"));
    ASSERT_TRUE(aimed.filing) << "filing mends it";
    EXPECT_EQ(aimed.smallest.gap + aimed.filing->total, in("0.015"));
}

TEST(RingGaps, WhatWasNotAllReadIsNeverWithin) {
    MeasuredBore bore = tapered();
    bore.complete = false;
    const RingGap gap =
        gapIn(bore, bore, ringOf("0.012", 1, "1"), limitsOf("0.010", "0.020", "0.011"));
    EXPECT_EQ(gap.smallestVerdict, Verdict::notMeasured);
    EXPECT_EQ(gap.largestVerdict, Verdict::notMeasured);
    EXPECT_EQ(gap.why, "not all of the bore was read");
}

TEST(RingGaps, WhatIsMissingIsSaidNeverGuessed) {
    const auto without = [](auto&& drop) {
        Ring ring = ringOf("0.012", 1, "1");
        drop(ring);
        return refusalOf(ring);
    };
    EXPECT_EQ(without([](Ring& ring) { ring.gap.reset(); }), "ring top 1: its gap is not given");
    EXPECT_EQ(without([](Ring& ring) { ring.measuredIn.reset(); }),
              "ring top 1: the bore it was measured in is not given");
    EXPECT_EQ(without([](Ring& ring) { ring.measuredAt.reset(); }),
              "ring top 1: the depth it was measured at is not given");
    EXPECT_EQ(without([](Ring& ring) { ring.gap = typedIn("0"); }),
              "ring top 1: it butts where it was measured: file it until a gap can be measured");
    EXPECT_EQ(without([](Ring& ring) { ring.gap.reset(), ring.label.clear(); }),
              "ring g1: its gap is not given");
}

TEST(RingGaps, APlaceBeyondWhatWasReadIsRefused) {
    EXPECT_EQ(refusalOf(ringOf("0.012", 1, "0.2")),
              "ring top 1: it was measured at 0.20 in, but bore 1 was read from 0.25 in to 4.00 in "
              "only");
    EXPECT_NE(refusalOf(ringOf("0.012", 1, "4.1")), "not refused");
    EXPECT_EQ(refusalOf(ringOf("0.012", 1, "4.0")), "not refused") << "at the last reading it is";
    EXPECT_EQ(refusalOf(ringOf("0.012", 2, "1"), tapered(), boreRead(2, {})),
              "ring top 1: bore 2, in which it was measured, was not read");
}

TEST(RingGaps, ABoreWithNothingReadInTheRingsTravelIsRefused) {
    EXPECT_EQ(refusalOf(ringOf("0.012", 1, "1"), boreRead(3, {})),
              "bore 3: nothing was read in the ring's travel");
    const MeasuredBore land = boreRead(3, {{"0.2", {"3.44", "3.44"}, Zone::ridgeLand}});
    EXPECT_EQ(refusalOf(ringOf("0.012", 1, "1"), land),
              "bore 3: nothing was read in the ring's travel");
}

TEST(RingGaps, InchesAndMillimetresMeetExactly) {
    Ring ring = ringOf("0.012", 1, "1");
    ring.gap = typedMm("0.3048");
    ring.measuredAt = typedMm("25.4");
    const RingGap gap = gapIn(tapered(), tapered(), ring);
    EXPECT_EQ(gap.smallest.gap, in("0.012"));
    EXPECT_EQ(gap.largest.gap, gapOf("0.012").largest.gap);
}

TEST(RingGaps, DoNotDependOnTheOrderOfReadings) {
    MeasuredBore turned = tapered();
    std::ranges::reverse(turned.at);
    const RingGap gap = gapIn(turned, turned, ringOf("0.012", 1, "1"));
    const RingGap straight = gapOf("0.012");
    ASSERT_EQ(gap.at.size(), straight.at.size());
    for (std::size_t i = 0; i < gap.at.size(); ++i) {
        EXPECT_EQ(gap.at[i].depth, straight.at[i].depth);
        EXPECT_EQ(gap.at[i].gap, straight.at[i].gap);
    }
}

// u of ΔD with two axes: own/√2 at each end; shared cancels within a survey. √(2·0.1²/2) = 0.1
// thou.
TEST(RingGapDoubt, IsTheRingsAndPiTimesTheReadingsOwn) {
    const MeasuredBore bore = withDoubt(tapered(), "0.3", "0.1");
    const MeasuredBore other = withDoubt(tapered(2), "0.3", "0.1");
    Ring ring = ringOf("0.012", 2, "1");
    const RingGap readings = gapIn(bore, other, ring);
    ASSERT_TRUE(readings.u);
    EXPECT_NEAR(readings.u->in(Unit::thou), std::numbers::pi * 0.1, 1e-6);
    EXPECT_FALSE(readings.ringDoubtKnown);
    ring.doubt = typedThou("0.8"); // u 0.4
    EXPECT_NEAR(gapIn(bore, other, ring).u->in(Unit::thou), std::hypot(0.4, std::numbers::pi * 0.1),
                1e-6);
    EXPECT_TRUE(gapIn(bore, other, ring).ringDoubtKnown);
}

TEST(RingGapDoubt, WhereItWasMeasuredItIsTheRingsAlone) {
    const MeasuredBore bore = withDoubt(tapered(), "0.3", "0.1");
    Ring ring = ringOf("0.012", 1, "1");
    EXPECT_FALSE(gapIn(bore, bore, ring).u);
    ring.doubt = typedThou("0.8");
    EXPECT_EQ(gapIn(bore, bore, ring).u, thou("0.4"));
    EXPECT_EQ(gapIn(tapered(), tapered(), ring).u, thou("0.4")) << "no reading comes into it";
}

TEST(RingGapDoubt, OfTwoSurveysNothingCancels) {
    const MeasuredBore bore = withDoubt(tapered(), "0.3", "0.1");
    MeasuredBore earlier = bore;
    earlier.survey = "s0";
    const RingGap gap = gapIn(bore, earlier, ringOf("0.012", 1, "1"));
    ASSERT_TRUE(gap.u);
    EXPECT_NEAR(gap.u->in(Unit::thou), std::numbers::pi * 0.3 * std::numbers::sqrt2, 1e-6);
}

TEST(RingGapDoubt, NotKnownForOneBoreIsNotKnown) {
    Ring ring = ringOf("0.012", 2, "1");
    ring.doubt = typedThou("0.8");
    EXPECT_FALSE(gapIn(withDoubt(tapered(), "0.3", "0.1"), tapered(2), ring).u);
    EXPECT_FALSE(gapIn(tapered(), withDoubt(tapered(2), "0.3", "0.1"), ring).u);
}

TEST(RingGapDoubt, GuardsBothLimits) {
    MeasuredBore bore = withDoubt(tapered(), "0.3", "0.1");
    Ring ring = ringOf("0.012", 1, "1");
    ring.doubt = typedThou("0.2"); // smallest: u 0.1, w 0.165; largest: u √(0.1² + (0.1π)²) = 0.330
    const RingGap close = gapIn(bore, bore, ring, limitsOf("0.0119", "0.0144", "0.0119"));
    EXPECT_EQ(close.smallestVerdict, Verdict::tooCloseToCall);
    EXPECT_EQ(close.largestVerdict, Verdict::tooCloseToCall) << "13.885 + 0.544 is over 14.4";
    const RingGap clear = gapIn(bore, bore, ring, limitsOf("0.0118", "0.0145", "0.0118"));
    EXPECT_EQ(clear.smallestVerdict, Verdict::within);
    EXPECT_EQ(clear.largestVerdict, Verdict::within);
}

} // namespace
} // namespace borewright
