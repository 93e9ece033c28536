// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdict/verdict.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

TEST(Judging, ExactlyOnTheLimitIsWithin) {
    // 3.4239 + 0.0001 is not 3.4240 in binary; here it is.
    EXPECT_EQ(judgeUpper(in("3.4239") + thou("0.1"), in("3.4240"), {}), Verdict::within);
    EXPECT_EQ(judgeUpper(in("3.4240") + Length::fromPicometres(1), in("3.4240"), {}),
              Verdict::outside);
    EXPECT_EQ(judgeLower(in("3.4395"), in("3.4395"), {}), Verdict::within);
    EXPECT_EQ(judgeLower(in("3.4395") - Length::fromPicometres(1), in("3.4395"), {}),
              Verdict::outside);
}

// ISO 14253-1:2017: guard band w = 1.65 u. With u = 0.1 thou, w = 0.165 thou.
TEST(Judging, GuardBandLeavesTheDoubtfulOpen) {
    const auto u = thou("0.1");
    EXPECT_EQ(judgeUpper(thou("1.835"), thou("2"), u), Verdict::within);
    EXPECT_EQ(judgeUpper(thou("1.836"), thou("2"), u), Verdict::tooCloseToCall);
    EXPECT_EQ(judgeUpper(thou("2.165"), thou("2"), u), Verdict::tooCloseToCall);
    EXPECT_EQ(judgeUpper(thou("2.166"), thou("2"), u), Verdict::outside);
    EXPECT_EQ(judgeLower(thou("2.165"), thou("2"), u), Verdict::within);
    EXPECT_EQ(judgeLower(thou("1.834"), thou("2"), u), Verdict::outside);
}

BoreForm form(std::string_view largest, std::string_view smallest, std::string_view taper) {
    BoreForm made{};
    made.largest.value = in(largest);
    made.smallest.value = in(smallest);
    made.worstTaper = AxisTaper{"A", thou(taper), {}, {}, {}};
    return made;
}

Limits finish() {
    Limits limits;
    limits.sizeLower = typedIn("3.4395");
    limits.sizeUpper = typedIn("3.4410");
    limits.taper = typedThou("1.0");
    return limits;
}

Verdict verdictOf(const std::vector<Judgement>& judgements, Quality quality) {
    for (const Judgement& judgement : judgements)
        if (judgement.quality == quality) return judgement.verdict;
    return Verdict::notJudged;
}

TEST(Judging, AMissingReadingNeverHidesAnOutside) {
    const auto judged = judge(form("3.4411", "3.4400", "0.5"), finish(), true, false);
    EXPECT_EQ(verdictOf(judged, Quality::largestSize), Verdict::outside);
    EXPECT_EQ(verdictOf(judged, Quality::taper), Verdict::notMeasured);
    EXPECT_EQ(overall(judged), Verdict::outside);
}

TEST(Judging, WhatHasNoLimitIsNotJudged) {
    const auto judged = judge(form("3.4400", "3.4400", "0.5"), finish(), false, false);
    EXPECT_EQ(verdictOf(judged, Quality::outOfRound), Verdict::notJudged);
    EXPECT_EQ(overall(judged), Verdict::within);
    EXPECT_EQ(overall(judge({}, Limits{}, true, false)), Verdict::notJudged);
    EXPECT_EQ(overall(judge({}, finish(), true, false)), Verdict::notMeasured);
}

TEST(Judging, ACheckWhileHoningIsNotYetThereButOverSizeIsOutside) {
    const auto small = judge(form("3.4358", "3.4334", "2.4"), finish(), false, true);
    EXPECT_EQ(verdictOf(small, Quality::smallestSize), Verdict::notYet);
    EXPECT_EQ(verdictOf(small, Quality::taper), Verdict::notYet);
    EXPECT_EQ(overall(small), Verdict::notYet);
    EXPECT_EQ(overall(judge(form("3.4412", "3.4405", "0.7"), finish(), false, true)),
              Verdict::outside);
}

} // namespace
} // namespace borewright
