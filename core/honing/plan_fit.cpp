// SPDX-License-Identifier: GPL-3.0-or-later
// The damped Gauss–Newton steps of a course.
#include "core/honing/plan_fit.h"

#include "core/honing/bounded_least_squares.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double farthestMove_mm = 15; // of a window's end in one step
constexpr double mostDamping = 1e4;

// Visits each window with the place of its variables.
template<typename Visit>
void eachWindow(Course& course, const Visit& visit) {
    Index at = 0;
    for (SetUp& setUp : course)
        for (Stroking& window : setUp.windows) {
            visit(setUp.stone, window, at);
            at += windowVariables;
        }
}

void intoBounds(const PlanGround& ground, Course& course) {
    eachWindow(course, [&](std::size_t stone, Stroking& window, Index) {
        const WindowBounds bounds = windowBounds(ground, stone);
        const double rate = ground.rate(stone);
        const double shortest = bounds.shortest_mm(window.to_mm);
        window.from_mm = std::clamp(window.from_mm, bounds.highest_mm, bounds.lowest_mm - shortest);
        window.to_mm = std::clamp(window.to_mm, window.from_mm + shortest, bounds.lowest_mm);
        window.strokes = std::clamp(window.strokes, leastDose_um / rate, bounds.mostDose_um / rate);
        const bool holds = bounds.holds && window.to_mm >= bounds.lowest_mm;
        window.held = holds ? std::clamp(window.held, 0.0, bounds.mostDose_um / rate) : 0.0;
    });
}

struct StepBounds {
    VectorXd lower, upper;
};

StepBounds stepBounds(const PlanGround& ground, Course& course, Index variables) {
    StepBounds step{VectorXd(variables), VectorXd(variables)};
    eachWindow(course, [&](std::size_t stone, Stroking& window, Index at) {
        const WindowBounds bounds = windowBounds(ground, stone);
        const double middle = (window.from_mm + window.to_mm) / 2;
        const double half = bounds.shortest_mm(window.to_mm) / 2;
        const double dose = window.strokes * ground.rate(stone);
        const double held = window.held * ground.rate(stone);
        step.lower[at] = std::max(bounds.highest_mm - window.from_mm, -farthestMove_mm);
        step.upper[at] = std::min(middle - half - window.from_mm, farthestMove_mm);
        step.lower[at + 1] = std::max(middle + half - window.to_mm, -farthestMove_mm);
        step.upper[at + 1] = std::min(bounds.lowest_mm - window.to_mm, farthestMove_mm);
        step.lower[at + 2] = leastDose_um - dose;
        step.upper[at + 2] = std::min(bounds.mostDose_um - dose, std::max(40.0, dose));
        // What ends at the stop stays there where only there the stone may stand, or stroke so
        // briefly.
        const bool holds = bounds.holds && window.to_mm >= bounds.lowest_mm;
        const bool brief =
            bounds.atStop(window.to_mm) && window.to_mm - window.from_mm < bounds.shortestAbove_mm;
        if (holds || brief) step.lower[at + 1] = 0;
        step.lower[at + 3] = -held;
        step.upper[at + 3] =
            holds ? std::min(bounds.mostDose_um - held, std::max(20.0, held)) : 0.0;
    });
    // Rounding must not cross them.
    step.lower = step.lower.cwiseMin(0);
    step.upper = step.upper.cwiseMax(0);
    return step;
}

Course moved(const PlanGround& ground, Course course, const VectorXd& step) {
    eachWindow(course, [&](std::size_t stone, Stroking& window, Index at) {
        window.from_mm += step[at];
        window.to_mm += step[at + 1];
        window.strokes += step[at + 2] / ground.rate(stone);
        window.held += step[at + 3] / ground.rate(stone);
    });
    intoBounds(ground, course);
    return course;
}

// The normal equations serve: the damping keeps them well conditioned, and they are a tenth of the
// work.
VectorXd dampedStep(const CourseEnd& end, const StepBounds& bounds, double damping) {
    MatrixXd normal = end.jacobian.transpose() * end.jacobian;
    const VectorXd norms = normal.diagonal().cwiseSqrt();
    normal.diagonal().array() += damping * (norms.array() + 1e-3).square() + 1e-12;
    const Eigen::LLT<MatrixXd> factor(normal);
    const VectorXd right = factor.matrixL().solve(-end.jacobian.transpose() * end.residuals);
    return boundedLeastSquares(factor.matrixU(), right, bounds.lower, bounds.upper).x;
}

} // namespace

FittedCourse fitCourse(const PlanGround& ground, Course start, const FitOptions& options) {
    intoBounds(ground, start);
    Course best = std::move(start);
    CourseEnd end = endOf(ground, best, options.contactStep, true, options.shifts);
    double damping = 0.02;
    for (int step = 0; step < options.mostSteps && damping < mostDamping;) {
        const StepBounds bounds = stepBounds(ground, best, end.jacobian.cols());
        const Course trial = moved(ground, best, dampedStep(end, bounds, damping));
        ++step;
        const CourseEnd tried = endOf(ground, trial, options.contactStep, false, options.shifts);
        const double gain = end.square() - tried.square();
        if (!(gain > 0)) {
            damping *= 8;
            continue;
        }
        damping = std::max(1e-4, damping / 4);
        const bool enough = gain < options.enough * tried.square();
        best = trial;
        if (enough || step == options.mostSteps) {
            end = tried;
            break;
        }
        end = endOf(ground, best, options.contactStep, true, options.shifts);
    }
    end.jacobian.resize(0, 0);
    return {std::move(best), std::move(end)};
}

Course tidied(const PlanGround& ground, const Course& course, double leastDose) {
    Course tidy;
    for (const SetUp& setUp : course) {
        SetUp kept{setUp.stone, {}};
        // Less than half a stroke cannot be done.
        const double least = std::max(0.5, leastDose / ground.rate(setUp.stone));
        for (const Stroking& window : setUp.windows) {
            if (window.strokes + window.held < least) continue;
            const auto like = std::ranges::find_if(kept.windows, [&](const Stroking& other) {
                return std::fabs(other.from_mm - window.from_mm) < 1.5 &&
                       std::fabs(other.to_mm - window.to_mm) < 1.5;
            });
            if (like == kept.windows.end())
                kept.windows.push_back(window);
            else {
                like->strokes += window.strokes;
                like->held += window.held;
            }
        }
        if (!kept.windows.empty()) tidy.push_back(std::move(kept));
    }
    return tidy;
}

} // namespace borewright
