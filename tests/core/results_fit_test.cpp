// SPDX-License-Identifier: GPL-3.0-or-later
// Which piston and ring go where, in words: on made blocks and on the demonstrations.
#include "core/results/results.h"
#include "core/results/results_file.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_fit.h"
#include "tests/support/demo_scenarios.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using Sentences = std::vector<std::string>;

const DisplayUnits inch = DisplayUnits::inch();

bool has(const Sentences& sentences, const std::string& wanted) {
    return std::ranges::find(sentences, wanted) != sentences.end();
}
std::string all(const Sentences& sentences) {
    std::string text;
    for (const std::string& sentence : sentences)
        text += "\n  " + sentence;
    return text;
}

Piston piston(const std::string& label, const std::string& size) {
    Piston piston;
    piston.id = "p" + label;
    piston.label = label;
    piston.size = typedIn(size);
    piston.height = typedIn("0.5");
    piston.temperature = *readTemperature("20", Scale::celsius);
    return piston;
}
// Bores finished that much over 3.5000 (thou), clearance 3 to 5, aim 4.
Workbook finished(const std::vector<double>& thou, SurveyKind kind = SurveyKind::final) {
    Workbook workbook = inchBlock(static_cast<int>(thou.size()));
    const std::string survey = addSurvey(workbook, kind, "last");
    for (std::size_t b = 0; b < thou.size(); ++b)
        typeShape(workbook, survey, static_cast<int>(b) + 1,
                  [&](double, const std::string&) { return thou[b]; });
    workbook.fit.clearance.lower = typedThou("3");
    workbook.fit.clearance.upper = typedThou("5");
    workbook.fit.clearance.aim = typedThou("4");
    return workbook;
}
FitResult fitted(const Workbook& workbook) {
    return compute(workbook, naturalUnits(workbook)).fit;
}
Workbook saltmarsh() {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.fit = demo::saltmarshFit();
    return workbook;
}

TEST(ResultsFit, TheBestIsNamedWithItsEquals) {
    const FitResult fit = fitted(demo::withoutDoubt(saltmarsh()));
    EXPECT_EQ(fit.headline, "Best: bores 1–6 take pistons 3 5 1 6 2 4, no clearance more than 0.1 "
                            "thou from 4.2; eight ways are as good.");
    EXPECT_TRUE(has(fit.sentences, "The pistons' own order would miss by up to 0.2 thou: 0.8 thou "
                                   "in all, for 0.2 thou."))
        << all(fit.sentences);
    const std::vector<std::string> clearances{"4.1", "4.1", "4.2", "4.2", "4.2", "4.2"};
    for (std::size_t b = 0; b < clearances.size(); ++b) {
        ASSERT_TRUE(fit.bores[b].clearance);
        EXPECT_EQ(formatSmall(fit.bores[b].clearance->value, inch), clearances[b]);
        EXPECT_FALSE(fit.bores[b].decided);
        EXPECT_TRUE(fit.bores[b].finished);
    }
}

TEST(ResultsFit, AnyOfTheseWhereTheGaugeCannotTell) {
    Workbook workbook = saltmarsh();
    workbook.fit.clearance.lower = typedThou("3.0");
    workbook.fit.clearance.upper = typedThou("5.5");
    const FitResult fit = fitted(workbook);
    EXPECT_EQ(fit.headline, "Any of these: the pistons' own order misses by at most 0.2 thou, and "
                            "this gauge cannot tell the difference (0.4 thou).");
    EXPECT_EQ(fit.sentences.at(0), "Own order: bores 1–6 take pistons 1 2 3 4 5 6.");
    EXPECT_EQ(fit.sentences.at(1), "Best as read: bores 1–6 take pistons 3 5 1 6 2 4, at most 0.1 "
                                   "thou off; eight ways are as good.");
}

TEST(ResultsFit, TheBestIsKeptWhereItProvesMore) {
    const FitResult fit = fitted(saltmarsh());
    EXPECT_TRUE(fit.headline.starts_with("Best: bores 1–6 take pistons 3 5 1 6 2 4, "))
        << fit.headline;
    EXPECT_EQ(fit.sentences.at(0),
              "The pistons' own order misses by at most 0.2 thou, and this gauge cannot tell the "
              "difference (0.4 thou); but it leaves more clearances too close to their limits.");
}

TEST(ResultsFit, InMillimetresEveryClearanceAsAimed) {
    Workbook workbook = demo::rushmere();
    workbook.fit = demo::rushmereFit();
    EXPECT_EQ(fitted(workbook).headline,
              "Best: bores 1–3 take pistons 1 2 3, every clearance 85 µm, as aimed.");
}

