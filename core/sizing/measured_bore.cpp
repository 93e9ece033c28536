// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/measured_bore.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace borewright {
namespace {

// The readings of one axis next to a depth: at it or above it, and at it or below it.
struct Neighbours {
    const MeasuredAt* above = nullptr;
    const MeasuredAt* below = nullptr;
};

Neighbours neighboursOf(const MeasuredBore& bore, Length depth, const std::string& axis) {
    Neighbours near;
    for (const MeasuredAt& one : bore.at) {
        if (one.axis != axis) continue;
        if (one.depth <= depth && (near.above == nullptr || one.depth > near.above->depth))
            near.above = &one;
        if (one.depth >= depth && (near.below == nullptr || one.depth < near.below->depth))
            near.below = &one;
    }
    return near;
}

// The larger; nothing where either is not known.
std::optional<Length> largerDoubt(const std::optional<Length>& a, const std::optional<Length>& b) {
    if (!a || !b) return std::nullopt;
    return std::max(*a, *b);
}

MeasuredAt between(const MeasuredAt& above, const MeasuredAt& below, Length depth) {
    const double share = static_cast<double>((depth - above.depth).picometres()) /
                         static_cast<double>((below.depth - above.depth).picometres());
    const double more_um = (below.diameter - above.diameter).in(Unit::micrometre)*share;
    MeasuredAt at = depth - above.depth <= below.depth - depth ? above : below; // the nearer's zone
    at.depth = depth;
    at.diameter = above.diameter + Length::nearest(more_um, Unit::micrometre);
    at.u = largerDoubt(above.u, below.u);
    return at;
}

std::optional<MeasuredAt> onAxis(const MeasuredBore& bore, Length depth, const std::string& axis) {
    const auto [above, below] = neighboursOf(bore, depth, axis);
    if (above != nullptr && below != nullptr && above->depth != below->depth)
        return between(*above, *below, depth);
    const MeasuredAt* only = above != nullptr ? above : below;
    if (only == nullptr) return std::nullopt;
    MeasuredAt at = *only;
    at.depth = depth;
    return at;
}

// What each axis that was read has at a depth, by axis.
std::vector<MeasuredAt> onEachAxis(const MeasuredBore& bore, Length depth) {
    std::set<std::string> axes;
    for (const MeasuredAt& one : bore.at)
        axes.insert(one.axis);
    std::vector<MeasuredAt> all;
    for (const std::string& axis : axes)
        all.push_back(*onAxis(bore, depth, axis));
    return all;
}

} // namespace

const MeasuredAt& largestOf(const MeasuredBore& bore) {
    return *std::ranges::max_element(bore.at, [](const MeasuredAt& a, const MeasuredAt& b) {
        return std::tie(a.diameter, b.depth, b.axis) < std::tie(b.diameter, a.depth, a.axis);
    });
}

const MeasuredAt& smallestOf(const MeasuredBore& bore) {
    return *std::ranges::min_element(bore.at, [](const MeasuredAt& a, const MeasuredAt& b) {
        return std::tie(a.diameter, a.depth, a.axis) < std::tie(b.diameter, b.depth, b.axis);
    });
}

std::optional<MeasuredAt> diameterAt(const MeasuredBore& bore, Length depth,
                                     const std::string& axis) {
    if (!axis.empty()) return onAxis(bore, depth, axis);
    const std::vector<MeasuredAt> all = onEachAxis(bore, depth);
    if (all.empty()) return std::nullopt;
    return *std::ranges::max_element(all, {}, &MeasuredAt::diameter);
}

std::optional<MeasuredAt> meanDiameterAt(const MeasuredBore& bore, Length depth) {
    const std::vector<MeasuredAt> all = onEachAxis(bore, depth);
    if (all.empty()) return std::nullopt;
    MeasuredAt at = all.front();
    std::vector<Length> diameters;
    for (const MeasuredAt& one : all) {
        diameters.push_back(one.diameter);
        at.u = largerDoubt(at.u, one.u);
    }
    at.diameter = mean(diameters);
    if (all.size() > 1) at.axis.clear();
    return at;
}

} // namespace borewright
