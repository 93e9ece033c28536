// SPDX-License-Identifier: GPL-3.0-or-later
// Derivatives of balance and removal by running sums.
#include "core/honing/contact_carry.h"

#include <algorithm>

namespace borewright {
namespace {

constexpr std::size_t w = blockWidth;

void addUpRows(const double* rows, double scale, std::vector<Lane>& sum,
               std::vector<Lane>& moment) {
    for (std::size_t i = 0; i + 1 < sum.size(); ++i) {
        const Lane row = scale * lane(rows + i * w);
        sum[i + 1] = sum[i] + row;
        moment[i + 1] = moment[i] + static_cast<double>(i) * row;
    }
}

} // namespace

Carrier::Carrier(const Contact& contact, const Path& path)
    : contact_(contact)
    , path_(path)
    , runs_(contact)
    , tilts_(contact.stiffness >= 0)
    , xStep_(2 / (static_cast<double>(contact.stone - 1) + contact.topShare))
    , xAtNone_(1 - xStep_ * (static_cast<double>(contact.stone) - 0.5))
    , wallSum_(contact.wall + 1, Lane::Zero())
    , wallMoment_(wallSum_)
    , faceSum_(contact.stone + 1, Lane::Zero())
    , faceMoment_(faceSum_)
    , wallLevel_(contact.wall + 1)
    , wallSlope_(contact.wall + 1)
    , faceLevel_(contact.stone + 1)
    , faceSlope_(contact.stone + 1) {}

void Carrier::addUp(const double* state) {
    addUpRows(state, 0.5, wallSum_, wallMoment_);
    addUpRows(state + contact_.wall * w, 1, faceSum_, faceMoment_);
    for (auto* starts : {&wallLevel_, &wallSlope_, &faceLevel_, &faceSlope_})
        std::ranges::fill(*starts, Lane::Zero());
}

// The gap at the face's uppermost row; 0 where it does not touch.
Lane Carrier::top(const Place& at, const double* state) const {
    if (at.top > 0 || !(contact_.overlap[at.offset] > 0)) return Lane::Zero();
    return 0.5 * lane(state + at.wallRow() * w) + lane(state + contact_.wall * w);
}

Carrier::Turned Carrier::balanced(const DirectionBlock& block, std::size_t place,
                                  const double* state) const {
    const Place& at = contact_.places[place];
    const double topWeight = at.top == 0 ? contact_.weight[at.offset] : 0;
    Lane force = topWeight * top(at, state);
    Lane moment = contact_.x[0] * force;
    const auto start = static_cast<double>(at.start);
    for (std::size_t r = firstRun(place); r < runs_.touchesEnd[place]; ++r) {
        const TouchRun& run = runs_.touches[r];
        const auto wall = static_cast<std::size_t>(at.start + static_cast<long>(run.first));
        const std::size_t wallEnd = wall + (run.end - run.first);
        const Lane ofWall = wallSum_[wallEnd] - wallSum_[wall];
        const Lane gap = ofWall + faceSum_[run.end] - faceSum_[run.first];
        force += run.weight * gap;
        if (!tilts_) continue;
        const Lane byRow = wallMoment_[wallEnd] - wallMoment_[wall] - start * ofWall +
                           faceMoment_[run.end] - faceMoment_[run.first];
        moment += run.weight * (xAtNone_ * gap + xStep_ * byRow);
    }
    if (block.presses) {
        force += contact_.compliance * block.logCompliance;
        if (tilts_) moment += contact_.stiffness * at.seat.tilt * block.logLooseness;
    }
    if (!tilts_) return {force / at.seat.touching, Lane::Zero()};
    const double resist = at.seat.touchingXX + contact_.stiffness;
    const double det = at.seat.touching * resist - at.seat.touchingX * at.seat.touchingX;
    return {(resist / det) * force - (at.seat.touchingX / det) * moment,
            (at.seat.touching / det) * moment - (at.seat.touchingX / det) * force};
}

void Carrier::press(const DirectionBlock& block, std::size_t place, const double* state,
                    double* rate) {
    const Place& at = contact_.places[place];
    const Turned turned = balanced(block, place, state);
    const Lane advance = at.share * turned.advance;
    const Lane tilt = at.share * turned.tilt;
    const Lane level = advance + xAtNone_ * tilt;
    const Lane slope = xStep_ * tilt;
    const Lane levelByWall = level - static_cast<double>(at.start) * slope;
    for (std::size_t r = firstRun(place); r < runs_.touchesEnd[place]; ++r) {
        const TouchRun& run = runs_.touches[r];
        const auto wall = static_cast<std::size_t>(at.start + static_cast<long>(run.first));
        const std::size_t wallEnd = wall + (run.end - run.first);
        wallLevel_[wall] += levelByWall;
        wallLevel_[wallEnd] -= levelByWall;
        faceLevel_[run.first] += level;
        faceLevel_[run.end] -= level;
        if (!tilts_) continue;
        wallSlope_[wall] += slope;
        wallSlope_[wallEnd] -= slope;
        faceSlope_[run.first] += slope;
        faceSlope_[run.end] -= slope;
    }
    if (at.top > 0 || !(contact_.overlap[at.offset] > 0)) return;
    const Lane cut = advance + contact_.x[0] * tilt - at.share * top(at, state);
    lane(rate + contact_.wall * w) += cut;
    lane(rate + at.wallRow() * w) += contact_.topShare * cut;
}

// The share of the strokes spent here, and the overlap that counts as nominal, may move too.
void Carrier::pressByShare(const DirectionBlock& block, std::size_t place, double* rate) const {
    const Place& at = contact_.places[place];
    const Lane strokes = path_.byFrom[place] * block.from + path_.byTo[place] * block.to +
                         path_.byStrokes[place] * block.strokes + path_.byHeld[place] * block.held;
    const Lane byShare = strokes / contact_.compliance - at.share * block.logCompliance;
    double* wall = rate + at.wallRow() * w;
    double* face = rate + (contact_.wall + at.top) * w;
    for (std::size_t n = 0; n < at.count; ++n) {
        const Lane cut = contact_.overlap[at.offset + n] * byShare;
        lane(face + n * w) += cut;
        lane(wall + n * w) += at.top + n == 0 ? Lane(contact_.topShare * cut) : cut;
    }
}

void Carrier::gather(const double* state, double* rate) {
    const auto rows = [&](std::size_t first, std::size_t count, double scale,
                          const std::vector<Lane>& levels, const std::vector<Lane>& slopes) {
        Lane level = Lane::Zero(), slope = Lane::Zero();
        for (std::size_t i = 0; i < count; ++i) {
            level += levels[i];
            slope += slopes[i];
            const std::size_t row = first + i;
            lane(rate + row * w) += level + static_cast<double>(i) * slope -
                                    scale * runs_.stay[row] * lane(state + row * w);
        }
    };
    rows(0, contact_.wall, 0.5, wallLevel_, wallSlope_);
    rows(contact_.wall, contact_.stone, 1, faceLevel_, faceSlope_);
    // The stone moves down by a row a place: a wall's row meets ever higher rows of the face.
    const long start = contact_.places.front().start;
    for (const StayRun& run : runs_.wallStays) {
        const long beyond = static_cast<long>(run.row) - start + 1;
        const auto first = static_cast<std::size_t>(beyond - static_cast<long>(run.end));
        const auto end = static_cast<std::size_t>(beyond - static_cast<long>(run.first));
        lane(rate + run.row * w) -= run.share * (faceSum_[end] - faceSum_[first]);
    }
    for (const StayRun& run : runs_.faceStays) {
        const long at = start + static_cast<long>(run.row);
        const auto first = static_cast<std::size_t>(at + static_cast<long>(run.first));
        const auto end = static_cast<std::size_t>(at + static_cast<long>(run.end));
        lane(rate + (contact_.wall + run.row) * w) -= run.share * (wallSum_[end] - wallSum_[first]);
    }
}

void Carrier::scale(const DirectionBlock& block, double* rate) const {
    for (std::size_t i = 0; i < contact_.wall; ++i) {
        Lane faster = block.logRate;
        if (!block.hardness.empty()) faster -= lane(block.hardness.data() + i * w);
        lane(rate + i * w) = contact_.soft[i] * lane(rate + i * w) + contact_.rate[i] * faster;
    }
    const Lane faster = block.logRate + block.logWear;
    for (std::size_t k = contact_.wall; k < contact_.rows(); ++k)
        lane(rate + k * w) = contact_.wearRate * lane(rate + k * w) + contact_.rate[k] * faster;
}

void Carrier::rates(const DirectionBlock& block, const double* state, double* rate) {
    std::fill(rate, rate + contact_.rows() * w, 0.0);
    addUp(state);
    const bool shareMoves = block.movesPath || block.presses;
    for (std::size_t p = 0; p < contact_.places.size(); ++p) {
        const Place& at = contact_.places[p];
        if (!at.bears) continue;
        if (at.share != 0) press(block, p, state, rate);
        if (shareMoves) pressByShare(block, p, rate);
    }
    gather(state, rate);
    scale(block, rate);
}

} // namespace borewright
