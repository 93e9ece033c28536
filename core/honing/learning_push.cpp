// SPDX-License-Identifier: GPL-3.0-or-later
// Method. y = F(x, q) for wall and face after the set-up, x = (wall, hardness, face, figures)
// before, q the strays of the windows (what their strokes were worth, where their ends were):
//     mean  ← F(x₀, q₀) + J (m − x₀) + N (0 − q₀)
//     P     ← J P Jᵀ + N Q Nᵀ + E,
// J and N from one sweep of contact.h with its directions. x₀ is the mean but where a survey has
// shown later that the set-up went otherwise. E is the model's error.
#include "core/honing/learning_push.h"

#include "core/honing/learning_noise.h"
#include "core/honing/learning_prior.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr Index figures = static_cast<Index>(toolFigures);

struct Places {
    Index cells, face, faceCells, figure, hardness, windows;
    [[nodiscard]] Index inputs() const { return 2 * cells + faceCells + figures; }
    [[nodiscard]] Index outputs() const { return cells + faceCells; }
    [[nodiscard]] Index strays() const { return straysOfWindow * windows; }
};

Places placesOf(const Bench& bench, const SetUp& setUp) {
    const BeliefLayout layout(bench);
    return {static_cast<Index>(bench.grid.cells),
            layout.face(setUp.stone, 0),
            static_cast<Index>(layout.faceCells[setUp.stone]),
            layout.figure(setUp.stone, ToolFigure::rate),
            layout.hardness(0),
            static_cast<Index>(setUp.windows.size())};
}

struct Swept {
    VectorXd wall, face, stock;
    MatrixXd byInputs; // outputs × inputs
    MatrixXd byStrays; // outputs × strays
};

Directions startOf(const Places& at) {
    const Index count = at.inputs() + at.strays();
    Directions d;
    d.diameter = MatrixXd::Zero(at.cells, count);
    d.hardness = MatrixXd::Zero(at.cells, count);
    d.face = MatrixXd::Zero(at.faceCells, count);
    d.diameter.leftCols(at.cells).setIdentity();
    d.hardness.middleCols(at.cells, at.cells).setIdentity();
    d.face.middleCols(2 * at.cells, at.faceCells).setIdentity();
    const Index first = 2 * at.cells + at.faceCells;
    const auto unit = [&](Index figure) {
        Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(count);
        row[first + figure] = 1;
        return row;
    };
    d.logRate = unit(0);
    d.logCompliance = unit(1);
    d.logWear = unit(2);
    d.logLooseness = unit(3);
    d.from = d.to = Eigen::RowVectorXd::Zero(count);
    return d;
}

Swept sweepThrough(const Bench& bench, const SetUp& setUp, const Places& at,
                   const VectorXd& hardness, const VectorXd& figure, const VectorXd& strayed,
                   const ShapePoint& before) {
    const BenchStone& stone = bench.stones[setUp.stone];
    WallAndFace state{before.wall, before.face};
    Directions d = startOf(at);
    const WallGround ground{hardness, bench.land};
    for (Index w = 0; w < at.windows; ++w) {
        const Index column = at.inputs() + straysOfWindow * w;
        ContactSettings settings;
        settings.logRate = figure[0] + strayed[straysOfWindow * w];
        settings.logCompliance = figure[1];
        settings.logWear = figure[2];
        settings.logLooseness = figure[3];
        Stroking stroking = setUp.windows[static_cast<std::size_t>(w)];
        stroking.from_mm += strayed[straysOfWindow * w + 1];
        stroking.to_mm =
            std::max(stroking.from_mm, stroking.to_mm + strayed[straysOfWindow * w + 2]);
        d.logRate[column] = d.from[column + 1] = d.to[column + 2] = 1;
        hone(bench.grid, stone.grid, settings, ground, stroking, state, &d);
        d.logRate[column] = d.from[column + 1] = d.to[column + 2] = 0;
    }
    Swept swept;
    swept.stock = (state.diameter - before.wall).cwiseMax(0.0);
    swept.wall = std::move(state.diameter);
    swept.face = std::move(state.face);
    MatrixXd all(at.outputs(), d.count());
    all << d.diameter, d.face;
    swept.byInputs = all.leftCols(at.inputs());
    swept.byStrays = all.rightCols(at.strays());
    return swept;
}

MatrixXd rowsOf(const Joint& joint, const Places& at) {
    MatrixXd rows(at.inputs(), joint.mean.size());
    rows << joint.covariance.topRows(at.cells), joint.covariance.middleRows(at.hardness, at.cells),
        joint.covariance.middleRows(at.face, at.faceCells),
        joint.covariance.middleRows(at.figure, figures);
    return rows;
}

