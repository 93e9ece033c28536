// SPDX-License-Identifier: GPL-3.0-or-later
// The mean diameter of a bore over its depth, from what was read on each axis, so that a cell left
// out does not look like a shape: a depth and an axis effect, fitted together by weighted least
// squares (two-way additive model; see Scheffé, The Analysis of Variance, 1959, chapter 4).
#pragma once

#include "core/result.h"

#include <span>
#include <vector>

namespace borewright {

// A diameter at a depth on an axis. `u_um` is the standard uncertainty of its own part alone: what
// does not move every reading of the survey together (repeatability, resolution, drift's scatter).
// The size may count from anything, the same for all readings.
struct ShapeReading {
    double depth_mm;
    int axis; // any number, the same for the same axis
    double size_um;
    double u_um;
};

struct ProfilePoint {
    double depth_mm;
    double size_um; // mean over the axes
    double u_um;    // standard uncertainty of its own part
};

struct Profile {
    std::vector<ProfilePoint> points; // rising depth
    // Covariance of the sizes, a row a point; empty where they share nothing, so that u_um says
    // all. Cells left out make the depths share the doubt of the axes' difference.
    std::vector<double> covariance_um2;
    // Depths that share no axis with the others, directly or by way of others: how much larger they
    // are cannot be told from how much larger their axis is.
    std::vector<double> leftOut_mm;
};

// What can be weighed: u from a picometre to a metre; depths and sizes of at most ten metres.
constexpr bool isWeighable(double u_um) {
    return u_um >= 1e-6 && u_um <= 1e6;
}
constexpr bool isDepthAndSize(double depth_mm, double size_um) {
    return depth_mm >= -1e4 && depth_mm <= 1e4 && size_um >= -1e7 && size_um <= 1e7;
}

// With y the sizes, w = 1/u², a the axes (Σa = 0, p of them) and W a depth's sum of weights:
//   m_depth = Σ w·(y − a_axis)/W,   a from the normal equations with m eliminated
//   cov(m_d, m_e) = [d = e]/W_d + g_d' C g_e,   g_d = w_d/W_d − 1/p,   C the covariance of a
// With every cell read and u alike this is the plain mean over the axes, and nothing is shared.
// Wear differs by depth and axis, so the axes' difference is not the same everywhere, and a depth
// on which an axis is missing could be taken for a shape. What the residuals may hold beyond u,
//   e = f²·χ²/dof − 1, at least 0,  f = t(0.9995, dof)/z(0.9995), at most 7,
// with Student's t since they are few, is added there: C becomes (1 + e)·C, and the 1/W of a depth
// on which q of p axes were read (1 + e·(1 − q/p))/W. A straight bore whose axes are worn
// differently is so called otherwise no more than once in a hundred; with three depths, one of them
// lacking an axis, up to four times. Where there are no residuals (one axis read throughout, the
// other at one depth) nothing is added: the shape is that of the axis.
// Several readings of one cell, and depths within 1 nm, count together.
// Refuses: no readings, more than 200 depths or 36 axes, what cannot be weighed.
Result<Profile> profileOf(std::span<const ShapeReading> readings);

} // namespace borewright
