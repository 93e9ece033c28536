// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/stations.h"
#include "core/workbook/workbook.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// A bore closed at the crankcase side: ridge land above, ports in the middle.
Bore mapped() {
    Bore bore;
    bore.depth = typedIn("4.10");
    bore.map.topRingLine = typedIn("0.42");
    bore.map.ports.push_back({typedIn("1.95"), typedIn("2.90"), {"B"}});
    bore.map.gaugeFoot = typedIn("0.35");
    return bore;
}

std::string depths(const std::vector<Level>& levels) {
    std::string text;
    for (const Level& level : levels)
        text += (text.empty() ? "" : " ") + level.depth.text();
    return text;
}

TEST(Stations, ProposesWhereTheMapSaysItMatters) {
    // Ridge witness, near the top of ring travel, between, above and below the ports, the lowest
    // that the gauge's foot lets it reach.
    EXPECT_EQ(depths(proposeLevels(mapped())), "0.25 0.6 1.2 1.8 3.05 3.75");
}

TEST(Stations, TheRidgeWitnessIsNotJudged) {
    const Bore bore = mapped();
    EXPECT_EQ(zoneAt(bore, in("0.25")), Zone::ridgeLand);
    EXPECT_FALSE(isJudged(bore, in("0.25")));
    EXPECT_EQ(zoneAt(bore, in("0.42")), Zone::ringTravel) << "the line itself is worn by the ring";
    EXPECT_TRUE(isJudged(bore, in("3.75")));
}

TEST(Stations, InAOnePieceHeadTheRidgeIsAtTheClosedEnd) {
    Bore bore;
    bore.depth = typedMm("88");
    bore.combustionEnd = End::closed;
    bore.map.topRingLine = typedMm("81");
    bore.map.lowestRingLine = typedMm("20");
    EXPECT_EQ(zoneAt(bore, mm("8")), Zone::skirtOnly);
    EXPECT_EQ(zoneAt(bore, mm("24")), Zone::ringTravel);
    EXPECT_EQ(zoneAt(bore, mm("80")), Zone::ringTravel);
    EXPECT_EQ(zoneAt(bore, mm("84")), Zone::ridgeLand);
}

TEST(Stations, APortTakesTheWallOnlyOnTheSidesItCuts) {
    const Bore bore = mapped();
    EXPECT_FALSE(hasWall(bore, in("2.4"), "B"));
    EXPECT_TRUE(hasWall(bore, in("2.4"), "A"));
    EXPECT_TRUE(hasWall(bore, in("3.05"), "B"));
}

TEST(Stations, TheUsersWordGoesBeforeTheMap) {
    Bore bore = mapped();
    bore.wallMarks.push_back({in("2.4"), "B", true});
    bore.wallMarks.push_back({in("3.05"), "A", false});
    EXPECT_TRUE(hasWall(bore, in("2.4"), "B"));
    EXPECT_FALSE(hasWall(bore, in("3.05"), "A"));
    bore.levels.push_back({typedIn("0.25"), Judging::always});
    EXPECT_TRUE(isJudged(bore, in("0.25")));
}

TEST(Stations, WithNoMapLevelsGoByDepthAlone) {
    Bore bore;
    bore.depth = typedIn("4.00");
    const auto levels = proposeLevels(bore);
    EXPECT_EQ(levels.size(), 5U) << depths(levels);
    EXPECT_EQ(zoneAt(bore, in("0.1")), Zone::unmapped);
    EXPECT_TRUE(isJudged(bore, in("0.1")));
    EXPECT_TRUE(proposeLevels(Bore()).empty()) << "no depth, no proposal";
}

TEST(Stations, NeverProposesBeyondReachOrInsidePorts) {
    // Every combination of a small and a large bore with ports near either end.
    for (const char* depth : {"1.5", "2.5", "6.0"})
        for (const char* from : {"0.2", "0.9", "1.2"})
            for (const char* foot : {"0.1", "0.5"}) {
                Bore bore;
                bore.depth = typedIn(depth);
                bore.map.topRingLine = typedIn("0.3");
                bore.map.gaugeFoot = typedIn(foot);
                bore.map.ports.push_back({typedIn(from), typedIn("1.3"), {"A", "B"}});
                Length last;
                for (const Level& level : proposeLevels(bore)) {
                    EXPECT_GT(level.depth.value(), last);
                    last = level.depth.value();
                    EXPECT_LE(last, *gaugeReach(bore));
                    EXPECT_TRUE(hasWall(bore, last, "A")) << depth << " " << from;
                }
            }
}

TEST(Stations, TheHandGoesDownAAndUpB) {
    Workbook workbook = emptyWorkbook();
    for (int number = 1; number <= 2; ++number) {
        Bore bore;
        bore.number = number;
        for (const char* depth : {"1", "2"})
            bore.levels.push_back({typedIn(depth), {}});
        workbook.block.bores.push_back(bore);
    }
    const auto walk = [&](Order order) {
        std::string text;
        for (const Station& s : inOrder(workbook.block, plannedStations(workbook.block), order))
            text += std::to_string(s.bore) + s.axis +
                    formatDepth(s.depth, DisplayUnits::inch())[0] + " ";
        return text;
    };
    EXPECT_EQ(walk(Order::downAndUp), "1A1 1A2 1B2 1B1 2A1 2A2 2B2 2B1 ");
    EXPECT_EQ(walk(Order::downEach), "1A1 1A2 1B1 1B2 2A1 2A2 2B1 2B2 ");
    EXPECT_EQ(walk(Order::levelByLevel), "1A1 1B1 1A2 1B2 2A1 2B1 2A2 2B2 ");
    EXPECT_EQ(walk(Order::acrossBlock), "1A1 2A1 1B1 2B1 1A2 2A2 1B2 2B2 ");
}

} // namespace
} // namespace borewright
