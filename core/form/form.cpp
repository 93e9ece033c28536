// SPDX-License-Identifier: GPL-3.0-or-later
// Method: largest and smallest of exact two-point diameters; no fitting, no rounding. A strict
// comparison keeps the first of equals, and the diameters are walked from the open end.
#include "core/form/form.h"

#include <algorithm>
#include <tuple>

namespace borewright {
namespace {

using AxisOrder = std::vector<std::string>;

std::size_t rank(const AxisOrder& order, const std::string& axis) {
    return static_cast<std::size_t>(std::ranges::find(order, axis) - order.begin());
}

std::vector<Diameter> walked(std::vector<Diameter> diameters, const AxisOrder& order) {
    std::ranges::stable_sort(
        diameters, {}, [&](const Diameter& d) { return std::tuple(d.depth, rank(order, d.axis)); });
    return diameters;
}

// `onAxis` by rising depth, at least two.
AxisTaper taperOf(const std::vector<Diameter>& onAxis, TaperRule rule) {
    const Diameter* largest = &onAxis.front();
    const Diameter* smallest = &onAxis.front();
    for (const Diameter& d : onAxis) {
        if (d.size > largest->size) largest = &d;
        if (d.size < smallest->size) smallest = &d;
    }
    AxisTaper taper;
    taper.axis = onAxis.front().axis;
    taper.lead = onAxis.back().size - onAxis.front().size;
    taper.largestAt = largest->depth;
    taper.smallestAt = smallest->depth;
    taper.taper =
        rule == TaperRule::endToEnd ? taper.lead.magnitude() : largest->size - smallest->size;
    return taper;
}

std::vector<AxisTaper> tapersOf(const std::vector<Diameter>& diameters, const AxisOrder& order,
                                TaperRule rule) {
    std::map<std::size_t, std::vector<Diameter>> axes;
    for (const Diameter& d : diameters)
        axes[rank(order, d.axis)].push_back(d);
    std::vector<AxisTaper> tapers;
    for (const auto& [axisRank, onAxis] : axes)
        if (onAxis.size() >= 2) tapers.push_back(taperOf(onAxis, rule));
    return tapers;
}

std::optional<BoreForm::OutOfRound> outOfRoundOf(const std::vector<Diameter>& diameters) {
    std::optional<BoreForm::OutOfRound> worst;
    for (auto begin = diameters.begin(); begin != diameters.end();) {
        const auto end = std::find_if(begin, diameters.end(),
                                      [&](const Diameter& d) { return d.depth != begin->depth; });
        if (end - begin >= 2) {
            const auto [least, most] = std::minmax_element(
                begin, end, [](const Diameter& a, const Diameter& b) { return a.size < b.size; });
            const Length value = most->size - least->size;
            if (!worst || value > worst->value) worst = {value, begin->depth};
        }
        begin = end;
    }
    return worst;
}

// Mean over the axes read at both the topmost and the lowest depth of lowest less topmost.
std::optional<Length> leadOf(const std::vector<Diameter>& diameters) {
    const Length top = diameters.front().depth;
    const Length bottom = diameters.back().depth;
    if (top == bottom) return std::nullopt;
    std::vector<Length> leads;
    for (const Diameter& low : diameters) {
        if (low.depth != bottom) continue;
        for (const Diameter& high : diameters)
            if (high.depth == top && high.axis == low.axis) leads.push_back(low.size - high.size);
    }
    if (leads.empty()) return std::nullopt;
    return mean(leads);
}

} // namespace

std::optional<BoreForm> formOf(const std::vector<Diameter>& unordered, const AxisOrder& axisOrder,
                               TaperRule rule) {
    if (unordered.empty()) return std::nullopt;
    const std::vector<Diameter> diameters = walked(unordered, axisOrder);
    const auto extreme = [](const Diameter& d) { return Extreme{d.size, d.depth, d.axis}; };
    BoreForm form{extreme(diameters.front()), extreme(diameters.front()), {}, {}, {}, {}, {}};
    std::vector<Length> sizes;
    for (const Diameter& d : diameters) {
        sizes.push_back(d.size);
        if (d.size > form.largest.value) form.largest = extreme(d);
        if (d.size < form.smallest.value) form.smallest = extreme(d);
    }
    form.mean = mean(sizes);
    form.outOfRound = outOfRoundOf(diameters);
    form.tapers = tapersOf(diameters, axisOrder, rule);
    for (const AxisTaper& taper : form.tapers)
        if (!form.worstTaper || taper.taper > form.worstTaper->taper) form.worstTaper = taper;
    form.lead = leadOf(diameters);
    return form;
}

std::optional<Length> straightness(const std::vector<Diameter>& diameters) {
    std::map<std::string, std::vector<Length>> axes;
    for (const Diameter& d : diameters)
        axes[d.axis].push_back(d.size);
    std::optional<Length> worst;
    for (const auto& [axis, sizes] : axes) {
        if (sizes.size() < 2) continue;
        const auto [least, most] = std::ranges::minmax_element(sizes);
        const Length spread = *most - *least;
        worst = std::max(worst.value_or(spread), spread);
    }
    return worst;
}

} // namespace borewright
