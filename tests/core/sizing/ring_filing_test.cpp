// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/ring_gap.h"

#include "core/statistics/random.h"
#include "tests/support/fitted.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <numeric>

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

Length sumOf(const Filing& filing) {
    return std::accumulate(filing.steps.begin(), filing.steps.end(), Length());
}

TEST(Filing, BringsTheSmallestToTheAimInSteps) {
    const RingGap gap = gapOf("0.007", limitsOf("0.010", "0.020", "0.012"));
    ASSERT_TRUE(gap.filing);
    EXPECT_EQ(gap.filing->total, thou("5"));
    EXPECT_EQ(gap.filing->steps, (std::vector{thou("2"), thou("2"), thou("1")}));
    EXPECT_FALSE(gap.filing->cutShort);
    EXPECT_FALSE(gapOf("0.012", limitsOf("0.010", "0.020", "0.012")).filing) << "at the aim";
    EXPECT_FALSE(gapOf("0.0121", limitsOf("0.010", "0.020", "0.012")).filing) << "over it";
}

// Filing every gap below the aim took metal off rings that were good.
TEST(Filing, LeavesAGapAloneThatIsSurelyWithinItsLowerLimit) {
    const FitLimits limits = limitsOf("0.010", "0.020", "0.012");
    EXPECT_FALSE(gapOf("0.0105", limits).filing) << "below the aim, but good";
    EXPECT_FALSE(gapOf("0.010", limits).filing) << "on its limit, and nothing in doubt";
    EXPECT_EQ(gapOf("0.0099", limits).filing->total, thou("2.1")) << "too small: to the aim";
    Ring ring = ringOf("0.0101", 1, "1");
    ring.doubt = typedThou("0.2"); // w = 0.165: 0.1 over is not surely within
    EXPECT_EQ(gapIn(tapered(), tapered(), ring, limits).filing->total, thou("1.9"));
    // An aim nearer to the limit than the doubt is not enough: 10.165 is.
    EXPECT_EQ(gapIn(tapered(), tapered(), ring, limitsOf("0.010", "", "0.01012")).filing->total,
              thou("0.065"));
}

TEST(Filing, AimsHalfWayBetweenLimitsElseAtTheLowerAndItsGuard) {
    EXPECT_EQ(gapOf("0.007", limitsOf("0.010", "0.020")).filing->total, thou("8"));
    EXPECT_EQ(gapOf("0.007", limitsOf("0.010", "")).filing->total, thou("3"));
    EXPECT_FALSE(gapOf("0.007", limitsOf("", "0.020")).filing) << "nothing to aim at";
    Ring ring = ringOf("0.007", 1, "1");
    ring.doubt = typedThou("0.2"); // w = 0.165
    EXPECT_EQ(gapIn(tapered(), tapered(), ring, limitsOf("0.010", "")).filing->total,
              thou("3.165"));
}

TEST(Filing, IsCutShortBeforeTheLargestPassesItsLimit) {
    // 7 … 8.885 thou, largest allowed 11: 2.115 may come off, though 4 are wanted.
    const RingGap gap = gapOf("0.007", limitsOf("0.0105", "0.011", "0.011"));
    ASSERT_TRUE(gap.filing);
    EXPECT_TRUE(gap.filing->cutShort);
    EXPECT_EQ(gap.filing->total, thou("2.1")) << "in whole tenths, as it is shown";
    EXPECT_NE(gap.why.find("only 2.1 thou may be filed off, as the gap is at its upper limit at "
                           "3.00 in then"),
              std::string::npos)
        << gap.why;
    const RingGap none = gapOf("0.007", limitsOf("0.0075", "0.0088", "0.008"));
    EXPECT_FALSE(none.filing);
    EXPECT_NE(none.why.find("nothing may be filed off, as there is no room left at 3.00 in"),
              std::string::npos)
        << none.why;
}

// "File 2.0 thou in steps of 2.0, 0.0."
TEST(Filing, AStepThatWouldShowAsNothingIsFoldedIntoTheOneBefore) {
    const auto steps = [](const char* gap_in) {
        const RingGap gap = gapOf(gap_in, limitsOf("0.010", ""));
        EXPECT_EQ(sumOf(*gap.filing), gap.filing->total) << "exact";
        return gap.filing->steps;
    };
    EXPECT_EQ(steps("0.00799997"), std::vector{thou("2.00003")});
    EXPECT_EQ(steps("0.00595"), (std::vector{thou("2"), thou("2.05")}));
    EXPECT_EQ(steps("0.00594"), (std::vector{thou("2"), thou("2"), thou("0.06")})) << "shows 0.1";
    EXPECT_EQ(steps("0.00999"), std::vector{thou("0.01")}) << "there is none before";
    // In micrometres those 0.05 thou do show, as 1.
    const auto metric = ringGapOf(tapered(), tapered(), ringOf("0.00795", 1, "1"),
                                  limitsOf("0.010", ""), step, DisplayUnits::metric());
    EXPECT_EQ(metric->filing->steps, (std::vector{thou("2"), thou("0.05")}));
}

