// SPDX-License-Identifier: GPL-3.0-or-later
// Columns of matrices into blocks of eight and back.
#include "core/honing/contact_directions.h"

#include <algorithm>

namespace borewright {
namespace {

using Eigen::Index;

constexpr auto width = static_cast<Index>(blockWidth);

Lane laneOf(const Eigen::RowVectorXd& row, Index first, Index count) {
    Lane lane = Lane::Zero();
    if (row.size() > 0) lane.head(count) = row.segment(first, count).transpose().array();
    return lane;
}

bool allZero(const std::vector<double>& values) {
    return std::ranges::all_of(values, [](double value) { return value == 0; });
}

bool any(const Lane& lane) {
    return (lane != 0).any();
}

} // namespace

std::vector<DirectionBlock> blocksOf(const Directions& d) {
    const Index wall = d.diameter.rows();
    const Index stone = d.face.rows();
    std::vector<DirectionBlock> blocks(static_cast<std::size_t>((d.count() + width - 1) / width));
    Index first = 0;
    for (DirectionBlock& block : blocks) {
        const Index count = std::min(width, d.count() - first);
        block.state.assign(static_cast<std::size_t>((wall + stone) * width), 0);
        if (d.hardness.size() > 0) block.hardness.assign(static_cast<std::size_t>(wall * width), 0);
        for (Index c = 0; c < count; ++c) {
            double* to = block.state.data() + c;
            for (Index i = 0; i < wall; ++i, to += width)
                *to = d.diameter(i, first + c);
            for (Index j = stone; j-- > 0; to += width)
                *to = d.face(j, first + c);
            if (d.hardness.size() == 0) continue;
            double* hard = block.hardness.data() + c;
            for (Index i = 0; i < wall; ++i, hard += width)
                *hard = d.hardness(i, first + c);
        }
        block.logRate = laneOf(d.logRate, first, count);
        block.logCompliance = laneOf(d.logCompliance, first, count);
        block.logWear = laneOf(d.logWear, first, count);
        block.logLooseness = laneOf(d.logLooseness, first, count);
        block.from = laneOf(d.from, first, count);
        block.to = laneOf(d.to, first, count);
        block.strokes = laneOf(d.strokes, first, count);
        block.held = laneOf(d.held, first, count);
        block.movesPath = any(block.from) || any(block.to) || any(block.strokes) || any(block.held);
        block.presses = any(block.logCompliance) || any(block.logLooseness);
        block.stands = !block.movesPath && !block.presses && !any(block.logRate) &&
                       !any(block.logWear) && allZero(block.state) && allZero(block.hardness);
        first += count;
    }
    return blocks;
}

void takeBack(const std::vector<DirectionBlock>& blocks, Directions& d) {
    const Index wall = d.diameter.rows();
    const Index stone = d.face.rows();
    Index first = 0;
    for (const DirectionBlock& block : blocks) {
        const Index count = std::min(width, d.count() - first);
        for (Index c = 0; c < count; ++c) {
            const double* from = block.state.data() + c;
            for (Index i = 0; i < wall; ++i, from += width)
                d.diameter(i, first + c) = *from;
            for (Index j = stone; j-- > 0; from += width)
                d.face(j, first + c) = *from;
        }
        first += count;
    }
}

} // namespace borewright
