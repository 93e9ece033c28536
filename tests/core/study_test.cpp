// SPDX-License-Identifier: GPL-3.0-or-later
// The same spot ten times, from known answers, and by the published example of a gauge study.
#include "core/gauging/study.h"
#include "tests/support/lengths.h"

#include <cmath>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

RepeatRun run(const std::string& person, const std::string& spot,
              const std::vector<const char*>& thou) {
    RepeatRun made{person, spot, {}, {}};
    for (const char* text : thou)
        made.typed.push_back(typedThou(text));
    return made;
}

RepeatStudy study(std::vector<RepeatRun> runs) {
    return {"r1", "gauge", "2026-03-11", std::move(runs), {}};
}

const Length tenth = Length::whole(1, Unit::tenth);

double thouOf(double um) {
    return um / 25.4;
}

TEST(Study, TenReadingsOfOneSpot) {
    // Σ(x − 0.1)² = 0.06, over 9: s = 0.0816 thou.
    const auto result = studyOf(
        study(
            {run("", "", {"0.1", "0.1", "0.2", "0.0", "0.1", "0.2", "0.0", "0.2", "0.0", "0.1"})}),
        tenth);
    ASSERT_TRUE(result) << result.error().message();
    EXPECT_EQ(result->readings, 10);
    EXPECT_EQ(result->freedom, 9);
    EXPECT_NEAR(thouOf(result->repeatability_um), 0.0816, 1e-4);
    // χ² of 9 degrees of freedom, 97.5 % and 2.5 %: 19.023 and 2.700 (common tables, from memory).
    EXPECT_NEAR(thouOf(result->low_um), 0.0816 * std::sqrt(9 / 19.023), 1e-4);
    EXPECT_NEAR(thouOf(result->high_um), 0.0816 * std::sqrt(9 / 2.700), 2e-4);
    EXPECT_FALSE(result->outlier);
    EXPECT_FALSE(result->betweenPeople_um);
    EXPECT_EQ(studyWords(*result, DisplayUnits::inch()),
              "repeatability 0.082 thou (between 0.056 and 0.149; 10 readings)");
    const Gear gear = withStudy({}, *result, Unit::thou);
    EXPECT_EQ(gear.repeatability->withUnit(), "0.082 thou");
    EXPECT_EQ(gear.repeatabilityFreedom, 9);
}

TEST(Study, AReadingFarOutIsToldAndStaysIn) {
    const auto result = studyOf(
        study(
            {run("", "", {"0.1", "0.1", "0.2", "0.0", "0.1", "2.2", "0.0", "0.2", "0.0", "0.1"})}),
        tenth);
    ASSERT_TRUE(result && result->outlier);
    EXPECT_EQ(result->outlier->reading, 5U);
    EXPECT_GT(thouOf(result->repeatability_um), 0.6);
}

TEST(Study, AHandSteadierThanTheDialIsNotPerfect) {
    const auto result = studyOf(study({run("", "", {"0.1", "0.1", "0.1", "0.1"})}), tenth);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->belowTheStep);
    EXPECT_NEAR(thouOf(result->repeatability_um), 0.1 / std::sqrt(12.0), 1e-6);
}

// AIAG, Measurement Systems Analysis, 4th ed., worked example (seen): appraisers A, B, C, parts 1
// to 10, three trials. By analysis of variance, interaction pooled (derived): repeatability .19993,
// reproducibility .22684, part 1.04233. Figures stand for thou here.
TEST(Study, PeopleAndSpotsAreToldApartAsPublished) {
    const std::vector<std::vector<const char*>> trials{
        {".29", "-.56", "1.34", ".47", "-.80", ".02", ".59", "-.31", "2.26", "-1.36"},
        {".41", "-.68", "1.17", ".50", "-.92", "-.11", ".75", "-.20", "1.99", "-1.25"},
        {".64", "-.58", "1.27", ".64", "-.84", "-.21", ".66", "-.17", "2.01", "-1.31"},
        {".08", "-.47", "1.19", ".01", "-.56", "-.20", ".47", "-.63", "1.80", "-1.68"},
        {".25", "-1.22", ".94", "1.03", "-1.20", ".22", ".55", ".08", "2.12", "-1.62"},
        {".07", "-.68", "1.34", ".20", "-1.28", ".06", ".83", "-.34", "2.19", "-1.50"},
        {".04", "-1.38", ".88", ".14", "-1.46", "-.29", ".02", "-.46", "1.77", "-1.49"},
        {"-.11", "-1.13", "1.09", ".20", "-1.07", "-.67", ".01", "-.56", "1.45", "-1.77"},
        {"-.15", "-.96", ".67", ".11", "-1.45", "-.49", ".21", "-.49", "1.87", "-2.16"}};
    std::vector<RepeatRun> runs;
    for (std::size_t trial = 0; trial < trials.size(); ++trial)
        for (std::size_t part = 0; part < 10; ++part)
            runs.push_back(run(std::string(1, static_cast<char>('A' + trial / 3)),
                               "spot " + std::to_string(part), {trials[trial][part]}));
    const auto result = studyOf(study(runs), Length::fromPicometres(1));
    ASSERT_TRUE(result) << result.error().message();
    EXPECT_NEAR(thouOf(result->repeatability_um), 0.19993, 1e-5);
    EXPECT_NEAR(thouOf(result->betweenPeople_um.value_or(0)), 0.22684, 1e-5);
    EXPECT_NEAR(thouOf(result->betweenSpots_um.value_or(0)), 1.04233, 1e-5);
    EXPECT_EQ(result->freedom, 78);
}

// Dyestuff2 (Debian r-cran-lme4, data seen): the variance between comes out below nothing.
TEST(Study, AVarianceBelowNothingIsNothing) {
    const auto result = studyOf(study({run("A", "", {"7.298", "3.846", "2.434", "9.566", "7.990"}),
                                       run("B", "", {"5.220", "6.556", ".608", "11.788", "-.892"}),
                                       run("C", "", {".110", "10.386", "13.434", "5.510", "8.166"}),
                                       run("D", "", {"2.212", "4.852", "7.092", "9.288", "4.980"}),
                                       run("E", "", {".282", "9.014", "4.458", "9.446", "7.198"}),
                                       run("F", "", {"1.722", "4.782", "8.106", ".758", "3.758"})}),
                                tenth);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->betweenPeople_um, 0.0);
    EXPECT_NEAR(thouOf(result->repeatability_um), std::sqrt(14.9458896), 1e-6);
}

TEST(Study, WhatTellsNoScatterIsRefused) {
    EXPECT_FALSE(studyOf(study({}), tenth));
    EXPECT_FALSE(studyOf(study({run("", "", {"0.1", "0.2"})}), tenth)) << "two readings";
    EXPECT_FALSE(
        studyOf(study({run("A", "", {"0.1"}), run("B", "", {"0.1"}), run("C", "", {"0"})}), tenth))
        << "no spot twice by one person";
    RepeatStudy mixed = study({run("", "", {"0.1", "0.2", "0.3"})});
    mixed.runs[0].typed.push_back(typedUm("3"));
    EXPECT_FALSE(studyOf(mixed, tenth)) << "both systems";
}

} // namespace
} // namespace borewright
