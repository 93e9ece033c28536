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

// Of the contact at one seat: force, moment, the function to be made least, weight·x^n that touch.
struct Sums {
    double force = 0, moment = 0, energy = 0;
    double w = 0, wx = 0, wxx = 0;
};

class Balance {
public:
    Balance(const Bearing& bearing, double force, double stiffness, double* overlap)
        : b_(bearing)
        , force_(force)
        , tilts_(stiffness >= 0)
        , stiffness_(std::max(stiffness, 0.0))
        , overlap_(overlap) {}

    bool settle(Seat& seat) {
        if (!tilts_) seat.tilt = 0;
        if (seat.known) press(seat.advance, seat.tilt);
        if (!(sums_.w > 0) && !startHard(seat)) return false;
        for (int step = 0; step < mostSteps && !settled(seat); ++step) {
            searchAlong(seat, newtonStep());
            if (!(sums_.w > 0)) startHard(seat);
        }
        seat.touching = sums_.w;
        seat.touchingX = sums_.wx;
        seat.touchingXX = sums_.wxx;
        seat.known = true;
        return true;
    }

private:
    struct Step {
        double advance, tilt;
    };

    void press(double advance, double tilt) {
        Sums s;
        for (std::size_t k = 0; k < b_.count; ++k) {
            const double o = std::max(0.0, advance + tilt * b_.x[k] - b_.gap[k]);
            overlap_[k] = o;
            const double weight = o > 0 ? b_.weight[k] : 0;
            const double force = weight * o;
            s.force += force;
            s.moment += force * b_.x[k];
            s.energy += force * o;
            s.w += weight;
            s.wx += weight * b_.x[k];
            s.wxx += weight * b_.x[k] * b_.x[k];
        }
        s.energy = s.energy / 2 + stiffness_ * tilt * tilt / 2 - force_ * advance;
        sums_ = s;
    }

    // From an advance that surely presses hard enough: one at which some cell alone bears all.
    // False where no cell can bear.
    bool startHard(Seat& seat) {
        bool any = false;
        for (std::size_t k = 0; k < b_.count; ++k) {
            if (!(b_.weight[k] > 0)) continue;
            const double alone = b_.gap[k] - seat.tilt * b_.x[k] + force_ / b_.weight[k];
            seat.advance = any ? std::min(seat.advance, alone) : alone;
            any = true;
        }
        if (any) press(seat.advance, seat.tilt);
        return any;
    }

    // Leaves what is out of balance in over_ and turn_.
    bool settled(const Seat& seat) {
        over_ = sums_.force - force_;
        turn_ = tilts_ ? sums_.moment + stiffness_ * seat.tilt : 0;
        const double room = goodEnough * force_ + rounding * std::abs(seat.advance);
        return std::abs(over_) <= room && std::abs(turn_) <= room;
    }

    [[nodiscard]] Step newtonStep() const {
        if (!tilts_) return {-over_ / sums_.w, 0};
        const double resist = sums_.wxx + stiffness_;
        const double det = sums_.w * resist - sums_.wx * sums_.wx;
        return {(-over_ * resist + turn_ * sums_.wx) / det,
                (-turn_ * sums_.w + over_ * sums_.wx) / det};
    }

    // Without tilt a full step always nears the answer from above, and is taken.
    void searchAlong(Seat& seat, const Step& step) {
        const double before = sums_.energy;
        const double room = 1e-12 * std::abs(before);
        const double slope = over_ * step.advance + turn_ * step.tilt; // < 0
        const Seat from = seat;
        for (double share = 1; share > 1e-6; share /= 2) {
            seat.advance = from.advance + share * step.advance;
            seat.tilt = from.tilt + share * step.tilt;
            press(seat.advance, seat.tilt);
            const bool lower = sums_.energy <= before + 1e-4 * share * slope + room;
            if (sums_.w > 0 && (lower || !tilts_)) return;
        }
    }

    const Bearing& b_;
    double force_;
    bool tilts_;
    double stiffness_;
    double* overlap_;
    Sums sums_;
    double over_ = 0, turn_ = 0;
};

} // namespace

bool settle(const Bearing& bearing, double force, double stiffness, Seat& seat, double* overlap) {
    if (!Balance(bearing, force, stiffness, overlap).settle(seat)) {
        std::fill(overlap, overlap + bearing.count, 0.0);
        seat = {};
        return false;
    }
    for (std::size_t k = 0; k < bearing.count; ++k)
        if (!(bearing.weight[k] > 0)) overlap[k] = 0;
    return true;
}

} // namespace borewright
