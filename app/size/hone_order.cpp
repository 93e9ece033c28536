// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/hone_order.h"

#include <algorithm>

namespace borewright {
namespace {

bool hasFinishSet(const std::vector<LimitSet>& sets, Length oversize) {
    return std::ranges::any_of(sets, [&](const LimitSet& set) {
        return set.purpose == LimitPurpose::finish && set.oversize &&
               set.oversize->value() == oversize;
    });
}

std::string nameOf(const Offer& offer) {
    if (!offer.oversize) return offer.name;
    return *offer.oversize == Length() ? "standard size" : offer.name + " over";
}

Limits limitsOf(const OfferedBore& bore, const DisplayUnits& units) {
    Limits limits;
    if (bore.lower) limits.sizeLower = typedFrom(*bore.lower, units.size);
    if (bore.upper) limits.sizeUpper = typedFrom(*bore.upper, units.size);
    return limits;
}

// Finish limits from a size on offer; nothing where none of its bores has limits.
std::optional<LimitSet> finishSetFor(const Workbook& workbook, const Offer& offer,
                                     const std::vector<int>& bores, const DisplayUnits& units) {
    const auto size = std::ranges::find_if(workbook.sizing.sizes, [&](const SizeOnOffer& each) {
        return each.oversize.value() == offer.oversize;
    });
    if (size == workbook.sizing.sizes.end()) return std::nullopt;
    LimitSet set;
    set.id = freshLimitSetId(workbook);
    set.name = nameOf(offer);
    set.purpose = LimitPurpose::finish;
    set.oversize = size->oversize;
    bool any = false;
    for (std::size_t b = 0; b < offer.bores.size() && b < bores.size(); ++b) {
        if (!offer.bores[b] || (!offer.bores[b]->lower && !offer.bores[b]->upper)) continue;
        const Limits limits = limitsOf(*offer.bores[b], units);
        if (!std::exchange(any, true)) set.limits = limits;
        // Bores of another standard size have limits of their own.
        if (!(limits == set.limits)) set.perBore[bores[b]] = limits;
    }
    if (!any) return std::nullopt;
    return set;
}

} // namespace

std::optional<HoneOrder> honeOrder(const Workbook& workbook, const Results& results,
                                   const DisplayUnits& units) {
    const SizingResult& sizing = results.sizing;
    const bool own = workbook.sizing.ownSizes;
    HoneOrder order;
    std::vector<std::size_t> places;
    if (own) {
        order.targets = ownTargetsOf(sizing, units);
        order.what = "each bore its own size";
        for (const auto& place : sizing.choice.own)
            if (place) places.push_back(*place);
    } else if (sizing.choice.chosen) {
        order.targets = targetsOf(sizing, *sizing.choice.chosen, units);
        places.push_back(*sizing.choice.chosen);
        order.what = nameOf(sizing.choice.offers[places.front()].offer);
    }
    if (order.targets.empty()) return std::nullopt;
    // Grows by a set at a time, for the next free id; readings are not needed for that.
    Workbook made;
    made.sizing = workbook.sizing;
    made.limitSets = workbook.limitSets;
    for (const std::size_t place : places) {
        const Offer& offer = sizing.choice.offers[place].offer;
        if (!offer.oversize || hasFinishSet(made.limitSets, *offer.oversize)) continue;
        if (auto set = finishSetFor(made, offer, sizing.bores, units))
            made.limitSets.push_back(std::move(*set));
    }
    EditGroup group;
    group.edits.emplace_back(SetTargets{order.targets});
    if (made.limitSets.size() != workbook.limitSets.size())
        group.edits.emplace_back(SetLimitSets{made.limitSets});
    order.edit = std::move(group);
    return order;
}

bool sameAim(const FinishTargets& one, const FinishTargets& other) {
    const auto value = [](const std::optional<TypedLength>& length) {
        return length ? std::optional(length->value()) : std::nullopt;
    };
    return std::ranges::equal(one, other, [&](const auto& a, const auto& b) {
        return a.first == b.first && a.second.size.value() == b.second.size.value() &&
               value(a.second.lower) == value(b.second.lower) &&
               value(a.second.upper) == value(b.second.upper);
    });
}

} // namespace borewright