// A metric book said "too small at 3.75 in" of a ring whose gap was typed in inches.
TEST(Filing, WordsAreInTheUnitAskedFor) {
    const FitLimits limits = limitsOf("0.0105", "0.011", "0.011");
    const auto gap = ringGapOf(tapered(), tapered(), ringOf("0.007", 1, "1"), limits, step,
                               DisplayUnits::metric());
    ASSERT_TRUE(gap);
    EXPECT_NE(gap->why.find("the gap is too small at 25.4 mm"), std::string::npos) << gap->why;
    EXPECT_NE(gap->why.find("only 53 µm may be filed off"), std::string::npos) << gap->why;
    EXPECT_EQ(gap->why.find(" in "), std::string::npos) << gap->why;
    EXPECT_EQ(gap->filing->total, um("53")) << "whole micrometres, as it is shown";
}

TEST(Filing, TooFineAStepGivesTheTotalAlone) {
    const auto gap = ringGapOf(tapered(), tapered(), ringOf("0.007", 1, "1"), limitsOf("0.012", ""),
                               Length::fromPicometres(1));
    ASSERT_TRUE(gap && gap->filing);
    EXPECT_EQ(gap->filing->total, thou("5"));
    EXPECT_TRUE(gap->filing->steps.empty());
    const auto whole =
        ringGapOf(tapered(), tapered(), ringOf("0.007", 1, "1"), limitsOf("0.012", ""), Length());
    EXPECT_EQ(whole->filing->steps, std::vector{thou("5")}) << "no step is one step";
}

TEST(Filing, StepIsTheUsersElseCommonPractice) {
    FitRecord fit;
    EXPECT_EQ(fileStepOf(fit, true), in("0.002"));
    EXPECT_EQ(fileStepOf(fit, false), mm("0.05"));
    fit.fileStep = typedThou("1.5");
    EXPECT_EQ(fileStepOf(fit, false), thou("1.5"));
}

// Whatever the bore, the ring and the limits.
TEST(Filing, NeverPassesALimitAndItsStepsAddUp) {
    Random random(7);
    const auto upTo = [&](int most) { return static_cast<int>(random.uniform() * (most + 1)); };
    int filed = 0;
    int cut = 0;
    for (int run = 0; run < 2000; ++run) {
        MeasuredBore bore = tapered();
        for (MeasuredAt& at : bore.at)
            at.diameter += Length::whole(upTo(30), Unit::tenth);
        Ring ring = ringOf("0.001", 1, "2");
        ring.gap = typedFrom(Length::whole(1 + upTo(200), Unit::tenth), Unit::inch);
        FitLimits limits = limitsOf("0.005", "");
        limits.upper = typedFrom(thou("5") + Length::whole(upTo(150), Unit::tenth), Unit::inch);
        const RingGap gap = gapIn(bore, bore, ring, limits);
        if (!gap.filing) continue;
        ++filed;
        cut += gap.filing->cutShort ? 1 : 0;
        EXPECT_GT(gap.filing->total, Length());
        EXPECT_EQ(sumOf(*gap.filing), gap.filing->total);
        const Length notShown = thou("0.05");
        EXPECT_LE(std::ranges::max(gap.filing->steps), step + notShown);
        EXPECT_LE(gap.filing->steps.back(), gap.filing->steps.front() + notShown);
        if (gap.filing->steps.size() > 1) {
            EXPECT_GT(gap.filing->steps.back(), notShown);
        }
        for (const GapAt& at : gap.at)
            EXPECT_LE(at.gap + gap.filing->total, limits.upper->value());
        const Length smallest = gap.smallest.gap + gap.filing->total;
        if (gap.filing->cutShort)
            EXPECT_LT(smallest, *aimOf(limits));
        else
            EXPECT_EQ(smallest, *aimOf(limits));
    }
    EXPECT_GT(filed, 200);
    EXPECT_GT(cut, 20);
}

} // namespace
} // namespace borewright
