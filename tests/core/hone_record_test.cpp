// SPDX-License-Identifier: GPL-3.0-or-later
// What is recorded of honing: how far a stone may go, how names are told apart, and how what cannot
// stand is refused.
#include "core/workbook/hone_record.h"

#include "core/honing/stages.h"
#include "tests/support/honed_block.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace borewright {
namespace {

using namespace test;

const double notANumber = std::nan("");
const double endless = std::numeric_limits<double>::infinity();

class HoneRecords : public testing::Test {
protected:
    Stone& stone(std::size_t i) { return record.stones[i]; }
    Bore& bore() { return workbook.block.bores[1]; }
    // The refusal of the pass of the short stone in bore 2 once `change` has been at it.
    template<class Change>
    std::string pass(Change change) {
        Pass pass = record.passes[1];
        change(pass);
        const auto good = checkPass(pass, record, workbook.block);
        return good ? "taken" : good.error().message();
    }
    template<class Change>
    std::string window(Change change) {
        return pass([&](Pass& it) { change(it.windows[0]); });
    }
    template<class Change>
    std::string whole(Change change) {
        HoneRecord changed = record;
        change(changed);
        const auto good = checkHone(changed, workbook.block);
        return good ? "taken" : good.error().message();
    }
    template<class Change>
    std::string stoneWith(Change change) {
        Stone changed = stone(1);
        change(changed);
        const auto good = checkStone(changed);
        return good ? "taken" : good.error().message();
    }