TEST(ResultsFit, WhatIsMissingIsAskedFor) {
    Workbook workbook = finished({0, 0});
    FitResult fit = fitted(workbook);
    EXPECT_TRUE(fit.empty);
    EXPECT_TRUE(fit.bores.empty()) << "nothing is reckoned";
    EXPECT_EQ(fit.headline, "Enter the pistons: label, size across the skirt, and the height it is "
                            "measured at.");
    EXPECT_EQ(fit.ringHeadline, "Enter the rings: groove, and a gap measured in a bore.");
    workbook.fit.pistons = {piston("1", "3.4960")};
    EXPECT_EQ(fitted(workbook).headline, "No matching: 1 piston for 2 bores.");
    workbook.fit.pistons.push_back(piston("2", "3.4960"));
    workbook.fit.clearance = {};
    EXPECT_EQ(fitted(workbook).headline, "No matching: no clearance to aim at.");
    workbook.surveys.clear();
    workbook.fit.clearance.aim = typedThou("4");
    EXPECT_EQ(fitted(workbook).headline,
              "Bores 1 and 2 are still to be honed: the finish size follows the piston.");
}

TEST(ResultsFit, APistonWithoutItsHeightIsNeverGuessed) {
    Workbook workbook = finished({0});
    workbook.fit.pistons = {piston("1", "3.4960"), piston("2", "3.4961")};
    workbook.fit.pistons[0].height.reset();
    const FitResult fit = fitted(workbook);
    EXPECT_EQ(workbook.fit.pistons[*fit.bores[0].piston].label, "2");
    EXPECT_TRUE(std::ranges::any_of(fit.sentences, [](const std::string& sentence) {
        return sentence.starts_with("Piston 1: ") && sentence.find("height") != std::string::npos;
    })) << all(fit.sentences);
}

TEST(ResultsFit, PairsThatAreDecidedAreKeptAndSaid) {
    Workbook workbook = finished({0, 0.5});
    workbook.fit.pistons = {piston("1", "3.4960"), piston("2", "3.4965"), piston("3", "3.4980")};
    workbook.fit.pistons[1].bore = 1;
    FitResult fit = fitted(workbook);
    EXPECT_TRUE(fit.bores[0].decided);
    EXPECT_EQ(*fit.bores[0].piston, 1U);
    EXPECT_FALSE(fit.bores[1].decided);
    EXPECT_TRUE(has(fit.sentences, "Bore 1: as decided, left alone.")) << all(fit.sentences);
    EXPECT_TRUE(has(fit.sentences, "Left over: piston 3.")) << all(fit.sentences);
    workbook.fit.pistons[0].bore = 2;
    fit = fitted(workbook);
    EXPECT_EQ(fit.headline,
              "Decided: bores 1 and 2 take pistons 2 1, no clearance more than 0.5 thou from 4.0.");
    EXPECT_EQ(compute(workbook, inch).summary.back(),
              "The pistons are fitted with 3.5 to 4.5 thou of clearance, within the engine maker's "
              "limits.");
}

TEST(ResultsFit, TooTightIsSaidBoreByBore) {
    Workbook workbook = finished({0});
    workbook.fit.pistons = {piston("1", "3.4980")};
    const FitResult fit = fitted(workbook);
    EXPECT_EQ(fit.bores[0].clearance->verdict, Verdict::outside);
    EXPECT_TRUE(has(fit.sentences, "Bore 1 with piston 1: 2.0 thou, too tight."))
        << all(fit.sentences);
    EXPECT_TRUE(has(fit.cautions, "Too tight seizes, and a seizure at speed on the water can "
                                  "hurt."));
}

TEST(ResultsFit, ClearancesOfABoreAsFoundSaySo) {
    Workbook workbook = finished({0.5}, SurveyKind::asFound);
    workbook.fit.pistons = {piston("1", "3.4960")};
    const FitResult fit = fitted(workbook);
    EXPECT_FALSE(fit.bores[0].finished);
    EXPECT_TRUE(has(fit.sentences, "Bore 1: clearance as found, not of a finished bore."))
        << all(fit.sentences);
    EXPECT_EQ(compute(workbook, inch).summary.size(), 1U) << "nothing of it for the customer";
}

TEST(ResultsFit, PistonsThatDoNotGoInGiveTheFinishSize) {
    Workbook workbook = finished({0.5, 0.7}, SurveyKind::asFound);
    workbook.fit.pistons = {piston("1", "3.5162"), piston("2", "3.5160")};
    const FitResult fit = fitted(workbook);
    EXPECT_EQ(fit.headline,
              "Bores 1 and 2 are still to be honed: the finish size follows the piston.");
    EXPECT_TRUE(has(fit.sentences, "Bore 1: hone to 3.5202 in (3.5192–3.5212), for piston 1."))
        << all(fit.sentences);
    const FinishTargets targets = pistonTargets(fit, workbook.fit, inch);
    ASSERT_EQ(targets.size(), 2U);
    EXPECT_EQ(targets.at(2).size.value(), in("3.5200"));
    EXPECT_EQ(targets.at(2).lower->value(), in("3.5190"));
    EXPECT_EQ(targets.at(2).from, "piston 2 and 4.0 thou");
}

