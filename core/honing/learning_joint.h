// SPDX-License-Identifier: GPL-3.0-or-later
// One bore and the tools together, as the learning pushes and corrects them: the vector of belief.h
// with, behind it, what is carried from the set-ups since the last survey, so that a survey can say
// afterwards how those went.
#pragma once

#include "core/honing/learning.h"

namespace borewright {

struct Joint {
    Eigen::Index bore = 0;  // places of wall, oval and hardness
    Eigen::Index tools = 0; // places of faces and figures, behind them
    Eigen::VectorXd mean;   // and then what is carried
    Eigen::MatrixXd covariance;
    [[nodiscard]] Eigen::Index carried() const { return mean.size() - bore - tools; }
};

// About what a set-up is linearised: the stone's figures and what went otherwise than meant.
struct SetUpPoint {
    Eigen::VectorXd figures; // four; empty = at the mean
    Eigen::VectorXd strayed; // ln strokes' worth, mm of each end, by window; empty = 0
};
inline constexpr Eigen::Index straysOfWindow = 3;

// Wall and face about which the next set-up is linearised; empty = at the mean.
struct ShapePoint {
    Eigen::VectorXd wall;
    Eigen::VectorXd face;
};

} // namespace borewright
