// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/ring_lies.h"

#include "core/sizing/guarded.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>
#include <set>

namespace borewright {
namespace {

int axesOf(const MeasuredBore& bore) {
    std::set<std::string> axes;
    for (const MeasuredAt& at : bore.at)
        axes.insert(at.axis);
    return static_cast<int>(axes.size());
}

// Between ports nothing is known of the axis that they cut: the walls that are left count alone.
std::optional<LiesIn> wallsLeft(const MeasuredBore& bore, Length depth) {
    std::vector<Length> walls;
    std::optional<Length> u = Length();
    for (const MeasuredAt& at : bore.at) {
        if (at.depth != depth || at.zone != Zone::portBand) continue;
        walls.push_back(at.diameter);
        u = u && at.u ? std::optional(std::max(*u, *at.u)) : std::nullopt;
    }
    if (walls.empty()) return std::nullopt;
    return LiesIn{mean(walls), u, static_cast<int>(walls.size())};
}

} // namespace

bool inRingTravel(Zone zone) {
    return zone == Zone::ringTravel || zone == Zone::portBand || zone == Zone::unmapped;
}

std::optional<LiesIn> liesIn(const MeasuredBore& bore, Length depth) {
    if (auto walls = wallsLeft(bore, depth)) return walls;
    const auto at = meanDiameterAt(bore, depth);
    if (!at) return std::nullopt;
    return LiesIn{at->diameter, at->u, axesOf(bore)};
}

Length growthOfGap(Length diameter) {
    return Length::nearest(std::numbers::pi * diameter.in(Unit::millimetre), Unit::millimetre);
}

Result<LiesIn> measuredWhere(const MeasuredBore& measured, const Ring& ring,
                             const std::optional<DisplayUnits>& asked) {
    if (!ring.gap) return refuse(called(ring), "its gap is not given");
    if (ring.gap->value() <= Length())
        return refuse(called(ring), "it butts where it was measured: file it until a gap can be "
                                    "measured");
    if (!ring.measuredIn) return refuse(called(ring), "the bore it was measured in is not given");
    if (!ring.measuredAt) return refuse(called(ring), "the depth it was measured at is not given");
    const Length depth = ring.measuredAt->value();
    const auto [first, last] = std::ranges::minmax_element(measured.at, {}, &MeasuredAt::depth);
    const auto start = first == measured.at.end() ? std::nullopt : liesIn(measured, depth);
    if (!start)
        return refuse(called(ring), fmt::format("bore {}, in which it was measured, was not read",
                                                measured.bore));
    if (depth < first->depth || depth > last->depth) {
        const DisplayUnits units = asked.value_or(unitsOf(*ring.measuredAt));
        return refuse(called(ring),
                      fmt::format("it was measured at {}, but bore {} was read from {} to {} only",
                                  depthWithUnit(depth, units), measured.bore,
                                  depthWithUnit(first->depth, units),
                                  depthWithUnit(last->depth, units)));
    }
    return *start;
}

Result<Length> narrowestOf(const MeasuredBore& bore) {
    std::set<Length> depths;
    for (const MeasuredAt& at : bore.at)
        if (inRingTravel(at.zone)) depths.insert(at.depth);
    if (depths.empty())
        return refuse(fmt::format("bore {}", bore.bore), "nothing was read in the ring's travel");
    std::optional<Length> narrowest;
    for (const Length depth : depths) {
        const Length here = liesIn(bore, depth)->diameter;
        narrowest = std::min(narrowest.value_or(here), here);
    }
    return *narrowest;
}

} // namespace borewright
