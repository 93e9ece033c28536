// SPDX-License-Identifier: GPL-3.0-or-later
// Which size cleans up the block, in words: on made blocks, whose answer is plain arithmetic, and
// on the demonstrations.
#include "core/results/results.h"
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

// A block whose bores are worn by so much (thou) everywhere; standard 3.5000, nothing said of the
// gauge's doubt.
Workbook wornBy(const std::vector<double>& thou) {
    Workbook workbook = inchBlock(static_cast<int>(thou.size()));
    const std::string survey = addSurvey(workbook, SurveyKind::asFound, "found");
    for (std::size_t b = 0; b < thou.size(); ++b)
        typeShape(workbook, survey, static_cast<int>(b) + 1,
                  [&](double, const std::string&) { return thou[b]; });
    return workbook;
}
void offer(Workbook& workbook, const std::vector<std::string>& oversizes) {
    for (const std::string& oversize : oversizes) {
        SizeOnOffer size;
        size.oversize = typedIn(oversize);
        workbook.sizing.sizes.push_back(size);
    }
}
SizingResult sized(const Workbook& workbook) {
    return compute(workbook, naturalUnits(workbook)).sizing;
}
Workbook saltmarsh() {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.sizing = demo::saltmarshSizes();
    workbook.fit = {};
    return workbook;
}
Damage score(const std::string& depth, const std::string& deep) {
    Damage damage;
    damage.depth = typedIn(depth);
    damage.axis = "B";
    damage.deep = typedThou(deep);
    damage.what = "score, exhaust side";
    return damage;
}

TEST(ResultsSizing, TheScoreDecidesAndOneSizeLowerIsToldOfIt) {
    const SizingResult sizing = sized(saltmarsh());
    EXPECT_EQ(sizing.headline, "Bore 4 decides: 0.020 in cleans all six, margin 4.0 ± 0.3 thou.");
    ASSERT_EQ(sizing.sentences.size(), 3U) << all(sizing.sentences);
    // 3.4300 − 3.4355 − 0.0005 = −6.0 thou; 3.4300 − 3.4243 − 0.0005 = 5.2 thou.
    EXPECT_EQ(sizing.sentences[0],
              "One size lower, 0.010 in: bore 4 lacks 6.0 ± 0.3 thou; without its score it would "
              "clean with 5.2 thou to spare. The others clean.");
    EXPECT_EQ(sizing.sentences[1],
              "Taken: the hone follows the worn bore. Centred on the original axis bore 4 would "
              "need 3.4390 in: 0.020 in still cleans it, only just, margin 0.5 ± 0.6 thou.");
    EXPECT_EQ(sizing.sentences[2], "Bores 1, 2, 3, 5 and 6: which side is worn was not said; "
                                   "reckoned as one side, the worse.");
    EXPECT_EQ(sizing.how[0], "Hone only: 15.7 to 19.8 thou to take on the diameter, to 3.4400 in "
                             "(3.4395–3.4410).");
    EXPECT_EQ(sizing.boreWords[3], "3.4355 in: score at 1.40, B");
}

TEST(ResultsSizing, ABoringBarIsSetOnTheOriginalAxis) {
    Workbook workbook = saltmarsh();
    workbook.sizing.method = CutMethod::boreAndHone;
    const SizingResult sizing = sized(workbook);
    EXPECT_EQ(sizing.headline,
              "Bore 4 decides: 0.020 in only just cleans all six, margin 0.5 ± 0.6 thou.");
    EXPECT_TRUE(has(sizing.sentences,
                    "Taken: the boring bar is set on the original axis. Centred on the worn bore "
                    "bore 4 would need 3.4355 in: 0.020 in still cleans it, margin 4.0 ± 0.3 "
                    "thou."))
        << all(sizing.sentences);
    EXPECT_EQ(sizing.how[0], "Bore to 3.4370 in, then hone 3.0 thou to 3.4400 in (3.4395–3.4410); "
                             "the bar takes 12.7 to 16.8 thou on the diameter.");
    workbook.sizing.centring = Centring::wornBore;
    EXPECT_EQ(sized(workbook).sentences[1].substr(0, 49),
              "As chosen: the cut is centred on the worn bore. C");
}