MatrixXd columnsOf(const MatrixXd& matrix, const Places& at) {
    MatrixXd columns(matrix.rows(), at.inputs());
    columns << matrix.leftCols(at.cells), matrix.middleCols(at.hardness, at.cells),
        matrix.middleCols(at.face, at.faceCells), matrix.middleCols(at.figure, figures);
    return columns;
}

VectorXd inputsOf(const VectorXd& vector, const Places& at) {
    VectorXd inputs(at.inputs());
    inputs << vector.head(at.cells), vector.segment(at.hardness, at.cells),
        vector.segment(at.face, at.faceCells), vector.segment(at.figure, figures);
    return inputs;
}

// Rows and columns of wall and face put in their places.
void putOutputs(const Places& at, const MatrixXd& withAll, const MatrixXd& own, Joint& joint) {
    MatrixXd& p = joint.covariance;
    const auto wall = withAll.topRows(at.cells);
    const auto face = withAll.bottomRows(at.faceCells);
    p.topRows(at.cells) = wall;
    p.leftCols(at.cells) = wall.transpose();
    p.middleRows(at.face, at.faceCells) = face;
    p.middleCols(at.face, at.faceCells) = face.transpose();
    const MatrixXd even = 0.5 * (own + own.transpose());
    p.topLeftCorner(at.cells, at.cells) = even.topLeftCorner(at.cells, at.cells);
    p.block(0, at.face, at.cells, at.faceCells) = even.topRightCorner(at.cells, at.faceCells);
    p.block(at.face, 0, at.faceCells, at.cells) = even.bottomLeftCorner(at.faceCells, at.cells);
    p.block(at.face, at.face, at.faceCells, at.faceCells) =
        even.bottomRightCorner(at.faceCells, at.faceCells);
}

// The stone rounds the bore as it cuts: where an axis stands back, it overlaps less.
void roundOval(const Bench& bench, const LearningOptions& options, double errorFactor,
               const Places& at, const VectorXd& stock, double compliance_um, Joint& joint) {
    const VectorXd left = (-stock.array() / (2 * compliance_um)).exp();
    joint.mean.segment(at.cells, at.cells).array() *= left.array();
    joint.covariance.middleRows(at.cells, at.cells) =
        (left.asDiagonal() * joint.covariance.middleRows(at.cells, at.cells)).eval();
    joint.covariance.middleCols(at.cells, at.cells) =
        (joint.covariance.middleCols(at.cells, at.cells) * left.asDiagonal()).eval();
    VectorXd deviation(at.cells);
    for (Index i = 0; i < at.cells; ++i)
        deviation[i] = errorFactor * (options.errorFloor_um * comesIn(stock[i]) +
                                      options.errorShare / 2 * stock[i]);
    joint.covariance.block(at.cells, at.cells, at.cells, at.cells) +=
        smoothCovariance(deviation, bench.grid.height_mm, options.ovalOver_mm);
}

// Figures drift a little, the wall's hardness is never quite known, and a face wears unevenly.
void wander(const Bench& bench, const LearningOptions& options, const Places& at,
            const VectorXd& stock, const VectorXd& worn, Joint& joint) {
    const double share = wanderShare(stock.maxCoeff());
    joint.covariance.diagonal().segment(at.figure, figures).array() +=
        options.ratesWander * options.ratesWander * share;
    VectorXd deviation(at.faceCells);
    for (Index i = 0; i < at.faceCells; ++i)
        deviation[i] = options.faceStray * std::abs(worn[i]);
    joint.covariance.block(at.face, at.face, at.faceCells, at.faceCells) +=
        smoothCovariance(deviation, bench.grid.height_mm, options.errorOver_mm);
}

ToolStep stepBefore(const Places& at, const Joint& joint, const MatrixXd& withAll) {
    ToolStep step;
    const Index own = at.faceCells + figures;
    step.first = at.face - joint.bore;
    step.meanBefore = joint.mean.segment(joint.bore, joint.tools);
    step.before = joint.covariance.block(at.face, at.face, own, own);
    step.beforeAfter = joint.covariance.block(at.face, joint.bore, own, joint.tools);
    step.beforeAfter.middleCols(step.first, at.faceCells) =
        withAll.block(at.cells, at.face, at.faceCells, own).transpose();
    return step;
}

