// SPDX-License-Identifier: GPL-3.0-or-later
// The planner against benches whose physics is not its own, beside the rule of thumb and beside
// a short search that knows everything. Few seeds here; BOREWRIGHT_HONE_SEEDS=100 runs that
// many and prints the whole table with a row for each trait, and takes its time.
#include "tests/support/harsh_bench.h"
#include "tests/support/loop_table.h"
#include "tests/support/mild_bench.h"
#include "tests/support/planned_policy.h"
#include "tests/support/rule_of_thumb.h"
#include "tests/support/told_everything.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <gtest/gtest.h>

namespace borewright::test {
namespace {

constexpr std::uint64_t firstSeed = 6001; // seeds below were looked at while the planner was made
constexpr std::uint64_t fewSeeds = 12;

std::uint64_t askedSeeds() {
    const char* asked = std::getenv("BOREWRIGHT_HONE_SEEDS");
    return asked == nullptr ? 0 : std::strtoull(asked, nullptr, 10);
}

std::uint64_t seeds() {
    return askedSeeds() > 0 ? askedSeeds() : fewSeeds;
}

SimulatedMaker gentle() {
    return [](std::uint64_t seed) { return std::make_unique<SimulatedBench>(mildBench(seed)); };
}

SimulatedMaker harsh(const HarshTraits& traits) {
    return [traits](std::uint64_t seed) {
        return std::make_unique<SimulatedBench>(harshBench(seed, traits));
    };
}

LoopSummary row(const std::string& policy, const HonePolicyMaker& maker, const std::string& bench,
                const SimulatedMaker& benches) {
    const LoopSummary summary = summaryOf(runSeeds(benches, maker, firstSeed, firstSeed + seeds()));
    fmt::print("{}\n", loopTableRow(policy, bench, summary));
    std::fflush(stdout);
    return summary;
}

// What it promises has to hold on physics that it does not know.
void expectHonest(const LoopSummary& planned, double covered) {
    EXPECT_GT(planned.covered, covered) << "the band of 95 % has to hold what is read";
    EXPECT_LT(planned.chanceLargest, 0.02) << "it proposes nothing riskier";
    EXPECT_LE(planned.chanceHappened, 0.02) << "the chance of going over is promised at 1 %";
}

void printSoftAndTold() {
    MildTraits soft;
    soft.compliance_um = 60;
    row("planned", PlannedPolicy::make, "three times soft", [soft](std::uint64_t seed) {
        return std::make_unique<SimulatedBench>(mildBench(seed, soft));
    });
    const std::uint64_t told = std::min<std::uint64_t>(20, seeds());
    for (const bool mild : {true, false}) {
        const SimulatedMaker benches = mild ? gentle() : harsh(HarshTraits::harsh());
        const auto results = runToldEverything(benches, firstSeed, firstSeed + told);
        fmt::print("{}\n",
                   loopTableRow("told everything", mild ? "gentle" : "harsh", summaryOf(results)));
        std::fflush(stdout);
    }
}

TEST(ClosedLoop, OnTheGentleBenchBoresComeOutStraightAndToSize) {
    fmt::print("{}\n", loopTableHead());
    const LoopSummary rule = row("rule of thumb", RuleOfThumb::make, "gentle", gentle());
    const LoopSummary planned = row("planned", PlannedPolicy::make, "gentle", gentle());
    // Wanted are 95 % in 10 set-ups; few seeds say it less exactly than many.
    EXPECT_GT(planned.straight, seeds() < 40 ? 0.8 : 0.9);
    EXPECT_LE(planned.setUps, 11);
    EXPECT_LT(planned.spread, rule.spread / 4);
    EXPECT_LT(planned.most, overCap_um) << "over size by more than 0.0002 in";
    expectHonest(planned, 0.92);
}

TEST(ClosedLoop, OnTheHarshBenchItStillBeatsTheRuleOfThumb) {
    fmt::print("{}\n", loopTableHead());
    const SimulatedMaker benches = harsh(HarshTraits::harsh());
    const LoopSummary rule = row("rule of thumb", RuleOfThumb::make, "harsh", benches);
    const LoopSummary planned = row("planned", PlannedPolicy::make, "harsh", benches);
    EXPECT_GT(planned.straight, rule.straight);
    EXPECT_LT(planned.spread, 0.8 * rule.spread);
    EXPECT_LE(planned.over, rule.over);
    // Wanted are 95 %: what tilting stones and ports do between the stations is still missed.
    expectHonest(planned, 0.85);
}

TEST(ClosedLoop, SixBoresShareTheirStops) {
    const std::uint64_t blocks = std::max<std::uint64_t>(1, askedSeeds() / 10);
    const BlockMaker six = [](std::uint64_t seed) { return mildBlock(seed, 6); };
    const auto run = [&](const std::string& policy, const BlockPolicyMaker& maker) {
        const auto results = runBlocks(six, maker, firstSeed, firstSeed + blocks);
        fmt::print("{}\n", blockTableRow(policy, "gentle", results));
        std::fflush(stdout);
        double stops = 0;
        for (const BlockResult& result : results)
            stops += static_cast<double>(result.stops) / static_cast<double>(blocks);
        return stops;
    };
    fmt::print("{}\n", blockTableHead());
    const double rule = run("rule of thumb", boreByBore(RuleOfThumb::make));
    const double planned = run("planned", PlannedBlock::make);
    EXPECT_LT(planned, rule) << "stops of a block of six";
}

// Each trait alone makes a bench that can be honed on. The rows of the planner, and of the
// search that is told everything, are printed where the whole table is asked for.
TEST(ClosedLoop, OneTraitAtATime) {
    fmt::print("{}\n", loopTableHead());
    for (const std::string& name : HarshTraits::names()) {
        const SimulatedMaker benches = harsh(HarshTraits::only(name));
        const LoopSummary rule = row("rule of thumb", RuleOfThumb::make, name, benches);
        EXPECT_EQ(rule.unsaid, 0) << name << ": the rule of thumb comes to an end";
        EXPECT_LT(rule.spread, 80) << name;
        if (askedSeeds() > 0) row("planned", PlannedPolicy::make, name, benches);
    }
    if (askedSeeds() > 0) printSoftAndTold();
}

} // namespace
} // namespace borewright::test
