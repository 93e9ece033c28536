// SPDX-License-Identifier: GPL-3.0-or-later
// How much of a set-up may be dared: the largest share of its strokes for which no depth that it
// cuts is likelier than aim.chance to pass its stone's cap, and the chance of any of them passing
// the upper limit is within aim.chance as well; whole strokes, handy depths.
#pragma once

#include "core/honing/plan_foresee.h"

namespace borewright {

// While a rate is not known, the first pass is short: seconds, which are strokes at the usual beat.
inline constexpr double firstStrokes = 15;
bool rateUnknown(const PlanGround& ground, std::size_t stone);

struct CarefulSetUp {
    SetUp setUp;      // no windows: not a stroke may be dared
    double share = 0; // of the strokes that were wanted
};

// About what share of the strokes may be dared, from the mean and a bound on its doubt: quick, for
// comparing plans.
double shareAbout(const PlanGround& ground, const Prospect& now, const SetUp& wanted);

// The share from draws, then rounded; what is returned keeps the chance as it is to be done.
// `cell_mm`: windows are rounded to this; `reserve_um`: so much less than the cap.
CarefulSetUp carefully(const PlanGround& ground, const Prospect& now, const SetUp& wanted,
                       double cell_mm, double reserve_um);

} // namespace borewright