void append(const Places& at, const VectorXd& figureMeans, const MatrixXd& figureRows,
            const MatrixXd& strayRows, const VectorXd& strayVariance, Joint& joint) {
    const Index size = joint.mean.size();
    const Index more = figures + at.strays();
    joint.mean.conservativeResize(size + more);
    joint.mean.tail(more) << figureMeans, VectorXd::Zero(at.strays());
    joint.covariance.conservativeResize(size + more, size + more);
    MatrixXd& p = joint.covariance;
    p.block(size, 0, figures, size) = figureRows.leftCols(size);
    p.block(size + figures, 0, at.strays(), size) = strayRows;
    p.topRightCorner(size, more) = p.bottomLeftCorner(more, size).transpose();
    p.bottomRightCorner(more, more).setZero();
    p.block(size, size, figures, figures) = figureRows.rightCols(figures);
    p.diagonal().tail(at.strays()) = strayVariance;
}

} // namespace

PushedJoint pushJoint(const Bench& bench, const SetUp& setUp, const LearningOptions& options,
                      const AddedFactors& factors, const SetUpPoint& about, const ShapePoint& shape,
                      const Added& added, bool carry, Joint& joint) {
    const Places at = placesOf(bench, setUp);
    const VectorXd inputs = inputsOf(joint.mean, at);
    VectorXd reference = inputs;
    if (shape.wall.size() > 0) reference.head(at.cells) = shape.wall;
    if (shape.face.size() > 0) reference.segment(2 * at.cells, at.faceCells) = shape.face;
    if (about.figures.size() > 0) reference.tail(figures) = about.figures;
    const VectorXd strayed =
        about.strayed.size() > 0 ? about.strayed : VectorXd::Zero(at.strays()).eval();
    const ShapePoint before{reference.head(at.cells),
                            reference.segment(2 * at.cells, at.faceCells)};
    const Swept swept = sweepThrough(bench, setUp, at, reference.segment(at.cells, at.cells),
                                     reference.tail(figures), strayed, before);

    PushedJoint result;
    result.shape = {swept.wall, swept.face};
    result.cut = swept.stock.maxCoeff() > 0;
    const auto byWall = swept.byInputs.topLeftCorner(at.cells, at.cells);
    const MatrixXd error = modelError(bench, options, swept.stock);
    result.added.error = error;
    if (added.error.size() > 0) result.added.error += byWall * added.error * byWall.transpose();

    const MatrixXd withAll = swept.byInputs * rowsOf(joint, at); // outputs × all before
    const VectorXd variance = factors.strays * factors.strays * strayVariances(setUp, options);
    const MatrixXd byStray = swept.byStrays * variance.asDiagonal();
    MatrixXd own =
        columnsOf(withAll, at) * swept.byInputs.transpose() + byStray * swept.byStrays.transpose();
    own.topLeftCorner(at.cells, at.cells) += factors.error * factors.error * error;
    result.added.strays = byStray.topRows(at.cells) * swept.byStrays.topRows(at.cells).transpose() /
                          (factors.strays * factors.strays);
    if (added.strays.size() > 0) result.added.strays += byWall * added.strays * byWall.transpose();

    const VectorXd figureMeans = joint.mean.segment(at.figure, figures);
    const MatrixXd figuresBefore = joint.covariance.middleRows(at.figure, figures);
    result.step = stepBefore(at, joint, withAll);

    VectorXd outputs(at.outputs());
    outputs << swept.wall, swept.face;
    outputs += swept.byInputs * (inputs - reference) - swept.byStrays * strayed;
    joint.mean.head(at.cells) = outputs.head(at.cells);
    joint.mean.segment(at.face, at.faceCells) = outputs.tail(at.faceCells);
    putOutputs(at, withAll, own, joint);
    if (carry) {
        MatrixXd figureRows(figures, joint.mean.size() + figures);
        figureRows << joint.covariance.middleRows(at.figure, figures),
            figuresBefore.middleCols(at.figure, figures);
        MatrixXd strayRows = MatrixXd::Zero(at.strays(), joint.mean.size());
        strayRows.leftCols(at.cells) = byStray.topRows(at.cells).transpose();
        strayRows.middleCols(at.face, at.faceCells) = byStray.bottomRows(at.faceCells).transpose();
        append(at, figureMeans, figureRows, strayRows, variance, joint);
    }
    roundOval(bench, options, factors.error, at, swept.stock, std::exp(reference.tail(figures)[1]),
              joint);
    wander(bench, options, at, swept.stock, swept.face - before.face, joint);
    return result;
}

Belief pushed(const Bench& bench, const Belief& before, const SetUp& setUp,
              const LearningOptions& options, double errorFactor) {
    Joint joint{before.layout.tools(), before.layout.size() - before.layout.tools(), before.mean,
                before.covariance};
    pushJoint(bench, setUp, options, {errorFactor, 1}, {}, {}, {}, false, joint);
    return {before.layout, std::move(joint.mean), std::move(joint.covariance)};
}

} // namespace borewright