TEST(ResultsSizing, ThePitDecidesInMillimetres) {
    Workbook workbook = demo::rushmere();
    workbook.sizing = demo::rushmereSizes();
    workbook.fit = {};
    // The pit's 66 mm lies between readings that were typed wrong way round; mended, wear there is
    // 55 µm and the pit adds 240: 73.495, and 73.550 on the original axis.
    demo::correct(workbook, workbook.surveys[0].header.id, demo::at(2, "70 mm", "B"), "73.261");
    const SizingResult sizing = sized(workbook);
    EXPECT_EQ(sizing.headline, "Bore 2 decides: 0.50 mm cleans all three, margin 195 ± 4 µm.");
    EXPECT_TRUE(has(sizing.sentences,
                    "One size lower, 0.25 mm: bore 2 lacks 55 ± 4 µm; without its pit it would "
                    "clean with 169 µm to spare. The others clean."))
        << all(sizing.sentences);
    EXPECT_TRUE(has(sizing.sentences,
                    "Taken: the hone follows the worn bore. Centred on the original axis bore 2 "
                    "would need 73.550 mm: 0.50 mm still cleans it, margin 140 ± 7 µm."))
        << all(sizing.sentences);
    EXPECT_EQ(sizing.finishAllowance, um("10"));
}

TEST(ResultsSizing, EachBoreItsOwnSizeWhereHeAllowsThat) {
    Workbook workbook = saltmarsh();
    workbook.sizing.ownSizes = true;
    const SizingResult sizing = sized(workbook);
    EXPECT_EQ(sizing.headline, "Each bore its own size: 0.010 in cleans all but bore 4; 0.020 in "
                               "cleans bore 4.");
    ASSERT_GE(sizing.how.size(), 2U);
    EXPECT_EQ(sizing.how[0], "Bores 1, 2, 3, 5 and 6: hone only: 6.2 to 9.8 thou to take on the "
                             "diameter, to 3.4300 in (3.4295–3.4310).");
    const FinishTargets own = ownTargetsOf(sizing, inch);
    EXPECT_EQ(own.at(1).size.value(), in("3.4300"));
    EXPECT_EQ(own.at(4).size.value(), in("3.4400"));
    EXPECT_EQ(own.at(4).from, "0.020 in over");
}

TEST(ResultsSizing, TheTargetsOfASizeCarryItsLimits) {
    const SizingResult sizing = sized(saltmarsh());
    const FinishTargets targets = targetsOf(sizing, *sizing.choice.chosen, inch);
    ASSERT_EQ(targets.size(), 6U);
    EXPECT_EQ(targets.at(6).size.text(), "3.44");
    EXPECT_EQ(targets.at(6).lower->value(), in("3.4395"));
    EXPECT_EQ(targets.at(6).upper->value(), in("3.4410"));
    EXPECT_EQ(targetsOf(sizing, *sizing.choice.chosen - 1, inch).count(4), 0U)
        << "0.010 in does not clean bore 4";
    EXPECT_TRUE(targetsOf(sizing, 99, inch).empty());
}

TEST(ResultsSizing, PlainArithmeticOnAMadeBlock) {
    Workbook workbook = wornBy({4.5, 2.0});
    offer(workbook, {"0", "0.010", "0.020"});
    const SizingResult sizing = sized(workbook);
    // 3.5100 − 3.5045 − 0.0005 = 5.0 thou; nothing is known of the gauge's doubt.
    EXPECT_EQ(sizing.headline, "Bore 1 decides: 0.010 in cleans both, margin 5.0 thou.");
    EXPECT_EQ(sizing.sentences[0], "One size lower, the standard size: bores 1 and 2 would not "
                                   "clean for certain; bore 1 lacks 5.0 thou.");
    EXPECT_TRUE(has(sizing.sentences,
                    "How far the readings may be off is not known: margins stand as read."))
        << all(sizing.sentences);
    EXPECT_EQ(sizing.how[0],
              "Hone only: 5.5 to 8.0 thou to take on the diameter, to 3.5100 in (no limits "
              "entered).");
    EXPECT_EQ(sizing.boreWords[0], "3.5045 in: wear at 0.50, A");
}

TEST(ResultsSizing, WhatIsMissingIsAskedFor) {
    EXPECT_EQ(sized(emptyWorkbook()).headline, "Describe the block first.");
    Workbook workbook = inchBlock(2);
    offer(workbook, {"0.010"});
    EXPECT_EQ(sized(workbook).headline, "No bore has been read as found: measure the block first.");
    workbook = wornBy({4.5, 2.0});
    EXPECT_EQ(sized(workbook).headline, "Bore 1 wants the most: 3.5045 in and 0.5 thou below the last mark. Enter "
                                        "the sizes that pistons are to be had for.");
    offer(workbook, {"0.010"});
    for (Bore& bore : workbook.block.bores)
        bore.standardSize.reset();
    EXPECT_EQ(sized(workbook).headline,
              "Bore 1 wants the most: 3.5045 in and 0.5 thou below the last mark. Enter the standard size: the "
              "sizes on offer are counted from it.");
}

