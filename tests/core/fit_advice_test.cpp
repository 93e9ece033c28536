// SPDX-License-Identifier: GPL-3.0-or-later
// What must never be advised: a finish size beyond the maker's greatest, one that leaves the score,
// one piston for two bores, filing before honing; and what does not fit together said. Built on the
// invented demonstration, its slips mended.
#include "core/results/results.h"
#include "core/workbook/edit.h"
#include "tests/support/demo_scenarios.h"

#include <gmock/gmock.h>

namespace borewright {
namespace {

using testing::Contains;
using testing::HasSubstr;

const DisplayUnits inch = DisplayUnits::inch();

TypedLength inches(std::string_view text) {
    return *readTyped(text, Unit::inch);
}

// The demonstration with its last survey taken away from some bores, or from all.
Workbook finishedOnly(const std::vector<int>& bores) {
    Workbook workbook = demo::correctedSaltmarsh();
    std::erase_if(workbook.surveys.back().readings, [&](const Reading& reading) {
        return std::ranges::find(bores, reading.station.bore) == bores.end();
    });
    std::vector<Station> asked;
    for (const Station& station : plannedStations(workbook.block))
        if (std::ranges::find(bores, station.bore) != bores.end()) asked.push_back(station);
    workbook.surveys.back().header.asked = asked;
    return workbook;
}

Workbook asFound() {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.surveys.resize(1);
    return workbook;
}

void sizePistons(Workbook& workbook, const std::vector<const char*>& sizes) {
    for (std::size_t i = 0; i < sizes.size(); ++i)
        workbook.fit.pistons[i].size = inches(sizes[i]);
}

TEST(Advice, NoPistonBeyondTheGreatestOversizeIsHonedFor) {
    Workbook workbook = asFound();
    sizePistons(workbook, {"3.4658", "3.4662", "3.4660", "3.4659", "3.4661", "3.4660"});
    const FitResult fit = compute(workbook, inch).fit;
    EXPECT_TRUE(fit.finish.empty()) << "0.050 over, 0.030 is the most";
    EXPECT_TRUE(pistonTargets(fit, workbook.fit, inch).empty());
    EXPECT_THAT(fit.sentences, Contains(HasSubstr("greatest oversize")));
}

TEST(Advice, NoPistonIsHonedForThatLeavesTheScore) {
    Workbook workbook = asFound();
    sizePistons(workbook, {"3.4258", "3.4262", "3.4260", "3.4259", "3.4261", "3.4260"});
    const FitResult fit = compute(workbook, inch).fit;
    const FinishTargets targets = pistonTargets(fit, workbook.fit, inch);
    EXPECT_FALSE(targets.contains(4)) << "bore 4 needs 3.4360, its piston asks for 3.4301";
    EXPECT_EQ(targets.size(), 5U) << "the others are not spoiled";
    EXPECT_THAT(fit.sentences, Contains(HasSubstr("Bore 4: piston 4 asks for 3.4301 in, which does "
                                                  "not clean it up")));
}

TEST(Advice, APistonInAFinishedBoreIsDealtToNoOther) {
    const Workbook workbook = finishedOnly({1});
    const FitResult fit = compute(workbook, inch).fit;
    ASSERT_TRUE(fit.bores[0].finished);
    ASSERT_TRUE(fit.bores[0].piston);
    EXPECT_EQ(fit.finish.size(), 5U);
    for (const FinishForPiston& one : fit.finish) {
        EXPECT_NE(one.piston, *fit.bores[0].piston) << "bore " << one.bore;
        EXPECT_NE(one.bore, 1);
    }
    EXPECT_EQ(fit.matching.bores, std::vector{1}) << "only what is finished is matched";
    EXPECT_TRUE(fit.matching.best) << fit.matching.why;
}

TEST(Advice, NoRingIsFiledInABoreStillToBeHoned) {
    const FitResult fit = compute(finishedOnly({1}), inch).fit;
    for (const BoreFit& bore : fit.bores)
        for (const BoreFit::RingHere& ring : bore.rings)
            if (bore.bore != 1) {
                EXPECT_FALSE(ring.gap) << "bore " << bore.bore;
            }
    Workbook aimed = asFound();
    aimed.fit.pistons.clear();
    for (int bore = 1; bore <= 6; ++bore)
        aimed.targets[bore].size = inches("3.4400");
    const FitResult waiting = compute(aimed, inch).fit;
    EXPECT_THAT(waiting.ringHeadline, HasSubstr("after the last honing"));
    for (const std::string& sentence : waiting.ringSentences)
        EXPECT_THAT(sentence, testing::Not(HasSubstr("file"))) << "to file now is to file too much";
}

TEST(Advice, PistonsAtHandGiveASizeThatEachOfThemGoesInto) {
    Workbook workbook = asFound();
    const SizingResult sizing = compute(workbook, inch).sizing;
    bool seen = false;
    for (const OfferResult& result : sizing.choice.offers) {
        if (result.offer.oversize) continue;
        seen = true;
        for (const auto& bore : result.offer.bores) {
            ASSERT_TRUE(bore && bore->lower && bore->upper);
            EXPECT_EQ(*bore->lower, *readLength("3.4400", Unit::inch)) << "3.4362 + 3.8 thou";
            EXPECT_EQ(*bore->upper, *readLength("3.4406", Unit::inch)) << "3.4358 + 4.8 thou";
        }
    }
    EXPECT_TRUE(seen);
    // Neighbours close, the whole group far apart.
    sizePistons(workbook, {"3.4340", "3.4358", "3.4376", "3.4394", "3.4412", "3.4430"});
    for (const OfferResult& result : compute(workbook, inch).sizing.choice.offers)
        EXPECT_TRUE(result.offer.oversize) << result.offer.name << " cannot be one size";
}

TEST(Advice, ABoreThatNobodyReadGetsNoTarget) {
    Workbook workbook = asFound();
    std::erase_if(workbook.surveys.front().readings,
                  [](const Reading& reading) { return reading.station.bore == 4; });
    const SizingResult sizing = compute(workbook, inch).sizing;
    ASSERT_TRUE(sizing.choice.chosen);
    const FinishTargets targets = targetsOf(sizing, *sizing.choice.chosen, inch);
    EXPECT_FALSE(targets.contains(4));
    EXPECT_EQ(targets.size(), 5U);
}

TEST(Advice, ABlockBoredBeforeIsNotTakenForStandard) {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.surveys.back().header.kind = SurveyKind::asFound;
    workbook.surveys.erase(workbook.surveys.begin(), workbook.surveys.end() - 1);
    workbook.sizing.bores.clear();
    workbook.sizing.centring = Centring::originalAxis;
    const SizingResult sizing = compute(workbook, inch).sizing;
    ASSERT_TRUE(sizing.cleanUps[0]);
    EXPECT_TRUE(sizing.cleanUps[0]->boredBefore);
    EXPECT_FALSE(sizing.cleanUps[0]->originalAxis);
    EXPECT_THAT(sizing.sentences, Contains(HasSubstr("Say what they were last made to")));

    for (int bore = 1; bore <= 6; ++bore)
        workbook.sizing.bores[bore].madeTo = inches("3.4400");
    const SizingResult said = compute(workbook, inch).sizing;
    EXPECT_FALSE(said.cleanUps[0]->boredBefore);
    EXPECT_EQ(formatSize(said.cleanUps[0]->originalAxis->size, inch), "3.4406")
        << "0.3 thou of wear counts twice";
}

TEST(Advice, TheMostCarefulRuleOfItsSurveysChoosesTheSize) {
    Workbook workbook = asFound();
    workbook.sizing.bores[4].damages.front().deep = *readTyped("8.1", Unit::thou);
    // Margin at 0.020: −0.2 thou, within the guard of 0.2.
    const auto cleansFour = [](const Workbook& block) {
        for (const OfferResult& result : compute(block, inch).sizing.choice.offers)
            if (result.offer.name == "0.020 in") return result.cells[3].cleans;
        return Cleans::unknown;
    };
    const Cleans before = cleansFour(workbook);
    LimitSet plain = workbook.limitSets.front();
    plain.id = "l9";
    plain.decision.kind = DecisionRule::Kind::plain;
    workbook.limitSets.push_back(plain);
    workbook.surveys.front().header.limitSet = "l1";
    Survey again = workbook.surveys.front();
    again.header.id = "s9";
    again.header.limitSet = "l9";
    std::erase_if(again.readings, [](const Reading& reading) { return reading.station.bore != 6; });
    workbook.surveys.push_back(again);
    EXPECT_EQ(cleansFour(workbook), before) << "bore 6 read again under a plain rule";
}

TEST(Advice, LimitsOfAnotherOversizeAreNotTakenForThisOne) {
    Workbook workbook = asFound();
    SizingPlan plan = workbook.sizing;
    plan.sizes[2].lower = inches("3.4495");
    plan.sizes[2].upper = inches("3.4510");
    const auto done = borewright::apply(workbook, SetSizing{plan});
    ASSERT_FALSE(done) << "the limits of 0.030 given to 0.020";
    EXPECT_THAT(done.error().message(), HasSubstr("0.020"));

    workbook.sizing = plan; // as a file may have it
    const SizingResult sizing = compute(workbook, inch).sizing;
    ASSERT_TRUE(sizing.choice.chosen);
    EXPECT_NE(sizing.choice.offers[*sizing.choice.chosen].offer.name, "0.020 in");
    EXPECT_THAT(sizing.sentences, Contains(HasSubstr("0.020 in is not offered to")));
}

TEST(Advice, WhatCannotBeInThisBlockIsRefusedAndUndoStillWorks) {
    Workbook workbook = asFound();
    SizingPlan plan = workbook.sizing;
    plan.bores[4].damages.front().depth = inches("60");
    EXPECT_FALSE(borewright::apply(workbook, SetSizing{plan})) << "below the closed end";
    plan = workbook.sizing;
    plan.bores[1].madeTo = inches("34.200");
    EXPECT_FALSE(borewright::apply(workbook, SetSizing{plan})) << "a slip of the point";

    workbook.sizing = plan; // as a file may have it
    const Workbook before = workbook;
    const auto undo = borewright::apply(workbook, SetSizing{asFound().sizing});
    ASSERT_TRUE(undo);
    ASSERT_TRUE(borewright::apply(workbook, *undo)) << "undo brings back what the file had";
    EXPECT_EQ(workbook, before);
}

TEST(Advice, AFitAsFoundGoesByTheLastReadings) {
    Workbook workbook = asFound();
    sizePistons(workbook, {"3.4158", "3.4162", "3.4160", "3.4159", "3.4161", "3.4160"});
    Survey again = workbook.surveys.front();
    again.header.id = "s9";
    workbook.surveys.front().header.gauge.setSize = inches("3.4500"); // set on the wrong ring
    workbook.surveys.push_back(again);
    const FitResult fit = compute(workbook, inch).fit;
    ASSERT_EQ(fit.measured.size(), 6U);
    EXPECT_EQ(fit.measured.front().survey, "s9");
}

TEST(Advice, AHoneThatAimsElsewhereIsSaid) {
    Workbook workbook = asFound();
    workbook.targets[1] = {inches("3.4300"), {}, {}, "0.010 in over", {}};
    EXPECT_THAT(compute(workbook, inch).sizing.sentences,
                Contains(HasSubstr("Bore 1: the hone aims at 3.4300 in (0.010 in over)")));
}

} // namespace
} // namespace borewright
