// SPDX-License-Identifier: GPL-3.0-or-later
// Coverage intervals from Monte Carlo draws: JCGM 101:2008, 7.7.
#pragma once

#include <vector>

namespace borewright {

struct Interval {
    double low;
    double high;
};

// With M sorted draws and q = ⌊p·M + ½⌋, an interval runs from the r-th to the (r + q)-th draw.
// Both functions sort `draws` where they are not sorted yet. Fewer than two draws, a draw that is
// NaN, or a probability outside 0 … 1 give NaN at both ends; q ≥ M gives the whole range.

// The shortest of these; where two are equally short, the lower.
Interval shortestInterval(std::vector<double>& draws, double probability);
// The one that leaves out as much below as above: r = ⌊(M − q + 1)/2⌋ (7.7.2).
Interval symmetricInterval(std::vector<double>& draws, double probability);

} // namespace borewright
