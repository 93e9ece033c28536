// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold of a stone on a wall, whatever the figures. Derivatives: contact_directions_test.
#include "core/honing/contact.h"

#include "tests/support/printed.h"
#include "tests/support/stroked.h"

namespace borewright {
namespace {

using namespace test;

TEST(Contact, MoreStrokesNeverLeaveMoreStock) {
    for (const double compliance_um : {1.0, 20.0, 300.0}) {
        Stroked bore;
        bore.worn(1);
        bore.settings.logCompliance = std::log(compliance_um);
        Eigen::VectorXd last = bore.before.diameter;
        for (int strokes = 1; strokes <= 40; ++strokes) {
            bore.stroking.strokes = strokes;
            const Eigen::VectorXd now = bore.after().diameter;
            EXPECT_GE((now - last).minCoeff(), -1e-3)
                << strokes << " strokes, compliance " << compliance_um << " µm";
            last = now;
        }
    }
}

// The force is constant and every cell under the stone answers with its pressure, so the metal
// taken off is rate × strokes × length of the stone, whatever the wall's and the face's shape.
TEST(Contact, MetalTakenOffFollowsTheForceNotTheShape) {
    for (const std::uint64_t seed : {1U, 2U, 3U})
        for (const bool tilts : {false, true}) {
            Stroked bore;
            bore.worn(seed);
            bore.settings.tilts = tilts;
            bore.settings.logRate = std::log(0.8);
            bore.stroking = {76.3, 99.1, 25, 4};
            const double metal = bore.taken().sum() * bore.grid.height_mm;
            EXPECT_TRUE(near(metal, 0.8 * 29 * 74.6, 1e-8 * metal, "µm·mm"));
        }
}

TEST(Contact, SoftStonesOnAFlatWallTakeWhatTheirCoverageSays) {
    Stroked bore;
    bore.soft();
    bore.stroking = {77, 99, 20, 3};
    const Eigen::VectorXd expected =
        23 * coverage(bore.grid, bore.stone, bore.settings.reversal_mm, bore.stroking);
    EXPECT_LT((bore.taken() - expected).cwiseAbs().maxCoeff(), 1e-3) << "µm";
}

TEST(Contact, RigidStonesKeepAStraightWallStraightWhereTheyAlwaysBear) {
    Stroked bore;
    bore.rigid();
    bore.neverWears();
    bore.settings.tilts = false;
    bore.stroking = {80, 96, 40, 0};
    // Covered by a stone of 74.6 mm in every position: 96 − 74 … 80.
    const Eigen::VectorXd always = bore.after().diameter.segment(11, 40 - 11);
    EXPECT_LT(spread(always), 1e-9) << "µm";
    EXPECT_GT(bore.taken()[20], 20) << "µm: it did cut";
}

TEST(Contact, WhatLiesDeepIsLeftAloneByARigidStone) {
    Stroked bore;
    bore.rigid();
    bore.before.diameter.segment(20, 4).array() += 100; // a hollow
    bore.stroking.strokes = 20;
    EXPECT_EQ(bore.taken().segment(20, 4).maxCoeff(), 0) << "µm off the hollow";
    EXPECT_GT(bore.taken()[15], 5) << "µm off the wall beside it";
}

TEST(Contact, HeldFirmlyIsNoTilt) {
    Stroked firm;
    firm.worn(4);
    firm.settings.logLooseness = -40;
    Stroked straight = firm;
    straight.settings.tilts = false;
    EXPECT_LT((firm.after().diameter - straight.after().diameter).cwiseAbs().maxCoeff(), 1e-9);
    firm.settings.logLooseness = 1;
    EXPECT_GT((firm.after().diameter - straight.after().diameter).cwiseAbs().maxCoeff(), 1)
        << "µm: a loose holder makes a difference";
}

TEST(Contact, AFreeStoneLiesAgainstATaper) {
    Stroked bore;
    bore.rigid();
    bore.neverWears();
    bore.stroking = {90, 90, 20, 0};
    for (Index i = 0; i < bore.before.diameter.size(); ++i)
        bore.before.diameter[i] += 0.8 * static_cast<double>(i);
    const auto spreadUnder = [&] { return spread(bore.taken().segment(8, 37)); };
    bore.settings.logLooseness = 7;
    EXPECT_LT(spreadUnder(), 2) << "µm: free, it takes much the same off everywhere";
    bore.settings.tilts = false;
    EXPECT_GT(spreadUnder(), 15) << "µm: held, it takes the narrow end first";
}

// A face out of line by w prints 2·w on the diameter: geometry.
TEST(Contact, AWedgeOnTheFacePrintsTwiceOnTheDiameter) {
    Stroked bore;
    bore.stone = stoneOnGrid(bore.grid, 76, 20, 100);
    bore.flat(-200);
    bore.rigid();
    bore.neverWears();
    bore.settings.tilts = false;
    bore.stroking = {90, 90, 60, 0};
    const double wedge_um = 12.7; // 0.5 thou from the first cell's middle to the last's
    for (Index j = 0; j < 38; ++j)
        bore.before.face[j] = wedge_um * static_cast<double>(j) / 37;
    const Eigen::VectorXd after = bore.after().diameter;
    // Its lower end, cell 0 of the face, stands at 90 mm: wall cells 44 down to 7.
    EXPECT_TRUE(near(after[44] - after[7], 25.4, 0.05, "µm: 1.0 thou, wide at the lower end"));
}

TEST(Contact, WornFacesFollowTheWallTheyCut) {
    Stroked bore;
    bore.worn(5);
    bore.before.face.setZero();
    bore.settings.logWear = std::log(0.05);
    bore.stroking = {76, 100, 50, 0};
    const WallAndFace after = bore.after();
    // Wear × half the diameter's stock, summed over the length; the cut cell wears as deep as any.
    const double expected = 0.05 * 0.5 * (after.diameter - bore.before.diameter).sum();
    double worn = after.face.sum() - after.face[37] * (1 - bore.stone.topShare);
    EXPECT_TRUE(near(worn, expected, 1e-9 * expected, "µm·cells"));
    EXPECT_GE(after.face.minCoeff(), 0);
}

TEST(Contact, AStoneOutOfTheOpenEndPressesHarder) {
    Stroked bore;
    bore.soft();
    bore.settings.tilts = false;
    bore.stroking = {50, 50, 10, 0}; // 24.6 of 74.6 mm stand out
    EXPECT_TRUE(near(bore.taken()[10], 10 * 74.6 / 50, 1e-3, "µm"));
}

TEST(Contact, PortsLeaveMoreForTheLandBetween) {
    Stroked bore;
    bore.soft();
    bore.settings.tilts = false;
    bore.stroking = {90, 90, 10, 0}; // over 15.4 … 90 mm
    bore.ground.land = Eigen::VectorXd::Ones(50);
    bore.ground.land.segment(20, 10).setConstant(0.7); // 20 mm
    bore.ground.land.segment(30, 5).setZero();         // 10 mm without any wall
    const Eigen::VectorXd taken = bore.taken();
    const double harder = 74.6 / (74.6 - 0.3 * 20 - 10);
    EXPECT_TRUE(near(taken[15], 10 * harder, 1e-3, "µm beside the ports"));
    EXPECT_TRUE(near(taken[25], 10 * harder, 1e-3, "µm on the land"));
    EXPECT_EQ(taken[32], 0) << "µm where there is no wall";
}

TEST(Contact, HardIronLosesLess) {
    Stroked bore;
    bore.soft();
    bore.stroking = {90, 90, 10, 0};
    bore.ground.hardness = Eigen::VectorXd::Zero(50);
    bore.ground.hardness[20] = std::log(2.0);
    EXPECT_TRUE(near(bore.taken()[20], 5, 1e-3, "µm, half as fast"));
    EXPECT_TRUE(near(bore.taken()[21], 10, 1e-3, "µm"));
}

TEST(Contact, NothingHappensWithoutStrokesOrWall) {
    Stroked bore;
    bore.worn(6);
    for (const Stroking& none : {Stroking{60, 100, 0, 0}, {60, 100, -3, 0}, {60, 60, 0, -1}}) {
        bore.stroking = none;
        EXPECT_EQ(bore.taken().cwiseAbs().maxCoeff(), 0);
    }
    bore.stroking = {60, 100, 10, 0};
    bore.ground.land = Eigen::VectorXd::Zero(50);
    EXPECT_EQ(bore.taken().cwiseAbs().maxCoeff(), 0);
    bore.ground.land.resize(0);
    bore.stone = stoneOnGrid(bore.grid, 40, 0, 0);
    bore.before.face = Eigen::VectorXd::Zero(20);
    bore.stroking = {0, 0, 10, 0}; // wholly out of the bore
    EXPECT_EQ(bore.taken().cwiseAbs().maxCoeff(), 0);
}

TEST(Contact, AWindowBeyondTheReachIsBroughtInside) {
    Stroked bore;
    bore.worn(7);
    bore.stroking = {20, 100, 20, 2};
    const Eigen::VectorXd inside = bore.taken();
    bore.stroking = {-30, 140, 20, 2};
    EXPECT_EQ((bore.taken() - inside).cwiseAbs().maxCoeff(), 0);
}

// Ends of a window may lie anywhere; what is taken off changes by no more than the end moves.
TEST(Contact, NothingJumpsAsAnEndMoves) {
    Stroked bore;
    bore.worn(8);
    for (const bool lower : {false, true}) {
        bore.stroking = {62, 88, 30, 3};
        Eigen::VectorXd last = bore.taken();
        for (int i = 1; i <= 200; ++i) {
            (lower ? bore.stroking.to_mm : bore.stroking.from_mm) += 0.05;
            const Eigen::VectorXd now = bore.taken();
            EXPECT_LT((now - last).cwiseAbs().maxCoeff(), 0.3) << "µm for 0.05 mm, step " << i;
            last = now;
        }
    }
}

TEST(Contact, ShorterStepsChangeNextToNothing) {
    Stroked bore;
    bore.worn(9);
    bore.stroking.strokes = 60;
    const Eigen::VectorXd usual = bore.taken();
    bore.settings.largestStep = 0.02;
    EXPECT_LT((bore.taken() - usual).cwiseAbs().maxCoeff(), 0.15) << "µm";
}

} // namespace
} // namespace borewright
