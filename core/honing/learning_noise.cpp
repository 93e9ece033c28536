// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes of the noise: found by trials on simulated benches.
#include "core/honing/learning_noise.h"

#include "core/honing/learning_joint.h"
#include "core/honing/learning_prior.h"

#include <algorithm>
#include <cmath>

namespace borewright {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

double comesIn(double stock_um) {
    constexpr double little_um = 0.5;
    return 1 - std::exp(-stock_um / little_um);
}

double wanderShare(double mostStock_um) {
    constexpr double some_um = 8;
    return 1 - std::exp(-mostStock_um / some_um);
}

MatrixXd modelError(const Bench& bench, const LearningOptions& options, const VectorXd& stock) {
    constexpr double whiteShare = 0.1;
    VectorXd deviation(stock.size());
    for (Index i = 0; i < stock.size(); ++i)
        deviation[i] = options.errorFloor_um * comesIn(stock[i]) + options.errorShare * stock[i];
    MatrixXd error =
        (1 - whiteShare) * smoothCovariance(deviation, bench.grid.height_mm, options.errorOver_mm);
    error.diagonal() += whiteShare * deviation.cwiseAbs2();
    return error;
}

VectorXd strayVariances(const SetUp& setUp, const LearningOptions& options) {
    VectorXd variance(straysOfWindow * static_cast<Index>(setUp.windows.size()));
    for (std::size_t w = 0; w < setUp.windows.size(); ++w) {
        const Stroking& window = setUp.windows[w];
        const double miscounted = options.miscounted / std::max(1.0, window.strokes + window.held);
        const double ends = options.strokeEnds_mm * options.strokeEnds_mm;
        variance.segment<straysOfWindow>(straysOfWindow * static_cast<Index>(w))
            << options.windowScatter * options.windowScatter + miscounted * miscounted,
            ends, ends;
    }
    return variance;
}

} // namespace borewright
