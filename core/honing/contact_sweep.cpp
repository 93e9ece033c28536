// SPDX-License-Identifier: GPL-3.0-or-later
// The sweep over the positions of a stroke: balance, removal, wear; and their derivatives.
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

} // namespace

Sweep::Sweep(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
             const WallGround& ground, const Path& path, bool standsWhereNothingIsCut)
    : path_(path)
    , wall_(grid.cells)
    , stone_(stone.cells)
    , compliance_(std::exp(settings.logCompliance))
    , stiffness_(stiffnessOf(settings))
    , rate_(std::exp(settings.logRate))
    , wearRate_(std::exp(settings.logRate + settings.logWear) / 2)
    , topShare_(stone.topShare)
    , soft_(wall_, rate_)
    , x_(stone_)
    , gap_(stone_)
    , worn_(wall_ + stone_)
    , lastRate_(wall_ + stone_) {
    for (Eigen::Index i = 0; i < ground.hardness.size(); ++i)
        soft_[static_cast<std::size_t>(i)] *= std::exp(-ground.hardness[i]);
    // The uppermost row may be cut through: its middle lies lower.
    const double length = static_cast<double>(stone_ - 1) + topShare_;
    for (std::size_t k = 0; k < stone_; ++k) {
        const double below = static_cast<double>(stone_ - k) - 0.5;
        x_[k] = 1 - 2 * (k == 0 ? length - topShare_ / 2 : below) / length;
    }
    place(stone, ground, standsWhereNothingIsCut);
    double all = 0;
    for (const double strokes : path.strokes)
        all += strokes;
    stiffest_ = all * (*std::max_element(soft_.begin(), soft_.end()) / 2 + wearRate_) / compliance_;
}

void Sweep::place(const StoneOnGrid& stone, const WallGround& ground,
                  bool standsWhereNothingIsCut) {
    const double cell = 1 / (static_cast<double>(stone.cells - 1) + stone.topShare);
    const auto wall = static_cast<long>(wall_);
    places_.resize(path_.count());
    for (std::size_t p = 0; p < path_.count(); ++p) {
        Place& at = places_[p];
        const long start = path_.first + static_cast<long>(p) - static_cast<long>(stone_);
        at.top = static_cast<std::size_t>(std::max(0L, -start));
        at.wallStart = start + static_cast<long>(at.top);
        at.offset = weight_.size();
        if (!standsWhereNothingIsCut && path_.strokes[p] == 0) continue;
        for (std::size_t k = at.top; k < stone_ && start + static_cast<long>(k) < wall; ++k) {
            const long row = start + static_cast<long>(k);
            const double land = ground.land.size() > 0 ? ground.land[row] : 1;
            weight_.push_back(cell * (k == 0 ? stone.topShare : 1) * std::max(0.0, land));
            ++at.count;
        }
    }
    overlap_.resize(weight_.size());
    touching_.resize(weight_.size());
}

void Sweep::seatAll(const std::vector<double>& state) {
    const Seat* before = nullptr;
    for (Place& at : places_) {
        if (at.count == 0) continue;
        const double* wall = state.data() + at.wallStart;
        const double* face = state.data() + wall_ + at.top;
        for (std::size_t k = 0; k < at.count; ++k)
            gap_[k] = wall[k] / 2 + face[k];
        if (!at.seat.known && before) at.seat = *before;
        const Bearing bearing{at.count, weight_.data() + at.offset, gap_.data(),
                              x_.data() + at.top};
        double* overlap = overlap_.data() + at.offset;
        at.bears = settle(bearing, compliance_, stiffness_, at.seat, overlap);
        at.touches = 0;
        if (!at.bears) continue;
        before = &at.seat;
        for (std::size_t k = 0; k < at.count; ++k) {
            touching_[at.offset + at.touches] = static_cast<unsigned>(k);
            at.touches += overlap[k] > 0 ? 1 : 0;
        }
    }
}

