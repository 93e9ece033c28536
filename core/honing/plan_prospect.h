// SPDX-License-Identifier: GPL-3.0-or-later
// What is to be expected of a bore and its tools now and after set-ups, with the doubt as a factor
// of few columns: what is believed is mean + by·ξ, ξ independent standard normals.
//
// Method. The covariance of the belief is factored by Cholesky with the largest pivot next, until
// little is left (Harbrecht, Peters & Schneider, Appl. Numer. Math. 62 (2012) 428); each set-up
// carries the columns along as directions of contact.h and adds columns for what its windows stray
// and what the model cannot know. That the stone is faster or slower than believed is not a small
// change while it is little known: that one number is walked through in steps instead.
#pragma once

#include "core/honing/plan_ground.h"

#include <vector>

namespace borewright {

struct Prospect {
    Eigen::VectorXd wall, oval; // mean
    std::vector<Eigen::VectorXd> faces;
    // By the sources of doubt, a column each.
    Eigen::MatrixXd wallBy, ovalBy, hardnessBy;
    std::vector<Eigen::MatrixXd> faceBy;
    Eigen::MatrixXd figuresBy; // toolFigures rows a stone
    [[nodiscard]] Eigen::Index sources() const { return wallBy.cols(); }
};

Prospect prospectNow(const PlanGround& ground);

// The same prospect with the doubt about this stone's rate in the first source alone.
Prospect rateFirst(Prospect prospect, std::size_t stone);

// After one set-up. `before` may be any, rateFirst() of the stone keeps that source first.
Prospect prospectAfter(const PlanGround& ground, const Prospect& before, const SetUp& setUp);

// The wall after, should the stone's rate turn out `deviations` standard doubts beyond its mean;
// `before` is rateFirst() of the stone.
Eigen::VectorXd wallAtRate(const PlanGround& ground, const Prospect& before, const SetUp& setUp,
                           double deviations);

// cells × n: the lower triangle (or less) of a factor of a covariance, n at most `most`; pivots are
// taken while they are over `enough`. What the factor leaves of the diagonal is written to `left`.
Eigen::MatrixXd factored(const Eigen::MatrixXd& covariance, Eigen::Index most, double enough,
                         Eigen::VectorXd& left);

} // namespace borewright
