// SPDX-License-Identifier: GPL-3.0-or-later
// From workbook to outlook: what is refused, what is proposed, for the bore and for the block, its
// words, its file. Bores are honed on a simulated bench that shares no code with the planner.
#include "core/results/hone_plans.h"
#include "tests/support/hone_shop.h"
#include "tests/support/lengths.h"
#include "tests/support/mild_bench.h"
#include "tests/support/says.h"
#include "tests/support/schema_validator.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <limits>

namespace borewright {
namespace {

using namespace test;

HoneShop shopOf(std::uint64_t seed, std::size_t bores = 1) {
    return HoneShop(mildBlock(seed, bores));
}

std::string fileOf(const HoneShop& shop, const HoneOutlook& outlook) {
    return honePlanFile(shop.workbook, outlook);
}

TEST(HoneOutlooks, RefuseWhatCannotBePlannedAndSayWhy) {
    HoneShop shop = shopOf(3);
    const Workbook whole = shop.workbook;
    shop.workbook.hone.stones.clear();
    EXPECT_NE(shop.outlook().refused.find("No stone is in the list"), std::string::npos);
    EXPECT_EQ(shop.outlook().headline, shop.outlook().refused);

    shop.workbook = whole;
    shop.workbook.surveys.clear();
    EXPECT_NE(shop.outlook().refused.find("measure the bores first"), std::string::npos);

    shop.workbook = whole;
    shop.workbook.limitSets.clear();
    ASSERT_EQ(shop.outlook().bores.size(), 1U);
    EXPECT_NE(shop.outlook().bores[0].headline.find("no finish size"), std::string::npos)
        << shop.outlook().bores[0].headline;

    shop.workbook = whole;
    shop.workbook.block.bores[0].surface = Surface::plated;
    EXPECT_NE(shop.outlook().refused.find("plated"), std::string::npos);
    EXPECT_EQ(shop.outlook().bores[0].outcome, HoneOutcome::noStone);

    shop.workbook = whole;
    for (Stone& stone : shop.workbook.hone.stones)
        stone.ends = typedMm("300");
    EXPECT_EQ(shop.outlook().bores[0].outcome, HoneOutcome::noStone);
    EXPECT_NE(shop.outlook().bores[0].headline.find("it cannot be stroked in it"),
              std::string::npos)
        << shop.outlook().bores[0].headline;
}

TEST(HoneOutlooks, ATargetSmallerThanTheBoreIsExplained) {
    HoneShop shop = shopOf(3);
    shop.workbook.targets[1] = {typedMm("84.2"), {}, {}, "piston 1", {}};
    const BoreOutlook bore = shop.outlook().bores[0];
    EXPECT_EQ(bore.outcome, HoneOutcome::overAlready);
    EXPECT_NE(bore.headline.find("is larger than its target of 84.200 mm"), std::string::npos)
        << bore.headline;
    EXPECT_FALSE(bore.next);
}

TEST(HoneOutlooks, ABoreReadAtTwoDepthsIsPlannedCautiouslyAndSaysSo) {
    HoneShop shop = shopOf(4);
    Workbook& workbook = shop.workbook;
    auto& levels = workbook.block.bores[0].levels;
    levels = {levels.front(), levels.back()};
    workbook.surveys.clear();
    shop.measure(std::vector<int>{});
    const BoreOutlook bore = shop.outlook().bores[0];
    EXPECT_EQ(bore.outcome, HoneOutcome::next) << bore.headline;
    EXPECT_TRUE(says(bore.sentences, "Only 2 depths are measured")) << bore.headline;
}

// Seen at its uppermost and its lowest depth only, with so much to go at the largest.
HoneShop shopReadAtTwo(std::uint64_t seed, double toGo_um) {
    HoneShop shop = shopOf(seed);
    auto& levels = shop.workbook.block.bores[0].levels;
    levels = {levels.front(), levels.back()};
    shop.workbook.surveys.clear();
    shop.measure(std::vector<int>{});
    double largest = -std::numeric_limits<double>::infinity();
    for (const Station& station : shop.stationsOf(1))
        for (int axis = 0; axis < benchAxes; ++axis)
            largest =
                std::max(largest, shop.bench(1).truth(station.depth.in(Unit::millimetre), axis));
    const Length size =
        typedMm("85").value() + Length::nearest(largest + toGo_um, Unit::micrometre);
    shop.workbook.targets[1] = {typedFrom(size, Unit::millimetre), {}, {}, "piston 1", {}};
    return shop;
}

// Little to go at the two depths read; what lies between may be anything.
TEST(HoneOutlooks, WhereItMayBeOverUnseenItSaysWhereToMeasure) {
    const BoreOutlook bore = shopReadAtTwo(1, 4).outlook().bores[0];
    EXPECT_EQ(bore.outcome, HoneOutcome::wouldGoOver) << bore.headline;
    EXPECT_NE(bore.headline.find("it may be over already"), std::string::npos) << bore.headline;
    EXPECT_NE(bore.headline.find("Measure there before going on"), std::string::npos)
        << bore.headline;
}

// It is not over, but what is not known between leaves no set-up any room: said as what it is, and
// not as the end of the work.
TEST(HoneOutlooks, WhereDoubtAloneLeavesNoRoomItSaysWhereToMeasure) {
    const BoreOutlook bore = shopReadAtTwo(1, 28).outlook().bores[0];
    EXPECT_EQ(bore.outcome, HoneOutcome::wouldGoOver) << bore.headline;
    EXPECT_NE(bore.headline.find("it is not known well enough to go on"), std::string::npos)
        << bore.headline;
    EXPECT_NE(bore.headline.find("Measure there before going on"), std::string::npos)
        << bore.headline;
    EXPECT_EQ(bore.headline.find("stop"), std::string::npos) << bore.headline;
}

TEST(HoneOutlooks, TheFirstSetUpIsMarkedAsModel) {
    const HoneShop shop = shopOf(5);
    const HoneOutlook outlook = shop.outlook();
    const BoreOutlook& bore = outlook.bores[0];
    ASSERT_TRUE(bore.next) << bore.headline;
    EXPECT_TRUE(bore.modelOnly);
    EXPECT_TRUE(says(bore.sentences, "Model, not measured"));
    EXPECT_EQ(outlook.fit, bore.next->stone);
    EXPECT_LE(bore.next->chanceOver, 0.01);
    EXPECT_FALSE(bore.next->windows.empty());
    EXPECT_FALSE(bore.next->measure.empty());
    EXPECT_EQ(bore.headline, bore.next->sentence);
    EXPECT_EQ(bore.curves.now.mean_um.size(), bore.curves.depth_mm.size());
    EXPECT_EQ(bore.curves.then.mean_um.size(), bore.curves.depth_mm.size());
    const Stone& stone = *findStone(shop.workbook.hone, bore.next->stone);
    const auto reach = reachOf(stone, shop.workbook.block.bores[0]);
    for (const PlannedWindow& window : bore.next->windows) {
        EXPECT_GE(window.from.value(), reach->highest);
        EXPECT_LE(window.to.value(), reach->lowest);
        EXPECT_EQ(window.strokes, std::round(window.strokes)) << "whole strokes";
    }
    EXPECT_FALSE(outlook.cautions.empty());
}

// To the end on one bench: each pass is learned from, and nothing goes over.
TEST(HoneOutlooks, ABoreIsBroughtToSizeAndStraight) {
    HoneShop shop = shopOf(11);
    const auto memory = newHoneMemory();
    HoneOutlook outlook = shop.outlook({}, memory);
    int rounds = 0;
    for (; outlook.bores[0].next && rounds < 16; ++rounds) {
        shop.hone(1, *outlook.bores[0].next);
        shop.measure(std::vector<int>{1});
        outlook = shop.outlook({}, memory);
        ASSERT_TRUE(outlook.bores[0].checked);
        EXPECT_EQ(outlook.bores[0].checked->survey, shop.workbook.surveys.back().header.id);
        EXPECT_LE(shop.bench(1).largest(), 5.0) << "over its limit after round " << rounds;
    }
    const BoreOutlook& bore = outlook.bores[0];
    EXPECT_FALSE(bore.next) << bore.headline;
    EXPECT_NE(bore.headline.find("traight within "), std::string::npos) << bore.headline;
    EXPECT_NE(bore.headline.find("top."), std::string::npos) << bore.headline;
    EXPECT_LE(shop.bench(1).spreadOverStations(), 9) << "of some 30 µm: " << bore.headline;
    EXPECT_GE(rounds, 3);
    const auto& stones = outlook.stones;
    EXPECT_TRUE(std::ranges::any_of(stones, [](const StoneOutlook& stone) {
        return stone.passes > 0 && stone.rateFactor95 < 2;
    })) << "something was learned of a stone";
}

TEST(HoneOutlooks, TheSameWorkbookGivesTheSameOutlookWithMemoryOrWithout) {
    HoneShop shop = shopOf(12);
    const auto memory = newHoneMemory();
    for (int round = 0; round < 2; ++round) {
        const HoneOutlook warm = shop.outlook({}, memory);
        EXPECT_EQ(fileOf(shop, warm), fileOf(shop, shop.outlook())) << "round " << round;
        EXPECT_EQ(fileOf(shop, warm), fileOf(shop, shop.outlook({}, memory)));
        ASSERT_TRUE(warm.bores[0].next) << warm.bores[0].headline;
        shop.hone(1, *warm.bores[0].next);
        shop.measure(std::vector<int>{1});
    }
    // Undone: what was remembered of the longer log does not count.
    shop.workbook.surveys.pop_back();
    shop.workbook.hone.passes.pop_back();
    EXPECT_EQ(fileOf(shop, shop.outlook({}, memory)), fileOf(shop, shop.outlook()));
}

TEST(HoneOutlooks, NoStationIsLessStraightThanEveryDepth) {
    HoneShop shop = shopOf(5);
    Bore& bore = shop.workbook.block.bores[0];
    Level last;
    last.depth =
        typedFrom(bore.depth->value() - Length::whole(1, Unit::millimetre), Unit::millimetre);
    bore.levels.push_back(last);
    shop.workbook.surveys.clear();
    shop.measure(std::vector<int>{1});
    const BoreOutlook outlook = shop.outlook().bores[0];
    ASSERT_TRUE(outlook.next) << outlook.headline;
    EXPECT_GT(outlook.next->spread_um, 20) << "no stone reaches the last station";
    EXPECT_GE(outlook.next->spreadAll_um, outlook.next->spread_um);
}

TEST(HoneOutlooks, ASetUpOfHisOwnIsForeseenAndForbiddenWhereItMayGoOver) {
    HoneShop shop = shopOf(5);
    const Results results = shop.results();
    const DisplayUnits units = DisplayUnits::metric();
    const auto reach = *reachOf(shop.workbook.hone.stones[0], shop.workbook.block.bores[0]);
    StrokeWindow window;
    window.from = typedFrom(reach.highest, Unit::millimetre);
    window.to = typedFrom(reach.lowest, Unit::millimetre);
    window.strokes = 5;
    const auto few = foreseeOwn(shop.workbook, results, units, 1, "k1", {window});
    ASSERT_TRUE(few) << few.error().message();
    EXPECT_FALSE(few->forbidden) << few->chanceOver;
    EXPECT_EQ(few->curves.then.mean_um.size(), few->curves.depth_mm.size());
    window.strokes = 5000;
    const auto many = foreseeOwn(shop.workbook, results, units, 1, "k1", {window});
    ASSERT_TRUE(many);
    EXPECT_TRUE(many->forbidden);
    EXPECT_TRUE(says(many->sentences, "Do not: "));
    for (std::size_t i = 0; i < few->curves.depth_mm.size(); ++i)
        EXPECT_GE(many->curves.then.mean_um[i], few->curves.then.mean_um[i] - 0.5)
            << "more strokes never leave more stock, at " << few->curves.depth_mm[i] << " mm";

    window.strokes = 0;
    EXPECT_FALSE(foreseeOwn(shop.workbook, results, units, 1, "k1", {window}));
    window.strokes = 5;
    window.to = typedMm("200");
    const auto through = foreseeOwn(shop.workbook, results, units, 1, "k1", {window});
    ASSERT_FALSE(through) << "through the closed end";
    EXPECT_FALSE(foreseeOwn(shop.workbook, results, units, 1, "k9", {window}));
    EXPECT_FALSE(foreseeOwn(shop.workbook, results, units, 7, "k1", {window}));
}

TEST(HoneOutlooks, OfSixBoresTheBlocksStoneIsFittedAndTheRestWait) {
    const HoneShop shop = shopOf(21, 6);
    const HoneOutlook outlook = shop.outlook();
    ASSERT_EQ(outlook.bores.size(), 6U);
    ASSERT_TRUE(outlook.fit);
    for (const BoreOutlook& bore : outlook.bores) {
        if (bore.next) {
            EXPECT_EQ(bore.next->stone, *outlook.fit) << "one stone for the stop";
        }
        EXPECT_FALSE(bore.waits && bore.next);
        if (bore.waits) {
            EXPECT_TRUE(bore.headline.starts_with("Waits for '")) << bore.headline;
        }
    }
    EXPECT_TRUE(std::ranges::any_of(outlook.bores,
                                    [](const BoreOutlook& bore) { return bore.next.has_value(); }));
    for (const BoreOutlook& bore : outlook.bores)
        EXPECT_TRUE(!bore.waits || !bore.outline.empty()) << "what it waits for: " << bore.headline;
    EXPECT_TRUE(outlook.headline.starts_with("Fit '")) << outlook.headline;
    EXPECT_GE(outlook.stopsLeft, 2);
    EXPECT_TRUE(says(outlook.sentences, "As it looks now ")) << outlook.headline;
    // Alone, a bore does not wait.
    const HoneOutlook alone = shop.outlook({}, {}, {4});
    ASSERT_EQ(alone.bores.size(), 1U);
    EXPECT_TRUE(alone.bores[0].next) << alone.bores[0].headline;
}

TEST(HoneOutlooks, WishesAreKept) {
    const HoneShop shop = shopOf(5);
    HoneWishes wishes;
    wishes.noShort = true;
    const HoneOutlook noShort = shop.outlook(wishes);
    ASSERT_TRUE(noShort.bores[0].next) << noShort.bores[0].headline;
    const Stone* used = findStone(shop.workbook.hone, noShort.bores[0].next->stone);
    EXPECT_GT(used->ends.value() - used->begins.value(), mm("40"));
    wishes = {};
    wishes.oneStone = true;
    wishes.fitted = "k1";
    const HoneOutlook one = shop.outlook(wishes);
    ASSERT_TRUE(one.bores[0].next) << one.bores[0].headline;
    EXPECT_EQ(one.bores[0].next->stone, "k1");
    EXPECT_EQ(one.bores[0].stoneChanges, 0);
}

TEST(HoneOutlooks, AlternativesHaveTheirPriceAndTheFileFollowsItsSchema) {
    HoneShop shop = shopOf(12);
    const Json schema = loadSchema("results");
    SchemaValidator validator(schema);
    const DisplayUnits units = DisplayUnits::inch();
    const auto check = [&](const HoneOutlook& outlook) {
        const Json json = Json::parse(fileOf(shop, outlook));
        EXPECT_EQ(json["format"], "borewright plan");
        validator.check(json["plan"], schema["$defs"]["honePlan"], "honePlan");
    };
    HoneOutlook outlook = shop.outlook();
    check(outlook);
    shop.hone(1, *outlook.bores[0].next);
    shop.measure(std::vector<int>{1});
    outlook = honeOutlook(shop.workbook, shop.results(), units, {}, {}, true);
    ASSERT_EQ(outlook.bores[0].alternatives.size(), 3U);
    for (const HoneAlternative& one : outlook.bores[0].alternatives)
        EXPECT_FALSE(one.sentence.empty()) << one.name;
    check(outlook);
    shop.workbook.limitSets.clear();
    check(shop.outlook());
    shop.workbook.hone.stones.clear();
    shop.workbook.hone.passes.clear();
    check(shop.outlook());
    EXPECT_EQ(validator.problems, std::set<std::string>());
    for (const char* key : {"honedBore/windows", "honedBore/measure", "honedBore/expected",
                            "honedBore/checked", "honedBore/alternatives", "honePlan/fit",
                            "honePlan/refused", "learnedStone/rate_mm", "honeWindow/strokes"})
        EXPECT_TRUE(validator.seen.contains(key)) << key;
}

TEST(HoneOutlooks, GivingUpIsTold) {
    const HoneShop shop = shopOf(5);
    const HoneOutlook outlook = honeOutlook(shop.workbook, shop.results(), DisplayUnits::metric(),
                                            {}, {}, false, [](double) { return false; });
    EXPECT_TRUE(outlook.cancelled);
}

} // namespace
} // namespace borewright
