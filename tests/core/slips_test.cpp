// SPDX-License-Identifier: GPL-3.0-or-later
// Each slip made in a block whose readings are known: found with its own story and the value that
// was meant. All figures are invented.
#include "core/gauging/slips.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_survey_builder.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

const std::vector<std::string> levels{"0.5", "1.1", "1.7", "2.3", "2.9", "3.5"};

// Three worn bores with a ridge; bore 2 as given.
class Slips : public testing::Test {
protected:
    Slips() {
        workbook = inchBlock(3, levels);
        addSurvey(workbook, SurveyKind::asFound, "found");
    }
    Survey& survey() { return workbook.surveys.front(); }

    void read(const std::string& a = trueA, const std::string& b = trueB) {
        survey() = demo::SurveyBuilder(workbook.block, survey().header, Unit::thou)
                       .bore(1, "0.3 2.4 1.9 1.6 1.2 0.8", "0.4 3.6 2.9 2.3 1.7 1.1")
                       .bore(2, a, b)
                       .bore(3, "0.3 2.5 2.0 1.7 1.3 0.9", "0.5 3.8 3.1 2.5 1.8 1.2")
                       .take();
    }
    // A block under way, smaller than its setting: the dial reads minus.
    void readBelow(const std::string& a) {
        survey().header.gauge.dial.face = Dial::Face::round;
        survey() = demo::SurveyBuilder(workbook.block, survey().header, Unit::thou)
                       .bore(1, "-4.3 -4.4 -4.5 -4.7 -5.2 -5.6", "-4.2 -4.3 -4.5 -4.6 -5.1 -5.5")
                       .bore(2, a, "-4.4 -4.4 -4.6 -4.7 -5.2 -5.6")
                       .bore(3, "-4.1 -4.3 -4.4 -4.5 -5.0 -5.4", "-4.0 -4.2 -4.3 -4.5 -5.0 -5.3")
                       .take();
    }

    std::string first() {
        const auto found = findSlips(workbook, survey());
        if (found.empty()) return "nothing";
        if (found.size() > 1) return "more than one";
        const SlipStory& story = found[0].stories.front();
        std::string text = story.words + " |";
        for (const SlipFix& fix : story.fixes)
            text += " " + fix.station.axis + formatDepth(fix.station.depth, DisplayUnits::inch()) +
                    "=" + (fix.value ? fix.value->text() : "?");
        return text;
    }

    static constexpr const char* trueA = "0.2 2.2 1.8 1.4 1.1 0.7";
    static constexpr const char* trueB = "0.3 3.3 2.6 2.1 1.5 1.0";
    Workbook workbook;
};

TEST_F(Slips, ACleanBlockIsNotAccused) {
    read();
    EXPECT_EQ(first(), "nothing");
    readBelow("-4.4 -4.5 -4.7 -4.8 -5.3 -5.7");
    EXPECT_EQ(first(), "nothing");
}

TEST_F(Slips, DigitsSwapped) {
    read(trueA, "0.3 3.3 6.2 2.1 1.5 1.0");
    EXPECT_EQ(first(), "two digits swapped: 2.6 for 6.2 | B1.70=2.6");
}

TEST_F(Slips, SignTurned) {
    read("0.2 2.2 -1.8 1.4 1.1 0.7");
    EXPECT_EQ(first(), "sign turned: 1.8 for −1.8 | A1.70=1.8");
}

TEST_F(Slips, TurnMissed) {
    read(trueA, "0.3 -6.7 2.6 2.1 1.5 1.0");
    EXPECT_EQ(first(), "turn of the dial missed: 3.3 for −6.7 | B1.10=3.3");
}

TEST_F(Slips, ComplementOnARoundDial) {
    readBelow("-4.4 -4.5 5.3 -4.8 -5.3 -5.7");
    EXPECT_EQ(first(), "read the wrong way round the dial: −4.7 for 5.3 | A1.70=-4.7");
}

TEST_F(Slips, GraduationTakenForAnother) {
    read("0.2 2.2 9.0 1.4 1.1 0.7");
    EXPECT_EQ(first(), "one graduation taken for another: 1.8 for 9.0 | A1.70=1.8");
}

TEST_F(Slips, AnotherUnit) {
    read(trueA, "0.3 3.3 0.0026 2.1 1.5 1.0");
    EXPECT_EQ(first(), "meant in another unit: 2.6 thou for 0.0026 thou | B1.70=2.6");
}

