// SPDX-License-Identifier: GPL-3.0-or-later
// The belief with its doubt as a few columns, and these through a set-up.
#include "core/honing/plan_prospect.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::RowVectorXd;
using Eigen::VectorXd;

constexpr Index figures = static_cast<Index>(toolFigures);
constexpr Index mostSources = 44;
constexpr double enough_um2 = 0.02; // variance, as micrometres of the wall

Index asIndex(std::size_t value) {
    return static_cast<Index>(value);
}

// What a unit of each number is worth in micrometres of the wall, so that the pivots are those that
// matter.
VectorXd worthOf(const PlanGround& ground) {
    const BeliefLayout& at = ground.belief.layout;
    const double toGo = std::max(10.0, ground.aim.aim_um - ground.wall.minCoeff());
    VectorXd worth = VectorXd::Ones(at.size());
    worth.segment(at.hardness(0), asIndex(at.cells)).setConstant(std::min(60.0, toGo));
    for (std::size_t s = 0; s < ground.bench.stones.size(); ++s) {
        worth[at.figure(s, ToolFigure::rate)] = toGo;
        worth[at.figure(s, ToolFigure::compliance)] = 8;
        worth[at.figure(s, ToolFigure::wear)] = 3;
        worth[at.figure(s, ToolFigure::looseness)] = 4;
        if (ground.may[s]) continue; // what is not used need not be known
        worth.segment(at.face(s, 0), asIndex(at.faceCells[s]) + figures).setConstant(1e-6);
    }
    return worth;
}

Index rateRow(std::size_t stone) {
    return asIndex(stone) * figures + static_cast<Index>(ToolFigure::rate);
}

double figureBy(const Prospect& prospect, std::size_t stone, ToolFigure figure, Index source) {
    return prospect.figuresBy(asIndex(stone) * figures + static_cast<Index>(figure), source);
}

// exp(−Δ²/2ℓ²) between the cells, times the deviations.
MatrixXd smooth(const WallGrid& grid, const VectorXd& deviation, double over_mm) {
    MatrixXd covariance(deviation.size(), deviation.size());
    for (Index i = 0; i < deviation.size(); ++i)
        for (Index j = 0; j < deviation.size(); ++j) {
            const double apart = grid.height_mm * static_cast<double>(i - j) / over_mm;
            covariance(i, j) = deviation[i] * deviation[j] * std::exp(-apart * apart / 2);
        }
    return covariance;
}

void widen(MatrixXd& matrix, Index more) {
    matrix.conservativeResize(matrix.rows(), matrix.cols() + more);
    matrix.rightCols(more).setZero();
}

void widen(Prospect& prospect, Index more) {
    widen(prospect.wallBy, more);
    widen(prospect.ovalBy, more);
    widen(prospect.hardnessBy, more);
    widen(prospect.figuresBy, more);
    for (MatrixXd& face : prospect.faceBy)
        widen(face, more);
}

// Carries the mean and every source through the windows. Each window adds three sources: what its
// strokes are worth, and where its ends were.
void strokeThrough(const PlanGround& ground, const SetUp& setUp, Prospect& prospect) {
    const std::size_t s = setUp.stone;
    const Index first = prospect.sources();
    const auto windows = asIndex(setUp.windows.size());
    widen(prospect, 3 * windows);
    const auto figure = [&](ToolFigure which) -> RowVectorXd {
        return prospect.figuresBy.row(asIndex(s) * figures + static_cast<Index>(which));
    };
    Directions directions;
    directions.diameter = std::move(prospect.wallBy);
    directions.face = std::move(prospect.faceBy[s]);
    directions.hardness = prospect.hardnessBy;
    const RowVectorXd rate = figure(ToolFigure::rate);
    directions.logCompliance = figure(ToolFigure::compliance);
    directions.logWear = figure(ToolFigure::wear);
    directions.logLooseness = figure(ToolFigure::looseness);
    WallAndFace state{prospect.wall, prospect.faces[s]};
    for (Index w = 0; w < windows; ++w) {
        const Index at = first + 3 * w;
        const Index count = directions.count();
        directions.logRate = rate + ground.learning.windowScatter * RowVectorXd::Unit(count, at);
        directions.from = ground.learning.strokeEnds_mm * RowVectorXd::Unit(count, at + 1);
        directions.to = ground.learning.strokeEnds_mm * RowVectorXd::Unit(count, at + 2);
        hone(ground.bench.grid, ground.bench.stones[s].grid, ground.settings[s], ground.ground,
             setUp.windows[static_cast<std::size_t>(w)], state, &directions);
    }
    prospect.wall = std::move(state.diameter);
    prospect.faces[s] = std::move(state.face);
    prospect.wallBy = std::move(directions.diameter);
    prospect.faceBy[s] = std::move(directions.face);
}

