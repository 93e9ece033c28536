// SPDX-License-Identifier: GPL-3.0-or-later
// How often clean readings are accused, slips found and their stories right: made bores, noise that
// is known, a fixed seed. Prints the rates and holds them to their limits.
#include "tests/support/slip_bores.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>

namespace borewright {
namespace {

using namespace test;

BlockPlan planFor(BoreKind kind, Random& random) {
    constexpr int boreCounts[] = {1, 3, 6};
    BlockPlan plan;
    plan.kind = kind;
    plan.gear = allGearKinds[random.next() % 4];
    plan.bores = boreCounts[random.next() % 3];
    plan.levels = 4 + static_cast<int>(random.next() % 5);
    plan.oddBore = plan.bores > 1 && random.next() % 4 == 0;
    return plan;
}

struct Count {
    int of = 0, hits = 0;
    [[nodiscard]] double share() const { return of > 0 ? static_cast<double>(hits) / of : 0; }
};

std::set<std::size_t> accusedIn(const std::vector<Suspicion>& suspicions) {
    std::set<std::size_t> accused;
    for (const Suspicion& suspicion : suspicions)
        accused.insert(suspicion.readings.begin(), suspicion.readings.end());
    return accused;
}

TEST(SlipRates, FewCleanReadingsAreAccused) {
    Random random(20260311);
    Count all;
    std::map<int, Count> byBores;
    std::map<GearKind, Count> byGear;
    for (const BoreKind kind : allBoreKinds) {
        Count here;
        for (int i = 0; i < 250; ++i) {
            const BlockPlan plan = planFor(kind, random);
            const Workbook workbook = readBlock(plan, random);
            const Survey& survey = workbook.surveys.front();
            const int accused = static_cast<int>(accusedIn(findSlips(workbook, survey)).size());
            for (Count* count : {&all, &here, &byBores[plan.bores], &byGear[plan.gear]}) {
                count->of += static_cast<int>(survey.readings.size());
                count->hits += accused;
            }
        }
        std::printf("clean %-10s %5d readings, accused %.2f %%\n", nameOf(kind).c_str(), here.of,
                    100 * here.share());
    }
    for (const auto& [bores, count] : byBores)
        std::printf("clean, %d bores  %5d readings, accused %.2f %%\n", bores, count.of,
                    100 * count.share());
    for (const auto& [gear, count] : byGear)
        std::printf("clean, gear %d  %5d readings, accused %.2f %%\n", static_cast<int>(gear),
                    count.of, 100 * count.share());
    std::printf("clean, all %d readings, accused %.2f %%\n", all.of, 100 * all.share());
    EXPECT_LE(all.share(), 1.0 / 200) << "one in two hundred";
}

TEST(SlipRates, FewAreAccusedWhileABoreIsStillBeingRead) {
    Random random(20260313);
    Count all;
    for (int i = 0; i < 1500; ++i) {
        Workbook workbook = readBlock(planFor(allBoreKinds[i % 8], random), random);
        auto& readings = workbook.surveys.front().readings;
        readings.resize(1 + random.next() % readings.size());
        all.of += static_cast<int>(readings.size());
        all.hits +=
            static_cast<int>(accusedIn(findSlips(workbook, workbook.surveys.front())).size());
    }
    std::printf("under way, %d readings, accused %.2f %%\n", all.of, 100 * all.share());
    EXPECT_LE(all.share(), 1.0 / 200) << "one in two hundred";
}

const std::map<Slip, const char*> kinds{
    {Slip::digitsSwapped, "digits swapped"},   {Slip::signTurned, "sign turned"},
    {Slip::turnsMissed, "turns missed"},       {Slip::complement, "complement"},
    {Slip::graduation, "graduation"},          {Slip::unit, "unit"},
    {Slip::axesExchanged, "axes exchanged"},   {Slip::stationsExchanged, "stations exchanged"},
    {Slip::columnReversed, "column reversed"}, {Slip::stationSkipped, "station skipped"},
    {Slip::typedAgain, "typed again"}};

struct Rates {
    Count found, told, innocent;
    std::map<int, Count> byBores;
    void operator+=(const Rates& other) {
        for (auto count : {&Rates::found, &Rates::told, &Rates::innocent}) {
            (this->*count).of += (other.*count).of;
            (this->*count).hits += (other.*count).hits;
        }
        for (const auto& [bores, count] : other.byBores) {
            byBores[bores].of += count.of;
            byBores[bores].hits += count.hits;
        }
    }
};

// The story is right where its kind is, and the value it offers is what was meant.
bool isRight(const SlipStory& story, Slip slip, const MadeSlip& made) {
    if (story.slip != slip) return false;
    if (made.readings.size() > 1 || story.fixes.empty() || !story.fixes.front().value) return true;
    return slip == Slip::unit || story.fixes.front().value->value() == made.meant->value();
}

Rates ratesOf(Slip slip, int trials, Random& random) {
    constexpr double sigmas = 6;
    Rates rates;
    for (int done = 0; done < trials;) {
        const BlockPlan plan = planFor(allBoreKinds[random.next() % 8], random);
        Workbook workbook = readBlock(plan, random);
        Survey& survey = workbook.surveys.front();
        // A slip falls on any reading alike, so that a survey of more readings sees more of them.
        if (random.uniform() > static_cast<double>(survey.readings.size()) / 96) continue;
        const double least_um = sigmas * ownNoise_um(survey.header.gauge);
        const auto made = makeSlip(workbook, slip, least_um, random);
        if (!made) continue;
        ++done;
        const auto suspicions = findSlips(workbook, survey);
        const Suspicion* found = nullptr;
        for (const Suspicion& suspicion : suspicions)
            for (const std::size_t reading : suspicion.readings)
                if (std::ranges::find(made->readings, reading) != made->readings.end())
                    found = found != nullptr ? found : &suspicion;
        ++rates.found.of;
        ++rates.byBores[plan.bores].of;
        rates.innocent.of += static_cast<int>(survey.readings.size());
        for (const Suspicion& suspicion : suspicions)
            if (&suspicion != found)
                rates.innocent.hits += static_cast<int>(suspicion.readings.size());
        if (found == nullptr) continue;
        ++rates.found.hits;
        ++rates.byBores[plan.bores].hits;
        ++rates.told.of;
        if (isRight(found->stories.front(), slip, *made)) ++rates.told.hits;
    }
    return rates;
}

TEST(SlipRates, MostSlipsAreFoundAndTheirStoriesRight) {
    Random random(20260312);
    Rates all;
    for (const auto& [slip, name] : kinds) {
        const Rates rates = ratesOf(slip, 300, random);
        std::printf("%-18s found %5.1f %%, story right %5.1f %%, others accused %.2f %%\n", name,
                    100 * rates.found.share(), 100 * rates.told.share(),
                    100 * rates.innocent.share());
        all += rates;
    }
    std::printf("%-18s found %5.1f %%, story right %5.1f %%, others accused %.2f %%\n", "all",
                100 * all.found.share(), 100 * all.told.share(), 100 * all.innocent.share());
    for (const auto& [bores, count] : all.byBores)
        std::printf("blocks of %d          found %5.1f %% of %d\n", bores, 100 * count.share(),
                    count.of);
    EXPECT_GE(all.found.share(), 0.90) << "of slips larger than six standard deviations";
    EXPECT_GE(all.told.share(), 0.80) << "of the first stories";
    EXPECT_LE(all.innocent.share(), 1.0 / 200) << "of readings that were right";
}

} // namespace
} // namespace borewright
