// SPDX-License-Identifier: GPL-3.0-or-later
// Every edit undone by its inverse, and every refusal without a trace.
#include "core/workbook/edit.h"
#include "tests/support/blocks.h"

#include <cmath>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class Edits : public testing::Test {
protected:
    Edits() {
        workbook = inchBlock(3);
        survey = addSurvey(workbook, SurveyKind::asFound, "found");
        addWornLimits(workbook, "3.504", "3", "2");
        workbook.limitSets[0].perBore[3] = workbook.limitSets[0].limits;
        type(workbook, survey, 1, "0.5", "A", "1.0");
        type(workbook, survey, 1, "0.5", "B", "1.5");
        type(workbook, survey, 3, "1.25", "A", "2.0");
    }
    // Applies, checks that something changed, undoes, redoes, and compares.
    void roundTrip(const Edit& edit) {
        const Workbook before = workbook;
        const auto inverse = apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        const Workbook after = workbook;
        EXPECT_FALSE(after == before) << "the edit changed nothing";
        const auto again = apply(workbook, *inverse);
        ASSERT_TRUE(again) << again.error().message();
        EXPECT_TRUE(workbook == before) << "undo did not bring back what was there";
        ASSERT_TRUE(apply(workbook, *again));
        EXPECT_TRUE(workbook == after) << "redo did not come to the same";
    }
    std::string refused(const Edit& edit) {
        const Workbook before = workbook;
        const auto result = apply(workbook, edit);
        EXPECT_TRUE(workbook == before) << "a refusal left a trace";
        return result ? "accepted" : result.error().message();
    }

    Workbook workbook;
    std::string survey;
};

TEST_F(Edits, JobBlockLimitsAimAndSheet) {
    roundTrip(SetJob{{"a customer", "", "", "", "", "", {}}});
    Block block = workbook.block;
    block.arrangement = Arrangement::vee;
    roundTrip(SetBlock{block});
    roundTrip(SetLimitSets{{}});
    roundTrip(SetStraightAim{std::nullopt});
    roundTrip(SetSheetText{{"Good as new."}});
}

TEST_F(Edits, NumbersFollowTheHoleThroughReadingsAndLimits) {
    roundTrip(Renumber{{{1, 3}, {3, 1}}});
    EXPECT_EQ(workbook.block.bores[0].number, 3);
    EXPECT_EQ(findSurvey(workbook, survey)->readings[0].station.bore, 3);
    EXPECT_TRUE(workbook.limitSets[0].perBore.contains(1));
    EXPECT_EQ(refused(Renumber{{{1, 2}}}), "two bores cannot both be number 2");
}

TEST_F(Edits, ACorrectedDepthCarriesItsReadings) {
    roundTrip(MoveLevel{0, in("0.5"), typedIn("0.55")});
    EXPECT_EQ(findSurvey(workbook, survey)->readings[0].station.depth, in("0.55"));
    roundTrip(MoveLevel{3, in("1.25"), typedIn("1.3")});
    EXPECT_EQ(findBore(workbook.block, 1)->levels[1].depth.value(), in("1.25")) << "only bore 3";
    EXPECT_NE(refused(MoveLevel{0, in("2"), typedIn("2.75")}), "accepted");
    EXPECT_NE(refused(MoveLevel{0, in("2.2"), typedIn("2.3")}), "accepted");
}

TEST_F(Edits, SurveysAndReadings) {
    Survey other;
    other.header.id = "s9";
    roundTrip(InsertSurvey{1, other});
    roundTrip(EraseSurvey{survey});
    ASSERT_TRUE(apply(workbook, InsertSurvey{0, other}) || true);
    Reading reading =
        workbook.surveys.back().readings.empty() ? Reading() : workbook.surveys.back().readings[0];
    roundTrip(InsertReading{"s9", 0, reading});
    roundTrip(SetStrike{"s9", 0, Strike{"mistyped", {}}});
    roundTrip(EraseReading{"s9", 0});
    EXPECT_NE(refused(InsertReading{"gone", 0, reading}), "accepted");
    EXPECT_NE(refused(EraseReading{"s9", 99}), "accepted");
    EXPECT_NE(refused(SetStrike{"s9", 99, {}}), "accepted");
    EXPECT_NE(refused(InsertSurvey{0, other}), "accepted") << "the id is taken";
    SurveyHeader header;
    header.id = "another";
    EXPECT_NE(refused(SetSurveyHeader{"s9", header}), "accepted");
}

TEST_F(Edits, AGroupIsAllOrNothing) {
    EXPECT_EQ(refused(EditGroup{{SetJob{{"x", "", "", "", "", "", {}}}, EraseSurvey{"gone"}}}),
              "there is no survey 'gone'");
    roundTrip(EditGroup{{SetJob{{"x", "", "", "", "", "", {}}}, SetSheetText{{"y"}}}});
}

