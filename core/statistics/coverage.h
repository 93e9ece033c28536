// SPDX-License-Identifier: GPL-3.0-or-later
// From the lines of a budget to a statement: divisors, effective degrees of freedom, coverage
// factors, and the probability that a true value lies within its limits.
// JCGM 100:2008 (GUM) 4.3, annexes F and G; JCGM 106:2012 clause 7. Nothing throws: outside the
// stated range the value is NaN.
#pragma once

#include <optional>
#include <span>

namespace borewright {

enum class Distribution { normal, rectangular, triangular, uShaped };

// What the half-width a of a distribution is divided by to give its standard uncertainty:
// rectangular √3 (GUM 4.3.7), triangular √6 (4.3.9), U-shaped √2; normal 1, where the figure given
// is itself a standard uncertainty.
double divisor(Distribution distribution);

// One line of a budget: u = |sensitivity| × standard uncertainty, in the unit of the result, with
// its degrees of freedom, infinity where the figure is taken as exact.
struct Contribution {
    double u;
    double freedom;
};

// ν_eff = u_c⁴ / Σ u_i⁴/ν_i with u_c² = Σ u_i² (GUM G.2b). Lines with u = 0 are left out; infinity
// where every other line has infinite freedom, or there is none. Not truncated. u ≥ 0 and
// freedom > 0, else NaN.
double welchSatterthwaite(std::span<const Contribution> contributions);

// k such that ± k·u covers `probability` of Student's t (GUM G.3). 0 ≤ probability ≤ 1;
// freedom > 0, infinity gives the normal.
double coverageFactor(double probability, double freedom);
// k such that a value beyond + k·u has the chance `risk`, 0 ≤ risk ≤ 1. freedom as above.
double oneSidedFactor(double risk, double freedom);

// k for the sum of two rectangular distributions with half-widths a and b, both ≥ 0 and one > 0:
// a trapezoid with β = |a − b|/(a + b); EA-4/02 M:2013, supplement 10, for the trapezoid.
//   p < 2β/(1 + β):  k = p(1 + β)/2 / √((1 + β²)/6)          (the limit falls on the flat top)
//   else             k = (1 − √((1 − p)(1 − β²))) / √((1 + β²)/6)
// 0 ≤ probability ≤ 1.
double rectangularPairFactor(double a, double b, double probability);

// Probability that the true value lies within its limits when y was measured with standard
// uncertainty u: Φ((upper − y)/u) − Φ((lower − y)/u), JCGM 106:2012, 7.2 to 7.4 (normal, with no
// knowledge of the value beforehand). A missing limit is no limit. u ≥ 0; at u = 0 it is 1 within,
// limits included, else 0.
double conformance(double y, double u, std::optional<double> lower, std::optional<double> upper);

} // namespace borewright
