// SPDX-License-Identifier: GPL-3.0-or-later
// A set-up pushed through the contact model: mean, covariance, scatter of its windows, what the
// model cannot know.
#pragma once

#include "core/honing/learning_joint.h"

namespace borewright {

// What a step did to a stone's face and figures, for the bores that were not cut.
struct ToolStep {
    Eigen::Index first = 0;      // of the stone within the tools
    Eigen::VectorXd meanBefore;  // of all tools
    Eigen::MatrixXd before;      // covariance of the stone's before
    Eigen::MatrixXd beforeAfter; // of the stone's before with all tools after
};

// Covariances of the wall that set-ups since the last survey have added, each at factor 1; empty =
// nothing.
struct Added {
    Eigen::MatrixXd error;  // of the model
    Eigen::MatrixXd strays; // of the windows
};
// How much larger than the options say: standard deviations.
struct AddedFactors {
    double error = 1;
    double strays = 1;
};

struct PushedJoint {
    Added added;      // with what stood before of it
    ShapePoint shape; // after
    ToolStep step;
    bool cut = false; // something was taken off
};

// Pushes `joint` in place. `added`: what earlier set-ups since the last survey have added. With
// `carry`, figures before and strays of the windows are appended to the joint.
PushedJoint pushJoint(const Bench& bench, const SetUp& setUp, const LearningOptions& options,
                      const AddedFactors& factors, const SetUpPoint& about, const ShapePoint& shape,
                      const Added& added, bool carry, Joint& joint);

} // namespace borewright
