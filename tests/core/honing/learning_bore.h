// SPDX-License-Identifier: GPL-3.0-or-later
// A bore honed by the contact model itself with figures that the learner is not told: what learning
// finds can then be held against them. Invented.
#pragma once

#include "core/honing/learning.h"
#include "core/statistics/random.h"

#include <algorithm>
#include <cmath>

namespace borewright::test {

struct TrueTool {
    ContactSettings settings;
    Eigen::VectorXd face;
};

// 100 mm; a full and a short rough stone of 75 and 25 mm.
inline Bench learningBench() {
    Bench bench;
    bench.grid = wallGrid(100);
    for (const double length : {75.0, 25.0}) {
        BenchStone stone;
        stone.grid = stoneOnGrid(bench.grid, length, length * 2 / 3, 98);
        stone.logRate = std::log(1.0);
        stone.logRateDoubt = 0.7;
        bench.stones.push_back(stone);
    }
    return bench;
}

class LearningBore {
public:
    LearningBore(const Bench& bench, std::uint64_t seed)
        : random(seed)
        , m_bench(bench) {
        const auto cells = static_cast<Eigen::Index>(bench.grid.cells);
        const double taper = 10 * random.normal(), belly = 8 * random.normal();
        const double phase = 6 * random.uniform();
        wall.resize(cells);
        for (Eigen::Index i = 0; i < cells; ++i) {
            const double x = 2 * static_cast<double>(i) / static_cast<double>(cells - 1) - 1;
            wall[i] = -250 + taper * x - belly * x * x + 2 * std::sin(9 * x + phase);
        }
        for (const BenchStone& stone : bench.stones) {
            TrueTool tool;
            tool.settings.logRate = stone.logRate + 0.6 * random.normal();
            tool.settings.logCompliance = 3 + 0.5 * random.normal();
            tool.face = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(stone.grid.cells));
            tools.push_back(tool);
        }
    }

    // Really honed, each window worth more or less by `scatter`.
    void hone(const SetUp& setUp, double scatter = 0.08) {
        TrueTool& tool = tools[setUp.stone];
        for (const Stroking& window : setUp.windows) {
            ContactSettings today = tool.settings;
            today.logRate += scatter * random.normal();
            WallAndFace state{wall, tool.face};
            borewright::hone(m_bench.grid, m_bench.stones[setUp.stone].grid, today,
                             {hardness, m_bench.land}, window, state);
            wall = state.diameter;
            tool.face = state.face;
        }
    }

    [[nodiscard]] double sizeAt(double depth_mm) const {
        const auto last = static_cast<double>(wall.size() - 1);
        const double place = std::clamp(depth_mm / m_bench.grid.height_mm - 0.5, 0.0, last);
        const auto cell = std::min(static_cast<Eigen::Index>(place), wall.size() - 2);
        const double share = place - static_cast<double>(cell);
        return (1 - share) * wall[cell] + share * wall[cell + 1];
    }

    std::vector<BoreReading> read(const std::vector<double>& depths_mm, double noise_um = 1) {
        std::vector<BoreReading> readings;
        for (const double depth : depths_mm)
            for (const double axis : {1.0, -1.0})
                readings.push_back({{depth, axis}, sizeAt(depth) + noise_um * random.normal(), 1});
        return readings;
    }

    Random random;
    Eigen::VectorXd wall;
    Eigen::VectorXd hardness; // empty = as the rest
    std::vector<TrueTool> tools;

private:
    Bench m_bench;
};

inline const std::vector<double>& sixDepths() {
    static const std::vector<double> depths{6, 23, 40, 57, 74, 91};
    return depths;
}

// Full strokes of the stone: fifteen seconds at a beat a second.
inline SetUp firstPass(const Bench& bench, std::size_t stone = 0, double strokes = 15) {
    const StoneOnGrid& grid = bench.stones[stone].grid;
    return {stone, {{grid.highest_mm, grid.lowest_mm, strokes, 0}}};
}

struct FigureFound {
    double mean = 0;
    double deviation = 0;
};
inline FigureFound figureFound(const HoneLearner& learner, std::size_t stone, ToolFigure figure,
                               std::size_t bore = 0) {
    const Belief belief = learner.belief(bore);
    const Eigen::Index at = belief.layout.figure(stone, figure);
    return {belief.mean[at], std::sqrt(belief.covariance(at, at))};
}

} // namespace borewright::test
