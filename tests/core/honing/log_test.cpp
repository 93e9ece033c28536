// SPDX-License-Identifier: GPL-3.0-or-later
// The record of the hone in the order of the work, bores beside their bench, and what is odd.
#include "core/honing/log.h"
#include "tests/support/honed_block.h"
#include "tests/support/lengths.h"
#include "tests/support/says.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

using namespace test;
using Kind = LogEvent::Kind;

std::string inOrder(const Workbook& workbook) {
    std::string text;
    for (const LogEvent& event : orderOfWork(workbook)) {
        if (!text.empty()) text += " ";
        text += event.kind == Kind::survey ? workbook.surveys[event.index].header.id
                : event.kind == Kind::pass ? workbook.hone.passes[event.index].id
                                           : workbook.hone.care[event.index].id;
    }
    return text;
}

Reading readingOf(int bore, const char* size, const Timestamp& time) {
    Reading reading;
    reading.station = {bore, in("2"), "A"};
    reading.typed = typedIn(size);
    reading.time = time;
    return reading;
}

TEST(HoneOrder, PassesStandBehindTheirSurveyAndCareBehindItsPass) {
    Workbook workbook = honedBlock();
    EXPECT_EQ(inOrder(workbook), "c1 s1 h1 s2 h2") << "h3 and c2 are struck out";
    workbook.hone.passes[2].struck.reset();
    workbook.hone.care[1].struck.reset();
    EXPECT_EQ(inOrder(workbook), "c1 s1 h1 c2 s2 h2 h3");
    // Clocks do not count.
    workbook.hone.passes[0].time.secondsSinceEpoch += 1'000'000;
    EXPECT_EQ(inOrder(workbook), "c1 s1 h1 c2 s2 h2 h3");
    // Care behind a pass that was struck out keeps its place.
    workbook.hone.passes[0].struck = "never done";
    EXPECT_EQ(inOrder(workbook), "c1 s1 c2 s2 h2 h3");
    workbook.hone.passes[1].after = "gone";
    EXPECT_EQ(inOrder(workbook), "c1 s1 c2 s2 h3 h2") << "what has no place stands at the end";
    workbook.hone.passes[2].after = "";
    EXPECT_EQ(inOrder(workbook), "c1 h3 s1 c2 s2 h2");
}

TEST(HoneBenches, BoresOfOneGeometryShareABench) {
    Workbook workbook = honedBlock();
    auto groups = benchGroups(workbook);
    ASSERT_EQ(groups.size(), 1U);
    EXPECT_EQ(groups[0].bores, (std::vector{1, 2, 3}));
    EXPECT_NEAR(groups[0].bench.grid.depth_mm(), 127, 1e-9) << "5 in";
    ASSERT_EQ(groups[0].bench.stones.size(), 3U);
    const BenchStone& full = groups[0].bench.stones[0];
    // 3 in long, 1 in out of the open end: its lower end goes no higher than 2 in, nor below 5.
    EXPECT_NEAR(full.grid.length_mm, 76.2, 1e-9);
    EXPECT_NEAR(full.grid.highest_mm, 50.8, 1e-9);
    EXPECT_NEAR(full.grid.lowest_mm, 127, 1e-9);
    // A quarter of an inch of wood keeps the short one from the closed end.
    EXPECT_NEAR(groups[0].bench.stones[1].grid.lowest_mm, 120.65, 1e-9);
    EXPECT_TRUE(groups[0].bench.stones[2].finish);
    EXPECT_EQ(full.logRate, -0.25) << "as brought along";
    EXPECT_TRUE(full.proven);
    EXPECT_NEAR(groups[0].bench.stones[2].logRate, std::log(0.3), 1e-12);
    EXPECT_FALSE(groups[0].bench.stones[2].proven);

    findBore(workbook.block, 2)->depth = typedIn("4.5");
    groups = benchGroups(workbook);
    ASSERT_EQ(groups.size(), 2U);
    EXPECT_EQ(groups[0].bores, (std::vector{1, 3}));
    EXPECT_EQ(groups[0].placeOf(3), std::optional<std::size_t>(1));
    EXPECT_EQ(groups[0].placeOf(2), std::nullopt);
}

TEST(HoneBenches, WhatCannotBeHonedIsInNone) {
    Workbook workbook = honedBlock();
    findBore(workbook.block, 1)->surface = Surface::plated;
    findBore(workbook.block, 2)->depth.reset();
    const auto groups = benchGroups(workbook);
    ASSERT_EQ(groups.size(), 1U);
    EXPECT_EQ(groups[0].bores, std::vector{3});
    EXPECT_NE(cannotHone(*findBore(workbook.block, 1)).find("plat"), std::string::npos);
    EXPECT_NE(cannotHone(*findBore(workbook.block, 2)).find("depth"), std::string::npos);
    EXPECT_EQ(cannotHone(*findBore(workbook.block, 3)), "");
}

TEST(HoneBenches, AStoneLongerThanTheBoreIsLeftOutAndNamed) {
    Workbook workbook = honedBlock();
    for (Bore& bore : workbook.block.bores)
        bore.depth = typedIn("2.5");
    const auto groups = benchGroups(workbook);
    ASSERT_EQ(groups.size(), 1U);
    EXPECT_EQ(groups[0].stones, std::vector<std::size_t>{1}) << "the short one alone";
    EXPECT_EQ(groups[0].stoneAt(1), std::optional<std::size_t>(0));
    EXPECT_EQ(groups[0].stoneAt(0), std::nullopt);
    EXPECT_TRUE(says(groups[0].refused, "full 100"));
}

