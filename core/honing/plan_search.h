// SPDX-License-Identifier: GPL-3.0-or-later
// The search over orders of stones: many short fits, the better ones taken further, the best few
// weighed by what may be dared of their first set-up.
#pragma once

#include "core/honing/plan_caution.h"
#include "core/honing/plan_fit.h"
#include "core/honing/plan_sequences.h"

namespace borewright {

struct Candidate {
    Course course;
    CourseEnd end;
    double share = 1;   // of its first set-up that may be dared, about
    double cost_um = 0; // lower is better
};

// Best first. `progress` returns false to give up; then what was found so far.
std::vector<Candidate> searchCourses(const PlanGround& ground, const Prospect& now,
                                     const PlanOptions& options, const HonePlan* warm,
                                     const PlanProgress& progress);

} // namespace borewright
