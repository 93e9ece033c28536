// SPDX-License-Identifier: GPL-3.0-or-later
// The weighted straight line y = a + b·x by least squares, x taken as exact, and the line through
// the origin y = b·x. Sums are taken about the weighted means of x and y, which keeps the digits
// that the raw normal equations lose (NIST StRD Norris, NoInt1, NoInt2).
// ISO/TS 28037:2010 clause 6; JCGM 100:2008 H.3.
#pragma once

#include "core/result.h"

#include <span>

namespace borewright {

// A measured point. `u` is the standard uncertainty of y, in its unit, > 0; the weight is 1/u².
struct LinePoint {
    double x;
    double y;
    double u = 1;
};

// Where the uncertainties of the line come from.
enum class LineDoubt {
    known,       // u of each point is its standard uncertainty
    fromScatter, // u of each point is only relative; the residuals give the scale s
};

// y = intercept + slope·x. Through the origin: intercept, its uncertainty and the covariance are 0.
struct Line {
    double intercept;
    double slope;
    double uIntercept;
    double uSlope;
    double covariance; // of intercept and slope
    // Σ((y − a − b·x)/u)²; where the uncertainties are known, it is compared with chi-square.
    double chiSquare;
    double freedom;           // points less parameters
    double residualDeviation; // s = √(chiSquare/freedom); 0 where freedom is 0
    double centre;  // weighted mean of x, where the line is known best; 0 through the origin
    double uCentre; // standard uncertainty of the line there

    // Correlation coefficient of intercept and slope; 0 through the origin.
    [[nodiscard]] double correlation() const;
};

// Refuses fewer than two distinct x, u that is not above zero, values that are not finite;
// from the scatter also fewer than three points.
Result<Line> fitLine(std::span<const LinePoint> points, LineDoubt doubt);
// Refuses where every x is 0, u and values as above; from the scatter also fewer than two points.
Result<Line> fitLineThroughOrigin(std::span<const LinePoint> points, LineDoubt doubt);

// The line's value at x and its standard uncertainty √(uCentre² + (x − centre)²·uSlope²), the
// scatter of a single new reading not included.
struct Prediction {
    double y;
    double u;
};
Prediction predict(const Line& line, double x);

} // namespace borewright
