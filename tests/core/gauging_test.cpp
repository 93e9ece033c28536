// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/gauging.h"
#include "core/gauging/slips.h"
#include "tests/support/blocks.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

GaugeSetting tenth(std::string_view setTo) {
    GaugeSetting gauge;
    gauge.setSize = typedIn(setTo);
    return gauge;
}

TEST(Gauging, ADeviationCountsWithTheDialsOwnSign) {
    GaugeSetting gauge = tenth("3.5000");
    EXPECT_EQ(diameterAt20(typedThou("-1.5"), gauge), in("3.4985"));
    gauge.dial.larger = Dial::Larger::minus;
    EXPECT_EQ(diameterAt20(typedThou("-1.5"), gauge), in("3.5015"));
    EXPECT_EQ(diameterAt20(typedUm("20"), gauge), in("3.5") - um("20"));
}

TEST(Gauging, ADiameterIsItself) {
    GaugeSetting gauge = tenth("3.5000");
    gauge.entry = Entry::diameter;
    gauge.dial.larger = Dial::Larger::minus;
    EXPECT_EQ(diameterAt20(typedIn("3.5015"), gauge), in("3.5015"));
    EXPECT_EQ(deviationOf(typedIn("3.5015"), gauge), thou("1.5"));
}

TEST(Gauging, NoTemperaturesNoCorrection) {
    GaugeSetting gauge = tenth("3.5000");
    gauge.blockTemperature = *readTemperature("30", Scale::celsius);
    EXPECT_FALSE(correctsTemperature(gauge)) << "one of two is not enough";
    EXPECT_EQ(diameterAt20(typedThou("0"), gauge), in("3.5000"));
}

std::string refusal(const char* text, Unit unit, const GaugeSetting& gauge,
                    std::optional<Length> standard = std::nullopt) {
    const auto checked = checkReading(typed(text, unit), gauge, standard);
    return checked ? "kept" : checked.error().what;
}

TEST(Refusing, ADiameterWhereADeviationIsMeant) {
    const GaugeSetting gauge = tenth("3.4200");
    const std::string looks = " looks like a diameter; this survey takes deviations from 3.4200 in";
    EXPECT_EQ(refusal("3.4215", Unit::thou, gauge), "3.4215 thou" + looks);
    EXPECT_EQ(refusal("3.4215", Unit::inch, gauge), "3.4215 in" + looks);
    EXPECT_EQ(refusal("3.4", Unit::thou, gauge), "kept") << "3.4 thou is a fair reading";
    EXPECT_EQ(refusal("3.42", Unit::thou, gauge), "kept");
    EXPECT_EQ(refusal("86.9", Unit::millimetre, gauge), "86.9 mm" + looks);
}

TEST(Refusing, BeyondTheDial) {
    const GaugeSetting gauge = tenth("3.4200");
    EXPECT_EQ(refusal("50", Unit::thou, gauge), "kept");
    EXPECT_EQ(refusal("-50.1", Unit::thou, gauge),
              "-50.1 thou is beyond the dial, which moves 50 thou either way");
}

TEST(Refusing, ADeviationWhereADiameterIsMeant) {
    GaugeSetting gauge = tenth("3.4200");
    gauge.entry = Entry::diameter;
    EXPECT_EQ(refusal("-1.5", Unit::thou, gauge),
              "-1.5 thou is no diameter; this survey takes the size itself");
    EXPECT_EQ(refusal("3.42", Unit::thou, gauge),
              "3.42 thou is no diameter; this survey takes the size itself");
    EXPECT_EQ(refusal("3.4215", Unit::inch, gauge), "kept");
    EXPECT_NE(refusal("3.5", Unit::inch, gauge), "kept") << "the dial does not reach";
    gauge.setSize.reset();
    EXPECT_EQ(refusal("4", Unit::inch, gauge, in("3.42")),
              "4 in is more than a tenth off this bore's size");
}

TEST(Refusing, ADeviationFromNothing) {
    EXPECT_EQ(refusal("1", Unit::thou, GaugeSetting()),
              "enter the size the gauge was set to first");
    EXPECT_FALSE(diameterAt20(typedThou("1"), GaugeSetting()));
}

