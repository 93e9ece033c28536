// SPDX-License-Identifier: GPL-3.0-or-later
// What courses and walls are worth, all in micrometres of straightness, so that they can be weighed
// against each other.
#pragma once

#include "core/honing/plan_course.h"

namespace borewright {

// Of stopping, or ending a course, without being straight: so much times the chance of it.
inline constexpr double crookedCost_um = 10;

// A wall so far off: about the spread that readings at some stations would show.
double worthOfOff(double meanSquare_um2);
// What a course ends with: how far off it is (`more_um2`: what is added to its square), and the
// chance that its stations will not be straight.
double costOfEnd(const PlanGround& ground, const CourseEnd& end, double more_um2 = 0);
// The stops and changes of stone of a course.
double costOfStops(const Course& course, const PlanOptions& options);
// Leaving the bore as it is, but for the chance that it is straight already.
double costOfLeaving(const PlanGround& ground);

} // namespace borewright