TEST_F(Slips, AxesExchanged) {
    read("0.2 3.3 1.8 1.4 1.1 0.7", "0.3 2.2 2.6 2.1 1.5 1.0");
    EXPECT_EQ(first(), "axes A and B exchanged: 2.2 and 3.3 | A1.10=2.2 B1.10=3.3");
    read(trueB, trueA);
    EXPECT_TRUE(first().starts_with("axes A and B exchanged throughout the bore | "));
}

TEST_F(Slips, StationsExchanged) {
    read(trueA, "3.3 0.3 2.6 2.1 1.5 1.0");
    EXPECT_EQ(first(), "two stations exchanged: 0.3 and 3.3 | B0.50=0.3 B1.10=3.3");
}

TEST_F(Slips, ColumnTypedFromTheOtherEnd) {
    read("0.7 1.1 1.4 1.8 2.2 0.2");
    EXPECT_EQ(first(), "axis A typed from the other end | A0.50=0.2 A1.10=2.2 A1.70=1.8 "
                       "A2.30=1.4 A2.90=1.1 A3.50=0.7");
}

TEST_F(Slips, StationSkipped) {
    read(trueA, "3.3 2.6 2.1 1.5 1.0 x");
    EXPECT_EQ(first(), "the station at 0.50 in on B was passed over, and what lies behind it moved "
                       "up | B3.50=1.0 B2.90=1.5 B2.30=2.1 B1.70=2.6 B1.10=3.3 B0.50=?");
}

TEST_F(Slips, LastReadingTypedAgain) {
    read("0.2 0.2 1.8 1.4 1.1 0.7");
    EXPECT_EQ(first(), "the last reading typed again: 0.2 | A1.10=?");
    EXPECT_EQ(findSlips(workbook, survey())[0].stories[0].toRead,
              (std::vector<Station>{{2, in("1.1"), "A"}}));
}

TEST_F(Slips, ReadingTooSmallForItsBoreWithNoStory) {
    read(trueA, "0.3 3.3 -0.7 2.1 1.5 1.0");
    EXPECT_EQ(first(), "3.4 thou smaller than the rest of the bore would have it |");
}

TEST_F(Slips, ARealScoreIsNotAccused) {
    read(trueA, "0.3 3.3 2.6 5.5 1.5 1.0");
    EXPECT_EQ(first(), "nothing") << "a wall scored by 3.4 thou at 2.30 in, one side";
}

TEST_F(Slips, TwoSlipsOfOneBlockAreBothFound) {
    read("0.2 2.2 -1.8 1.4 1.1 0.7");
    survey().readings[0].typed = typedThou("-9.7");
    EXPECT_EQ(findSlips(workbook, survey()).size(), 2U);
}

TEST_F(Slips, StoriesAreRankedAndTheirWeightsAddUp) {
    read("0.2 2.2 -1.8 1.4 1.1 0.7");
    const auto found = findSlips(workbook, survey());
    ASSERT_EQ(found.size(), 1U);
    double sum = 0, last = 1;
    EXPECT_LE(found[0].stories.size(), 4U);
    for (const SlipStory& story : found[0].stories) {
        EXPECT_LE(story.weight, last);
        last = story.weight;
        sum += story.weight;
    }
    EXPECT_NEAR(sum, 1, 0.05) << "stories below one in a hundred are not told";
}

TEST_F(Slips, AcceptedItIsOneStepAndCanBeUndone) {
    read("0.2 2.2 -1.8 1.4 1.1 0.7");
    const auto found = findSlips(workbook, survey());
    const std::size_t index = found.at(0).readings.at(0);
    const Workbook before = workbook;
    const auto undo = borewright::apply(
        workbook, acceptStory(workbook, "s1", found[0].stories[0], {1'775'000'000, 0}));
    ASSERT_TRUE(undo) << undo.error().message();
    EXPECT_EQ(survey().readings[index].struck->reason, "sign turned");
    const Reading& taken = survey().readings.back();
    EXPECT_EQ(taken.typed, typedThou("1.8"));
    EXPECT_EQ(taken.accepted, "sign turned");
    EXPECT_EQ(taken.time, survey().readings[index].time) << "it is what the dial showed then";
    EXPECT_EQ(first(), "nothing");
    ASSERT_TRUE(borewright::apply(workbook, *undo));
    EXPECT_TRUE(workbook == before);
}

TEST_F(Slips, KeptItIsNeverAccusedAgain) {
    read("0.2 2.2 -1.8 1.4 1.1 0.7");
    ASSERT_TRUE(
        borewright::apply(workbook, keepReadings("s1", findSlips(workbook, survey())[0].readings)));
    EXPECT_EQ(first(), "nothing") << "nor are its neighbours accused in its place";
}

} // namespace
} // namespace borewright