TEST(ResultsFit, NoTemperatureAndNoDoubtAreSaid) {
    Workbook workbook = finished({0, 0});
    workbook.fit.pistons = {piston("1", "3.4960"), piston("2", "3.4961")};
    workbook.fit.pistons[0].temperature = *readTemperature("26", Scale::celsius);
    workbook.fit.pistons[1].temperature.reset();
    const FitResult fit = fitted(workbook);
    EXPECT_TRUE(has(fit.sentences, "No temperature is given for piston 2: taken as 20 °C."))
        << all(fit.sentences);
    EXPECT_TRUE(has(fit.sentences, "The pistons are brought to 20 °C, bores 1 and 2 are not: give "
                                   "the temperatures of the survey."))
        << all(fit.sentences);
    EXPECT_TRUE(has(fit.sentences, "How far the bores' readings may be off is not known: "
                                   "clearances stand as read."))
        << all(fit.sentences);
}

TEST(ResultsFit, RingsSayWhereToMeasureAndWhatToFile) {
    Workbook workbook = finished({0});
    Ring ring;
    ring.id = "g1";
    ring.label = "top";
    ring.measuredIn = 1;
    ring.measuredAt = typedIn("2");
    ring.gap = typedThou("9");
    workbook.fit.rings = {ring};
    workbook.fit.ringGap.lower = typedThou("12");
    workbook.fit.ringGap.upper = typedThou("20");
    workbook.fit.ringGap.aim = typedThou("14");
    FitResult fit = fitted(workbook);
    EXPECT_EQ(fit.ringHeadline, "File top by 5.0 thou for bore 1.");
    EXPECT_EQ(fit.ringSentences.at(0), "Measure at 0.50 in, the smallest place.");
    EXPECT_EQ(fit.ringSentences.at(1), "Groove 1, bore 1: top.");
    EXPECT_EQ(fit.ringSentences.at(2),
              "Bore 1, ring top: 9.0 thou at 0.50 in: the gap is too small at 0.50 in; file 5.0 "
              "thou in steps of 2.0, 2.0, 1.0, measuring after each.");
    EXPECT_TRUE(has(fit.ringSentences, "How far the gap of top may be off is not given."))
        << all(fit.ringSentences);
    workbook.surveys[0].header.kind = SurveyKind::check;
    fit = fitted(workbook);
    EXPECT_EQ(fit.ringHeadline, "Rings come after the last honing: a thou off the bore opens a gap "
                                "by about three.");
    for (const std::string& sentence : fit.ringSentences)
        EXPECT_EQ(sentence.find("file"), std::string::npos) << sentence;
}

TEST(ResultsFit, ComputingOneSurveyAgainBringsTheFitAlong) {
    Workbook workbook = finished({0});
    workbook.fit.pistons = {piston("1", "3.4960")};
    const Results before = compute(workbook, inch);
    for (Reading& reading : workbook.surveys[0].readings)
        reading.typed = typedThou("1.0");
    DoubtMemory memory;
    const Results again = computeAgain(workbook, inch, before, workbook.surveys[0].header.id,
                                       memory, Reckoning::whole);
    EXPECT_EQ(before.fit.bores[0].clearance->value, thou("4"));
    EXPECT_EQ(again.fit.bores[0].clearance->value, thou("5"));
}

TEST(ResultsFit, TheCsvHasPistonRingAndCleanUpInTheRowTheyComeFrom) {
    Workbook workbook = saltmarsh();
    workbook.sizing = demo::saltmarshSizes();
    const std::string csv = resultsCsv(workbook, compute(workbook, inch), {}, inch);
    std::vector<std::vector<std::string>> rows(1);
    std::string cell;
    bool quoted = false;
    for (const char c : csv) {
        if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == ',' || c == '\n')) {
            rows.back().push_back(std::exchange(cell, {}));
            if (c == '\n') rows.emplace_back();
        } else if (c != '\r')
            cell += c;
    }
    rows.pop_back();
    const auto column = [&](const std::string& name) {
        return static_cast<std::size_t>(std::ranges::find(rows[0], name) - rows[0].begin());
    };
    for (const auto& row : rows)
        ASSERT_EQ(row.size(), rows[0].size()) << row[0];
    ASSERT_LT(column("to file groove 2 (thou)"), rows[0].size());
    for (const auto& row : rows) {
        if (row[0] == "as found" && row[3] == "4") {
            EXPECT_EQ(row[column("clean-up on the worn bore (in)")], "3.43550");
            EXPECT_EQ(row[column("clean-up on the original axis (in)")], "3.43900");
            EXPECT_EQ(row[column("margin (thou)")], "4.00");
            EXPECT_EQ(row[column("piston")], "") << "that is of the final survey";
        }
        if (row[1] == "final" && row[3] == "5") {
            EXPECT_EQ(row[column("piston")], "2");
            EXPECT_EQ(row[column("piston decided")], "no");
            EXPECT_EQ(row[column("least clearance (thou)")], "4.20");
            EXPECT_EQ(row[column("ring groove 1")], "top 5");
            EXPECT_EQ(row[column("clean-up on the worn bore (in)")], "");
        }
    }
}

} // namespace
} // namespace borewright
