// SPDX-License-Identifier: GPL-3.0-or-later
// Where the stone stands during a stroking, and for how many strokes' worth.
#pragma once

#include "core/honing/bench.h"

#include <vector>

namespace borewright {

// Positions in which the stone's lower end stands on the edge of a cell, one cell apart. Uniform
// speed between the ends, half of `reversal_mm` at each of them, what is held at `to`; smeared over
// the positions by linear shares (hat functions), so that nothing jumps as an end moves. The
// derivatives are per millimetre and per stroke; where an end stands on a cell's edge, the mean of
// those to both sides, or the inner one at the end of the stone's reach.
struct Path {
    long first = 0; // the lower end stands at (first + p)·height
    std::vector<double> strokes;
    std::vector<double> byFrom, byTo, byStrokes, byHeld;
    [[nodiscard]] std::size_t count() const { return strokes.size(); }
};
Path pathOf(const WallGrid& grid, const StoneOnGrid& stone, double reversal_mm,
            const Stroking& stroking);

} // namespace borewright
