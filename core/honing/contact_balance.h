// SPDX-License-Identifier: GPL-3.0-or-later
// The balance of a stone pressed on in one position.
#pragma once

#include <cstddef>

namespace borewright {

// What a stone's face meets, from its top down: the share of the force that an overlap carries
// there (0 where there is no wall), the gap, and the distance x from the stone's middle.
struct Bearing {
    std::size_t count = 0;
    const double* weight = nullptr;
    const double* gap = nullptr;
    const double* x = nullptr;
};

// Advance and tilt found, and the sums of weight·x^n over the cells that touch.
struct Seat {
    double advance = 0, tilt = 0;
    double touching = 0, touchingX = 0, touchingXX = 0;
    bool known = false; // advance and tilt are worth starting from
};

// Solves Σ weight·o = force and Σ weight·x·o = −stiffness·tilt with o = max(0, advance + tilt·x −
// gap), and writes o. These are the conditions of the least of the convex
// ½·Σ weight·o² + ½·stiffness·tilt² − force·advance; Newton's steps with a line search reach it in
// a finite number, one where the touching cells stay the same as at `seat`, which is where it
// starts. stiffness < 0 means that the stone does not tilt. False, with o = 0, where nothing bears.
bool settle(const Bearing& bearing, double force, double stiffness, Seat& seat, double* overlap);

} // namespace borewright
