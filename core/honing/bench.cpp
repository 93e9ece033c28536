// SPDX-License-Identifier: GPL-3.0-or-later
// Bore and stone cut into cells.
#include "core/honing/bench.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

// So much more than a whole number of cells is rounding.
constexpr double rounding = 1e-9;

double wholeCells(double cells) {
    return std::max(1.0, std::ceil(cells - rounding));
}

} // namespace

BetweenCells betweenCells(const WallGrid& grid, double depth_mm) {
    const double place =
        std::clamp(depth_mm / grid.height_mm - 0.5, 0.0, static_cast<double>(grid.cells) - 1);
    const double lower = std::floor(place);
    return {static_cast<std::size_t>(lower), place - lower};
}

WallGrid wallGrid(double depth_mm, double finest_mm) {
    const double cells = wholeCells(depth_mm / finest_mm);
    return {depth_mm / cells, static_cast<std::size_t>(cells)};
}

WallGrid wallGridToStop(double depth_mm, double stop_mm, double finest_mm) {
    if (!(stop_mm > 0) || stop_mm > depth_mm) return wallGrid(depth_mm, finest_mm);
    WallGrid grid = wallGrid(stop_mm, 2 * finest_mm);
    grid.height_mm /= 2;
    grid.cells = static_cast<std::size_t>(wholeCells(depth_mm / grid.height_mm));
    return grid;
}

StoneOnGrid stoneOnGrid(const WallGrid& grid, double length_mm, double highest_mm,
                        double lowest_mm) {
    const double length = length_mm / grid.height_mm;
    const double cells = wholeCells(length);
    return {static_cast<std::size_t>(cells), std::clamp(length - (cells - 1), rounding, 1.0),
            length_mm, std::min(highest_mm, lowest_mm), lowest_mm};
}

} // namespace borewright
