// SPDX-License-Identifier: GPL-3.0-or-later
// How much of a set-up may be dared: the largest share of its strokes that keeps the chance of any
// depth it cuts going past its stone's cap; whole strokes, handy depths.
#pragma once

#include "core/honing/plan_foresee.h"

namespace borewright {

struct CarefulSetUp {
    SetUp setUp;      // no windows: not a stroke may be dared
    double share = 0; // of the strokes that were wanted
};

// About what share of the strokes may be dared, from the mean and a bound on its doubt: quick, for
// comparing plans.
double shareAbout(const PlanGround& ground, const Prospect& now, const SetUp& wanted);

// The share from draws, then rounded; what is returned keeps the chance as it is to be done.
// `cell_mm`: windows are rounded to this.
CarefulSetUp carefully(const PlanGround& ground, const Prospect& now, const SetUp& wanted,
                       double cell_mm);

} // namespace borewright
