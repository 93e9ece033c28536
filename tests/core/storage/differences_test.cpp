// SPDX-License-Identifier: GPL-3.0-or-later
// The list of differences finds exactly the edits that were made, and never passes one over.
#include "core/storage/differences.h"
#include "core/workbook/edit.h"
#include "tests/support/blocks.h"
#include "tests/support/random_workbook.h"

#include <algorithm>
#include <chrono>
#include <random>
#include <set>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// As many readings as asked, over the bores of a large block, one survey.
Workbook blockWith(int readings, int bores = 8) {
    Workbook workbook = inchBlock(bores);
    const std::string survey = addSurvey(workbook, SurveyKind::asFound, "as found");
    addWornLimits(workbook, "3.504", "3", "2");
    Survey& kept = *findSurvey(workbook, survey);
    const auto plan = plannedStations(workbook.block);
    for (int i = 0; i < readings; ++i) {
        Reading reading;
        reading.station = plan[static_cast<std::size_t>(i) % plan.size()];
        reading.typed = typed(std::to_string(i % 9) + ".5", Unit::thou);
        reading.time = {1'774'000'000 + i, 60};
        kept.readings.push_back(reading);
    }
    return workbook;
}

std::string all(const std::vector<Difference>& list) {
    std::string text;
    for (const Difference& one : list)
        text += inWords(one) + '\n';
    return text;
}

// What one edit differs by, in words.
std::string after(const Workbook& workbook, const Edit& edit) {
    Workbook changed = workbook;
    const auto done = apply(changed, edit);
    EXPECT_TRUE(done) << done.error().message();
    return all(differences(workbook, changed));
}

TEST(Differences, EqualWorkbooksDifferInNothing) {
    for (unsigned seed = 0; seed < 100; ++seed)
        EXPECT_EQ(all(differences(randomWorkbook(seed), randomWorkbook(seed))), "") << seed;
}

TEST(Differences, AReadingIsToldByBoreAndStation) {
    const Workbook workbook = blockWith(80);
    Workbook changed = workbook;
    changed.surveys[0].readings[3].typed = typed("-1.5", Unit::thou);
    const auto list = differences(workbook, changed);
    ASSERT_EQ(list.size(), 1U) << all(list);
    EXPECT_EQ(inWords(list[0]), "as found, bore 1, 1.25 in, B: reading was 3.5 thou, is -1.5 thou");
    EXPECT_EQ(list[0].survey, "s1");
    EXPECT_EQ(list[0].bore, 1);
    EXPECT_EQ(list[0].station, workbook.surveys[0].readings[3].station);
}

TEST(Differences, StruckKeptAndAcceptedReadingsAreToldAsSuch) {
    const Workbook workbook = blockWith(80);
    EXPECT_EQ(
        after(workbook, SetStrike{"s1", 3, Strike{"hair on the foot", {1'774'000'500, 60}, {}}}),
        "as found, bore 1, 1.25 in, B: reading was 3.5 thou, is 3.5 thou, struck out (hair on "
        "the foot)\n");
    EXPECT_EQ(after(workbook, SetKept{"s1", 3, true}),
              "as found, bore 1, 1.25 in, B: reading was 3.5 thou, is 3.5 thou, kept as it is\n");
    const auto accepted = acceptInstead(workbook, "s1", 3, typed("5.3", Unit::thou),
                                        "digits swapped", {1'774'000'500, 60});
    EXPECT_EQ(after(workbook, accepted),
              "as found, bore 1, 1.25 in, B: reading was 3.5 thou, is 3.5 thou, struck out (digits "
              "swapped)\n"
              "as found, bore 1, 1.25 in, B: reading was not there, is 5.3 thou, accepted (digits "
              "swapped)\n");
}

TEST(Differences, ARepeatInTheMiddleIsOneMoreReading) {
    Workbook workbook = blockWith(80);
    Reading repeat = workbook.surveys[0].readings[3];
    repeat.typed = typed("3.6", Unit::thou);
    EXPECT_EQ(after(workbook, InsertReading{"s1", 3, repeat}),
              "as found, bore 1, 1.25 in, B: reading was not there, is 3.6 thou\n");
}

TEST(Differences, FieldsOfTheRecordAreToldInTheirPlace) {
    const Workbook workbook = blockWith(4);
    Job job = workbook.job;
    job.customer = "A. Example";
    EXPECT_EQ(after(workbook, SetJob{job}), "job: customer was empty, is A. Example\n");
    std::vector<LimitSet> sets = workbook.limitSets;
    sets[0].limits.sizeUpper = typedIn("3.505");
    sets[0].decision.kind = DecisionRule::Kind::plain;
    EXPECT_EQ(after(workbook, SetLimitSets{sets}),
              "limits worn, decision: rule was 5 percent, is plain\n"
              "limits worn: size upper was 3.504 in, is 3.505 in\n");
    Block block = workbook.block;
    block.bores[1].standardSize = typedIn("3.52");
    EXPECT_EQ(after(workbook, SetBlock{block}),
              "bore 2: standard size was 3.5000 in, is 3.52 in\n");
    FitRecord fit;
    fit.pistons.push_back({"p1", "3", typedIn("3.498"), {}, {}, {}, {}, {}, {}, {}, {}, {}});
    EXPECT_EQ(after(workbook, SetFit{fit}),
              "fit, piston 3: was not there, is label 3, size 3.498 in\n");
    SurveyHeader header = workbook.surveys[0].header;
    header.gauge.gear.lastChecked = "May";
    EXPECT_EQ(after(workbook, SetSurveyHeader{"s1", header}),
              "as found, gauge, gear: last checked was empty, is May\n");
}

TEST(Differences, ASurveyOfOneSideAloneIsOneDifference) {
    const Workbook workbook = blockWith(80);
    Workbook without = workbook;
    without.surveys.clear();
    EXPECT_EQ(all(differences(without, workbook)),
              "as found: survey was not there, is as found of " +
                  dateInWords(workbook.surveys[0].header.time) + ", 80 readings\n");
}

// Chance edits of readings, each at a station of its own: exactly these are found.
TEST(Differences, RandomEditsOfReadingsAreFoundExactly) {
    std::mt19937 random(7);
    for (int round = 0; round < 300; ++round) {
        const Workbook workbook = blockWith(80);
        Workbook changed = workbook;
        auto& readings = changed.surveys[0].readings;
        std::set<Station> touched;
        for (int i = static_cast<int>(random() % 12); i >= 0; --i) {
            const std::size_t at = random() % readings.size();
            Reading& reading = readings[at];
            if (!touched.insert(reading.station).second) continue;
            switch (random() % 5) {
            case 0:
                reading.typed = typed("9.9", Unit::thou);
                break;
            case 1:
                reading.struck = Strike{"chip", {1'774'100'000, 0}, {}};
                break;
            case 2:
                reading.time.secondsSinceEpoch += 1;
                break;
            case 3:
                reading.unknown = {{"later", "1"}};
                break;
            case 4:
                readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(at));
                break;
            }
        }
        std::multiset<Station> found;
        for (const Difference& one : differences(workbook, changed))
            if (one.station) found.insert(*one.station);
        EXPECT_EQ(found, std::multiset<Station>(touched.begin(), touched.end()))
            << "round " << round;
    }
}

// Whatever differs at all is told of: every part of a random workbook put in another's place.
TEST(Differences, NoPartThatDiffersIsPassedOver) {
    using Part = void (*)(Workbook&, const Workbook&);
    const Part parts[] = {
        [](Workbook& w, const Workbook& o) { w.job = o.job; },
        [](Workbook& w, const Workbook& o) { w.block = o.block; },
        [](Workbook& w, const Workbook& o) { w.limitSets = o.limitSets; },
        [](Workbook& w, const Workbook& o) { w.straightAim = o.straightAim; },
        [](Workbook& w, const Workbook& o) { w.surveys = o.surveys; },
        [](Workbook& w, const Workbook& o) { w.studies = o.studies; },
        [](Workbook& w, const Workbook& o) { w.sizing = o.sizing; },
        [](Workbook& w, const Workbook& o) { w.targets = o.targets; },
        [](Workbook& w, const Workbook& o) { w.fit = o.fit; },
        [](Workbook& w, const Workbook& o) { w.hone = o.hone; },
        [](Workbook& w, const Workbook& o) { w.sheet = o.sheet; },
        [](Workbook& w, const Workbook& o) { w.invented = o.invented; },
        [](Workbook& w, const Workbook& o) { w.unknown = o.unknown; },
        [](Workbook& w, const Workbook&) { std::ranges::reverse(w.surveys); },
        [](Workbook& w, const Workbook&) { std::ranges::reverse(w.limitSets); },
        [](Workbook& w, const Workbook&) { std::ranges::reverse(w.block.bores); },
        [](Workbook& w, const Workbook&) {
            for (Survey& survey : w.surveys)
                std::ranges::reverse(survey.readings);
        },
    };
    int differing = 0;
    for (unsigned seed = 0; seed < 100; ++seed)
        for (std::size_t i = 0; i < std::size(parts); ++i) {
            const Workbook workbook = randomWorkbook(seed);
            Workbook changed = workbook;
            parts[i](changed, randomWorkbook(seed + 1000));
            const auto list = differences(workbook, changed);
            EXPECT_EQ(list.empty(), workbook == changed) << "seed " << seed << ", part " << i;
            differing += workbook == changed ? 0 : 1;
            for (const Difference& one : list)
                EXPECT_NE(one.what, "something that has no name here")
                    << "seed " << seed << ", part " << i;
        }
    EXPECT_GT(differing, 1000);
}

TEST(Differences, TwentyThousandReadingsAreComparedInNoTime) {
    const Workbook workbook = blockWith(20'000, 16);
    Workbook changed = workbook;
    changed.surveys[0].readings[12'345].typed = typed("9.9", Unit::thou);
    const auto began = std::chrono::steady_clock::now();
    const auto list = differences(workbook, changed);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - began;
    printf("20 000 readings compared in %.1f ms\n", took.count());
    EXPECT_EQ(list.size(), 1U) << all(list);
    EXPECT_LT(took.count(), 1000) << "ms; a few tens on an ordinary machine";
}

} // namespace
} // namespace borewright
