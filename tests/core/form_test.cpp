// SPDX-License-Identifier: GPL-3.0-or-later
// Form of one bore, from bores made with a known answer.
#include "core/form/form.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

const std::vector<std::string> axes{"A", "B"};

// A at each depth, then B ("" = not read), deviations in thou from 3.5 in.
std::vector<Diameter> bore(const std::vector<const char*>& a, const std::vector<const char*>& b) {
    std::vector<Diameter> diameters;
    for (std::size_t i = 0; i < a.size(); ++i) {
        const Length depth = Length::whole(static_cast<std::int64_t>(i) + 1, Unit::inch);
        if (*a[i]) diameters.push_back({depth, "A", in("3.5") + thou(a[i])});
        if (i < b.size() && *b[i]) diameters.push_back({depth, "B", in("3.5") + thou(b[i])});
    }
    return diameters;
}

TEST(Form, FindsABellOfTwoThouAtTheClosedEnd) {
    const auto form = formOf(bore({"0", "0", "0", "0.5", "2.0"}, {"0", "0", "0", "0.5", "2.0"}),
                             axes, TaperRule::largestLessSmallest);
    ASSERT_TRUE(form);
    EXPECT_EQ(form->worstTaper->taper, thou("2.0"));
    EXPECT_EQ(form->lead, thou("2.0")) << "the closed end is larger";
    EXPECT_EQ(form->largest.value, in("3.502"));
    EXPECT_EQ(form->largest.depth, in("5"));
    EXPECT_EQ(form->smallest.value, in("3.500"));
    EXPECT_EQ(form->outOfRound->value, Length());
}

TEST(Form, AVNarrowAtTheClosedEndLeadsNegative) {
    const auto form =
        formOf(bore({"0", "-0.5", "-2.2"}, {"0", "-0.6", "-2.4"}), axes, TaperRule::endToEnd);
    EXPECT_EQ(form->lead, thou("-2.3"));
    EXPECT_EQ(form->worstTaper->taper, thou("2.4"));
    EXPECT_EQ(form->worstTaper->axis, "B");
}

TEST(Form, OutOfRoundIsTheWorstDifferenceAtOneDepth) {
    // Largest less smallest over all would be 3.0; no single depth shows more than 1.9.
    const auto form = formOf(bore({"0.5", "2.4", "1"}, {"0.8", "4.3", "-0.5"}), axes,
                             TaperRule::largestLessSmallest);
    EXPECT_EQ(form->outOfRound->value, thou("1.9"));
    EXPECT_EQ(form->outOfRound->depth, in("2"));
}

TEST(Form, TaperIsAlongOneAxisNeverAcrossTwo) {
    const auto form =
        formOf(bore({"0", "0.1"}, {"3", "3.1"}), axes, TaperRule::largestLessSmallest);
    EXPECT_EQ(form->worstTaper->taper, thou("0.1"));
}

TEST(Form, BarrelHasNoEndToEndTaper) {
    const auto data = bore({"0", "2", "0"}, {"0", "2", "0"});
    EXPECT_EQ(formOf(data, axes, TaperRule::endToEnd)->worstTaper->taper, Length());
    EXPECT_EQ(formOf(data, axes, TaperRule::largestLessSmallest)->worstTaper->taper, thou("2"));
}

TEST(Form, WhatWasNotReadIsNotInvented) {
    EXPECT_FALSE(formOf({}, axes, TaperRule::largestLessSmallest));
    const auto one = formOf(bore({"1"}, {}), axes, TaperRule::largestLessSmallest);
    EXPECT_FALSE(one->outOfRound);
    EXPECT_FALSE(one->worstTaper);
    EXPECT_FALSE(one->lead);
    const auto crossed = formOf(bore({"1", ""}, {"", "2"}), axes, TaperRule::largestLessSmallest);
    EXPECT_FALSE(crossed->outOfRound) << "no depth has both axes";
    EXPECT_FALSE(crossed->worstTaper) << "no axis has two depths";
    EXPECT_FALSE(crossed->lead) << "no axis was read at both ends";
    EXPECT_EQ(crossed->largest.value - crossed->smallest.value, thou("1"));
}

TEST(Form, LeadUsesOnlyAxesReadAtBothEnds) {
    const auto form =
        formOf(bore({"0", "0", "-2"}, {"5", "5", ""}), axes, TaperRule::largestLessSmallest);
    EXPECT_EQ(form->lead, thou("-2"));
}

TEST(Form, DoesNotDependOnTheOrderTyped) {
    auto data = bore({"0.5", "2.4", "1"}, {"0.8", "4.3", "-0.5"});
    const auto before = formOf(data, axes, TaperRule::largestLessSmallest);
    std::reverse(data.begin(), data.end());
    const auto after = formOf(data, axes, TaperRule::largestLessSmallest);
    EXPECT_EQ(before->largest.value, after->largest.value);
    EXPECT_EQ(before->largest.depth, after->largest.depth);
    EXPECT_EQ(before->worstTaper->axis, after->worstTaper->axis);
    EXPECT_EQ(before->lead, after->lead);
    EXPECT_EQ(before->mean, after->mean);
}

TEST(Straightness, IsTheWorstAxisOverEveryDepth) {
    EXPECT_EQ(straightness(bore({"0.3", "0.1", "0.1"}, {"0.3", "0.2", "0.0"})), thou("0.3"));
    EXPECT_FALSE(straightness(bore({"0.3"}, {"0.1"})));
}

} // namespace
} // namespace borewright
