// SPDX-License-Identifier: GPL-3.0-or-later
// The log of the hone among the results: what each pass took off, what is to be ticked, crosshatch.
#include "core/results/hone_words.h"
#include "core/results/results_file.h"
#include "tests/support/blocks.h"
#include "tests/support/honed_block.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

const BoreHoneLog* logOf(const HoneLog& log, int bore) {
    const auto found = std::ranges::find(log.bores, bore, &BoreHoneLog::bore);
    return found == log.bores.end() ? nullptr : &*found;
}

HoneLog logOf(const Workbook& workbook) {
    return compute(workbook, DisplayUnits::inch()).hone;
}

TEST(HoneLogs, APassTookOffWhatBothSurveysTell) {
    const HoneLog log = logOf(measuredHonedBlock());
    EXPECT_FALSE(log.empty);
    const BoreHoneLog* bore = logOf(log, 2);
    ASSERT_NE(bore, nullptr);
    ASSERT_EQ(bore->passes.size(), 2U) << "the struck one stays readable";
    const LoggedPass& pass = bore->passes[0];
    EXPECT_EQ(pass.pass, "h2");
    EXPECT_EQ(pass.stone, "Short 100");
    EXPECT_EQ(pass.words, "24 strokes 3.30–4.04 in");
    EXPECT_EQ(pass.before, "s2");
    EXPECT_EQ(pass.behind, "s3");
    // Five levels on two axes: four at 1.5 thou, one at 2.0.
    ASSERT_TRUE(pass.tookOff);
    EXPECT_EQ(*pass.tookOff, thou("1.6"));
    EXPECT_EQ(pass.leadBefore, Length());
    EXPECT_EQ(pass.leadBehind, thou("0.5"));
    EXPECT_TRUE(bore->passes[1].struck);
    EXPECT_FALSE(bore->waitsForSurvey);
}

TEST(HoneLogs, TwoPassesBetweenSurveysCannotBeToldApart) {
    Workbook workbook = measuredHonedBlock();
    workbook.hone.passes[2].struck.reset();
    const HoneLog log = logOf(workbook);
    const BoreHoneLog* bore = logOf(log, 2);
    ASSERT_EQ(bore->passes.size(), 2U);
    EXPECT_EQ(bore->passes[0].behind, "s3");
    EXPECT_EQ(bore->passes[1].behind, "s3");
    EXPECT_EQ(bore->passes[0].tookOff, std::nullopt);
    EXPECT_EQ(bore->passes[1].tookOff, std::nullopt);
    EXPECT_TRUE(std::ranges::any_of(bore->oddities, [&](const std::string& oddity) {
        return oddity.starts_with("Nothing was measured between the pass of " +
                                  clockTime(workbook.hone.passes[1].time));
    }));
}

TEST(HoneLogs, APassWithNoSurveyBehindItIsWaitedFor) {
    Workbook workbook = measuredHonedBlock();
    workbook.surveys.pop_back();
    const HoneLog log = logOf(workbook);
    EXPECT_TRUE(logOf(log, 2)->waitsForSurvey);
    EXPECT_EQ(logOf(log, 2)->passes[0].behind, "");
    EXPECT_TRUE(std::ranges::count(log.warnings, "bore 2: not measured since the last pass"));
}

TEST(HoneLogs, WarnUntilPortsAndGritAreTicked) {
    Workbook workbook = measuredHonedBlock();
    workbook.hone.ticks.clear();
    EXPECT_EQ(logOf(logOf(workbook), 2)->toTick, std::vector<std::string>{"washed"})
        << "it has no ports";
    findBore(workbook.block, 2)->map.ports = {{typedIn("2.5"), typedIn("3"), {"B"}, {}}};
    EXPECT_EQ(logOf(logOf(workbook), 2)->toTick,
              (std::vector<std::string>{"ports chamfered", "washed"}));
    EXPECT_TRUE(std::ranges::count(logOf(workbook).warnings, "bore 2: not ticked as washed"));
    workbook.hone.ticks[2] = {true, true, {}};
    EXPECT_TRUE(logOf(logOf(workbook), 2)->toTick.empty());
    EXPECT_FALSE(std::ranges::count(logOf(workbook).warnings, "bore 2: not ticked as washed"));
}

TEST(HoneLogs, NothingIsSaidWhereNothingWasHoned) {
    Workbook workbook = measuredHonedBlock();
    workbook.hone.passes.clear();
    workbook.hone.care.clear();
    const HoneLog log = logOf(workbook);
    EXPECT_TRUE(log.empty);
    EXPECT_TRUE(log.bores.empty());
    EXPECT_TRUE(log.warnings.empty());
    EXPECT_TRUE(log.cautions.empty());
}

