// SPDX-License-Identifier: GPL-3.0-or-later
// The sweep over the positions of a stroke: balance, removal, wear.
#include "core/honing/contact_sweep.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

// Looser than this is as good as free, and keeps the balance well defined.
constexpr double loosest = 7; // ln τ

double stiffnessOf(const ContactSettings& settings) {
    return settings.tilts ? 1 / (3 * std::exp(std::min(settings.logLooseness, loosest))) : -1;
}

// The uppermost row may be cut through: its middle lies lower.
std::vector<double> distances(const StoneOnGrid& stone) {
    const double length = static_cast<double>(stone.cells - 1) + stone.topShare;
    std::vector<double> x(stone.cells);
    for (std::size_t k = 0; k < stone.cells; ++k)
        x[k] = 1 - 2 * (static_cast<double>(stone.cells - k) - 0.5) / length;
    x[0] = -1 + stone.topShare / length;
    return x;
}

} // namespace

Sweep::Sweep(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
             const WallGround& ground, const Path& path, bool whole)
    : gap_(stone.cells) {
    contact_.wall = grid.cells;
    contact_.stone = stone.cells;
    contact_.compliance = std::exp(settings.logCompliance);
    contact_.stiffness = stiffnessOf(settings);
    contact_.topShare = stone.topShare;
    contact_.wearRate = std::exp(settings.logRate + settings.logWear) / 2;
    contact_.soft.assign(grid.cells, std::exp(settings.logRate));
    for (Eigen::Index i = 0; i < ground.hardness.size(); ++i)
        contact_.soft[static_cast<std::size_t>(i)] *= std::exp(-ground.hardness[i]);
    contact_.x = distances(stone);
    contact_.rate.resize(contact_.rows());
    setPlaces(stone, ground, path, whole);
    double shares = 0;
    for (const Place& at : contact_.places)
        shares += at.share;
    stiffest_ = shares * (*std::ranges::max_element(contact_.soft) / 2 + contact_.wearRate);
}

void Sweep::setPlaces(const StoneOnGrid& stone, const WallGround& ground, const Path& path,
                      bool whole) {
    const double cell = 1 / (static_cast<double>(stone.cells - 1) + stone.topShare);
    const auto wall = static_cast<long>(contact_.wall);
    contact_.places.resize(path.count());
    for (std::size_t p = 0; p < path.count(); ++p) {
        Place& at = contact_.places[p];
        at.start = path.first + static_cast<long>(p) - static_cast<long>(stone.cells);
        at.top = static_cast<std::size_t>(std::max(0L, -at.start));
        at.offset = contact_.weight.size();
        at.share = path.strokes[p] / contact_.compliance;
        if (!whole && path.strokes[p] == 0) continue;
        for (std::size_t k = at.top; k < stone.cells; ++k) {
            const long row = at.start + static_cast<long>(k);
            if (row >= wall) break;
            const double land = ground.land.size() > 0 ? ground.land[row] : 1;
            contact_.weight.push_back(cell * (k == 0 ? stone.topShare : 1) * std::max(0.0, land));
            ++at.count;
        }
    }
    contact_.overlap.resize(contact_.weight.size());
}

void Sweep::seatAll(const std::vector<double>& state) {
    const Seat* before = nullptr;
    for (Place& at : contact_.places) {
        if (at.count == 0) continue;
        const double* wall = state.data() + at.wallRow();
        const double* face = state.data() + contact_.wall + at.top;
        for (std::size_t k = 0; k < at.count; ++k)
            gap_[k] = wall[k] / 2 + face[k];
        if (!at.seat.known && before) at.seat = *before;
        const Bearing bearing{at.count, contact_.weight.data() + at.offset, gap_.data(),
                              contact_.x.data() + at.top};
        at.bears = settle(bearing, contact_.compliance, contact_.stiffness, at.seat,
                          contact_.overlap.data() + at.offset);
        if (at.bears) before = &at.seat;
    }
}

const std::vector<double>& Sweep::rates(const std::vector<double>& state) {
    seatAll(state);
    std::vector<double>& rate = contact_.rate;
    std::ranges::fill(rate, 0.0);
    for (const Place& at : contact_.places) {
        if (!at.bears || at.share == 0) continue;
        const double* overlap = contact_.overlap.data() + at.offset;
        double* wall = rate.data() + at.wallRow();
        double* face = rate.data() + contact_.wall + at.top;
        for (std::size_t k = 0; k < at.count; ++k) {
            wall[k] += at.share * overlap[k];
            face[k] += at.share * overlap[k];
        }
        if (at.top == 0) wall[0] -= (1 - contact_.topShare) * at.share * overlap[0];
    }
    for (std::size_t i = 0; i < contact_.wall; ++i)
        rate[i] *= contact_.soft[i];
    for (std::size_t k = contact_.wall; k < rate.size(); ++k)
        rate[k] *= contact_.wearRate;
    return rate;
}

double Sweep::fastest() const {
    const auto wallEnd = contact_.rate.begin() + static_cast<std::ptrdiff_t>(contact_.wall);
    return *std::max_element(contact_.rate.begin(), wallEnd) / 2 +
           *std::max_element(wallEnd, contact_.rate.end());
}

} // namespace borewright
