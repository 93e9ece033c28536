// SPDX-License-Identifier: GPL-3.0-or-later
// Unbroken runs of cells that touch, so that sums over them become differences of running sums.
#pragma once

#include "core/honing/contact_sweep.h"

#include <vector>

namespace borewright {

// At one place, rows first … end − 1 of the face touch and bear alike. The face's uppermost row,
// which may be cut through, is in none of them.
struct TouchRun {
    std::size_t first = 0, end = 0;
    double weight = 0;
};

// One row of the wall (or face) touches at the places first … end − 1, with the same share of the
// strokes at each.
struct StayRun {
    std::size_t row = 0;
    std::size_t first = 0, end = 0;
    double share = 0;
};

class ContactRuns {
public:
    explicit ContactRuns(const Contact& contact);
    // Anew from the overlaps that the sweep found last; no allocation once it has seen the most.
    void find();

    std::vector<TouchRun> touches;
    std::vector<std::size_t> touchesEnd; // by place
    std::vector<StayRun> wallStays, faceStays;
    std::vector<double> stay; // Σ of shares by row, wall then face

private:
    void findAt(std::size_t place);

    const Contact& contact_;
    // By row, wall then face: the run that reached the last place, counted from 1 on.
    struct Open {
        std::size_t run = 0, end = 0;
    };
    std::vector<Open> open_;
};

} // namespace borewright