// As the learning reckons it (learning_push.cpp): the model's error grows with the stock, and the
// oval goes as the stone rounds the bore.
void addWhatIsUnknown(const PlanGround& ground, std::size_t stone, const VectorXd& stock,
                      Prospect& prospect) {
    const LearningOptions& learning = ground.learning;
    const double compliance = std::exp(ground.settings[stone].logCompliance);
    VectorXd deviation(stock.size());
    for (Index i = 0; i < stock.size(); ++i) {
        const double cut = std::max(0.0, stock[i]);
        deviation[i] = ground.errorFactor * (learning.errorFloor_um * (1 - std::exp(-cut / 0.5)) +
                                             learning.errorShare * cut);
        const double left = std::exp(-cut / (2 * compliance));
        prospect.oval[i] *= left;
        prospect.ovalBy.row(i) *= left;
    }
    VectorXd left;
    const MatrixXd wall =
        factored(smooth(ground.bench.grid, deviation, learning.errorOver_mm), 14, 0.01, left);
    const MatrixXd oval =
        factored(smooth(ground.bench.grid, deviation / 2, learning.ovalOver_mm), 7, 0.01, left);
    const Index before = prospect.sources();
    widen(prospect, wall.cols() + oval.cols());
    prospect.wallBy.middleCols(before, wall.cols()) = wall;
    prospect.ovalBy.rightCols(oval.cols()) = oval;
}

} // namespace

MatrixXd factored(const MatrixXd& covariance, Index most, double enough, VectorXd& left) {
    const Index rows = covariance.rows();
    left = covariance.diagonal();
    MatrixXd factor = MatrixXd::Zero(rows, std::min(most, rows));
    Index done = 0;
    for (; done < factor.cols(); ++done) {
        Index pivot = 0;
        const double largest = left.maxCoeff(&pivot);
        if (!(largest > enough)) break;
        VectorXd column = covariance.col(pivot);
        column.noalias() -= factor.leftCols(done) * factor.row(pivot).head(done).transpose();
        column /= std::sqrt(largest);
        factor.col(done) = column;
        left -= column.cwiseAbs2();
        left = left.cwiseMax(0.0);
        left[pivot] = 0;
    }
    return factor.leftCols(done);
}

Prospect prospectNow(const PlanGround& ground) {
    const Belief& belief = ground.belief;
    const BeliefLayout& at = belief.layout;
    const VectorXd worth = worthOf(ground);
    const MatrixXd scaled = worth.asDiagonal() * belief.covariance * worth.asDiagonal();
    VectorXd left;
    MatrixXd factor = factored(scaled, mostSources, enough_um2, left);
    factor = (worth.cwiseInverse().asDiagonal() * factor).eval();
    const Index cells = asIndex(at.cells);
    Prospect now;
    now.wall = ground.wall;
    now.oval = belief.mean.segment(at.oval(0), cells);
    now.faces = ground.faces;
    now.wallBy = factor.middleRows(at.wall(0), cells);
    now.ovalBy = factor.middleRows(at.oval(0), cells);
    now.hardnessBy = factor.middleRows(at.hardness(0), cells);
    now.figuresBy.resize(figures * asIndex(ground.bench.stones.size()), factor.cols());
    for (std::size_t s = 0; s < ground.bench.stones.size(); ++s) {
        now.faceBy.push_back(factor.middleRows(at.face(s, 0), asIndex(at.faceCells[s])));
        now.figuresBy.middleRows(asIndex(s) * figures, figures) =
            factor.middleRows(at.figure(s, ToolFigure::rate), figures);
    }
    return now;
}

Prospect rateFirst(Prospect prospect, std::size_t stone) {
    // A reflection of the sources that takes the stone's row to the first alone (Householder).
    const RowVectorXd row = prospect.figuresBy.row(rateRow(stone));
    const double length = row.norm();
    if (!(length > 0)) return prospect;
    VectorXd mirror = row.transpose();
    mirror[0] += row[0] < 0 ? -length : length;
    mirror.normalize();
    const double sign = row[0] < 0 ? 1 : -1;
    const auto reflect = [&](MatrixXd& matrix) {
        const VectorXd along = matrix * mirror;
        matrix.noalias() -= 2 * along * mirror.transpose();
        matrix.col(0) *= sign;
    };
    reflect(prospect.wallBy);
    reflect(prospect.ovalBy);
    reflect(prospect.hardnessBy);
    reflect(prospect.figuresBy);
    for (MatrixXd& face : prospect.faceBy)
        reflect(face);
    return prospect;
}

Prospect prospectAfter(const PlanGround& ground, const Prospect& before, const SetUp& setUp) {
    Prospect after = before;
    strokeThrough(ground, setUp, after);
    addWhatIsUnknown(ground, setUp.stone, after.wall - before.wall, after);
    return after;
}

VectorXd wallAtRate(const PlanGround& ground, const Prospect& before, const SetUp& setUp,
                    double deviations) {
    const std::size_t s = setUp.stone;
    WallAndFace state{before.wall + deviations * before.wallBy.col(0),
                      before.faces[s] + deviations * before.faceBy[s].col(0)};
    ContactSettings settings = ground.settings[s];
    settings.logRate += deviations * figureBy(before, s, ToolFigure::rate, 0);
    settings.logCompliance += deviations * figureBy(before, s, ToolFigure::compliance, 0);
    settings.logWear += deviations * figureBy(before, s, ToolFigure::wear, 0);
    settings.logLooseness += deviations * figureBy(before, s, ToolFigure::looseness, 0);
    const WallGround wallGround{ground.ground.hardness + deviations * before.hardnessBy.col(0),
                                ground.ground.land};
    for (const Stroking& window : setUp.windows)
        hone(ground.bench.grid, ground.bench.stones[s].grid, settings, wallGround, window, state);
    return state.diameter;
}

} // namespace borewright
