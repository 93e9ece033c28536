// SPDX-License-Identifier: GPL-3.0-or-later
// What would help, and what the gear can decide before anything is measured.
#include "core/verdict/prospect.h"
#include "core/verdict/remedy.h"
#include "core/verdict/verdict.h"
#include "tests/support/blocks.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

const DisplayUnits inchUnits = DisplayUnits::inch();

SurveyHeader kit(const Gear& gear) {
    SurveyHeader survey;
    survey.kind = SurveyKind::final;
    survey.gauge.setSize = typedIn("3.4400");
    survey.gauge.gear = gear;
    survey.gauge.blockExpansion = Expansion::sleeveInAluminium;
    survey.gauge.stoodTogether = true;
    survey.gauge.gaugeWarmedBy = 0;
    return survey;
}

// Three repeats with a tenth dial: ± 0.21 → ± 0.13 thou for a difference (derived: 1.65·√2·u with
// u² = (0.08² + 0.1²/12)/n + 0.05²/3).
TEST(Remedies, RepeatsLessenRepeatabilityAndStepOnly) {
    const auto list = remedies(kit(tenthDialAndRing()), in("3.44"), DoubtOf::difference);
    const auto repeats = std::ranges::find(list, "three readings at each station", &Remedy::words);
    ASSERT_NE(repeats, list.end());
    EXPECT_EQ(remedyWords(*repeats, 1.65, inchUnits),
              "three readings at each station: ± 0.21 → ± 0.13 thou");
}

TEST(Remedies, TheMostHelpfulComesFirst) {
    SurveyHeader survey = kit(tenthDialAndRing());
    survey.gauge.gear.master = typedThou("1.0");
    const auto list = remedies(survey, in("3.44"), DoubtOf::size);
    ASSERT_FALSE(list.empty());
    EXPECT_NE(list.front().words.find("master"), std::string::npos) << list.front().words;
    for (std::size_t i = 1; i < list.size(); ++i)
        EXPECT_LE(list[i - 1].after_um, list[i].after_um + 0.05 * list[i].before_um);
    // A better master does nothing for a difference.
    for (const Remedy& remedy : remedies(survey, in("3.44"), DoubtOf::difference))
        EXPECT_EQ(remedy.words.find("master"), std::string::npos) << remedy.words;
}

TEST(Remedies, AWarmBlockIsToldToCool) {
    SurveyHeader survey = kit(halfThouDialAndMicrometer());
    survey.gauge.stoodTogether = false;
    survey.gauge.masterTemperature = *readTemperature("20", Scale::celsius);
    survey.gauge.blockTemperature = *readTemperature("38", Scale::celsius);
    const auto list = remedies(survey, in("3.44"), DoubtOf::size);
    ASSERT_FALSE(list.empty());
    EXPECT_NE(list.front().words.find("cooled"), std::string::npos) << list.front().words;
}

TEST(Remedies, UnknownGearHasNone) {
    EXPECT_TRUE(remedies(kit({}), in("3.44"), DoubtOf::size).empty());
}

std::string settling(std::initializer_list<const char*> gaps_thou) {
    std::vector<OpenCall> calls;
    for (const char* gap : gaps_thou)
        calls.push_back({DoubtOf::difference, thou(gap), 1.65});
    return whatSettles(kit(tenthDialAndRing()), in("3.44"), 1, calls, inchUnits);
}

TEST(Settling, NamesTheCheapestThatDoes) {
    EXPECT_EQ(settling({"0.15"}),
              "three readings at each station would settle it, if the figures stay as they are");
    EXPECT_EQ(settling({"0.12"}),
              "five readings at each station would settle it, if the figures stay as they are");
    EXPECT_EQ(settling({"0.15", "0.19"}),
              "three readings at each station would settle it, if the figures stay as they are");
    EXPECT_EQ(
        settling({"0.15", "0"}),
        "three readings at each station would settle 1 of 2 figures, if they stay as they are");
    EXPECT_EQ(settling({"0"}), "it lies too near its limit for this gear; what helps most is three "
                               "readings at each station: ± 0.21 → ± 0.13 thou");
    EXPECT_EQ(settling({}), "");
}

Workbook band(const char* from, const char* to, const Gear& gear) {
    Workbook workbook = inchBlock(1);
    workbook.straightAim = typedThou("0.25");
    LimitSet set;
    set.id = "l1";
    set.purpose = LimitPurpose::finish;
    set.limits.sizeLower = typedIn(from);
    set.limits.sizeUpper = typedIn(to);
    workbook.limitSets = {set};
    Survey survey;
    survey.header = kit(gear);
    survey.header.id = "s1";
    workbook.surveys = {survey};
    return workbook;
}

TEST(Prospect, ABandTooNarrowForTheGearIsSaidBeforehand) {
    const Workbook narrow = band("3.4400", "3.4404", tenthDialAndRing());
    const auto told = prospect(narrow, narrow.surveys[0].header, inchUnits);
    ASSERT_FALSE(told.empty());
    EXPECT_NE(told[0].find("no bore could ever be called within"), std::string::npos) << told[0];
    EXPECT_NE(told[0].find("What helps most"), std::string::npos) << told[0];
    const Workbook wide = band("3.4395", "3.4410", tenthDialAndRing());
    const auto fine = prospect(wide, wide.surveys[0].header, inchUnits);
    ASSERT_FALSE(fine.empty());
    EXPECT_EQ(fine[0],
              "Of the 1.50 thou between the size limits, 1.08 thou are left to call within "
              "in.");
}

// Five levels, the worse of two axes, own s 0.0898 thou: 48.4 times in 100 (derived).
TEST(Prospect, AnAimBeyondTheGaugeIsSaidBeforehand) {
    const Workbook workbook = band("3.4395", "3.4410", tenthDialAndRing());
    const auto told = prospect(workbook, workbook.surveys[0].header, inchUnits);
    EXPECT_NE(told.back().find("48 times in 100"), std::string::npos) << told.back();
    EXPECT_NEAR(straightShowsMore(0.25, 0.06, 5, 2), 0.053, 5e-4);
    EXPECT_EQ(straightShowsMore(0.25, 0, 5, 2), 0);
}

TEST(Prospect, OneLimitOfSizeIsEnoughToSaySomething) {
    Workbook workbook = band("3.4395", "3.4410", tenthDialAndRing());
    workbook.limitSets[0].limits.sizeLower.reset();
    EXPECT_EQ(prospect(workbook, workbook.surveys[0].header, inchUnits)[0],
              "Sizes up to 3.44079 in can be called within, of 3.4410 in allowed.");
}

TEST(FreshFromTheHone, ABlockFreshFromTheHoneIsInDoubt) {
    SurveyHeader survey = kit(tenthDialAndRing());
    const double cold = budgetOf(survey, in("3.44")).single_um;
    survey.minutesSinceWarm = 2;
    const double fresh = budgetOf(survey, in("3.44")).single_um;
    survey.minutesSinceWarm = 240;
    EXPECT_GT(fresh, 2 * cold) << "ten degrees are worth half a thou";
    EXPECT_NEAR(budgetOf(survey, in("3.44")).single_um, cold, 0.01 * cold);
}

TEST(Prospect, NothingIsSaidWhereTheDoubtIsNotKnown) {
    const Workbook workbook = band("3.4395", "3.4410", {});
    EXPECT_TRUE(prospect(workbook, workbook.surveys[0].header, inchUnits).empty());
}

} // namespace
} // namespace borewright
