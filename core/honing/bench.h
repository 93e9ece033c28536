// SPDX-License-Identifier: GPL-3.0-or-later
// Bore, stone and stroke as plain numbers: what the contact, the learning and the planning of the
// hone speak of. Depths in millimetres from the open end; sizes in micrometres of the diameter
// beyond the finish size, so that what is to go counts as minus.
#pragma once

#include <cstddef>
#include <vector>

namespace borewright {

// The bore's wall cut into rings of equal height: cell i lies from i·height to (i + 1)·height.
struct WallGrid {
    double height_mm = 2; // of a cell; the bore's depth is a whole number of them
    std::size_t cells = 0;
    [[nodiscard]] double depth_mm() const { return height_mm * static_cast<double>(cells); }
    [[nodiscard]] double middle_mm(std::size_t cell) const {
        return height_mm * (static_cast<double>(cell) + 0.5);
    }
};
// A depth between the middles of two cells: linear between them, beyond the outermost as it is
// there.
struct BetweenCells {
    std::size_t lower = 0;
    double share = 0;         // of the next cell, 0 ≤ share < 1; 0 in the last cell
    template<typename Column> // a value a cell
    [[nodiscard]] double of(const Column& wall) const {
        const auto i = static_cast<std::ptrdiff_t>(lower);
        return share > 0 ? (1 - share) * wall[i] + share * wall[i + 1] : wall[i];
    }
};
BetweenCells betweenCells(const WallGrid& grid, double depth_mm);

// The coarsest grid with cells of at most `finest_mm` that fits the depth.
WallGrid wallGrid(double depth_mm, double finest_mm = 2);
// What the honing is reckoned on: with a border of cells where stones stop, `stop_mm` deep, as what
// a stone takes off ends sharply at its ends; finer cells show where windows meet (2 mm ones left
// steps of 10 µm there). An even number of them down to the stop, so that two and two make a
// coarser grid with the same border. The last cell may reach beyond the closed end.
WallGrid wallGridToStop(double depth_mm, double stop_mm, double finest_mm = 1);

// A stone beside that grid. Its face is cut into the same cells, counted from its lower end up; the
// last may be cut through (`topShare` of it is there).
struct StoneOnGrid {
    std::size_t cells = 0; // of the face
    double topShare = 1;   // 0 < topShare ≤ 1
    double length_mm = 0;
    double highest_mm = 0; // reach of its lower end in this bore
    double lowest_mm = 0;
};
StoneOnGrid stoneOnGrid(const WallGrid& grid, double length_mm, double highest_mm,
                        double lowest_mm);

// One stroking: the lower end of the stone travels between from and to.
struct Stroking {
    double from_mm = 0;
    double to_mm = 0; // ≥ from
    double strokes = 0;
    double held = 0; // standing at `to`, counted in strokes
};

} // namespace borewright
