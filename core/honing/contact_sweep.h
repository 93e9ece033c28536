// SPDX-License-Identifier: GPL-3.0-or-later
// How fast wall and face change while a window is stroked, and the derivatives of that. The inner
// loop of the planning: nothing is allocated after the constructor.
#pragma once

#include "core/honing/contact.h"
#include "core/honing/contact_balance.h"
#include "core/honing/contact_directions.h"
#include "core/honing/contact_path.h"

#include <vector>

namespace borewright {

// Rows of the wall first, from the open end, then those of the face, from its top down; so that in
// every position the cells that meet lie in the same order.
class Sweep {
public:
    Sweep(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
          const WallGround& ground, const Path& path, bool standsWhereNothingIsCut);

    [[nodiscard]] std::size_t wallRows() const { return wall_; }
    [[nodiscard]] std::size_t rows() const { return wall_ + stone_; }
    [[nodiscard]] double compliance() const { return compliance_; }
    // Of the gap, by the whole window: how fast at most; and what an overlap answers at most.
    [[nodiscard]] double fastest() const;
    [[nodiscard]] double stiffest() const { return stiffest_; }

    // d(diameter, face)/d(share of the window) at a state; remembers the seats found.
    void rates(const std::vector<double>& state, std::vector<double>& rate);
    // The same for a block of directions, at the state last asked for.
    void rates(const DirectionBlock& block, const double* state, double* rate);

private:
    struct Place {
        long wallStart = 0;     // wall row beside row `top` of the face
        std::size_t top = 0;    // first row of the face that lies in the bore
        std::size_t count = 0;  // of rows that do
        std::size_t offset = 0; // into weight_, overlap_, touching_
        std::size_t touches = 0;
        Seat seat;
        bool bears = false;
    };
    void place(const StoneOnGrid& stone, const WallGround& ground, bool standsWhereNothingIsCut);
    void seatAll(const std::vector<double>& state);
    void pressBlock(const DirectionBlock& block, const Place& at, std::size_t position,
                    const double* state, double* rate) const;

    const Path& path_;
    std::size_t wall_, stone_;
    double compliance_, stiffness_, stiffest_ = 0;
    double rate_, wearRate_, topShare_;
    std::vector<double> soft_; // rate · exp(−h)
    std::vector<double> x_, weight_, overlap_, gap_;
    std::vector<unsigned> touching_; // rows of the face that touch, counted from the place's top
    std::vector<double> worn_;       // Σ strokes·o/κ by row
    std::vector<double> lastRate_;
    std::vector<Place> places_;
};

} // namespace borewright
