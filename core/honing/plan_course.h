// SPDX-License-Identifier: GPL-3.0-or-later
// A course: set-ups one after the other, as numbers that can be fitted, and how good their end is.
//
// Variables, four a window: both ends (mm), its dose, strokes × rate (µm), and the dose of what it
// is held at its lower end. The square of a course, µm²:
//     Σ weight·(wall − aim)²                                     at the end, over the fine grid
//   + the same over the stations
//   + what a rough stone leaves too little, what the first finish stone finds too much, what passes
//     the cap: squares, so dear that they count as forbidden
//   + a share of what the set-ups before the last leave out of line
//   + a little for each stroke, more in short windows
//   + what the end would be off by, were compliance and looseness of the stones other than
//   believed.
#pragma once

#include "core/honing/plan_ground.h"

namespace borewright {

using Course = std::vector<SetUp>;

// Bounds for the ends of a stone's windows, and what may be asked of it in one window.
struct WindowBounds {
    double highest_mm = 0;
    double lowest_mm = 0;
    double shortestAtStop_mm = 0; // between the ends of a window that ends at the stop …
    double shortestAbove_mm = 0;  // … and of any other: a stroke has to go somewhere
    double mostDose_um = 0;
    bool holds = false; // the bore is blind to it: it may stand at its lowest for a while
    [[nodiscard]] double room_mm() const { return lowest_mm - highest_mm; }
    // Half a millimetre above it the stop is felt.
    [[nodiscard]] bool atStop(double to_mm) const { return to_mm >= lowest_mm - 0.5; }
    [[nodiscard]] double shortest_mm(double to_mm) const {
        return atStop(to_mm) ? shortestAtStop_mm : shortestAbove_mm;
    }
};
inline constexpr Eigen::Index windowVariables = 4;
inline constexpr double leastDose_um = 0.05; // less would not be felt, and nothing learned from
WindowBounds windowBounds(const PlanGround& ground, std::size_t stone);

// The wall after each set-up, and its derivatives by the variables of the windows so far.
struct CourseWalls {
    std::vector<Eigen::VectorXd> wall;
    std::vector<Eigen::MatrixXd> by; // empty where not asked for
    // What windows may stray by their scatter, a cell each: variance, µm², as far as no later
    // set-up puts it right, and its derivatives.
    Eigen::VectorXd strayed;
    Eigen::MatrixXd strayedBy;
};
// The tools as believed, or with ln compliance and ln looseness shifted by so many of their own
// standard deviations, and windows that lay lower than meant.
struct ToolShift {
    double compliance = 0;
    double looseness = 0;
    double lower_mm = 0;
};
CourseWalls walkCourse(const PlanGround& ground, const Course& course, double step,
                       bool derivatives, const ToolShift& shift = {});

struct CourseEnd {
    Eigen::VectorXd residuals; // their squares sum up to the square of the course
    Eigen::MatrixXd jacobian;  // empty where not asked for
    Eigen::VectorXd wall;      // at the end
    double offAim_um2 = 0;     // weighted mean square from the aim
    double forbidden_um2 = 0;  // the part of the square that is penalties
    double unsure_um2 = 0;     // … that comes of tools other than believed
    [[nodiscard]] double square() const { return residuals.squaredNorm(); }
};

// `step`: largestStep of the contact's integration; `shifts`: other tools to be ready for.
CourseEnd endOf(const PlanGround& ground, const Course& course, double step, bool jacobian,
                const std::vector<ToolShift>& shifts);

} // namespace borewright
