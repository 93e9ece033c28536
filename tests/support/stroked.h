// SPDX-License-Identifier: GPL-3.0-or-later
// Walls and stones of known shape, stroked by the contact model. Invented.
#pragma once

#include "core/honing/contact.h"
#include "core/statistics/random.h"

#include <cmath>

namespace borewright::test {

using Eigen::Index;

// A bore of 100 mm with a stone of 74.6 mm, the uppermost cell of whose face is cut through.
struct Stroked {
    WallGrid grid = wallGrid(100);
    StoneOnGrid stone = stoneOnGrid(grid, 74.6, 20, 100);
    ContactSettings settings{0, std::log(20.0), -3.5, -2, true, 2, 0.3};
    WallGround ground;
    Stroking stroking{60, 100, 30, 0};
    WallAndFace before;

    Stroked() { flat(-200); }

    void flat(double size_um) {
        const auto cells = static_cast<Index>(grid.cells);
        before.diameter = Eigen::VectorXd::Constant(cells, size_um);
        before.face = Eigen::VectorXd::Zero(static_cast<Index>(stone.cells));
    }
    // A belly, a V at the closed end and a roughness of 1 µm; a face out of line by as much.
    void worn(std::uint64_t seed) {
        Random random(seed);
        for (Index i = 0; i < before.diameter.size(); ++i) {
            const double depth_mm = grid.middle_mm(static_cast<std::size_t>(i));
            before.diameter[i] = -200 + 30 * std::sin(depth_mm / 10) + random.normal();
            if (depth_mm > 80) before.diameter[i] -= 1.5 * (depth_mm - 80);
        }
        for (double& face : before.face)
            face = random.normal();
    }
    void rigid() { settings.logCompliance = std::log(0.5); }
    // So soft that every cell bears alike, whatever the wall's shape.
    void soft() { settings.logCompliance = std::log(1e7); }
    void neverWears() { settings.logWear = -40; }

    [[nodiscard]] WallAndFace after() const {
        WallAndFace state = before;
        hone(grid, stone, settings, ground, stroking, state);
        return state;
    }
    // Taken off the diameter, µm, cell by cell.
    [[nodiscard]] Eigen::VectorXd taken() const { return after().diameter - before.diameter; }
};

inline double spread(const Eigen::VectorXd& values) {
    return values.maxCoeff() - values.minCoeff();
}

} // namespace borewright::test