TEST(ResultsSizing, ASurveyAfterHoningDecidesNothing) {
    Workbook workbook = inchBlock(1);
    offer(workbook, {"0.010"});
    typeShape(workbook, addSurvey(workbook, SurveyKind::final, "final"), 1,
              [](double, const std::string&) { return 10.0; });
    EXPECT_EQ(sized(workbook).headline, "No bore has been read as found: measure the block first.");
}

TEST(ResultsSizing, TheLastSurveyBeforeTheCutCounts) {
    Workbook workbook = wornBy({4.5});
    offer(workbook, {"0.010"});
    typeShape(workbook, addSurvey(workbook, SurveyKind::beforeBoring, "again"), 1,
              [](double, const std::string&) { return 3.5; });
    EXPECT_EQ(sized(workbook).headline, "0.010 in cleans the bore, margin 6.0 thou.");
}

TEST(ResultsSizing, ABoreBeyondTheLastSizeDoesNotSpoilTheOthers) {
    Workbook workbook = wornBy({4.5, 25, 2.0});
    offer(workbook, {"0.010", "0.020"});
    const SizingResult sizing = sized(workbook);
    EXPECT_EQ(sizing.headline, "Bore 1 decides: 0.010 in cleans bores 1 and 3, margin 5.0 thou.");
    EXPECT_TRUE(has(sizing.sentences,
                    "Bore 2 is beyond the last size (0.020 in): a sleeve, or a new block."))
        << all(sizing.sentences);
    EXPECT_EQ(targetsOf(sizing, *sizing.choice.chosen, inch).count(2), 0U);
    EXPECT_EQ(sized(wornBy({25})).choice.offers.size(), 0U);
}

TEST(ResultsSizing, NoSizeForAnyBore) {
    Workbook workbook = wornBy({25, 26});
    offer(workbook, {"0.010", "0.020"});
    const SizingResult sizing = sized(workbook);
    EXPECT_EQ(sizing.headline,
              "No size on offer cleans bores 1 and 2 for certain: a sleeve, or a new block.");
    EXPECT_TRUE(sizing.how.empty());
}

TEST(ResultsSizing, MoreThanTheMakerAllowsIsNeverAdvised) {
    Workbook workbook = wornBy({25, 2});
    offer(workbook, {"0.010", "0.020", "0.030"});
    workbook.sizing.greatest = typedIn("0.020");
    const SizingResult sizing = sized(workbook);
    EXPECT_EQ(sizing.headline, "Bore 2 decides: 0.010 in cleans bore 2, margin 7.5 thou.");
    EXPECT_TRUE(has(sizing.sentences, "0.030 in is beyond the engine maker's greatest oversize, "
                                      "0.020 in: not advised."))
        << all(sizing.sentences);
}

TEST(ResultsSizing, WhatWasAssumedIsSaid) {
    Workbook workbook = wornBy({4.5, 2.0, 1.0});
    offer(workbook, {"0.010", "0.020"});
    workbook.surveys[0].readings.pop_back(); // of bore 3
    std::erase_if(workbook.surveys[0].readings,
                  [](const Reading& reading) { return reading.station.bore == 2; });
    workbook.sizing.bores[1].side = WearSide::bothSides;
    workbook.sizing.bores[1].damages = {score("1.25", "2")};
    workbook.sizing.bores[1].damages[0].felt = true;
    const SizingResult sizing = sized(workbook);
    for (const char* wanted :
         {"Bore 1: how deep the score is was felt, not measured; taken as 2.0 ± 1.0 thou.",
          "Bore 2 was not read as found: nothing is said of it.",
          "Bore 3 was not read everywhere that was asked for: what was not read may be worse.",
          "Bore 3: which side is worn was not said; reckoned as one side, the worse."})
        EXPECT_TRUE(has(sizing.sentences, wanted)) << wanted << all(sizing.sentences);
    EXPECT_EQ(sizing.boreWords[1], "not read in a survey as found");
    // At 0.010 in the margin, 1.0 thou, is too near to what was only felt.
    EXPECT_EQ(sizing.headline,
              "Bore 1 decides: 0.020 in cleans bores 1 and 3, margin 11.0 ± 2.4 thou.");
}

TEST(ResultsSizing, WallThicknessIsAlwaysSaidToBeUnseen) {
    Workbook workbook = wornBy({4.5});
    offer(workbook, {"0.010"});
    workbook.block.bores[0].surface = Surface::plated;
    const SizingResult sizing = sized(workbook);
    EXPECT_TRUE(sizing.cautions.at(0).starts_with("Wall thickness is not seen"));
    EXPECT_TRUE(has(sizing.cautions, "Bore 1 is plated: taken oversize, the plating is cut through "
                                     "and has to be laid on anew."))
        << all(sizing.cautions);
}

