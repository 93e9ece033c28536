// SPDX-License-Identifier: GPL-3.0-or-later
// Priors of bore and tools.
#include "core/honing/learning_prior.h"

#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// A trace of independent doubt in each cell keeps covariances invertible.
constexpr double grain_um = 0.1;
// What a dressed face is out of true beyond its wedge.
constexpr double waviness_um = 0.4, waveOver_mm = 15;

// −1 … 1 from one end to the other.
VectorXd along(Index cells) {
    return cells > 1 ? VectorXd::LinSpaced(cells, -1, 1).eval() : VectorXd::Zero(cells).eval();
}

double square(double value) {
    return value * value;
}

} // namespace

MatrixXd smoothCovariance(const VectorXd& deviation, double height_mm, double over_mm) {
    const Index cells = deviation.size();
    VectorXd shape(cells);
    for (Index apart = 0; apart < cells; ++apart)
        shape[apart] = std::exp(-0.5 * square(static_cast<double>(apart) * height_mm / over_mm));
    MatrixXd covariance(cells, cells);
    for (Index i = 0; i < cells; ++i)
        for (Index j = 0; j < cells; ++j)
            covariance(i, j) = deviation[i] * deviation[j] * shape[std::abs(i - j)];
    return covariance;
}

BorePrior borePrior(const Bench& bench, const LearningOptions& options) {
    const auto cells = static_cast<Index>(bench.grid.cells);
    const double height = bench.grid.height_mm;
    const auto smooth = [&](double deviation, double over) {
        return smoothCovariance(VectorXd::Constant(cells, deviation), height, over);
    };
    BorePrior prior;
    prior.mean = VectorXd::Zero(3 * cells);
    prior.covariance = MatrixXd::Zero(3 * cells, 3 * cells);
    prior.shape = smooth(options.smooth_um, options.smoothOver_mm);
    const VectorXd x = along(cells);
    prior.covariance.topLeftCorner(cells, cells) =
        MatrixXd::Constant(cells, cells, square(options.level_um)) +
        square(options.slope_um) * x * x.transpose() + prior.shape +
        smooth(options.rough_um, options.roughOver_mm);
    prior.covariance.block(cells, cells, cells, cells) =
        smooth(options.oval_um, options.ovalOver_mm);
    prior.covariance.bottomRightCorner(cells, cells) =
        smooth(options.hardness, options.hardnessOver_mm);
    if (bench.land.size() > 0) {
        const VectorXd cut = (bench.land.array() < 1).cast<double>();
        prior.mean.tail(cells) = -options.portsSofter * cut;
        prior.covariance.bottomRightCorner(cells, cells) +=
            square(options.portsSofterDoubt) * cut * cut.transpose();
    }
    return prior;
}

MatrixXd freshFace(const WallGrid& grid, std::size_t faceCells, const LearningOptions& options) {
    const auto cells = static_cast<Index>(faceCells);
    const VectorXd x = along(cells);
    return square(options.faceWedge_um) * x * x.transpose() +
           smoothCovariance(VectorXd::Constant(cells, waviness_um), grid.height_mm, waveOver_mm) +
           square(grain_um) * MatrixXd::Identity(cells, cells);
}

ToolPrior toolPrior(const Bench& bench, const LearningOptions& options) {
    const BeliefLayout layout(bench);
    const Index first = layout.tools();
    const Index size = layout.size() - first;
    ToolPrior prior{VectorXd::Zero(size), MatrixXd::Zero(size, size)};
    for (std::size_t s = 0; s < bench.stones.size(); ++s) {
        const BenchStone& stone = bench.stones[s];
        const Index face = layout.face(s, 0) - first;
        const auto cells = static_cast<Index>(stone.grid.cells);
        prior.covariance.block(face, face, cells, cells) =
            freshFace(bench.grid, stone.grid.cells, options);
        const auto set = [&](ToolFigure figure, double mean, double doubt) {
            const Index at = layout.figure(s, figure) - first;
            prior.mean[at] = mean;
            prior.covariance(at, at) = square(doubt);
        };
        set(ToolFigure::rate, stone.logRate, stone.logRateDoubt);
        set(ToolFigure::compliance, options.logCompliance, options.complianceOwnDoubt);
        set(ToolFigure::wear, options.logWear, options.wearDoubt);
        set(ToolFigure::looseness, options.logLooseness, options.loosenessDoubt);
    }
    // The same holder and spring bear all stones.
    for (std::size_t a = 0; a < bench.stones.size(); ++a)
        for (std::size_t b = 0; b < bench.stones.size(); ++b)
            prior.covariance(layout.figure(a, ToolFigure::compliance) - first,
                             layout.figure(b, ToolFigure::compliance) - first) +=
                square(options.complianceDoubt);
    return prior;
}

} // namespace borewright
