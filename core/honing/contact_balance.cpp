// SPDX-License-Identifier: GPL-3.0-or-later
// Newton's method on a convex, piecewise quadratic function of advance and tilt.
#include "core/honing/contact_balance.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr int mostSteps = 60;
constexpr double goodEnough = 1e-12; // of the force
constexpr double rounding = 4e-15;   // of the advance

// Force, moment, energy and stiffness of the contact at one seat.
struct Sums {
    double force = 0, moment = 0, energy = 0;
    double w = 0, wx = 0, wxx = 0;
};

Sums press(const Bearing& b, double advance, double tilt, double* overlap) {
    Sums s;
    for (std::size_t k = 0; k < b.count; ++k) {
        const double o = std::max(0.0, advance + tilt * b.x[k] - b.gap[k]);
        overlap[k] = o;
        const double weight = o > 0 ? b.weight[k] : 0;
        const double force = weight * o;
        s.force += force;
        s.moment += force * b.x[k];
        s.energy += force * o;
        s.w += weight;
        s.wx += weight * b.x[k];
        s.wxx += weight * b.x[k] * b.x[k];
    }
    s.energy /= 2;
    return s;
}

// An advance that surely presses hard enough: as if one cell alone bore all. < 0 weight: nothing
// bears at all.
bool startHard(const Bearing& b, double force, Seat& seat) {
    bool any = false;
    double advance = 0;
    for (std::size_t k = 0; k < b.count; ++k) {
        if (!(b.weight[k] > 0)) continue;
        const double alone = b.gap[k] - seat.tilt * b.x[k] + force / b.weight[k];
        advance = any ? std::min(advance, alone) : alone;
        any = true;
    }
    if (any) seat.advance = advance;
    return any;
}

void clearMissing(const Bearing& b, double* overlap) {
    for (std::size_t k = 0; k < b.count; ++k)
        if (!(b.weight[k] > 0)) overlap[k] = 0;
}

} // namespace

bool settle(const Bearing& bearing, double force, double stiffness, Seat& seat, double* overlap) {
    const bool tilts = stiffness >= 0;
    if (!tilts) seat.tilt = 0;
    Sums s;
    if (seat.known) s = press(bearing, seat.advance, seat.tilt, overlap);
    if (!(s.w > 0)) {
        if (!startHard(bearing, force, seat)) {
            std::fill(overlap, overlap + bearing.count, 0.0);
            seat = {};
            return false;
        }
        s = press(bearing, seat.advance, seat.tilt, overlap);
    }
    for (int step = 0; step < mostSteps; ++step) {
        const double over = s.force - force;
        const double turn = tilts ? s.moment + stiffness * seat.tilt : 0;
        const double room = goodEnough * force + rounding * std::abs(seat.advance);
        if (std::abs(over) <= room && std::abs(turn) <= room) break;
        double advanceStep = -over / s.w;
        double tiltStep = 0;
        if (tilts) {
            const double resist = s.wxx + stiffness;
            const double det = s.w * resist - s.wx * s.wx;
            advanceStep = (-over * resist + turn * s.wx) / det;
            tiltStep = (-turn * s.w + over * s.wx) / det;
        }
        const double energy =
            s.energy + stiffness * seat.tilt * seat.tilt / 2 - force * seat.advance;
        const double slope = over * advanceStep + turn * tiltStep; // < 0
        for (double share = 1;; share /= 2) {
            const double advance = seat.advance + share * advanceStep;
            const double tilt = seat.tilt + share * tiltStep;
            s = press(bearing, advance, tilt, overlap);
            const double now =
                s.energy + (tilts ? stiffness * tilt * tilt / 2 : 0) - force * advance;
            // Without tilt a full step always nears the answer from above.
            const bool lower = now <= energy + 1e-4 * share * slope + 1e-12 * std::abs(energy);
            if ((s.w > 0 && (!tilts || lower)) || share < 1e-6) {
                seat.advance = advance;
                seat.tilt = tilt;
                break;
            }
        }
        if (!(s.w > 0)) {
            startHard(bearing, force, seat);
            s = press(bearing, seat.advance, seat.tilt, overlap);
        }
    }
    clearMissing(bearing, overlap);
    seat.touching = s.w;
    seat.touchingX = s.wx;
    seat.touchingXX = s.wxx;
    seat.known = true;
    return true;
}

} // namespace borewright