TEST(ResultsSizing, PistonsAtHandAreASizeTooAndAreNamedByTheirOversize) {
    Workbook workbook = saltmarsh();
    workbook.fit = demo::saltmarshFit();
    const SizingResult sizing = sized(workbook);
    const auto pistons = std::ranges::find_if(
        sizing.choice.offers, [](const OfferResult& one) { return !one.offer.oversize; });
    ASSERT_NE(pistons, sizing.choice.offers.end());
    // The middle of 3.4358 and 3.4362, and 4.2 thou.
    EXPECT_EQ(pistons->offer.bores[0]->finish, in("3.4402"));
    EXPECT_NE(sizing.headline.find("0.020 in"), std::string::npos) << sizing.headline;
    // Smaller: they come before the size that can be ordered, and are named by it.
    for (Piston& piston : workbook.fit.pistons)
        piston.size = typedIn("3.4357");
    EXPECT_EQ(sized(workbook).headline, "Bore 4 decides: 0.020 in for the pistons at hand cleans "
                                        "all six, margin 3.9 ± 0.3 thou.");
    workbook.fit.pistons.pop_back();
    for (const OfferResult& one : sized(workbook).choice.offers)
        EXPECT_TRUE(one.offer.oversize) << "five pistons are none for six bores";
    workbook.fit = demo::saltmarshFit();
    workbook.fit.pistons[2].size = typedIn("3.4258");
    for (const OfferResult& one : sized(workbook).choice.offers)
        EXPECT_TRUE(one.offer.oversize) << "two groups, neither for six bores";
}

TEST(ResultsSizing, ASizeInMillimetresIsNamedAsItWasTyped) {
    Workbook workbook = wornBy({4.5});
    SizeOnOffer metric;
    metric.oversize = typedMm("0.25");
    workbook.sizing.sizes = {metric};
    // 0.25 mm = 9.84 thou; 3.50984 − 3.5045 − 0.0005 = 4.84 thou.
    EXPECT_EQ(sized(workbook).headline, "0.25 mm cleans the bore, margin 4.8 thou.");
    EXPECT_EQ(targetsOf(sized(workbook), 0, inch).at(1).from, "0.25 mm over");
}

TEST(ResultsSizing, LimitsOfTheFinishSetStandWhereTheSizeHasNone) {
    Workbook workbook = wornBy({4.5});
    offer(workbook, {"0.010"});
    LimitSet set;
    set.id = "l9";
    set.purpose = LimitPurpose::finish;
    set.oversize = typedIn("0.010");
    set.limits.sizeLower = typedIn("3.5104");
    set.limits.sizeUpper = typedIn("3.5110");
    workbook.limitSets.push_back(set);
    const SizingResult sizing = sized(workbook);
    // 3.5100 is below what may be finished to: half-way between the limits instead.
    EXPECT_EQ(sizing.choice.offers[0].offer.bores[0]->finish, in("3.5107"));
    EXPECT_EQ(sizing.how[0], "Hone only: 6.2 thou to take on the diameter, to 3.5107 in "
                             "(3.5104–3.5110).");
}

TEST(ResultsSizing, ReadingsThatLookLikeSlipsAreToBeSettledFirst) {
    Workbook workbook = demo::saltmarsh();
    workbook.sizing = demo::saltmarshSizes();
    EXPECT_EQ(sized(workbook).sentences[0],
              "Bores 2 and 6: readings look like slips; settle them first.");
    workbook.fit = demo::saltmarshFit();
    EXPECT_EQ(compute(workbook, inch).fit.sentences[0].find("slip"), std::string::npos)
        << "the final survey has none";
}

TEST(ResultsSizing, TheCustomerReadsTheSizeWhileNothingIsHoned) {
    Workbook workbook = wornBy({4.5, 2.0});
    offer(workbook, {"0", "0.010"});
    EXPECT_EQ(compute(workbook, inch).summary.size(), 1U) << "chosen, but not yet taken";
    const SizingResult sizing = sized(workbook);
    workbook.targets = targetsOf(sizing, *sizing.choice.chosen, inch);
    EXPECT_EQ(compute(workbook, inch).summary.back(),
              "Both cylinders clean up at 0.010 in over; cylinder 1 decides it.");
    workbook.targets[2].size = typedIn("3.5200");
    EXPECT_EQ(compute(workbook, inch).summary.size(), 1U) << "targets that differ";
}

} // namespace
} // namespace borewright