class Odd : public testing::Test {
protected:
    Odd() {
        workbook = inchBlock(1);
        survey = addSurvey(workbook, SurveyKind::asFound, "found");
    }
    std::string why(const char* depth, const char* axis, const char* thou_) {
        type(workbook, survey, 1, depth, axis, thou_);
        return lastIsOdd();
    }
    // The likeliest story of the reading typed last; empty where it is not accused.
    std::string lastIsOdd() const {
        const Survey& s = *findSurvey(workbook, survey);
        for (const Suspicion& suspicion : findSlips(workbook, s))
            if (std::ranges::find(suspicion.readings, s.readings.size() - 1) !=
                suspicion.readings.end())
                return suspicion.stories.front().words;
        return "";
    }
    Workbook workbook;
    std::string survey;
};

TEST_F(Odd, ATurnedSignStandsOutAgainstItsBoreSoFar) {
    EXPECT_EQ(why("0.5", "A", "2.1"), "") << "the first of a bore has nobody to differ from";
    EXPECT_EQ(why("1.25", "A", "1.8"), "");
    EXPECT_EQ(why("2", "A", "1.2"), "");
    EXPECT_EQ(why("2", "B", "1.5"), "");
    EXPECT_EQ(why("1.25", "B", "-2.2"), "sign turned: 2.2 for −2.2");
}

TEST_F(Odd, AnotherAxisVouchesForAReading) {
    for (const char* axis : {"A", "B"})
        for (const char* depth : {"0.5", "1.25", "2"})
            EXPECT_EQ(why(depth, axis, "1.5"), "");
    EXPECT_EQ(why("2.75", "A", "-1.5"), "sign turned: 1.5 for −1.5");
}

TEST_F(Odd, RealWearIsNotAccused) {
    // A ridge: no wear at 0.5, four thou just below, easing downward.
    EXPECT_EQ(why("0.5", "A", "0.2"), "");
    EXPECT_EQ(why("0.5", "B", "0.3"), "");
    EXPECT_EQ(why("1.25", "A", "2.4"), "");
    EXPECT_EQ(why("1.25", "B", "4.3"), "");
}

TEST_F(Odd, FinerThanTheDialCanBeRead) {
    EXPECT_EQ(why("0.5", "A", "0.003"), "finer than this dial can be read");
    EXPECT_EQ(why("0.5", "B", "0.01"), "") << "a tenth of a division";
    findSurvey(workbook, survey)->header.gauge.gear.step = typedThou("0.001");
    EXPECT_EQ(why("1.25", "A", "0.003"), "") << "his gear says that he reads a micro-inch";
}

TEST_F(Odd, ATurnMissedIsToldByTheBore) {
    for (const auto& [depth, thou_] :
         {std::pair{"0.5", "10.2"}, {"1.25", "10.1"}, {"2", "10.0"}, {"2.75", "9.9"}})
        EXPECT_EQ(why(depth, "A", thou_), "")
            << "over a turn from the set size, but so is the bore";
    EXPECT_EQ(why("3.5", "A", "-0.2"), "turn of the dial missed: 9.8 for −0.2");
}

TEST(Gauge, RepeatsAreAveragedAndStruckOnesLeftOut) {
    Workbook workbook = inchBlock(1, {"1"});
    const std::string survey = addSurvey(workbook, SurveyKind::final, "final");
    for (const char* reading : {"1.0", "1.1", "1.3", "9.0"})
        type(workbook, survey, 1, "1", "A", reading);
    findSurvey(workbook, survey)->readings[3].struck = Strike{"knocked", {}};
    const auto gauged = gauge(workbook, *findSurvey(workbook, survey));
    ASSERT_EQ(gauged.size(), 2U) << "A read, B asked for";
    EXPECT_EQ(gauged[0].repeats, 3);
    EXPECT_EQ(gauged[0].diameter, in("3.5") + Length::fromPicometres(28'786'667)); // 1.1333… thou
    EXPECT_FALSE(gauged[1].diameter) << "a missing reading is not zero";
}

TEST(ZeroChecks, TellTheSpreadAndTheLast) {
    SurveyHeader header;
    EXPECT_FALSE(zeroDrift(header));
    header.zeroChecks = {{typedUm("0"), {}}, {typedUm("6"), {}}};
    EXPECT_EQ(zeroDrift(header)->spread, um("6"));
    EXPECT_EQ(zeroDrift(header)->last, um("6"));
}

} // namespace
} // namespace borewright
