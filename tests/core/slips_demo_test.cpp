// SPDX-License-Identifier: GPL-3.0-or-later
// The demonstrations' planted mistakes: each is found with its story and its true value, nothing
// else is accused, and once the stories are accepted nothing is left to say. Figures are invented.
#include "core/gauging/slips.h"
#include "tests/support/demo_scenarios.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using demo::at;

std::vector<Suspicion> slipsIn(const Workbook& workbook, const std::string& survey) {
    return findSlips(workbook, *findSurvey(workbook, survey));
}

// "bore 2, 1.20 in, A: sign turned → 1.6", a suspicion a line.
std::string told(const Workbook& workbook, const std::string& survey) {
    std::string text;
    for (const Suspicion& suspicion : slipsIn(workbook, survey)) {
        const SlipStory& story = suspicion.stories.front();
        text += story.reason;
        for (const SlipFix& fix : story.fixes)
            text += "; " + describe(fix.station, workbook.block) + " → " +
                    (fix.value ? fix.value->text() : "read again");
        text += "\n";
    }
    return text;
}

void acceptAll(Workbook& workbook, const std::string& survey) {
    for (int i = 0; i < 10; ++i) {
        const auto found = slipsIn(workbook, survey);
        if (found.empty()) return;
        const Edit edit =
            acceptStory(workbook, survey, found.front().stories.front(), {1'775'000'000, 0});
        ASSERT_TRUE(borewright::apply(workbook, edit));
    }
}

TEST(SaltmarshSlips, TheSignAndTheTurnAreFound) {
    EXPECT_EQ(told(demo::saltmarsh(), "s1"), "sign turned; bore 2, 1.20 in, A → 1.6\n"
                                             "turn of the dial missed; bore 6, 0.60 in, B → 3.8\n");
}

TEST(SaltmarshSlips, ThePassedOverStationIsFoundAndLeftToRead) {
    const Workbook workbook = demo::saltmarsh();
    EXPECT_EQ(told(workbook, "s3"), "station skipped; bore 3, 3.75 in, B → -1.9; bore 3, 3.05 in, "
                                    "B → -2.2; bore 3, 1.80 in, B → read again\n");
    const auto found = slipsIn(workbook, "s3");
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].stories[0].toRead, std::vector{at(3, "1.80", "B")});
}

TEST(SaltmarshSlips, NothingElseIsAccused) {
    EXPECT_EQ(told(demo::saltmarsh(), "s2"), "");
    EXPECT_EQ(told(demo::saltmarsh(), "s4"), "") << "struck readings are not judged";
}

TEST(RushmereSlips, TheSwapAndTheExchangeAreFound) {
    EXPECT_EQ(told(demo::rushmere(), "s1"),
              "digits swapped; bore 2, 70 mm, B → 73.261\n"
              "axes exchanged; bore 3, 70 mm, A → 73.241; bore 3, 70 mm, B → 73.259\n");
    const auto found = slipsIn(demo::rushmere(), "s1");
    EXPECT_EQ(found[0].stories[0].words, "two digits swapped: 73.261 for 73.216");
    EXPECT_GT(found[0].stories[0].weight, 0.9);
}

TEST(RushmereSlips, TheKnockedGaugeIsTakenOffAllItsCells) {
    const Workbook workbook = demo::rushmere();
    const auto found = slipsIn(workbook, "s2");
    ASSERT_EQ(found.size(), 1U);
    ASSERT_EQ(found[0].stories[0].slip, Slip::gaugeKnocked);
    EXPECT_EQ(found[0].readings.size(), 11U) << "bore 3 but for 47 B, where there is no wall";
    for (const SlipFix& fix : found[0].stories[0].fixes) {
        const Reading& old = findSurvey(workbook, "s2")->readings[*fix.replaces];
        EXPECT_EQ(old.station.bore, 3);
        EXPECT_EQ(old.typed.value() - fix.value->value(), *readLength("6", Unit::micrometre))
            << old.typed.text() << " became " << fix.value->text();
    }
}

TEST(RushmereSlips, TheMillimetresAreFound) {
    EXPECT_EQ(told(demo::rushmere(), "s3"), "wrong unit; bore 1, 70 mm, B → 30\n");
    EXPECT_EQ(told(demo::rushmere(), "s4"), "");
}

TEST(DemoSlips, OnceAcceptedNothingIsLeftToSay) {
    for (Workbook workbook : {demo::saltmarsh(), demo::rushmere()})
        for (const char* survey : {"s1", "s2", "s3", "s4"}) {
            acceptAll(workbook, survey);
            EXPECT_EQ(told(workbook, survey), "") << workbook.job.engine << ", " << survey;
        }
}

} // namespace
} // namespace borewright
