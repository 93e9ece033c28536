// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdict/verdict.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

TEST(Judging, ExactlyOnTheLimitIsWithin) {
    // 3.4239 + 0.0001 is not 3.4240 in binary; here it is.
    EXPECT_EQ(judgeUpper(in("3.4239") + thou("0.1"), in("3.4240"), Guard{}), Verdict::within);
    EXPECT_EQ(judgeUpper(in("3.4240") + Length::fromPicometres(1), in("3.4240"), Guard{}),
              Verdict::outside);
    EXPECT_EQ(judgeLower(in("3.4395"), in("3.4395"), Guard{}), Verdict::within);
    EXPECT_EQ(judgeLower(in("3.4395") - Length::fromPicometres(1), in("3.4395"), Guard{}),
              Verdict::outside);
}

// A figure's doubt with this standard uncertainty, in thou, and no contrast in the running but one.
FigureDoubt doubtOf(std::string_view u_thou) {
    FigureDoubt doubt;
    doubt.u_um = thou(u_thou).in(Unit::micrometre);
    return doubt;
}

// ISO 14253-1:2017: guard band w = 1.65 u. With u = 0.1 thou, w = 0.165 thou.
TEST(Judging, GuardBandLeavesTheDoubtfulOpen) {
    const Guard u = guardOf(doubtOf("0.1"), {});
    EXPECT_EQ(judgeUpper(thou("1.835"), thou("2"), u), Verdict::within);
    EXPECT_EQ(judgeUpper(thou("1.836"), thou("2"), u), Verdict::tooCloseToCall);
    EXPECT_EQ(judgeUpper(thou("2.165"), thou("2"), u), Verdict::tooCloseToCall);
    EXPECT_EQ(judgeUpper(thou("2.166"), thou("2"), u), Verdict::outside);
    EXPECT_EQ(judgeLower(thou("2.165"), thou("2"), u), Verdict::within);
    EXPECT_EQ(judgeLower(thou("1.834"), thou("2"), u), Verdict::outside);
}

TEST(Judging, TheRuleIsTheUsers) {
    const FigureDoubt doubt = doubtOf("0.1");
    const auto w = [&](DecisionRule::Kind kind, double percent = 1) {
        return guardOf(doubt, {kind, percent, {}}).within.in(Unit::thou);
    };
    EXPECT_EQ(w(DecisionRule::Kind::plain), 0);
    EXPECT_NEAR(w(DecisionRule::Kind::fivePercent), 0.165, 1e-9);
    EXPECT_NEAR(w(DecisionRule::Kind::twoAndHalfPercent), 0.196, 1e-9);
    EXPECT_NEAR(w(DecisionRule::Kind::own, 1), 0.2326, 5e-5) << "z of 99 % is 2.326";
}

// With ν = 4 a 1 % one-sided risk needs 3.75 u, not 2.33 u (Student's t).
TEST(Judging, FewReadingsBehindTheRepeatabilityWidenTheBand) {
    FigureDoubt doubt = doubtOf("0.1");
    doubt.freedom = 4;
    EXPECT_NEAR(guardOf(doubt, {DecisionRule::Kind::own, 1, {}}).within.in(Unit::thou), 0.375,
                5e-4);
    EXPECT_GT(guardFactor({}, 4), 1.65);
}

// What noise adds to a largest of many is allowed for before anything is called outside.
TEST(Judging, OutsideAllowsForWhatNoiseAdds) {
    FigureDoubt doubt = doubtOf("0.1");
    for (int i = 0; i <= 256; ++i) // noise evenly between 0 and 0.4 thou
        doubt.noise_um.push_back(static_cast<float>(i) * 0.4F * 25.4F / 256);
    const Guard guard = guardOf(doubt, {});
    EXPECT_NEAR(guard.within.in(Unit::thou), 0.165, 1e-9);
    EXPECT_NEAR(guard.outside.in(Unit::thou), 0.38, 1e-3) << "95 % of 0.4";
    EXPECT_EQ(judgeUpper(thou("1.3"), thou("1"), guard), Verdict::tooCloseToCall);
    EXPECT_EQ(judgeUpper(thou("1.4"), thou("1"), guard), Verdict::outside);
}

TEST(Judging, EachVerdictSaysHowLikelyItIsWrong) {
    BoreForm bore{};
    bore.largest.value = in("3.4238");
    Limits limits;
    limits.sizeUpper = typedIn("3.4240");
    BoreDoubt doubt;
    doubt.figure[static_cast<std::size_t>(Figure::largest)] = doubtOf("0.1");
    const Judgement within = judge(bore, limits, false, false, &doubt)[0];
    EXPECT_EQ(within.verdict, Verdict::within);
    EXPECT_NEAR(within.chanceWrong.value_or(9), 0.02275, 1e-5) << "two u inside: P(z > 2)";
    bore.largest.value = in("3.4240");
    const Judgement close = judge(bore, limits, false, false, &doubt)[0];
    EXPECT_EQ(close.verdict, Verdict::tooCloseToCall);
    EXPECT_NEAR(close.chanceWrong.value_or(9), 0.5, 1e-9);
    EXPECT_FALSE(judge(bore, limits, false, false)[0].chanceWrong) << "doubt not known";
}

TEST(Judging, AnAimMayBeBeyondTheGauge) {
    const FigureDoubt doubt = doubtOf("0.1");
    EXPECT_EQ(answerAim(thou("0.08"), thou("0.25"), &doubt, {}), AimAnswer::met);
    EXPECT_EQ(answerAim(thou("0.2"), thou("0.25"), &doubt, {}), AimAnswer::cannotTell);
    EXPECT_EQ(answerAim(thou("0.5"), thou("0.25"), &doubt, {}), AimAnswer::notYet);
    EXPECT_EQ(answerAim(thou("0.25"), thou("0.25"), nullptr, {}), AimAnswer::met);
    EXPECT_EQ(answerAim(thou("0.26"), thou("0.25"), nullptr, {}), AimAnswer::notYet);
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