TEST_F(Edits, TypingAgainStrikesOutWhatWasThere) {
    Reading again = findSurvey(workbook, survey)->readings[0];
    again.typed = typedThou("1.2");
    roundTrip(recordReading(workbook, survey, again, "typed again"));
    const auto& readings = findSurvey(workbook, survey)->readings;
    ASSERT_EQ(readings.size(), 4U) << "all are kept";
    EXPECT_EQ(readings[0].struck->reason, "typed again");
    EXPECT_FALSE(readings[3].struck);
    roundTrip(recordReading(workbook, survey, again, std::nullopt)); // a repeat strikes nothing
}

TEST_F(Edits, AnotherValueTakesThePlaceOfASlip) {
    const Reading old = findSurvey(workbook, survey)->readings[1];
    const Timestamp now{old.time.secondsSinceEpoch + 900, 60};
    const Edit accept = acceptInstead(workbook, survey, 1, typedThou("5.1"), "digits swapped", now);
    roundTrip(accept);
    const auto& readings = findSurvey(workbook, survey)->readings;
    ASSERT_EQ(readings.size(), 4U);
    EXPECT_EQ(readings[1].struck, (Strike{"digits swapped", now, {}}));
    EXPECT_EQ(readings[1].typed, old.typed) << "nothing is deleted";
    EXPECT_EQ(readings[3].station, old.station);
    EXPECT_EQ(readings[3].time, old.time) << "it is what the dial showed then";
    EXPECT_EQ(readings[3].typed, typedThou("5.1"));
    EXPECT_EQ(readings[3].accepted, "digits swapped");
    EXPECT_FALSE(readings[3].struck);
    EXPECT_EQ(refused(acceptInstead(workbook, survey, 9, typedThou("1"), "x", now)),
              "there is no such reading");
    EXPECT_NE(refused(acceptInstead(workbook, "s9", 0, typedThou("1"), "x", now)), "accepted");
}

TEST_F(Edits, AReadingLookedAtAgainIsKept) {
    roundTrip(SetKept{survey, 2, true});
    EXPECT_TRUE(findSurvey(workbook, survey)->readings[2].kept);
    roundTrip(SetKept{survey, 2, false});
    EXPECT_EQ(refused(SetKept{survey, 3, true}), "there is no such reading");
    EXPECT_NE(refused(SetKept{"s9", 0, true}), "accepted");
    ASSERT_TRUE(apply(workbook, SetKept{survey, 0, true}));
    ASSERT_TRUE(
        borewright::apply(workbook, acceptInstead(workbook, survey, 0, typedThou("2"), "x", {})));
    EXPECT_FALSE(findSurvey(workbook, survey)->readings.back().kept) << "nobody looked at it yet";
}

TEST_F(Edits, Studies) {
    RepeatStudy study;
    study.id = "r1";
    study.runs.push_back({"A. Example", "bore 1, 0.5 A", {typedThou("1.0"), typedThou("1.1")}, {}});
    SetStudies edit;
    edit.studies.push_back(study);
    roundTrip(edit);
}

TEST_F(Edits, AHeadingThatCannotStandIsRefused) {
    SurveyHeader header = findSurvey(workbook, survey)->header;
    header.gauge.gear.repeatability = typedThou("0");
    EXPECT_NE(refused(SetSurveyHeader{survey, header}), "accepted");
    Survey other{header, {}};
    other.header.id = "s7";
    EXPECT_NE(refused(InsertSurvey{1, other}), "accepted");
    header.gauge.gear.repeatability = typedThou("0.08");
    roundTrip(SetSurveyHeader{survey, header});
}

TEST_F(Edits, ARuleOfDecisionIsChecked) {
    using Kind = DecisionRule::Kind;
    EXPECT_EQ(riskOf({Kind::plain, 1, {}}), 0.5);
    EXPECT_EQ(riskOf({}), 0.05) << "unless he chooses";
    EXPECT_EQ(riskOf({Kind::twoAndHalfPercent, 1, {}}), 0.025);
    EXPECT_EQ(riskOf({Kind::own, 2, {}}), 0.02);
    for (const double percent : {0.0, -1.0, 50.1, std::nan("")}) {
        auto sets = workbook.limitSets;
        sets[0].decision = {Kind::own, percent, {}};
        EXPECT_NE(refused(SetLimitSets{sets}), "accepted") << percent << " %";
        sets[0].decision.kind = Kind::fivePercent;
        EXPECT_TRUE(checkDecision(sets[0].decision)) << "his own figure is not in use";
    }
    auto sets = workbook.limitSets;
    sets[0].decision = {Kind::own, 50, {}};
    roundTrip(SetLimitSets{sets});
}

} // namespace
} // namespace borewright
