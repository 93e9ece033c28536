// SPDX-License-Identifier: GPL-3.0-or-later
// A whole workbook to verdicts, words and sentences, from made bores.
#include "core/results/results.h"
#include "tests/support/blocks.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

const Judgement& find(const BoreResult& bore, Quality quality) {
    for (const Judgement& judgement : bore.judgements)
        if (judgement.quality == quality) return judgement;
    throw std::runtime_error("no such judgement");
}

TEST(Results, FindTheBellThatWasMade) {
    Workbook workbook = inchBlock(2);
    addWornLimits(workbook, "3.504", "3", "2");
    const std::string survey = addSurvey(workbook, SurveyKind::asFound, "found");
    typeShape(workbook, survey, 1, [](double, const std::string&) { return 1.0; });
    // A bell of 2.1 thou in the last inch of bore 2.
    typeShape(workbook, survey, 2, [](double depth, const std::string&) {
        return depth < 3 ? 1.0 : 1.0 + 2.1 * (depth - 3) / 0.5;
    });
    const Results results = compute(workbook, DisplayUnits::inch());
    const SurveyResult& found = results.surveys[0];
    EXPECT_EQ(found.bores[0].verdict, Verdict::within);
    EXPECT_EQ(found.bores[1].verdict, Verdict::outside);
    EXPECT_EQ(found.bores[1].why, "taper");
    EXPECT_EQ(find(found.bores[1], Quality::taper).value, thou("2.1"));
    EXPECT_EQ(found.bores[1].form->lead, thou("2.1"));
    EXPECT_EQ(found.verdict, Verdict::outside);
    EXPECT_EQ(found.asked, 20);
    EXPECT_EQ(found.measured, 20);
    EXPECT_EQ(results.summary[0], "Cylinder 2 was tapered past the limit.");
}

TEST(Results, AskedAndUnreadIsNotMeasuredButUnaskedIsNotMissing) {
    Workbook workbook = inchBlock(2);
    addWornLimits(workbook, "3.504", "3", "2");
    const std::string whole = addSurvey(workbook, SurveyKind::asFound, "whole");
    type(workbook, whole, 1, "0.5", "A", "1.0");
    const std::string part = addSurvey(workbook, SurveyKind::asFound, "part");
    findSurvey(workbook, part)->header.asked =
        std::vector<Station>{{2, in("0.5"), "A"}, {2, in("3.5"), "A"}};
    type(workbook, part, 2, "0.5", "A", "1.0");
    type(workbook, part, 2, "3.5", "A", "1.5");
    const Results results = compute(workbook, DisplayUnits::inch());
    EXPECT_EQ(results.surveys[0].bores[0].verdict, Verdict::notMeasured);
    EXPECT_EQ(results.surveys[0].bores[0].word, "1 of 10 read");
    EXPECT_EQ(results.surveys[0].bores[1].word, "not measured");
    ASSERT_EQ(results.surveys[1].bores.size(), 1U) << "only bore 2 was asked for";
    EXPECT_EQ(results.surveys[1].bores[0].verdict, Verdict::within);
    EXPECT_EQ(find(results.surveys[1].bores[0], Quality::outOfRound).verdict, Verdict::notJudged)
        << "one axis was asked for, so out-of-round is nobody's question";
}

LimitSet finish() {
    LimitSet set;
    set.id = "l9";
    set.name = "0.020 over";
    set.purpose = LimitPurpose::finish;
    set.oversize = typedIn("0.020");
    set.limits.sizeLower = typedIn("3.5195");
    set.limits.sizeUpper = typedIn("3.5210");
    set.limits.taper = typedThou("1.0");
    return set;
}

TEST(Results, WhileHoningTheWordIsWhatIsToGo) {
    Workbook workbook = inchBlock(1);
    workbook.limitSets.push_back(finish());
    const std::string survey = addSurvey(workbook, SurveyKind::check, "rough");
    findSurvey(workbook, survey)->header.gauge.setSize = typedIn("3.5200");
    typeShape(workbook, survey, 1,
              [](double depth, const std::string&) { return depth < 2 ? -4.3 : -6.6; });
    const Results results = compute(workbook, DisplayUnits::inch());
    const BoreResult& bore = results.surveys[0].bores[0];
    EXPECT_EQ(bore.finishSize, in("3.5200"));
    EXPECT_EQ(bore.word, "4.3–6.6 to go");
    EXPECT_EQ(bore.verdict, Verdict::notYet);
    EXPECT_EQ(bore.straight, AimAnswer::notYet);
    EXPECT_EQ(bore.stations[0].toGo, thou("4.3"));
    EXPECT_EQ(results.summary.back(), "Honing is under way: up to 6.6 thou to go.");
}

