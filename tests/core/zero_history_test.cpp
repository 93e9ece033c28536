// SPDX-License-Identifier: GPL-3.0-or-later
// Where zero stood at each moment, from its checks on the master, and what that makes of readings.
#include "core/gauging/gauging.h"
#include "core/gauging/zero_history.h"
#include "tests/support/blocks.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

const Timestamp start{1'774'000'000, 60};
Timestamp minutes(int after) {
    return {start.secondsSinceEpoch + 60L * after, 60};
}
ZeroCheck check(const char* shows_thou, int after) {
    return {typedThou(shows_thou), minutes(after), {}};
}
// Checks of a tenth dial that may wander half a thou.
SurveyHeader surveyWith(const std::vector<ZeroCheck>& checks) {
    SurveyHeader survey;
    survey.time = start;
    survey.gauge.setSize = typedIn("3.5000");
    survey.gauge.gear.driftLimit = typedThou("0.5");
    survey.zeroChecks = checks;
    return survey;
}

TEST(ZeroOfTheGauge, WithoutChecksIsTakenToStand) {
    const ZeroHistory zero(surveyWith({}));
    EXPECT_EQ(zero.at(minutes(50)), Length());
    EXPECT_EQ(zero.wanderDoubt(minutes(50)), Length());
    EXPECT_FALSE(zero.checkedAfter(minutes(50)));
    EXPECT_TRUE(zero.shares(minutes(50)).empty());
    EXPECT_EQ(zero.checks(), 0U);
}

TEST(ZeroOfTheGauge, WandersEvenlyUpToTheCheckAndStaysThere) {
    const ZeroHistory zero(surveyWith({check("0.2", 40)}));
    EXPECT_EQ(zero.at(start), Length());
    EXPECT_EQ(zero.at(minutes(10)), thou("0.05"));
    EXPECT_EQ(zero.at(minutes(30)), thou("0.15"));
    EXPECT_EQ(zero.at(minutes(40)), thou("0.2"));
    EXPECT_EQ(zero.at(minutes(90)), thou("0.2"));
    EXPECT_EQ(zero.wanderDoubt(minutes(10)), thou("0.1")) << "half of what it moved, either way";
    EXPECT_EQ(zero.wanderDoubt(minutes(90)), Length());
    EXPECT_TRUE(zero.checkedAfter(minutes(39)));
    EXPECT_FALSE(zero.checkedAfter(minutes(40)));
    EXPECT_TRUE(zero.knocks().empty());
}

TEST(ZeroOfTheGauge, SeveralChecksInAnyOrder) {
    const ZeroHistory zero(surveyWith({check("-0.1", 40), check("0.3", 20)}));
    EXPECT_EQ(zero.at(minutes(10)), thou("0.15"));
    EXPECT_EQ(zero.at(minutes(30)), thou("0.1"));
    EXPECT_EQ(zero.wanderDoubt(minutes(30)), thou("0.2"));
    const auto shares = zero.shares(minutes(25)); // a quarter of the way from the first
    ASSERT_EQ(shares.size(), 2U);
    EXPECT_EQ(shares[0].check, 0U);
    EXPECT_DOUBLE_EQ(shares[0].share, 0.75);
    EXPECT_EQ(shares[1].check, 1U);
    EXPECT_DOUBLE_EQ(shares[1].share, 0.25);
    ASSERT_EQ(zero.shares(minutes(10)).size(), 1U) << "the start is the setting itself";
    EXPECT_DOUBLE_EQ(zero.shares(minutes(10))[0].share, 0.5);
    ASSERT_EQ(zero.shares(minutes(60)).size(), 1U);
    EXPECT_EQ(zero.shares(minutes(60))[0].check, 1U);
    EXPECT_DOUBLE_EQ(zero.shares(minutes(60))[0].share, 1);
}

TEST(ZeroOfTheGauge, AKnockIsSpreadOverNothingAndSetRightAfterIt) {
    const ZeroHistory zero(surveyWith({check("0.1", 20), check("0.9", 40), check("0.2", 60)}));
    ASSERT_EQ(zero.knocks().size(), 1U);
    EXPECT_EQ(zero.knocks()[0].from, minutes(20));
    EXPECT_EQ(zero.knocks()[0].to, minutes(40));
    EXPECT_EQ(zero.knocks()[0].moved, thou("0.8"));
    EXPECT_TRUE(zero.insideKnock(minutes(30)));
    EXPECT_FALSE(zero.insideKnock(minutes(40)));
    EXPECT_EQ(zero.at(minutes(39)), thou("0.1")) << "what it was before";
    EXPECT_EQ(zero.wanderDoubt(minutes(30)), Length());
    EXPECT_EQ(zero.at(minutes(40)), Length()) << "he set it again";
    EXPECT_EQ(zero.at(minutes(50)), thou("0.1")) << "from zero to 0.2";
    ASSERT_EQ(zero.shares(minutes(50)).size(), 1U) << "set again, as at the start";
    EXPECT_EQ(zero.shares(minutes(50))[0].check, 2U);
}

TEST(ZeroOfTheGauge, AKnockThatTheNextCheckStillShowsWasNotSetRight) {
    const ZeroHistory zero(surveyWith({check("0.9", 20), check("1.0", 40)}));
    ASSERT_EQ(zero.knocks().size(), 1U);
    EXPECT_EQ(zero.at(minutes(10)), Length());
    EXPECT_EQ(zero.at(minutes(30)), thou("0.95"));
    EXPECT_EQ(zero.at(minutes(50)), thou("1.0"));
}

TEST(ZeroOfTheGauge, JustAtTheLimitIsNoKnock) {
    EXPECT_TRUE(ZeroHistory(surveyWith({check("0.5", 20)})).knocks().empty());
    EXPECT_EQ(ZeroHistory(surveyWith({check("0.51", 20)})).knocks().size(), 1U);
    EXPECT_EQ(ZeroHistory(surveyWith({check("-0.51", 20)})).knocks()[0].moved, thou("-0.51"));
}

TEST(ZeroOfTheGauge, TheLimitIsTheGearsOrUsual) {
    GaugeSetting gauge;
    EXPECT_EQ(driftLimitOf(gauge), thou("0.2"));
    gauge.dial = micrometreDial();
    EXPECT_EQ(driftLimitOf(gauge), um("5"));
    gauge.gear.driftLimit = typedThou("0.7");
    EXPECT_EQ(driftLimitOf(gauge), thou("0.7"));
}

TEST(ZeroOfTheGauge, ChecksBeforeTheStartCountAsAtTheStart) {
    const ZeroHistory zero(surveyWith({check("0.2", -10), check("0.4", 20)}));
    EXPECT_EQ(zero.at(minutes(-30)), Length()) << "read before it all began: no check speaks of it";
    EXPECT_EQ(zero.at(start), thou("0.2"));
    EXPECT_EQ(zero.at(minutes(10)), thou("0.3"));
}

TEST(ZeroOfTheGauge, TwoChecksInTheSameSecond) {
    const ZeroHistory zero(surveyWith({check("0.1", 20), check("0.3", 20)}));
    EXPECT_EQ(zero.at(minutes(10)), thou("0.05"));
    EXPECT_EQ(zero.at(minutes(20)), thou("0.3")) << "the later one of the list";
    EXPECT_EQ(zero.at(minutes(40)), thou("0.3"));
}

TEST(ZeroOfTheGauge, OfADialThatReadsMinusInALargerBore) {
    SurveyHeader survey = surveyWith({check("-0.2", 40)});
    survey.gauge.dial.larger = Dial::Larger::minus;
    EXPECT_EQ(ZeroHistory(survey).at(minutes(20)), thou("0.1"));
}

class Drifted : public testing::Test {
protected:
    Drifted()
        : workbook(inchBlock(1, {"1", "2", "3"})) {
        survey = addSurvey(workbook, SurveyKind::asFound, "found");
        Survey& found = *findSurvey(workbook, survey);
        found.header.gauge.gear.driftLimit = typedThou("0.5");
        found.header.zeroChecks = {check("0.2", 40)};
        for (const char* depth : {"1", "2", "3"})
            type(workbook, survey, 1, depth, "A", "1.0");
        for (int i = 0; i < 3; ++i)
            found.readings[static_cast<std::size_t>(i)].time = minutes(20 * i);
    }
    std::optional<Length> diameter(std::size_t level) {
        const auto gauged = gauge(workbook, *findSurvey(workbook, survey));
        return gauged.at(2 * level).diameter; // A is read, B only asked for
    }
    Workbook workbook;
    std::string survey;
};

TEST_F(Drifted, ReadingsAreSetRightByTheirTimes) {
    EXPECT_EQ(diameter(0), in("3.5010"));
    EXPECT_EQ(diameter(1), in("3.5009"));
    EXPECT_EQ(diameter(2), in("3.5008"));
}

TEST_F(Drifted, AfterAKnockNothingIsSpread) {
    findSurvey(workbook, survey)->header.zeroChecks = {check("0.6", 40)};
    EXPECT_EQ(diameter(0), in("3.5010"));
    EXPECT_EQ(diameter(1), in("3.5010"));
    EXPECT_EQ(diameter(2), in("3.5010")) << "set again";
}

TEST_F(Drifted, AMeanOfRepeatsTakesEachAtItsTime) {
    type(workbook, survey, 1, "1", "A", "1.1");
    findSurvey(workbook, survey)->readings.back().time = minutes(40);
    EXPECT_EQ(diameter(0), in("3.50095")) << "1.0 − 0 and 1.1 − 0.2";
}

} // namespace
} // namespace borewright
