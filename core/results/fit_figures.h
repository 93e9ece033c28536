// SPDX-License-Identifier: GPL-3.0-or-later
// Small figures of a fit that every view shows alike: ± of a clearance or gap, and what a model
// makes of a clearance when the engine is warm.
#pragma once

#include "core/results/fit_result.h"

#include <optional>
#include <vector>

namespace borewright {

// ± k·u, 95 %; nothing where the bore's doubt is not known.
std::optional<Length> wholeDoubt(const Clearance& clearance);
std::optional<Length> wholeDoubt(const RingGap& gap);

// Degrees over 20 °C.
struct Warmth {
    double skirt = 0;
    double bore = 0;
};
struct HotFit {
    int bore = 1;
    std::size_t piston = 0; // place in the record
    Length cold;            // least clearance at 20 °C
    Length hot;             // hotClearance of core/sizing/clearance.h, with the block's material as
                            // the bore's survey names it
};
// Of every bore that has a piston and a clearance, by number.
std::vector<HotFit> hotFits(const Workbook& workbook, const FitResult& fit, const Warmth& warmth);

} // namespace borewright