TEST(Results, AHonedBoreIsJudgedByItsFinishSetNotByTheWornOne) {
    Workbook workbook = inchBlock(2);
    addWornLimits(workbook, "3.504", "3", "2");
    workbook.limitSets.push_back(finish());
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "found");
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    findSurvey(workbook, last)->header.gauge.setSize = typedIn("3.5200");
    for (int bore : {1, 2}) {
        typeShape(workbook, found, bore, [](double, const std::string&) { return 4.5; });
        typeShape(workbook, last, bore, [bore](double depth, const std::string&) {
            return depth < 1 ? 0.1 + 0.1 * bore : 0.1;
        });
    }
    const Results results = compute(workbook, DisplayUnits::inch());
    EXPECT_EQ(results.surveys[0].verdict, Verdict::outside);
    EXPECT_EQ(results.surveys[1].verdict, Verdict::within);
    EXPECT_EQ(results.surveys[1].bores[1].straightness, thou("0.2"));
    EXPECT_EQ(results.surveys[1].bores[1].straight, AimAnswer::met);
    ASSERT_EQ(results.summary.size(), 2U);
    EXPECT_EQ(results.summary[0], "Cylinders 1 and 2 were worn past the limit.");
    EXPECT_EQ(
        results.summary[1],
        "Both cylinders were taken 0.020 in over and are straight within 0.2 thou as measured.");
    EXPECT_EQ(results.stories[0].wasSurvey, found);
    EXPECT_EQ(results.stories[0].nowSurvey, last);
}

TEST(Results, SeveralSetsWaitForAChoice) {
    Workbook workbook = inchBlock(1);
    workbook.limitSets.push_back(finish());
    workbook.limitSets.push_back(finish());
    workbook.limitSets[1].id = "l10";
    const std::string survey = addSurvey(workbook, SurveyKind::final, "final");
    typeShape(workbook, survey, 1, [](double, const std::string&) { return 0.0; });
    Results results = compute(workbook, DisplayUnits::inch());
    EXPECT_FALSE(results.surveys[0].hasLimits);
    EXPECT_EQ(results.surveys[0].judgedBy, "several sets of finish limits are entered: choose the "
                                           "one that judges this survey");
    findSurvey(workbook, survey)->header.limitSet = "l10";
    results = compute(workbook, DisplayUnits::inch());
    EXPECT_TRUE(results.surveys[0].hasLimits);
}

TEST(Results, LimitsOfOneBoreReplaceThoseOfAll) {
    Workbook workbook = inchBlock(2);
    LimitSet& set = addWornLimits(workbook, "3.504", "", "");
    set.perBore[2].sizeUpper = typedIn("3.510");
    const std::string survey = addSurvey(workbook, SurveyKind::asFound, "found");
    for (int bore : {1, 2})
        typeShape(workbook, survey, bore, [](double, const std::string&) { return 5.0; });
    const Results results = compute(workbook, DisplayUnits::inch());
    EXPECT_EQ(results.surveys[0].bores[0].verdict, Verdict::outside);
    EXPECT_EQ(results.surveys[0].bores[1].verdict, Verdict::within);
}

TEST(Results, PlatesThatDifferAreSaid) {
    Workbook workbook = inchBlock(1);
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "found");
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    findSurvey(workbook, found)->header.plate = false;
    findSurvey(workbook, last)->header.plate = true;
    for (const auto& survey : {found, last})
        typeShape(workbook, survey, 1, [](double, const std::string&) { return 0.0; });
    const Results results = compute(workbook, DisplayUnits::inch());
    EXPECT_TRUE(results.stories[0].plateDiffers);
    EXPECT_EQ(results.summary.back(), "Before and after were not both measured with the torque "
                                      "plate, so they do not compare exactly.");
}

TEST(Results, ComputingOneSurveyAgainComesToTheSameAsAll) {
    Workbook workbook = inchBlock(2);
    addWornLimits(workbook, "3.504", "3", "2");
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "found");
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    typeShape(workbook, found, 1, [](double, const std::string&) { return 4.5; });
    const Results before = compute(workbook, DisplayUnits::inch());
    typeShape(workbook, last, 1, [](double depth, const std::string&) { return depth / 10; });
    DoubtMemory memory;
    const Results again = computeAgain(workbook, DisplayUnits::inch(), before, last, memory,
                                       Reckoning::whole);
    const Results all = compute(workbook, DisplayUnits::inch());
    EXPECT_EQ(again.summary, all.summary);
    EXPECT_NE(again.summary, before.summary);
    ASSERT_EQ(again.surveys.size(), all.surveys.size());
    for (std::size_t i = 0; i < all.surveys.size(); ++i) {
        EXPECT_EQ(again.surveys[i].measured, all.surveys[i].measured);
        EXPECT_EQ(again.surveys[i].bores[0].word, all.surveys[i].bores[0].word);
    }
    EXPECT_EQ(again.stories[0].nowSurvey, last);
}

TEST(Results, AnEmptyWorkbookSaysSo) {
    const Results results = compute(emptyWorkbook(), DisplayUnits::inch());
    EXPECT_EQ(results.summary, std::vector<std::string>{"Nothing has been measured yet."});
}

} // namespace
} // namespace borewright
