// SPDX-License-Identifier: GPL-3.0-or-later
// The shape of a bore along its depth: straight, V, bell-mouth, barrel, hourglass or ridge, named
// only where the readings outweigh their noise, with what was too small to be seen.
//
// Is it straight? Each shape of a fixed set (shape_design.h) is fitted as one amount beside the
// mean, by least squares with the noise known; the likelihood ratio against "straight" is z² with
// z = amount/u. The bore is not straight where |z| passes its limit for any of them. Of the 1 % of
// straight bores that may be called anything else, half is for all shapes but the V together; their
// limit comes from the inequality of Hunter, J. Appl. Prob. 13 (1976) 597, and Worsley, Biometrika
// 69 (1982) 297, which bounds the chance for the largest of correlated z from above; the rest, and
// what both pass, is for the V. The rate is thus at most 1 %, whatever the depths, cells left out
// and u are; 0.7 to 0.9 % by simulation.
//
// Which shape? Each shape's evidence is the likelihood averaged over its members (where it starts)
// and over amounts (all alike); the shapes count alike before the readings are seen (Kass &
// Raftery, J. Am. Stat. Assoc. 90 (1995) 773). The weightiest is named; `orElse` lists others until
// 95 % of the evidence is covered. Where nothing fits (residual χ² beyond 99 % of chance) the
// evidence is weakened and u widened by χ²/dof, and `uneven` set.
//
// Not told apart: a bell that starts in the upper third is a V; with three depths a barrel and a
// ridge in the middle are one (called barrel or hourglass); an end level alone out of line is a
// bell-mouth or narrowed end; two straight stretches of opposite slope are an hourglass or barrel,
// or, where one end moves by half of the other or less, a bell-mouth; a ridge at a level that lacks
// an axis is mostly not told from axes worn differently. A V and a bell-mouth that starts at 70 %
// lie so close on four to six depths that at 6 u (u of a point of the profile) one in ten is called
// the other; no rule does much better, and that other then stands in `orElse`. At 6 times the noise
// of a single reading, two axes read, 19 in 20 are named rightly. shape_simulation_test.cpp prints
// the rates.
#pragma once

#include "core/form/profile.h"
#include "core/length/format.h"
#include "core/workbook/block.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

enum class ShapeKind {
    straight,
    vee,       // even taper from end to end
    bellMouth, // straight, then wider (or narrower) towards one end
    barrel,    // larger in the middle
    hourglass, // smaller in the middle
    ridge,     // one level between the ends standing proud (or a groove)
};

// The smallest amount of a shape that would not have been called straight, 95 times in 100: the
// worst place for it. Nothing where the depths cannot show that shape.
struct SmallestSeen {
    std::optional<double> vee_um;
    std::optional<double> bellMouth_um;
    std::optional<double> barrel_um; // and hourglass
    std::optional<double> ridge_um;
};

struct BoreShape {
    ShapeKind kind = ShapeKind::straight;
    // Largest less smallest of the fitted shape at the depths read, ≥ 0, and its standard
    // uncertainty; 1.96 of them cover 95 %. Where the shape starts is in u, what another shape
    // would make of the readings is not.
    double amount_um = 0;
    double u_um = 0;
    // Depth of the waist, belly or ridge; of a bell-mouth the last level that is still straight.
    // 0 for a V.
    double where_mm = 0;
    End end = End::closed; // of a bell-mouth: which end. A V is told by its closed end.
    // V and bell-mouth: `end` is the wide one (else the narrow one). Ridge: a groove.
    bool wide = false;
    bool uneven = false;           // more is going on than this shape
    std::vector<ShapeKind> orElse; // shapes that the readings do not rule out
    SmallestSeen smallest;
};

inline constexpr double straightCalledOtherwise = 0.01;
inline constexpr double shapeSeenWith = 0.95;

// The shape of a profile (depths in rising order, as profileOf makes it). Two depths can show a V
// only. Refuses one depth, depths that do not rise, what isWeighable and isDepthAndSize do not
// take, more than 200 depths, a covariance that is none.
Result<BoreShape> shapeOf(const Profile& profile);

// As said in a shop: "V, 2.1 ± 0.3 thou narrow at the closed end"; "straight as far as this gauge
// can tell; a V of 0.4 thou would have been seen". ± and what would have been seen round upward.
std::string shapeWords(const BoreShape& shape, const DisplayUnits& units);
// "a V of 0.4 thou would have been seen".
std::string smallestSeenWords(const BoreShape& shape, const DisplayUnits& units);

} // namespace borewright
