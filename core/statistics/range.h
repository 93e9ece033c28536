// SPDX-License-Identifier: GPL-3.0-or-later
// Largest less smallest of n draws from one normal distribution with standard deviation 1.
// Method: P(range ≤ r) = n ∫ φ(z)·[Φ(z + r) − Φ(z)]^(n−1) dz (Tippett, Biometrika 17 (1925) 364),
// by Simpson's rule over ±8, good to 1e-9.
#pragma once

namespace borewright {

// P(range of n draws ≤ r); 0 for r ≤ 0; n ≥ 2, else 1.
double rangeBelow(double r, int n);
// Mean range of n draws, known as d2: 2.326 for 5, 2.534 for 6. 0 for n < 2.
double meanRange(int n);

} // namespace borewright
