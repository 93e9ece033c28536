// SPDX-License-Identifier: GPL-3.0-or-later
// Where things stand in what is believed of a bore, and how a depth looks at it.
#include "core/honing/belief.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

Eigen::Index asIndex(std::size_t value) {
    return static_cast<Eigen::Index>(value);
}

} // namespace

BeliefLayout::BeliefLayout(const Bench& bench)
    : cells(bench.grid.cells) {
    faceCells.reserve(bench.stones.size());
    for (const BenchStone& stone : bench.stones)
        faceCells.push_back(stone.grid.cells);
}

Eigen::Index BeliefLayout::wall(std::size_t cell) const {
    return asIndex(cell);
}

Eigen::Index BeliefLayout::oval(std::size_t cell) const {
    return asIndex(cells + cell);
}

Eigen::Index BeliefLayout::hardness(std::size_t cell) const {
    return asIndex(2 * cells + cell);
}

Eigen::Index BeliefLayout::tools() const {
    return asIndex(3 * cells);
}

Eigen::Index BeliefLayout::face(std::size_t stone, std::size_t cell) const {
    std::size_t place = 3 * cells;
    for (std::size_t before = 0; before < stone; ++before)
        place += faceCells[before] + toolFigures;
    return asIndex(place + cell);
}

Eigen::Index BeliefLayout::figure(std::size_t stone, ToolFigure figure) const {
    return face(stone, faceCells[stone]) + static_cast<Eigen::Index>(figure);
}

Eigen::Index BeliefLayout::size() const {
    return faceCells.empty() ? tools() : face(faceCells.size(), 0);
}

ContactSettings Belief::settings(std::size_t stone) const {
    ContactSettings settings;
    settings.logRate = mean[layout.figure(stone, ToolFigure::rate)];
    settings.logCompliance = mean[layout.figure(stone, ToolFigure::compliance)];
    settings.logWear = mean[layout.figure(stone, ToolFigure::wear)];
    settings.logLooseness = mean[layout.figure(stone, ToolFigure::looseness)];
    return settings;
}

Eigen::VectorXd Belief::wall() const {
    return mean.segment(layout.wall(0), asIndex(layout.cells));
}

Eigen::VectorXd Belief::face(std::size_t stone) const {
    return mean.segment(layout.face(stone, 0), asIndex(layout.faceCells[stone]));
}

Eigen::VectorXd Belief::hardness() const {
    return mean.segment(layout.hardness(0), asIndex(layout.cells));
}

Eigen::RowVectorXd lookRow(const Belief& belief, const WallGrid& grid, const Look& look) {
    Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero(belief.mean.size());
    const BetweenCells at = betweenCells(grid, look.depth_mm);
    const auto add = [&](std::size_t cell, double weight) {
        row[belief.layout.wall(cell)] += weight;
        row[belief.layout.oval(cell)] += weight * look.axis;
    };
    add(at.lower, 1 - at.share);
    if (at.share > 0) add(at.lower + 1, at.share);
    return row;
}

Expected expectedAt(const Belief& belief, const WallGrid& grid, const Look& look) {
    const Eigen::RowVectorXd row = lookRow(belief, grid, look);
    // Only wall and oval are looked at.
    const auto seen = asIndex(2 * grid.cells);
    const auto part = row.head(seen);
    const double variance = part * belief.covariance.topLeftCorner(seen, seen) * part.transpose();
    return {part.dot(belief.mean.head(seen)), std::sqrt(std::max(0.0, variance))};
}

} // namespace borewright