    Workbook workbook = honedBlock();
    HoneRecord& record = workbook.hone;
};

TEST_F(HoneRecords, AsMadeItStands) {
    EXPECT_TRUE(checkHone(record));
    EXPECT_TRUE(checkHone(record, workbook.block));
    EXPECT_TRUE(checkHone(HoneRecord{}, Block{}));
}

// Worked by hand: 1 in of abrasive on 0.25 in of wood in a blind bore of 5 in. A third of it may
// stand out of the open end, so its lower end comes up to 2/3 in; the wood touches at 4.75 in.
TEST_F(HoneRecords, TheGuideKeepsAShortStoneOffTheClosedEnd) {
    const auto reach = reachOf(stone(1), bore());
    ASSERT_TRUE(reach);
    EXPECT_EQ(reach->lowest, in("4.75"));
    EXPECT_LT((reach->highest - in("0.666667")).magnitude(), um("0.1"));
}

TEST_F(HoneRecords, WhereThereIsRoomTheAbrasiveStandsOut) {
    bore().roomAtClosedEnd = typedIn("2");
    EXPECT_LT((reachOf(stone(1), bore())->lowest - in("5.333333")).magnitude(), um("0.1"));
    EXPECT_EQ(reachOf(stone(0), bore())->lowest, in("5.5")) << "half an inch, as its owner says";
    EXPECT_EQ(reachOf(stone(0), bore())->highest, in("2"));
    bore().roomAtClosedEnd = typedIn("0.375"); // less the guide
    EXPECT_EQ(reachOf(stone(1), bore())->lowest, in("5.125"));
    bore().roomAtOpenEnd = typedIn("0");
    EXPECT_EQ(reachOf(stone(0), bore())->highest, in("3")) << "nothing may stand out of the top";
    bore().roomAtClosedEnd.reset();
    EXPECT_EQ(reachOf(stone(1), bore())->lowest, in("4.75")) << "taken to be closed";
}

TEST_F(HoneRecords, AStoneLongerThanTheBoreHasNoReach) {
    stone(1).ends = typedIn("5.26");
    auto reach = reachOf(stone(1), bore());
    ASSERT_FALSE(reach);
    EXPECT_EQ(reach.error().message(), "bore 2: stone 'Short 100' is 5.010 in long, and the bore "
                                       "only 5 in deep: it cannot be stroked in it");
    stone(1).ends = typedIn("5.2");
    stone(1).begins = typedIn("1.9"); // 3.3 in, out by 1.1: from 2.2 to 3.1
    EXPECT_TRUE(reachOf(stone(1), bore()));
    stone(1).begins = typedIn("3");
    stone(1).ends = typedIn("6.3"); // from 2.2 to 2
    reach = reachOf(stone(1), bore());
    ASSERT_FALSE(reach);
    EXPECT_NE(reach.error().message().find("too long to be stroked"), std::string::npos);
    bore().depth.reset();
    reach = reachOf(stone(1), bore());
    ASSERT_FALSE(reach);
    EXPECT_NE(reach.error().message().find("depth is not entered"), std::string::npos);
}

TEST_F(HoneRecords, ASecondAtSixtyABeatIsAStroke) {
    StrokeWindow window;
    window.seconds = 24;
    Hone hone;
    EXPECT_EQ(strokesOf(window, hone), 24);
    hone.beatsPerMinute = 75;
    EXPECT_EQ(strokesOf(window, hone), 30);
    window.strokes = 8;
    EXPECT_EQ(strokesOf(window, hone), 8) << "what was counted goes before the stop-watch";
    EXPECT_EQ(strokesOf({}, hone), 0);
}

TEST_F(HoneRecords, StonesAreFoundAsTheyAreCalled) {
    EXPECT_EQ(stoneCalled(record, "short 100")->id, "k2");
    EXPECT_EQ(stoneCalled(record, "  SHORT   100 ")->id, "k2");
    EXPECT_EQ(stoneCalled(record, "k3")->id, "k3");
    EXPECT_EQ(stoneCalled(record, "short100"), nullptr);
    stone(1).name = "GRÖSSE Ä";
    EXPECT_EQ(stoneCalled(record, "grösse ä")->id, "k2");
    EXPECT_EQ(freshStoneId(record), "k4");
    EXPECT_EQ(freshPassId(record), "h4");
    EXPECT_EQ(freshCareId(record), "c3");
    record.stones.erase(record.stones.begin());
    EXPECT_EQ(freshStoneId(record), "k4") << "k3 is taken";
}

TEST_F(HoneRecords, AStrokeThroughTheClosedEndIsToldTheLowestDepth) {
    EXPECT_EQ(
        window([](StrokeWindow& it) { it.to = typedIn("4.9"); }),
        "pass h2: window: to: 4.9 in is too low: stone 'Short 100' strikes the closed end or "
        "stands out too far; the lower end of its abrasive may go down to 4.750 in in bore 2");
    EXPECT_EQ(window([](StrokeWindow& it) { it.to = typedIn("4.75"); }), "taken");
    EXPECT_EQ(window([](StrokeWindow& it) { it.from = typedIn("0.667"); }), "taken");
    EXPECT_EQ(window([](StrokeWindow& it) { it.from = typedIn("0.5"); }),
              "pass h2: window: from: 0.5 in is too high: stone 'Short 100' would stand out of the "
              "open end by 0.500 in and could tip out; the lower end of its abrasive may come up "
              "to 0.667 in in bore 2");
    EXPECT_EQ(
        pass([](Pass& it) {
            it.windows.push_back({typedIn("3"), typedIn("5"), 8, {}});
        }),
        "pass h2: window 2: to: 5 in is too low: stone 'Short 100' strikes the closed end or "
        "stands out too far; the lower end of its abrasive may go down to 4.750 in in bore 2");
    stone(1).ends = typedIn("6.25");
    EXPECT_EQ(pass([](Pass&) {}), "pass h2: bore 2: stone 'Short 100' is 6.000 in long, and the "
                                  "bore only 5 in deep: it cannot be stroked in it");
}

TEST_F(HoneRecords, WindowsThatAreNoneAreRefused) {
    EXPECT_EQ(window([](StrokeWindow& it) { std::swap(it.from, it.to); }),
              "pass h2: window: the window is upside down: it goes from 4.04 in, the upper end of "
              "the stroke, to 3,3 in, which is above it");
    EXPECT_EQ(window([](StrokeWindow& it) { it.strokes = 0; }),
              "pass h2: window: no strokes at all: nothing was honed");
    EXPECT_EQ(window([](StrokeWindow& it) { it.strokes.reset(); }),
              "pass h2: window: no strokes at all: nothing was honed");
    EXPECT_EQ(window([](StrokeWindow& it) {
                  it.strokes = 0;
                  it.holdSeconds = 4;
              }),
              "taken")
        << "standing still with the hone turning takes stock";
    for (const double strokes : {-1.0, 1e9, notANumber, endless, -endless}) {
        EXPECT_EQ(
            window([&](StrokeWindow& it) { it.strokes = strokes; }),
            "pass h2: window: strokes: lie between 0 and 10 000, a stroke being down and back")
            << strokes;
        EXPECT_EQ(window([&](StrokeWindow& it) { it.seconds = strokes; }),
                  "pass h2: window: seconds: lie between 0 and 10 000");
        EXPECT_EQ(window([&](StrokeWindow& it) { it.holdSeconds = strokes; }),
                  "pass h2: window: hold: lies between 0 and 3600 seconds");
        EXPECT_EQ(pass([&](Pass& it) { it.speedRpm = strokes; }),
                  "pass h2: speed: a spindle turns more than 0 and at most 10 000 times a minute");
    }
    EXPECT_EQ(window([](StrokeWindow& it) { it.from = typedIn("-1"); }),
              "pass h2: window: from: lies between the open end (0) and three metres");
    EXPECT_EQ(pass([](Pass& it) { it.windows.clear(); }),
              "pass h2: no window is given: from where to where was it honed?");
}

TEST_F(HoneRecords, APassOfNoStoneOrBoreIsRefused) {
    EXPECT_EQ(pass([](Pass& it) { it.stone = "k9"; }), "pass h2: stone: there is no stone 'k9'");
    EXPECT_EQ(pass([](Pass& it) { it.stone.clear(); }), "pass h2: stone: is not given");
    EXPECT_EQ(pass([](Pass& it) { it.bore = 7; }), "pass h2: bore: there is no bore 7");
    EXPECT_EQ(pass([](Pass& it) { it.bore = -1; }),
              "pass h2: bore: bores are numbered from 1 to 999");
}

TEST_F(HoneRecords, PlatedBoresRefuseOrdinaryStones) {
    bore().surface = Surface::plated;
    EXPECT_EQ(pass([](Pass&) {}), "pass h2: bore 2: plated bores want diamond; follow the plater");
    bore().surface = Surface::bareAluminium;
    EXPECT_EQ(pass([](Pass&) {}), "taken");
    EXPECT_NE(surfaceCaution(Surface::bareAluminium), "") << "but not without a word";
    EXPECT_EQ(surfaceCaution(Surface::iron), "");
}

TEST_F(HoneRecords, AStoneThatCannotBeIsRefused) {
    EXPECT_EQ(stoneWith([](Stone& it) { it.name = " "; }), "stone ' ': name: a stone needs one");
    EXPECT_EQ(stoneWith([](Stone& it) { it.ends = it.begins; }),
              "stone 'Short 100': ends: the abrasive ends where it begins or below: both are "
              "measured from the carrier's lower end up");
    EXPECT_EQ(stoneWith([](Stone& it) { it.begins = typedIn("-0.1"); }),
              "stone 'Short 100': begins: must not be below zero");
    EXPECT_EQ(stoneWith([](Stone& it) { it.outOfOpenEnd = typedIn("1"); }),
              "stone 'Short 100': out of the open end: is the whole stone: it would fall out");
    EXPECT_EQ(stoneWith([](Stone& it) { it.outOfClosedEnd = typedIn("-1"); }),
              "stone 'Short 100': out of the closed end: is nothing or more");
    for (const double doubt : {0.0, -0.1, notANumber, endless})
        EXPECT_EQ(stoneWith([&](Stone& it) {
                      it.experience = StoneExperience{0, doubt, 1};
                  }),
                  "stone 'Short 100': doubt of its rate: is more than nothing and at most a factor "
                  "of e^5");
    for (const double rate : {notANumber, endless, 700.0})
        EXPECT_EQ(stoneWith([&](Stone& it) {
                      it.experience = StoneExperience{rate, 0.3, 1};
                  }),
                  "stone 'Short 100': rate: no stone cuts like that: is the unit right?");
    EXPECT_EQ(stoneWith([](Stone& it) {
                  it.experience = StoneExperience{0, 0.3, -1};
              }),
              "stone 'Short 100': passes: cannot be fewer than none");
}

TEST_F(HoneRecords, NoTwoStonesAreCalledAlike) {
    EXPECT_EQ(whole([](HoneRecord& it) { it.stones[2].name = " short  100"; }),
              "stone ' short  100': another stone is called so already; capitals and spaces do not "
              "tell them apart");
    EXPECT_EQ(whole([](HoneRecord& it) { it.stones[2].name = "K1"; }),
              "stone 'K1': that is what the program calls stone 'full 100'");
    EXPECT_EQ(whole([](HoneRecord& it) { it.stones[2].name = "k3"; }), "taken") << "its own";
    EXPECT_EQ(whole([](HoneRecord& it) { it.stones[2].id = "k1"; }),
              "stones: 'k1' is no id of its own");
}

TEST_F(HoneRecords, AHoneOrStagesThatCannotBeAreRefused) {
    for (const double beat : {0.0, -60.0, notANumber, 1e9})
        EXPECT_EQ(whole([&](HoneRecord& it) { it.hone.beatsPerMinute = beat; }),
                  "hone: beat: lies between 1 and 600 a minute");
    EXPECT_EQ(whole([](HoneRecord& it) { it.stages.closedEndLead = typedThou("-1"); }),
              "stages: closed end leads by: is nothing or more");
    EXPECT_EQ(whole([](HoneRecord& it) { it.stages.roughStopsAt = typedIn("4.5"); }),
              "stages: rough stones stop at: 4.5 in to go: is the unit right?");
    EXPECT_EQ(whole([](HoneRecord& it) { it.stages.nextStopsAt = typedThou("4.1"); }),
              "stages: next stones stop at: is more to go than the rough stones leave");
    EXPECT_EQ(whole([](HoneRecord& it) { it.stages.coolBelow = typedThou("1.3"); }),
              "stages: only cool below: is more to go than the stones before leave");
}

TEST_F(HoneRecords, CareAndTicksNameWhatIsThere) {
    EXPECT_EQ(whole([](HoneRecord& it) { it.care[0].stone = "k7"; }),
              "care c1: stone: there is no stone 'k7'");
    EXPECT_EQ(whole([](HoneRecord& it) { it.care[1].afterPass = "h9"; }),
              "care c2: there is no pass 'h9'");
    EXPECT_EQ(whole([](HoneRecord& it) { it.ticks[0]; }),
              "ticks of bore 0: is no number of a bore");
    EXPECT_EQ(whole([](HoneRecord& it) { it.passes[1].id = "h1"; }),
              "passes: 'h1' is no id of its own");
}

TEST_F(HoneRecords, APassStruckOutNeedNotFitTheBoreAnyMore) {
    workbook.block.bores[1].depth = typedIn("4.2");
    EXPECT_NE(whole([](HoneRecord&) {}), "taken") << "4.04 in, and a quarter of an inch of wood";
    EXPECT_EQ(whole([](HoneRecord& it) { it.passes[1].struck = "wrong bore"; }), "taken");
}

// Common practice, no source.
TEST(Stages, CommonPracticeStandsInForWhatIsNotSaid) {
    EXPECT_EQ(stagesOf({}), (Stages{thou("4.5"), thou("0.8"), thou("1"), thou("0.3")}));
    HoneStages own;
    own.roughStopsAt = typedThou("6");
    own.closedEndLead = typedMm("0.01");
    EXPECT_EQ(stagesOf(own), (Stages{thou("6"), mm("0.01"), thou("1"), thou("0.3")}));
}

TEST(Stages, WhatPracticeSaysGivesWayToWhatHeSaid) {
    HoneStages own;
    own.roughStopsAt = typedThou("0.2"); // nothing but rough stones
    EXPECT_EQ(stagesOf(own), (Stages{thou("0.2"), thou("0.8"), thou("0.2"), thou("0.2")}));
    own = {};
    own.nextStopsAt = typedThou("5");
    EXPECT_EQ(stagesOf(own), (Stages{thou("5"), thou("0.8"), thou("5"), thou("0.3")}));
    own = {};
    own.coolBelow = typedThou("2");
    EXPECT_EQ(stagesOf(own), (Stages{thou("4.5"), thou("0.8"), thou("2"), thou("2")}));
}

} // namespace
} // namespace borewright
