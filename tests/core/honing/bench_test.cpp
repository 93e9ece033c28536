// SPDX-License-Identifier: GPL-3.0-or-later
// Bore and stone cut into cells, and the share of a stroke that each cell of the wall is covered.
#include "core/honing/bench.h"

#include "core/honing/contact.h"
#include "tests/support/printed.h"

namespace borewright {
namespace {

using test::near;

TEST(WallGrid, FitsTheDepthWithCellsNoCoarserThanAsked) {
    EXPECT_EQ(wallGrid(100).cells, 50U);
    EXPECT_EQ(wallGrid(100).height_mm, 2);
    const WallGrid odd = wallGrid(104.14); // 4.10 in
    EXPECT_EQ(odd.cells, 53U);
    EXPECT_TRUE(near(odd.depth_mm(), 104.14, 1e-9, "mm"));
    EXPECT_TRUE(near(odd.middle_mm(52), 104.14 - odd.height_mm / 2, 1e-9, "mm"));
    EXPECT_EQ(wallGrid(0.3, 0.1).cells, 3U) << "rounding makes no further cell";
    EXPECT_EQ(wallGrid(1, 2).cells, 1U);
}

TEST(WallGrid, BetweenTheMiddlesOfCellsAWallIsAStraightLine) {
    const WallGrid grid = wallGrid(8); // middles at 1, 3, 5, 7 mm
    const std::vector<double> wall{10, 30, 20, 40};
    const auto at = [&](double depth_mm) { return betweenCells(grid, depth_mm).of(wall); };
    EXPECT_TRUE(near(at(1), 10, 1e-12, "um"));
    EXPECT_TRUE(near(at(2.5), 25, 1e-12, "um"));
    EXPECT_TRUE(near(at(6.5), 35, 1e-12, "um"));
    EXPECT_TRUE(near(at(7), 40, 1e-12, "um"));
    EXPECT_TRUE(near(at(0), 10, 1e-12, "um")) << "above the first middle as it is there";
    EXPECT_TRUE(near(at(99), 40, 1e-12, "um")) << "below the last one too";
}

TEST(StoneOnGrid, CutsTheUppermostCell) {
    const WallGrid grid = wallGrid(100);
    const StoneOnGrid whole = stoneOnGrid(grid, 76, 30, 98);
    EXPECT_EQ(whole.cells, 38U);
    EXPECT_TRUE(near(whole.topShare, 1, 1e-9));
    EXPECT_EQ(whole.highest_mm, 30);
    EXPECT_EQ(whole.lowest_mm, 98);
    const StoneOnGrid cut = stoneOnGrid(grid, 74.5, 30, 98);
    EXPECT_EQ(cut.cells, 38U);
    EXPECT_TRUE(near(cut.topShare, 0.25, 1e-9));
    EXPECT_EQ(stoneOnGrid(grid, 0.5, 30, 98).cells, 1U);
}

TEST(Coverage, AddsUpToTheStone) {
    const WallGrid grid = wallGrid(100);
    const StoneOnGrid stone = stoneOnGrid(grid, 24.6, 30, 99.3);
    for (const Stroking& s : {Stroking{40, 90, 10, 0},
                              {40.7, 93.1, 10, 3},
                              {99.3, 99.3, 5, 0},
                              {61, 61.01, 5, 0},
                              {61, 66, 0, 2}})
        for (const double reversal_mm : {0.0, 2.0})
            EXPECT_TRUE(near(coverage(grid, stone, reversal_mm, s).sum(), 12.3, 1e-9, "cells"));
    EXPECT_EQ(coverage(grid, stone, 2, {40, 90, 0, 0}).sum(), 0);
}

TEST(Coverage, AWindowWithoutLengthIsOnePosition) {
    const WallGrid grid = wallGrid(100);
    const StoneOnGrid stone = stoneOnGrid(grid, 20, 30, 100);
    const Eigen::VectorXd covered = coverage(grid, stone, 2, {80, 80, 10, 0});
    for (Eigen::Index i = 0; i < 50; ++i)
        EXPECT_TRUE(near(covered[i], i >= 30 && i < 40 ? 1 : 0, 1e-9)) << "cell " << i;
    // Between two edges both neighbours share it.
    const Eigen::VectorXd between = coverage(grid, stone, 2, {80.5, 80.5, 10, 0});
    EXPECT_TRUE(near(between[40], 0.25, 1e-9));
    EXPECT_TRUE(near(between[30], 0.75, 1e-9));
}

// The hand turns round at both ends: a reversal of r counts as r/2 of travel at each.
TEST(Coverage, ReversalsWeighOnTheEnds) {
    const WallGrid grid = wallGrid(100);
    const StoneOnGrid stone = stoneOnGrid(grid, 10, 20, 100);
    const Eigen::VectorXd covered = coverage(grid, stone, 4, {60, 96, 10, 0});
    // The lowest cell is under the stone from 94 … 96 mm on, half of that smeared: 1 + 2 of 40 mm.
    EXPECT_TRUE(near(covered[47], (1 + 2) / 40.0, 1e-9));
    EXPECT_TRUE(near(covered[40], 10.0 / 40, 1e-9)) << "a passing stone, no turning";
}

} // namespace
} // namespace borewright
