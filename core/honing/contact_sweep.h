// SPDX-License-Identifier: GPL-3.0-or-later
// How fast wall and face change while a window is stroked. The inner loop of the planning: nothing
// is allocated after the constructor.
#pragma once

#include "core/honing/contact.h"
#include "core/honing/contact_balance.h"
#include "core/honing/contact_path.h"

#include <vector>

namespace borewright {

// One position of the stone. Rows of the wall count from the open end, those of the face from its
// top down, so that the cells that meet lie in the same order.
struct Place {
    long start = 0;         // wall row beside the face's first, in the bore or not
    std::size_t top = 0;    // first row of the face that lies in the bore
    std::size_t count = 0;  // of rows that do
    std::size_t offset = 0; // of the first of them in `weight` and `overlap`
    double share = 0;       // strokes / compliance
    Seat seat;
    bool bears = false;
    [[nodiscard]] std::size_t wallRow() const {
        return static_cast<std::size_t>(start + static_cast<long>(top));
    }
};

// What the sweep found, for who derives it.
struct Contact {
    std::size_t wall = 0, stone = 0; // rows
    double compliance = 0;
    double stiffness = 0; // of the holder; < 0 = does not tilt
    double topShare = 1;
    double wearRate = 0;
    std::vector<double> soft; // rate · exp(−h) by row of the wall
    std::vector<double> x;    // by row of the face
    std::vector<Place> places;
    std::vector<double> weight, overlap; // by place and row
    std::vector<double> rate;            // of wall and face, a whole window's
    [[nodiscard]] std::size_t rows() const { return wall + stone; }
};

class Sweep {
public:
    // `whole`: also the positions where no stroke is spent, but might be.
    Sweep(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
          const WallGround& ground, const Path& path, bool whole);

    // d(wall, face)/d(share of the window) at a state: rows of the wall (diameter), then of the
    // face. Starts from the seats found before.
    const std::vector<double>& rates(const std::vector<double>& state);
    [[nodiscard]] const Contact& contact() const { return contact_; }
    // Of the gap, by the whole window: how fast at most; and what an overlap answers at most.
    [[nodiscard]] double fastest() const;
    [[nodiscard]] double stiffest() const { return stiffest_; }

private:
    void setPlaces(const StoneOnGrid& stone, const WallGround& ground, const Path& path,
                   bool whole);
    void seatAll(const std::vector<double>& state);

    Contact contact_;
    double stiffest_ = 0;
    std::vector<double> gap_;
};

} // namespace borewright
