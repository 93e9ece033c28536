// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/measured_bore.h"
#include "tests/support/worn_bores.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

MeasuredBore someBore() {
    return wornBore({{"0.60", "A", "3.4224"},
                     {"0.60", "B", "3.4243"},
                     {"1.20", "A", "3.4220"},
                     {"1.20", "B", "3.4237"},
                     {"1.80", "B", "3.4231"}});
}

TEST(MeasuredBore, LargestAndSmallest) {
    const MeasuredBore bore = someBore();
    EXPECT_EQ(largestOf(bore).diameter, in("3.4243"));
    EXPECT_EQ(largestOf(bore).axis, "B");
    EXPECT_EQ(smallestOf(bore).diameter, in("3.4220"));
    EXPECT_EQ(smallestOf(bore).depth, in("1.20"));
}

TEST(MeasuredBore, EqualDiametersGoToTheShallowerInAnyOrder) {
    MeasuredBore bore = wornBore(
        {{"0.60", "A", "3.4"}, {"0.60", "B", "3.4"}, {"1.20", "A", "3.4"}, {"1.80", "A", "3.4"}});
    for (int turn = 0; turn < 4; ++turn) {
        EXPECT_EQ(largestOf(bore).depth, in("0.60")) << "turn " << turn;
        EXPECT_EQ(largestOf(bore).axis, "A") << "turn " << turn;
        EXPECT_EQ(smallestOf(bore).depth, in("0.60")) << "turn " << turn;
        EXPECT_EQ(smallestOf(bore).axis, "A") << "turn " << turn;
        std::ranges::rotate(bore.at, bore.at.begin() + 1);
    }
}

TEST(MeasuredBore, BetweenTwoReadingsOnAStraightLine) {
    const auto at = diameterAt(someBore(), in("1.40"), "B");
    ASSERT_TRUE(at);
    EXPECT_EQ(at->diameter, in("3.4235")) << "a third of the way from 3.4237 to 3.4231";
    EXPECT_EQ(at->depth, in("1.40"));
    EXPECT_EQ(at->axis, "B");
}

TEST(MeasuredBore, AtAReadingThatReading) {
    MeasuredBore bore = someBore();
    bore.at[3].u = um("2");
    bore.at[3].zone = Zone::portBand;
    const auto at = diameterAt(bore, in("1.20"), "B");
    ASSERT_TRUE(at);
    EXPECT_EQ(at->diameter, in("3.4237"));
    EXPECT_EQ(at->u, um("2")) << "its neighbours' unknown doubts have no say";
    EXPECT_EQ(at->zone, Zone::portBand);
}

TEST(MeasuredBore, BeyondTheLastReadingTheLastReading) {
    EXPECT_EQ(diameterAt(someBore(), in("0.10"), "B")->diameter, in("3.4243"));
    EXPECT_EQ(diameterAt(someBore(), in("4.00"), "B")->diameter, in("3.4231"));
    EXPECT_EQ(diameterAt(someBore(), in("4.00"), "A")->diameter, in("3.4220"));
    EXPECT_EQ(diameterAt(someBore(), in("4.00"), "B")->depth, in("4.00"));
}

TEST(MeasuredBore, AnAxisThatWasNotReadHasNoDiameter) {
    EXPECT_FALSE(diameterAt(someBore(), in("1.20"), "C"));
    EXPECT_FALSE(diameterAt(MeasuredBore{}, in("1.20"), "A"));
    EXPECT_FALSE(diameterAt(MeasuredBore{}, in("1.20"), ""));
    EXPECT_FALSE(meanDiameterAt(MeasuredBore{}, in("1.20")));
}

TEST(MeasuredBore, WithoutAnAxisTheLargerOverTheAxes) {
    const auto at = diameterAt(someBore(), in("1.40"), "");
    ASSERT_TRUE(at);
    EXPECT_EQ(at->diameter, in("3.4235"));
    EXPECT_EQ(at->axis, "B");
    MeasuredBore turned = someBore(); // the other axis worn
    for (MeasuredAt& one : turned.at)
        one.axis = one.axis == "A" ? "B" : "A";
    EXPECT_EQ(diameterAt(turned, in("1.40"), "")->axis, "A");
}

TEST(MeasuredBore, DoubtIsTheLargerOfTheTwoAndUnknownWhereEitherIs) {
    MeasuredBore bore = someBore();
    bore.at[3].u = um("2");
    EXPECT_FALSE(diameterAt(bore, in("1.40"), "B")->u);
    bore.at[4].u = um("3");
    EXPECT_EQ(diameterAt(bore, in("1.21"), "B")->u, um("3"));
    EXPECT_EQ(diameterAt(bore, in("1.79"), "B")->u, um("3"));
}

TEST(MeasuredBore, ZoneIsThatOfTheNearerReading) {
    MeasuredBore bore = someBore();
    bore.at[4].zone = Zone::portBand;
    EXPECT_EQ(diameterAt(bore, in("1.49"), "B")->zone, Zone::ringTravel);
    EXPECT_EQ(diameterAt(bore, in("1.50"), "B")->zone, Zone::ringTravel) << "half-way: the upper";
    EXPECT_EQ(diameterAt(bore, in("1.51"), "B")->zone, Zone::portBand);
}

TEST(MeasuredBore, MeanOverTheAxesThatWereRead) {
    MeasuredBore bore = someBore();
    auto at = meanDiameterAt(bore, in("0.60"));
    ASSERT_TRUE(at);
    EXPECT_EQ(at->diameter, in("3.42335"));
    EXPECT_EQ(at->axis, "") << "it belongs to none";
    EXPECT_FALSE(at->u);
    EXPECT_EQ(meanDiameterAt(bore, in("1.80"))->diameter, in("3.42255"))
        << "A keeps its last reading, 3.4220, below 1.20";
    for (MeasuredAt& one : bore.at)
        one.u = one.axis == "A" ? um("2") : um("4");
    EXPECT_EQ(meanDiameterAt(bore, in("0.60"))->u, um("4"));

    at = meanDiameterAt(wornBore({{"1", "B", "3.4"}}), in("2"));
    ASSERT_TRUE(at);
    EXPECT_EQ(at->diameter, in("3.4"));
    EXPECT_EQ(at->axis, "B");
}

TEST(MeasuredBore, OrderOfReadingsDoesNotMatter) {
    MeasuredBore bore = someBore();
    for (std::size_t turn = 0; turn < bore.at.size(); ++turn) {
        std::ranges::rotate(bore.at, bore.at.begin() + 1);
        EXPECT_EQ(diameterAt(bore, in("1.40"), "B")->diameter, in("3.4235")) << "turn " << turn;
        EXPECT_EQ(diameterAt(bore, in("0.80"), "")->diameter, in("3.4241")) << "turn " << turn;
    }
}

} // namespace
} // namespace borewright
