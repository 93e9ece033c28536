// SPDX-License-Identifier: GPL-3.0-or-later
// What the Fit page does to the record of pistons and rings, without a window: pairs fixed and
// freed, proposals taken, a new row that takes over what seldom differs.
#pragma once

#include "core/results/fit_result.h"

namespace borewright {

// Piston `piston` (place in the record) fixed in a bore; whoever was fixed there gives way.
FitRecord withPistonFixed(FitRecord fit, std::size_t piston, int bore);
FitRecord withPistonFreed(FitRecord fit, std::size_t piston);
// Every pair of the matching fixed. As it was where there is no matching.
FitRecord withMatching(FitRecord fit, const Matching& matching);
FitRecord withPistonsFreed(FitRecord fit);

// The same for rings; a bore takes one ring a groove.
FitRecord withRingFixed(FitRecord fit, std::size_t ring, int bore);
FitRecord withRingFreed(FitRecord fit, std::size_t ring);
FitRecord withDeals(FitRecord fit, const std::vector<RingDeal>& deals);
FitRecord withRingsFreed(FitRecord fit);

// One more piston: instrument, temperature and doubt as the last one's. Its measuring height is
// never taken over: nobody has measured it yet.
void appendPiston(FitRecord& fit);
// One more ring: groove, place of measuring and doubt as the last one's.
void appendRing(FitRecord& fit);

// "3" → "4", "top 1" → "top 2"; counted on until it is nobody's. `taken` in any order.
std::string nextLabel(const std::vector<std::string>& taken);

} // namespace borewright
