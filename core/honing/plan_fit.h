// SPDX-License-Identifier: GPL-3.0-or-later
// Fits the windows of a course: Levenberg's and Marquardt's damped Gauss–Newton, each step a least
// squares between bounds (Nocedal & Wright, Numerical Optimization, 2nd ed. 2006, ch. 10).
#pragma once

#include "core/honing/plan_course.h"

namespace borewright {

struct FitOptions {
    int mostSteps = 8;
    double contactStep = 0.5; // largestStep of the contact
    double enough = 0.01;     // stop where a step gains less than this share of the square
    std::vector<ToolShift> shifts;
};

struct FittedCourse {
    Course course;
    CourseEnd end; // without jacobian
};

// Improves a course; it never gets worse. Windows keep their number and order.
FittedCourse fitCourse(const PlanGround& ground, Course start, const FitOptions& options);

// Windows of next to no dose left out, like ones joined; set-ups left without any dropped.
Course tidied(const PlanGround& ground, const Course& course, double leastDose);

} // namespace borewright
