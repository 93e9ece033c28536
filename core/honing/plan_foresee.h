// SPDX-License-Identifier: GPL-3.0-or-later
// Chances of what may come of a set-up, by draws from its prospect: the same draws each time.
#pragma once

#include "core/honing/plan_prospect.h"

#include <optional>

namespace borewright {

// Walls that may come of it: a column a draw, on each axis, and what the rate of the stone makes of
// the mean, at some values of that rate with their weights (Σ = 1).
struct Draws {
    Eigen::MatrixXd first, second; // what they are off the mean of the wall; the oval's included
    struct AtRate {
        double weight = 1;
        Eigen::VectorXd wall;
    };
    std::vector<AtRate> atRate;
    Eigen::VectorXd oval;                    // mean, first axis less mean of both
    Eigen::VectorXd firstDoubt, secondDoubt; // standard, what the rate does left out
};

Draws drawsNow(const Prospect& now, Eigen::Index count);
// `before` is rateFirst() of the stone, `after` what prospectAfter() made of it.
Draws drawsAfter(const PlanGround& ground, const Prospect& before, const Prospect& after,
                 const SetUp& setUp, Eigen::Index count);

// The largest of wall − limit over the cells that count, exceeded with this chance only.
double largestExcess(const Draws& draws, double limit_um, const std::vector<bool>& counts,
                     double chance);
// The same, the chance being that of each cell by itself.
double excessOfEach(const Draws& draws, double limit_um, const std::vector<bool>& counts,
                    double chance);
double chanceOver(const Draws& draws, double limit_um, const std::vector<bool>& counts);

// Everything told of a prospect. `cap_um`: of the stone that led there.
Foreseen foreseenOf(const PlanGround& ground, const Prospect& prospect, const Draws& draws,
                    double cap_um);
Foreseen foreseenNow(const PlanGround& ground, const Prospect& now);
Foreseen foreseenAfter(const PlanGround& ground, const Prospect& before, const SetUp& setUp,
                       Prospect* after = nullptr);

} // namespace borewright
