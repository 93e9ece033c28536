// SPDX-License-Identifier: GPL-3.0-or-later
// What is believed before anything was measured, and the covariances it is made of.
#pragma once

#include "core/honing/learning.h"

namespace borewright {

// deviation_i · deviation_j · exp(−Δ²/2ℓ²) between cells of a height; ℓ > 0.
Eigen::MatrixXd smoothCovariance(const Eigen::VectorXd& deviation, double height_mm,
                                 double over_mm);

// A bore: wall, oval and hardness, in the order of BeliefLayout.
struct BorePrior {
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;
    Eigen::MatrixXd shape; // the part of the wall's covariance that a first survey may enlarge
};
BorePrior borePrior(const Bench& bench, const LearningOptions& options);

// A face as it comes from the dresser: covariance over its cells, mean 0.
Eigen::MatrixXd freshFace(const WallGrid& grid, std::size_t faceCells,
                          const LearningOptions& options);

// Faces and figures of all stones, in the order of BeliefLayout from its tools() on.
struct ToolPrior {
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;
};
ToolPrior toolPrior(const Bench& bench, const LearningOptions& options);

} // namespace borewright