TEST(HoneLogs, CrosshatchIsOfTheLastFinishPass) {
    Workbook workbook = measuredHonedBlock();
    EXPECT_EQ(logOf(logOf(workbook), 2)->crosshatchDegrees, std::nullopt) << "a rough stone";
    workbook.hone.passes[1].stone = "k3";
    workbook.hone.passes[1].windows[0].from = typedIn("3");
    workbook.hone.passes[1].windows[0].to = typedIn("5");
    const HoneLog log = logOf(workbook);
    ASSERT_TRUE(logOf(log, 2)->crosshatchDegrees);
    // Unrolled wall: 2 in of travel 72 times a minute down and up against 350 turns of 3.5 in.
    const double expected =
        2 * std::atan(2 * 2.0 * 72 / (std::numbers::pi * 3.5 * 350)) * 180 / std::numbers::pi;
    EXPECT_NEAR(*logOf(log, 2)->crosshatchDegrees, expected, 1e-9);
    EXPECT_FALSE(logOf(log, 2)->crosshatchWords.empty());
    workbook.hone.hone.speedRpm.reset();
    EXPECT_EQ(logOf(logOf(workbook), 2)->crosshatchDegrees, std::nullopt);
    EXPECT_NE(logOf(logOf(workbook), 2)->crosshatchWords.find("speed is not entered"),
              std::string::npos);
}

TEST(HoneWords, ASetUpIsOneSentence) {
    Workbook workbook = honedBlock();
    workbook.hone.hone.beatsPerMinute = 60;
    Stone stone = workbook.hone.stones[1];
    stone.name = "short stone";
    PlannedSetUp setUp;
    setUp.windows = {{typedIn("3.3"), typedIn("4.04"), 24, 24, 0},
                     {typedIn("3.9"), typedIn("4.04"), 8, 8, 0}};
    setUp.measure = {{2, in("3.75"), "A"},
                     {2, in("0.6"), "B"},
                     {2, in("0.6"), "A"},
                     {2, in("1.8"), "A"},
                     {2, in("3.05"), "A"}};
    EXPECT_EQ(setUpSentence(setUp, stone, workbook, DisplayUnits::inch()),
              "Short stone: 24 s with its lower end from 3.30 to 4.04 in, then 8 s from 3.90 to "
              "4.04; then measure A at 0.60, 1.80, 3.05, 3.75 and B at 0.60.");
    EXPECT_EQ(
        measureWords(
            {{2, in("1.8"), "B"}, {2, in("0.6"), "A"}, {2, in("1.8"), "A"}, {2, in("0.6"), "B"}},
            workbook.block, DisplayUnits::inch()),
        "A and B at 0.60, 1.80");
    workbook.hone.hone.beatsPerMinute = 72;
    setUp.windows[0].seconds = 20;
    setUp.windows.resize(1);
    setUp.windows[0].holdSeconds = 3;
    setUp.measure.clear();
    EXPECT_EQ(setUpSentence(setUp, stone, workbook, DisplayUnits::inch()),
              "Short stone: 24 strokes (20 s) and a hold of 3 s with its lower end from 3.30 to "
              "4.04 in.");
}

TEST(HoneWords, CautionsNameWhatHurts) {
    std::string all;
    for (const std::string& caution : honingCautions())
        all += caution + "\n";
    for (const char* what :
         {"wrist", "speed its maker", "out of the bore", "eye protection", "dust", "fire",
          "measures large", "grit", "engine maker's manual", "hone maker's rules"})
        EXPECT_NE(all.find(what), std::string::npos) << what << " is not in:\n" << all;
}

TEST(HoneLogFile, TellsEachPassWithWhatItTookOff) {
    const Workbook workbook = measuredHonedBlock();
    const auto json =
        nlohmann::json::parse(resultsJson(workbook, compute(workbook, DisplayUnits::inch()), {}));
    ASSERT_TRUE(json.contains("hone"));
    EXPECT_EQ(json["hone"]["beats_per_minute"], 72);
    const auto& bores = json["hone"]["bores"];
    const auto second =
        std::ranges::find_if(bores, [](const auto& bore) { return bore["bore"] == 2; });
    ASSERT_NE(second, bores.end());
    const auto& pass = (*second)["passes"][0];
    EXPECT_EQ(pass["pass"], "h2");
    EXPECT_EQ(pass["stone"], "Short 100");
    EXPECT_EQ(pass["survey_before"], "s2");
    EXPECT_EQ(pass["survey_after"], "s3");
    EXPECT_EQ(pass["windows"][0]["strokes"], 24);
    EXPECT_NEAR(pass["windows"][0]["from_mm"].get<double>(), 83.82, 1e-9) << "3.3 in";
    // -6 before; -4 and, at the closed end, -4.5 thou after: between 1.5 and 2 thou.
    EXPECT_GT(pass["took_off_mm"].get<double>(), 0.0381);
    EXPECT_LT(pass["took_off_mm"].get<double>(), 0.0508);
    EXPECT_EQ((*second)["passes"][1]["struck"], "that was bore 3");
    EXPECT_EQ(json["hone"]["care"][0]["done"], "turned end for end");
    // Without a pass there is nothing to tell.
    Workbook none = workbook;
    none.hone.passes.clear();
    EXPECT_FALSE(nlohmann::json::parse(resultsJson(none, compute(none, DisplayUnits::inch()), {}))
                     .contains("hone"));
}

} // namespace
} // namespace borewright
