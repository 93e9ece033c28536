// SPDX-License-Identifier: GPL-3.0-or-later
// Warm blocks, warm hands, one warm end: what is corrected, what is warned of, how long to wait.
#include "core/gauging/gauging.h"
#include "core/gauging/warmth.h"
#include "core/statistics/interval.h"
#include "core/statistics/random.h"
#include "tests/support/blocks.h"
#include "tests/support/printed.h"

#include <cmath>
#include <gmock/gmock.h>

namespace borewright {
namespace {

using namespace test;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TypedTemperature celsius(const char* text) {
    return *readTemperature(text, Scale::celsius);
}

class Warmth : public testing::Test {
protected:
    Warmth()
        : workbook(inchBlock(1, {"0", "2", "4"})) {
        workbook.block.bores.front().standardSize = typedIn("3.44");
        survey.gauge.setSize = typedIn("3.44");
        survey.gauge.blockExpansion = Expansion::sleeveInAluminium;
    }
    [[nodiscard]] std::vector<std::string> warnings() const {
        return warmthWarnings(workbook, survey, DisplayUnits::inch());
    }
    void temperatures(const char* block, const char* master) {
        survey.gauge.blockTemperature = celsius(block);
        survey.gauge.masterTemperature = celsius(master);
    }
    // What a reading of zero means at a depth, from 3.44 in.
    [[nodiscard]] double off_thou(const char* depth) const {
        const Reading reading{
            {1, in(depth), "A"}, typedThou("0"), survey.time, {}, {}, {}, false, {}};
        const auto conditions =
            conditionsOf(ZeroHistory(survey), survey.gauge, &workbook.block.bores.front(), reading);
        return (*diameterAt20(reading.typed, survey.gauge, conditions) - in("3.44")).in(Unit::thou);
    }
    Workbook workbook;
    SurveyHeader survey;
};

TEST_F(Warmth, NothingIsSaidWhereAllStoodTogether) {
    survey.gauge.stoodTogether = true;
    EXPECT_THAT(warnings(), IsEmpty());
}

TEST_F(Warmth, WithoutTemperaturesItSaysWhatTheyAreWorth) {
    EXPECT_THAT(warnings(), ElementsAre("No temperatures are given, so nothing is corrected; each "
                                        "5 °C that the block is warmer than the master is worth "
                                        "0.28 thou."));
    survey.gauge.setSize.reset();
    EXPECT_THAT(warnings(), ElementsAre(HasSubstr("0.28 thou"))) << "by the standard size";
    workbook.block.bores.clear();
    EXPECT_THAT(warnings(), ElementsAre(HasSubstr("worth something")));
}

TEST_F(Warmth, ABlockFreshFromTheHone) {
    survey.gauge.stoodTogether = true;
    survey.minutesSinceWarm = 19;
    EXPECT_THAT(warnings(),
                ElementsAre("The block was honed or washed 19 minutes before: it may still be "
                            "warm. Each 5 °C makes the bore read 0.28 thou large. Wait, or take "
                            "its temperature."));
    survey.minutesSinceWarm = 20;
    EXPECT_THAT(warnings(), IsEmpty());
    survey.minutesSinceWarm = 5;
    temperatures("21", "20");
    EXPECT_THAT(warnings(), IsEmpty()) << "its temperature was taken";
    temperatures("30", "20");
    EXPECT_THAT(warnings(), ElementsAre("The block is 10.0 °C warmer than the master, worth 0.55 "
                                        "thou: corrected, but better measured cold."));
}

TEST_F(Warmth, OneWarmEnd) {
    temperatures("20", "20");
    survey.gauge.closedEndTemperature = celsius("24");
    const std::string taper = "The closed end is 4.0 °C warmer, which would fake a taper of 0.22 "
                              "thou: ";
    EXPECT_THAT(warnings(), ElementsAre(taper + "corrected evenly along the depth."));
    EXPECT_TRUE(near(off_thou("0"), 0, 1e-9, "thou"));
    EXPECT_TRUE(near(off_thou("2"), -0.110, 0.0005, "thou"));
    EXPECT_TRUE(near(off_thou("4"), -0.220, 0.0005, "thou"));
    EXPECT_TRUE(near(off_thou("5"), -0.220, 0.0005, "thou")) << "no warmer beyond the end";

    workbook.block.bores.front().depth.reset();
    EXPECT_THAT(warnings(),
                ElementsAre(taper + "not corrected, as the bore's depth is not given."));
    EXPECT_TRUE(near(off_thou("4"), 0, 1e-9, "thou"));
    survey.gauge.masterTemperature.reset();
    survey.gauge.stoodTogether = true;
    EXPECT_THAT(warnings(),
                ElementsAre(taper + "not corrected, as the master's temperature is not given."));
    survey.gauge.closedEndTemperature = celsius("19");
    EXPECT_THAT(warnings(), ElementsAre(HasSubstr("The open end is 1.0 °C warmer")));
    survey.gauge.closedEndTemperature = celsius("19.1");
    EXPECT_THAT(warnings(), IsEmpty());
}

TEST_F(Warmth, OfTheHandMakesBoresReadSmall) {
    survey.gauge.stoodTogether = true;
    survey.gauge.gaugeWarmedBy = 3;
    // 3.44 in × 11.5e-6 × 3 = 0.1187 thou.
    EXPECT_THAT(warnings(), ElementsAre("The gauge warmed by 3.0 °C since it was set, which makes "
                                        "bores read 0.12 thou small: corrected."));
    EXPECT_TRUE(printed(off_thou("2"), "0.1187", "thou"));
    survey.gauge.gaugeWarmedBy = -3;
    EXPECT_THAT(warnings(), ElementsAre("The gauge cooled by 3.0 °C since it was set, which makes "
                                        "bores read 0.12 thou large: corrected."));
    EXPECT_TRUE(printed(off_thou("2"), "-0.1187", "thou"));
    survey.gauge.gaugeWarmedBy = 0;
    EXPECT_THAT(warnings(), IsEmpty());
}

TEST(CoolDown, RefusesWhatDoesNotCool) {
    const auto refused = [](const char* room, const char* earlier, const char* later,
                            double apart) {
        const auto down = coolDown({celsius(room), celsius(earlier), celsius(later), apart, {}});
        return down ? "kept" : down.error().message();
    };
    EXPECT_EQ(refused("20", "35", "30", 10), "kept");
    EXPECT_THAT(refused("20", "35", "30", 0), HasSubstr("more than zero"));
    EXPECT_THAT(refused("20", "35", "30", -5), HasSubstr("more than zero"));
    EXPECT_THAT(refused("20", "35", "20", 10), HasSubstr("no need to wait"));
    EXPECT_THAT(refused("20", "35", "18", 10), HasSubstr("no need to wait"));
    EXPECT_THAT(refused("20", "30", "30", 10), HasSubstr("has to have cooled"));
    EXPECT_THAT(refused("20", "30", "35", 10), HasSubstr("has to have cooled"));
}

TEST(CoolDown, IsOverWhereTheBlockIsNearTheRoom) {
    const auto down = coolDown({celsius("20"), celsius("30"), celsius("20.8"), 60, {}});
    ASSERT_TRUE(down);
    EXPECT_EQ(down->wait_min, 0);
}

TEST(CoolDown, InWords) {
    const auto down = coolDown({celsius("20"), celsius("35"), celsius("30"), 10, {}});
    ASSERT_TRUE(down);
    EXPECT_THAT(coolDownWords(*down), HasSubstr("wait about 57 minutes (± "));
}

// Each of the three temperatures ± 0.5 °C, limits: 95 % of the true waits lie within the stated ±.
TEST(CoolDown, ItsPlusMinusAgreesWithMonteCarlo) {
    const struct {
        double room, earlier, later, apart_min;
    } cases[] = {{20, 50, 35, 20}, {15, 60, 40, 15}, {20, 40, 30, 20}};
    for (const auto& c : cases) {
        const auto wait = [&](double room, double earlier, double later) {
            const double tau = c.apart_min / std::log((earlier - room) / (later - room));
            return tau * std::log(later - room);
        };
        Random random(7);
        std::vector<double> waits;
        for (int i = 0; i < 200'000; ++i) {
            const auto off = [&] { return random.uniform() - 0.5; };
            waits.push_back(wait(c.room + off(), c.earlier + off(), c.later + off()));
        }
        const Interval true95 = symmetricInterval(waits, 0.95);
        const auto text = [](double value) { return celsius(std::to_string(value).c_str()); };
        const auto down = coolDown({text(c.room), text(c.earlier), text(c.later), c.apart_min, {}});
        ASSERT_TRUE(down);
        EXPECT_TRUE(near(down->wait_min, wait(c.room, c.earlier, c.later), 1e-6, "min"));
        // k = 2 for a sum of three rectangles: a few in a hundred too wide, never too narrow.
        const double half = (true95.high - true95.low) / 2;
        EXPECT_TRUE(near(down->doubt_min, 1.04 * half, 0.08 * half, "min"));
    }
}

TEST(Header, RefusesTemperaturesAndTimesOfAnotherPlanet) {
    const auto refused = [](auto change) {
        SurveyHeader survey;
        change(survey);
        return !checkHeader(survey);
    };
    EXPECT_FALSE(refused([](SurveyHeader&) {}));
    for (const double bad : {-0.1, 51.0, std::nan("")}) {
        EXPECT_TRUE(refused([&](SurveyHeader& s) { s.gauge.differenceDoubt = bad; })) << bad;
        EXPECT_TRUE(refused([&](SurveyHeader& s) { s.gauge.temperatureDoubt = bad; })) << bad;
    }
    EXPECT_FALSE(refused([](SurveyHeader& s) { s.gauge.differenceDoubt = 0; }));
    for (const double bad : {-51.0, 51.0, std::nan("")})
        EXPECT_TRUE(refused([&](SurveyHeader& s) { s.gauge.gaugeWarmedBy = bad; })) << bad;
    for (const int bad : {-1, 50'000})
        EXPECT_TRUE(refused([&](SurveyHeader& s) { s.minutesSinceWarm = bad; })) << bad;
    EXPECT_FALSE(refused([](SurveyHeader& s) { s.minutesSinceWarm = 0; }));
    for (const double bad : {0.0, -1.0, 50'000.0, std::nan("")})
        EXPECT_TRUE(refused([&](SurveyHeader& s) {
            s.cooling = Cooling{celsius("20"), celsius("35"), celsius("30"), bad, {}};
        })) << bad;
}

} // namespace
} // namespace borewright
