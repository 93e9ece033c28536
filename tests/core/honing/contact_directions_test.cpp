// SPDX-License-Identifier: GPL-3.0-or-later
// Derivatives that ride along, against central differences.
#include "core/honing/contact.h"

#include "tests/support/printed.h"
#include "tests/support/stroked.h"

#include <array>
#include <functional>

namespace borewright {
namespace {

using namespace test;

struct Moved {
    const char* what;
    std::function<void(Stroked&, double)> by;
    std::function<void(Directions&, Index)> mark;
};

void mark(Eigen::RowVectorXd Directions::*which, Directions& d, Index k) {
    if ((d.*which).size() == 0) d.*which = Eigen::RowVectorXd::Zero(d.count());
    (d.*which)[k] = 1;
}

using D = Directions;
const std::array<Moved, 11> moves{{
    {"rate", [](Stroked& s, double e) { s.settings.logRate += e; },
     [](D& d, Index k) { mark(&D::logRate, d, k); }},
    {"compliance", [](Stroked& s, double e) { s.settings.logCompliance += e; },
     [](D& d, Index k) { mark(&D::logCompliance, d, k); }},
    {"wear", [](Stroked& s, double e) { s.settings.logWear += e; },
     [](D& d, Index k) { mark(&D::logWear, d, k); }},
    {"looseness", [](Stroked& s, double e) { s.settings.logLooseness += e; },
     [](D& d, Index k) { mark(&D::logLooseness, d, k); }},
    {"from", [](Stroked& s, double e) { s.stroking.from_mm += e; },
     [](D& d, Index k) { mark(&D::from, d, k); }},
    {"to", [](Stroked& s, double e) { s.stroking.to_mm += e; },
     [](D& d, Index k) { mark(&D::to, d, k); }},
    {"strokes", [](Stroked& s, double e) { s.stroking.strokes += e; },
     [](D& d, Index k) { mark(&D::strokes, d, k); }},
    {"held", [](Stroked& s, double e) { s.stroking.held += e; },
     [](D& d, Index k) { mark(&D::held, d, k); }},
    {"diameter", [](Stroked& s, double e) { s.before.diameter[30] += e; },
     [](D& d, Index k) { d.diameter(30, k) = 1; }},
    {"face", [](Stroked& s, double e) { s.before.face[10] += e; },
     [](D& d, Index k) { d.face(10, k) = 1; }},
    {"hardness", [](Stroked& s, double e) { s.ground.hardness[35] += e; },
     [](D& d, Index k) { d.hardness(35, k) = 1; }},
}};

Stroked wornBore(std::uint64_t seed) {
    Stroked bore;
    bore.worn(seed);
    bore.ground.hardness = Eigen::VectorXd::Zero(50);
    bore.ground.hardness.segment(20, 4).setConstant(0.2);
    bore.ground.land = Eigen::VectorXd::Ones(50);
    bore.ground.land.segment(20, 4).setConstant(0.6);
    bore.stroking = {30.3, 96.7, 30, 2};
    return bore;
}

Directions standing(const Stroked& bore, Index count) {
    Directions d;
    d.diameter = Eigen::MatrixXd::Zero(bore.before.diameter.size(), count);
    d.face = Eigen::MatrixXd::Zero(bore.before.face.size(), count);
    d.hardness = d.diameter;
    return d;
}

Eigen::VectorXd stacked(const Eigen::VectorXd& wall, const Eigen::VectorXd& face) {
    Eigen::VectorXd all(wall.size() + face.size());
    all << wall, face;
    return all;
}

Eigen::VectorXd difference(const Stroked& bore, const Moved& move) {
    const double step = 1e-5;
    Stroked up = bore, down = bore;
    move.by(up, step);
    move.by(down, -step);
    const WallAndFace high = up.after(), low = down.after();
    return stacked(high.diameter - low.diameter, high.face - low.face) / (2 * step);
}

// `within`: of rounding, and of what a step of 1e-5 leaves out.
void expectDerivatives(const Stroked& bore, double within = 2e-8) {
    Directions d = standing(bore, moves.size());
    for (std::size_t k = 0; k < moves.size(); ++k)
        moves[k].mark(d, static_cast<Index>(k));
    WallAndFace state = bore.before;
    hone(bore.grid, bore.stone, bore.settings, bore.ground, bore.stroking, state, &d);
    EXPECT_LT((state.diameter - bore.after().diameter).cwiseAbs().maxCoeff(), 1e-11)
        << "the directions ride along and change nothing";
    for (std::size_t k = 0; k < moves.size(); ++k) {
        const auto column = static_cast<Index>(k);
        const Eigen::VectorXd carried = stacked(d.diameter.col(column), d.face.col(column));
        const Eigen::VectorXd expected = difference(bore, moves[k]);
        EXPECT_LT((carried - expected).cwiseAbs().maxCoeff(), within) << "by " << moves[k].what;
    }
}

TEST(ContactDirections, AreTheDerivativesOfAHeldStone) {
    Stroked bore = wornBore(1);
    bore.settings.tilts = false;
    expectDerivatives(bore);
}

TEST(ContactDirections, AreTheDerivativesOfATiltingStone) {
    for (const double looseness : {-2.0, 1.0, 4.0}) {
        Stroked bore = wornBore(2);
        bore.settings.logLooseness = looseness;
        expectDerivatives(bore);
    }
}

TEST(ContactDirections, HoldFromStiffToSoft) {
    for (const double compliance_um : {3.0, 60.0, 500.0}) {
        Stroked bore = wornBore(3);
        bore.settings.logCompliance = std::log(compliance_um);
        expectDerivatives(bore, 5e-8);
    }
}

// Where an end stands on the edge of a cell the shares have a corner: the mean of both sides.
TEST(ContactDirections, AreTheMeanOfBothSidesAtACorner) {
    Stroked bore = wornBore(4);
    bore.stroking = {40, 90, 30, 2};
    expectDerivatives(bore, 1e-5);
}

TEST(ContactDirections, LookInwardAtTheEndOfTheReachAndStandBeyondIt) {
    Stroked bore = wornBore(5);
    bore.stroking = {40.5, 100, 20, 2};
    const auto byTo = [&] {
        Directions d = standing(bore, 1);
        d.to = Eigen::RowVectorXd::Ones(1);
        WallAndFace state = bore.before;
        hone(bore.grid, bore.stone, bore.settings, bore.ground, bore.stroking, state, &d);
        return Eigen::VectorXd(d.diameter.col(0));
    };
    const Eigen::VectorXd atTheEnd = byTo();
    Stroked inside = bore;
    inside.stroking.to_mm -= 1e-5;
    const Eigen::VectorXd expected = (bore.after().diameter - inside.after().diameter) / 1e-5;
    EXPECT_LT((atTheEnd - expected).cwiseAbs().maxCoeff(), 1e-4) << "µm a mm";
    bore.stroking.to_mm = 101;
    EXPECT_EQ(byTo().cwiseAbs().maxCoeff(), 0);
}

TEST(ContactDirections, WhatStandsStillStaysStill) {
    const Stroked bore = wornBore(7);
    Directions d = standing(bore, 17);
    d.face(3, 16) = 1;
    WallAndFace state = bore.before;
    hone(bore.grid, bore.stone, bore.settings, bore.ground, bore.stroking, state, &d);
    EXPECT_EQ(d.diameter.leftCols(16).cwiseAbs().maxCoeff(), 0);
    EXPECT_EQ(d.face.leftCols(16).cwiseAbs().maxCoeff(), 0);
    EXPECT_GT(d.diameter.col(16).cwiseAbs().maxCoeff(), 0.01);
}

TEST(ContactDirections, AreLinearAndIndependentOfTheirNumber) {
    const Stroked bore = wornBore(6);
    Random random(6);
    Directions many = standing(bore, 19);
    for (double& value : many.diameter.reshaped())
        value = random.normal();
    for (double& value : many.face.reshaped())
        value = random.normal();
    many.logRate = Eigen::RowVectorXd::Ones(19);
    Directions sum = standing(bore, 1);
    sum.diameter = many.diameter.rowwise().sum();
    sum.face = many.face.rowwise().sum();
    sum.logRate = Eigen::RowVectorXd::Constant(1, 19);
    for (Directions* d : {&many, &sum}) {
        WallAndFace state = bore.before;
        hone(bore.grid, bore.stone, bore.settings, bore.ground, bore.stroking, state, d);
    }
    EXPECT_LT((many.diameter.rowwise().sum() - sum.diameter).cwiseAbs().maxCoeff(), 1e-10);
    EXPECT_LT((many.face.rowwise().sum() - sum.face).cwiseAbs().maxCoeff(), 1e-10);
}

} // namespace
} // namespace borewright
