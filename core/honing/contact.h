// SPDX-License-Identifier: GPL-3.0-or-later
// Contact of a straight, wearing stone on a compliant holder with the wall of a bore, and what it
// takes off.
//
// Method. At each position of the stroke the stone is pressed on by a constant force. A cell of its
// face overlaps the wall by
//     o = max(0, a + t·x − g),   g = D/2 + f   (radial, µm),
// a the stone's advance, t its tilt, x the distance from its middle in half lengths (−1 … 1), D the
// diameter there, f what the face has worn. Force and moment balance:
//     mean of o over the stone's length = κ      (κ compliance: overlap at nominal pressure),
//     mean of o·x                       = −t/(3·τ) (τ looseness: 0 = held firmly, large = free).
// Where the stone stands out of an end, less of it bears the same force, so pressure rises. Removal
// is proportional to pressure × path (Preston, J. Soc. Glass Technol. 11 (1927) 214):
//     dD/dstroke = rate · exp(−h) · Σ over positions of share · o/κ,
//     df/dstroke = wear · ½·rate · Σ over positions of share · o/κ,
// h the hardness of the wall there (0 = as the rest), share the part of a stroke spent at that
// position: uniform speed, with a little more at the reversals (`reversal_mm`), and what is held at
// the bottom. Positions are smeared over the grid by linear shares, so everything is a continuous
// function of the window's ends. Integrated by mid-point steps so short that no cell moves by more
// than `largestStep` κ, but never shorter than a four-hundredth of the window.
//
// Directions. The same sweep carries the derivatives of all that comes out with respect to any
// number of directions (forward mode): exact for the steps taken, but where a cell gains or loses
// contact.
#pragma once

#include "core/honing/bench.h"

#include <Eigen/Core>

namespace borewright {

struct ContactSettings {
    double logRate = 0;       // ln of µm off the diameter a stroke under nominal pressure
    double logCompliance = 3; // ln κ/µm; first guess 20 µm
    double logWear = -3.5;    // ln of face wear as a share of the radial stock under it
    double logLooseness = -2; // ln τ
    bool tilts = true;        // false: τ = 0
    double reversal_mm = 2;   // as if the stroke were that much longer, spent half at each end
    double largestStep = 0.3;
};

// The wall and the face before and after. Sizes on the diameter, face radial, both µm.
struct WallAndFace {
    Eigen::VectorXd diameter; // one a cell of the grid
    Eigen::VectorXd face;     // one a cell of the stone; larger = worn further back
};

// What is known of the wall and does not change under the hone.
struct WallGround {
    Eigen::VectorXd hardness; // h a cell; empty = 0
    Eigen::VectorXd land;     // share of the turn with wall (ports cut it); empty = 1
};

// Derivatives with respect to K directions, a column each. What is empty stands still.
struct Directions {
    Eigen::MatrixXd diameter; // cells × K; in and out
    Eigen::MatrixXd face;     // cells of the stone × K; in and out
    Eigen::MatrixXd hardness; // cells × K
    // 1 × K each, or empty
    Eigen::RowVectorXd logRate, logCompliance, logWear, logLooseness;
    Eigen::RowVectorXd from, to, strokes, held;
    [[nodiscard]] Eigen::Index count() const { return diameter.cols(); }
};

// Strokes one window. Window ends outside the stone's reach are brought inside it. Nothing happens
// for strokes + held ≤ 0. `directions` may be null; else diameter and face must be filled.
void hone(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
          const WallGround& ground, const Stroking& stroking, WallAndFace& state,
          Directions* directions = nullptr);

// Share of a stroke that each cell of the wall spends under the stone, pressure left out of account
// (kinematic coverage). Σ = length of the stone in cells.
Eigen::VectorXd coverage(const WallGrid& grid, const StoneOnGrid& stone, double reversal_mm,
                         const Stroking& stroking);

} // namespace borewright
