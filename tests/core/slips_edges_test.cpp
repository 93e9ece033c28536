// SPDX-License-Identifier: GPL-3.0-or-later
// Zero checks that tell of a knock, and surveys that hardly are any.
#include "core/gauging/gauging.h"
#include "core/gauging/slips.h"
#include "tests/support/blocks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

using namespace test;

class KnockedZero : public testing::Test {
protected:
    KnockedZero() {
        workbook = inchBlock(1, {"1", "2", "3"});
        addSurvey(workbook, SurveyKind::final, "final");
        for (int minute = 1; minute <= 3; ++minute) {
            type(workbook, "s1", 1, std::to_string(minute), "A", "0.5");
            survey().readings.back().time = at(minute);
        }
    }
    Survey& survey() { return workbook.surveys.front(); }
    static Timestamp at(double minute) {
        return {1'774'000'000 + static_cast<std::int64_t>(60 * minute), 60};
    }
    void check(const char* thou, double minute) {
        survey().header.zeroChecks.push_back({typedThou(thou), at(minute), {}});
    }
    std::string fixes() {
        std::string text;
        for (const Suspicion& suspicion : findSlips(workbook, survey()))
            for (const SlipFix& fix : suspicion.stories.front().fixes)
                text += formatDepth(fix.station.depth, DisplayUnits::inch()) + "=" +
                        fix.value->text() + " ";
        return text;
    }
    Workbook workbook;
};

TEST_F(KnockedZero, GoodChecksSayNothing) {
    check("0.1", 0.5);
    check("-0.1", 2.5);
    check("0.1", 9);
    EXPECT_EQ(fixes(), "") << "0.2 thou is the limit where none is set, and not beyond it";
}

TEST_F(KnockedZero, WhatWasReadSinceTheLastGoodCheckIsOffByTheMove) {
    check("0.0", 1.5);
    check("0.4", 2.5);
    EXPECT_EQ(fixes(), "2.00=0.1 ") << "before the good check and after the bad one all is well";
}

TEST_F(KnockedZero, BeforeTheFirstCheckZeroWasGoodAtTheStart) {
    check("-0.4", 2.5);
    EXPECT_EQ(fixes(), "1.00=0.9 2.00=0.9 ");
}

TEST_F(KnockedZero, NotSetAgainTheNextStretchIsOffAsWell) {
    check("0.4", 1.5);
    check("0.4", 9);
    EXPECT_EQ(fixes(), "1.00=0.1 2.00=0.1 3.00=0.1 ");
}

TEST_F(KnockedZero, SetAgainTheNextStretchIsGood) {
    check("0.4", 1.5);
    check("0.0", 9);
    EXPECT_EQ(fixes(), "1.00=0.1 ");
}

TEST_F(KnockedZero, TheGearsOwnLimitCounts) {
    survey().header.gauge.gear.driftLimit = typedThou("0.5");
    check("0.4", 9);
    EXPECT_EQ(fixes(), "");
    survey().header.gauge.gear.driftLimit = typedThou("0.05");
    EXPECT_EQ(fixes(), "1.00=0.1 2.00=0.1 3.00=0.1 ");
}

TEST_F(KnockedZero, ADiameterIsCorrectedThroughTheDial) {
    survey().header.gauge.entry = Entry::diameter;
    for (Reading& reading : survey().readings)
        reading.typed = typedIn("3.5010");
    check("0.4", 9);
    EXPECT_EQ(fixes(), "1.00=3.5006 2.00=3.5006 3.00=3.5006 ");
    survey().header.gauge.dial.larger = Dial::Larger::minus;
    EXPECT_EQ(fixes(), "1.00=3.5014 2.00=3.5014 3.00=3.5014 ");
}

TEST_F(KnockedZero, OnceSettledItIsNotRaisedAgain) {
    check("0.4", 9);
    const auto found = findSlips(workbook, survey());
    ASSERT_EQ(found.size(), 1U);
    Workbook kept = workbook;
    ASSERT_TRUE(borewright::apply(kept, keepReadings("s1", found[0].readings)));
    EXPECT_TRUE(findSlips(kept, kept.surveys[0]).empty());
    ASSERT_TRUE(borewright::apply(workbook, acceptStory(workbook, "s1", found[0].stories[0], at(20))));
    EXPECT_EQ(fixes(), "");
}

TEST_F(KnockedZero, TimesThatRunBackwardsAreTakenInTheirOrder) {
    check("0.4", 2.5);
    check("0.0", 1.5);
    EXPECT_EQ(fixes(), "2.00=0.1 ");
    std::ranges::reverse(survey().readings);
    EXPECT_EQ(fixes(), "2.00=0.1 ");
}

std::size_t slipsIn(const Workbook& workbook) {
    return findSlips(workbook, workbook.surveys.front()).size();
}

TEST(ThinSurveys, SayNothing) {
    Workbook workbook = inchBlock(2, {"1", "2", "3"});
    addSurvey(workbook, SurveyKind::asFound, "found");
    EXPECT_EQ(slipsIn(workbook), 0U) << "no reading";
    type(workbook, "s1", 1, "1", "A", "1.5");
    EXPECT_EQ(slipsIn(workbook), 0U) << "one station";
    type(workbook, "s1", 1, "1", "A", "1.6");
    EXPECT_EQ(slipsIn(workbook), 0U) << "one station twice";
    type(workbook, "s1", 7, "9", "C", "-4.0");
    EXPECT_EQ(slipsIn(workbook), 0U) << "a bore, a depth and an axis that are not on the plan";
}

TEST(ThinSurveys, AllEqualReadingsAreFine) {
    Workbook workbook = inchBlock(2);
    addSurvey(workbook, SurveyKind::asFound, "found");
    for (const int bore : {1, 2})
        typeShape(workbook, "s1", bore, [](double, const std::string&) { return 1.5; });
    EXPECT_EQ(slipsIn(workbook), 0U);
}

TEST(ThinSurveys, NoSetSizeIsNeeded) {
    Workbook workbook = inchBlock(2);
    addSurvey(workbook, SurveyKind::asFound, "found");
    workbook.surveys[0].header.gauge.setSize.reset();
    for (const int bore : {1, 2})
        typeShape(workbook, "s1", bore, [](double depth, const std::string& axis) {
            return 3 - 0.5 * depth + (axis == "B" ? 0.4 : 0);
        });
    EXPECT_EQ(slipsIn(workbook), 0U);
    workbook.surveys[0].readings[3].typed = typedThou("-2.8");
    EXPECT_EQ(slipsIn(workbook), 1U);
    workbook.surveys[0].header.gauge.entry = Entry::diameter;
    EXPECT_EQ(slipsIn(workbook), 1U) << "no dial to turn the sign on, but it fits no better";
}

TEST(ThinSurveys, ARepeatFarFromTheFirstIsFound) {
    Workbook workbook = inchBlock(1);
    addSurvey(workbook, SurveyKind::asFound, "found");
    typeShape(workbook, "s1", 1, [](double depth, const std::string&) { return 3 - 0.5 * depth; });
    type(workbook, "s1", 1, "2", "A", "-2.0");
    const auto found = findSlips(workbook, workbook.surveys[0]);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].readings, std::vector<std::size_t>{10});
    EXPECT_EQ(found[0].stories[0].slip, Slip::signTurned);
}

TEST(OwnNoise, IsTheGearsOrTheUsual) {
    GaugeSetting gauge;
    EXPECT_NEAR(ownNoise_um(gauge), 2.13, 0.01) << "µm: 0.084 thou, 0.84 of a graduation";
    gauge.gear.repeatability = typedThou("0.2");
    gauge.gear.step = typedThou("0.05");
    gauge.gear.dialLocalError = typedThou("0.1");
    EXPECT_NEAR(ownNoise_um(gauge) / 25.4, std::sqrt(0.04 + 0.0025 / 12 + 0.01 / 3), 1e-9)
        << "thou";
}

} // namespace
} // namespace borewright