void Sweep::rates(const std::vector<double>& state, std::vector<double>& rate) {
    seatAll(state);
    std::fill(worn_.begin(), worn_.end(), 0.0);
    for (std::size_t p = 0; p < places_.size(); ++p) {
        const Place& at = places_[p];
        if (!at.bears) continue;
        const double share = path_.strokes[p] / compliance_;
        const double* overlap = overlap_.data() + at.offset;
        double* wall = worn_.data() + at.wallStart;
        double* face = worn_.data() + wall_ + at.top;
        for (std::size_t k = 0; k < at.count; ++k) {
            wall[k] += share * overlap[k];
            face[k] += share * overlap[k];
        }
        if (at.top == 0 && at.count > 0) wall[0] -= (1 - topShare_) * share * overlap[0];
    }
    for (std::size_t i = 0; i < wall_; ++i)
        rate[i] = soft_[i] * worn_[i];
    for (std::size_t k = wall_; k < worn_.size(); ++k)
        rate[k] = wearRate_ * worn_[k];
    lastRate_ = rate;
}

double Sweep::fastest() const {
    const auto wallEnd = lastRate_.begin() + static_cast<std::ptrdiff_t>(wall_);
    return *std::max_element(lastRate_.begin(), wallEnd) / 2 +
           *std::max_element(wallEnd, lastRate_.end());
}

// do = da + x·dt − dg over the touching cells, where (da, dt) solve the balance's derivative
//     Σ weight·do = dκ,   Σ weight·x·do = −stiffness·dt − t·dstiffness.
void Sweep::pressBlock(const DirectionBlock& block, const Place& at, std::size_t position,
                       const double* state, double* rate) const {
    constexpr auto w = blockWidth;
    const double* wall = state + static_cast<std::size_t>(at.wallStart) * w;
    const double* face = state + (wall_ + at.top) * w;
    const double* x = x_.data() + at.top;
    const double* weight = weight_.data() + at.offset;
    const double* overlap = overlap_.data() + at.offset;
    const unsigned* touching = touching_.data() + at.offset;

    Lane force = Lane::Zero(), moment = Lane::Zero();
    for (std::size_t n = 0; n < at.touches; ++n) {
        const unsigned k = touching[n];
        const Lane gap = 0.5 * lane(wall + k * w) + lane(face + k * w);
        force += weight[k] * gap;
        moment += weight[k] * x[k] * gap;
    }
    if (block.presses) {
        force += compliance_ * block.logCompliance;
        if (stiffness_ >= 0) moment += stiffness_ * at.seat.tilt * block.logLooseness;
    }
    Lane advance, tilt = Lane::Zero();
    if (stiffness_ < 0) {
        advance = force / at.seat.touching;
    } else {
        const double resist = at.seat.touchingXX + stiffness_;
        const double det = at.seat.touching * resist - at.seat.touchingX * at.seat.touchingX;
        advance = (resist * force - at.seat.touchingX * moment) / det;
        tilt = (at.seat.touching * moment - at.seat.touchingX * force) / det;
    }
    const double share = path_.strokes[position] / compliance_;
    const bool shareMoves = block.movesPath || block.presses;
    Lane byShare = Lane::Zero();
    if (shareMoves)
        byShare =
            (path_.byFrom[position] * block.from + path_.byTo[position] * block.to +
             path_.byStrokes[position] * block.strokes + path_.byHeld[position] * block.held) /
                compliance_ -
            share * block.logCompliance;
    double* wallRate = rate + static_cast<std::size_t>(at.wallStart) * w;
    double* faceRate = rate + (wall_ + at.top) * w;
    advance *= share;
    tilt *= share;
    for (std::size_t n = 0; n < at.touches; ++n) {
        const unsigned k = touching[n];
        Lane cut = advance + x[k] * tilt - share * (0.5 * lane(wall + k * w) + lane(face + k * w));
        if (shareMoves) cut += overlap[k] * byShare;
        lane(faceRate + k * w) += cut;
        if (at.top + k == 0) cut *= topShare_;
        lane(wallRate + k * w) += cut;
    }
}

void Sweep::rates(const DirectionBlock& block, const double* state, double* rate) {
    constexpr auto w = blockWidth;
    std::fill(rate, rate + rows() * w, 0.0);
    for (std::size_t p = 0; p < places_.size(); ++p)
        if (places_[p].bears) pressBlock(block, places_[p], p, state, rate);
    for (std::size_t i = 0; i < wall_; ++i) {
        Lane faster = block.logRate;
        if (!block.hardness.empty()) faster -= lane(block.hardness.data() + i * w);
        lane(rate + i * w) = soft_[i] * lane(rate + i * w) + lastRate_[i] * faster;
    }
    const Lane faster = block.logRate + block.logWear;
    for (std::size_t k = wall_; k < rows(); ++k)
        lane(rate + k * w) = wearRate_ * lane(rate + k * w) + lastRate_[k] * faster;
}

} // namespace borewright
