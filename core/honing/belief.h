// SPDX-License-Identifier: GPL-3.0-or-later
// What is believed of a bore and of the tools that cut it, at one moment: a Gaussian with its full
// covariance over
//     wall       D  mean diameter of the two axes in each cell of the grid (µm beyond finish size)
//     oval       v  half the difference of the axes there: first axis D + v, second D − v
//     hardness   h  of the wall in each cell (contact.h)
// and for each stone
//     face       f  what each cell of its face has worn (µm, radial)
//     ln rate, ln compliance, ln wear, ln looseness
// in this order.
#pragma once

#include "core/honing/contact.h"

#include <Eigen/Core>

#include <cstddef>
#include <vector>

namespace borewright {

// A stone of the bench as learning and planning see it.
struct BenchStone {
    StoneOnGrid grid;
    bool finish = false;
    // What is known of its rate before anything was measured: ln µm a stroke, standard deviation.
    double logRate = 0;
    double logRateDoubt = 1;
    bool proven = false; // that prior rests on passes measured elsewhere
};

// One bore with the stones at hand. Stones keep their places for the whole log.
struct Bench {
    WallGrid grid;
    Eigen::VectorXd land; // share of the turn with wall, a cell each; empty = 1
    std::vector<BenchStone> stones;
};

enum class ToolFigure { rate, compliance, wear, looseness }; // natural logarithms, in this order
inline constexpr std::size_t toolFigures = 4;

// Where everything stands in the vector.
struct BeliefLayout {
    std::size_t cells = 0;
    std::vector<std::size_t> faceCells; // by stone

    explicit BeliefLayout(const Bench& bench);
    BeliefLayout() = default;
    [[nodiscard]] Eigen::Index wall(std::size_t cell) const;
    [[nodiscard]] Eigen::Index oval(std::size_t cell) const;
    [[nodiscard]] Eigen::Index hardness(std::size_t cell) const;
    [[nodiscard]] Eigen::Index tools() const; // first place of the tools, = places of the bore
    [[nodiscard]] Eigen::Index face(std::size_t stone, std::size_t cell) const;
    [[nodiscard]] Eigen::Index figure(std::size_t stone, ToolFigure figure) const;
    [[nodiscard]] Eigen::Index size() const;
};

struct Belief {
    BeliefLayout layout;
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;

    [[nodiscard]] ContactSettings settings(std::size_t stone) const; // at the mean
    [[nodiscard]] Eigen::VectorXd wall() const;
    [[nodiscard]] Eigen::VectorXd face(std::size_t stone) const;
    [[nodiscard]] Eigen::VectorXd hardness() const;
};

// The diameter at a depth on an axis as a row over the vector: linear between cell middles.
// `axis` +1 = first axis, −1 = second, 0 = mean of both; other axes as their angle says, cos 2φ.
struct Look {
    double depth_mm = 0;
    double axis = 0;
};
Eigen::RowVectorXd lookRow(const Belief& belief, const WallGrid& grid, const Look& look);

// What is expected there: mean and standard deviation, µm.
struct Expected {
    double mean_um = 0;
    double deviation_um = 0;
};
Expected expectedAt(const Belief& belief, const WallGrid& grid, const Look& look);

// One set-up: a stone and its windows, in the order of the work.
struct SetUp {
    std::size_t stone = 0;
    std::vector<Stroking> windows;
};

} // namespace borewright
