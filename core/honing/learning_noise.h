// SPDX-License-Identifier: GPL-3.0-or-later
// What the model cannot know of a set-up, as variances.
#pragma once

#include "core/honing/learning.h"

namespace borewright {

// Shares, 0 … 1, to which the floor of the model's error and the wander of the figures come in with
// the stock taken: nothing happens where nothing is cut.
double comesIn(double stock_um);
double wanderShare(double mostStock_um);

// Model error of the wall at factor 1, from the stock of each cell: mostly correlated, a little
// from cell to cell.
Eigen::MatrixXd modelError(const Bench& bench, const LearningOptions& options,
                           const Eigen::VectorXd& stock);

// Variances of the strays (learning_joint.h) of a set-up's windows, at factor 1.
Eigen::VectorXd strayVariances(const SetUp& setUp, const LearningOptions& options);

} // namespace borewright
