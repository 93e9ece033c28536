// SPDX-License-Identifier: GPL-3.0-or-later
// Reference distributions: normal, Student, chi-square, F. The figures come from Boost.Math; none
// of its headers shows here. Nothing throws: outside the range stated at each function, and
// wherever an argument is not a number, the value is NaN.
#pragma once

namespace borewright {

// P(Z < z) of the standard normal; every z, infinities as well.
double normalBelow(double z);
// z with P(Z < z) = p, 0 ≤ p ≤ 1; −infinity at 0, +infinity at 1.
double normalQuantile(double p);

// P(T < t) of Student's t; every t. freedom > 0, fractions allowed, infinity gives the normal.
double studentBelow(double t, double freedom);
// t with P(T < t) = p, 0 ≤ p ≤ 1; −infinity at 0, +infinity at 1. freedom as above.
double studentQuantile(double p, double freedom);

// P(X > x) of chi-square; x ≥ 0 (1 at 0, 0 at infinity); freedom > 0 and finite.
double chiSquareAbove(double x, double freedom);
// x with P(X < x) = p, 0 ≤ p ≤ 1; 0 at 0, infinity at 1. freedom > 0 and finite.
double chiSquareQuantile(double p, double freedom);

// P(F > f) of Fisher's F; f ≥ 0 (1 at 0, 0 at infinity); both freedoms > 0 and finite.
double fAbove(double f, double freedom1, double freedom2);
// f with P(F < f) = p, 0 ≤ p ≤ 1; 0 at 0, infinity at 1. Both freedoms > 0 and finite.
double fQuantile(double p, double freedom1, double freedom2);

} // namespace borewright