TEST(HoneBenches, PortsLeaveAFifthLessForEachAxisTheyCut) {
    Bore bore = honedBlock().block.bores[0];
    const WallGrid grid = wallGrid(127);
    EXPECT_EQ(landOf(bore, grid).size(), 0);
    bore.map.ports = {{typedMm("40"), typedMm("60"), {"A"}, {}},
                      {typedMm("50"), typedMm("70"), {"A", "B"}, {}}};
    const Eigen::VectorXd land = landOf(bore, grid);
    const auto at = [&](double mm) { return land[static_cast<Eigen::Index>(mm / grid.height_mm)]; };
    EXPECT_EQ(at(30), 1);
    EXPECT_DOUBLE_EQ(at(45), 0.8);
    EXPECT_DOUBLE_EQ(at(55), 0.6) << "where bands lie over each other the deeper cut counts";
    EXPECT_DOUBLE_EQ(at(65), 0.6);
    EXPECT_EQ(at(75), 1);
}

TEST(HoneSetUps, StrokesCountByPath) {
    const Workbook workbook = honedBlock();
    const auto setUp = setUpOf(workbook.hone.passes[0], workbook.hone.hone, 0);
    ASSERT_EQ(setUp.windows.size(), 2U);
    EXPECT_NEAR(setUp.windows[0].from_mm, 50.8, 1e-9);
    EXPECT_NEAR(setUp.windows[0].to_mm, 127, 1e-9);
    // 24 s at a beat of 72 a minute are 28.8 strokes; at 320 for the usual 350 turns a minute they
    // travel as far as 26.3 (Preston: removal is proportional to path).
    EXPECT_NEAR(setUp.windows[0].strokes, 28.8 * 320 / 350, 1e-9);
    EXPECT_NEAR(setUp.windows[1].strokes, 8.0 * 320 / 350, 1e-9);
    EXPECT_NEAR(setUp.windows[1].held, 2.5 * 72 / 60 * 320 / 350, 1e-9);
}

TEST(HoneOddities, NothingIsSaidOfATidyLog) {
    Workbook workbook = honedBlock();
    workbook.surveys[0].readings = {readingOf(1, "3.5", workbook.surveys[0].header.time)};
    Timestamp after = workbook.hone.passes[0].time;
    after.secondsSinceEpoch += 60;
    workbook.surveys[1].readings = {readingOf(1, "3.5", after)};
    EXPECT_EQ(logOddities(workbook, 1), std::vector<std::string>());
    EXPECT_EQ(logOddities(workbook, 3), std::vector<std::string>());
}

TEST(HoneOddities, ASurveyMissingBetweenPassesIsSaid) {
    Workbook workbook = honedBlock();
    workbook.surveys[1].readings = {readingOf(2, "3.5", workbook.surveys[1].header.time)};
    workbook.hone.passes[2].struck.reset();
    const std::string second = "the pass of " + clockTime(workbook.hone.passes[1].time);
    const std::string missing = "Nothing was measured between " + second + " with 'Short 100'";
    EXPECT_TRUE(says(logOddities(workbook, 2), missing));
    EXPECT_FALSE(says(logOddities(workbook, 2), "earlier"));
    workbook.hone.passes[2].time.secondsSinceEpoch -= 3600;
    const std::string third = "The pass of " + clockTime(workbook.hone.passes[2].time);
    EXPECT_TRUE(says(logOddities(workbook, 2), third)) << "out of time order";
    EXPECT_TRUE(says(logOddities(workbook, 2), "is earlier than " + second));
}

TEST(HoneOddities, ReadingsOnTheWrongSideOfAPassAreSaid) {
    Workbook workbook = honedBlock();
    Timestamp late = workbook.hone.passes[1].time;
    late.secondsSinceEpoch += 60;
    workbook.surveys[1].readings = {readingOf(2, "3.5", late)};
    EXPECT_TRUE(says(logOddities(workbook, 2), "was logged behind 'check', yet a reading there"));
    workbook.surveys[0].readings = {readingOf(1, "3.5", workbook.surveys[0].header.time)};
    Timestamp early = workbook.hone.passes[0].time;
    early.secondsSinceEpoch -= 60;
    workbook.surveys[1].readings = {readingOf(1, "3.5", early)};
    const std::string first = "before the pass of " + clockTime(workbook.hone.passes[0].time);
    EXPECT_TRUE(says(logOddities(workbook, 1), first));
}

TEST(HoneOddities, PassesThatDoNotFitTheirBoreAnyMoreAreSaid) {
    Workbook workbook = honedBlock();
    EXPECT_TRUE(says(logOddities(workbook, 1), "before anything was measured"));
    findBore(workbook.block, 1)->depth = typedIn("4.5");
    EXPECT_TRUE(says(logOddities(workbook, 1), "goes further than its stone can"));
    findBore(workbook.block, 1)->depth = typedIn("2.5");
    EXPECT_TRUE(says(logOddities(workbook, 1), "does not fit the bore"));
    workbook.hone.passes[0].stone = "k9";
    EXPECT_TRUE(says(logOddities(workbook, 1), "names a stone that is not in the list"));
    workbook.hone.passes[0].stone = "k1";
    findBore(workbook.block, 1)->depth = typedIn("5");
    workbook.hone.passes[0].windows = {workbook.hone.passes[0].windows[1]};
    workbook.hone.passes[0].windows[0].strokes = 0;
    workbook.hone.passes[0].windows[0].holdSeconds = 0;
    EXPECT_TRUE(says(logOddities(workbook, 1), "has no strokes"));
}

} // namespace
} // namespace borewright
