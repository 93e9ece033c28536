// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/size_offers.h"

#include "core/sizing/clearance.h"

#include <algorithm>

namespace borewright {
namespace {

std::optional<Length> valueOf(const std::optional<TypedLength>& typed) {
    return typed ? std::optional(typed->value()) : std::nullopt;
}

const LimitSet* finishSetWith(const Workbook& workbook, Length oversize) {
    const auto found = std::ranges::find_if(workbook.limitSets, [&](const LimitSet& set) {
        return set.purpose == LimitPurpose::finish && set.oversize &&
               set.oversize->value() == oversize;
    });
    return found == workbook.limitSets.end() ? nullptr : &*found;
}

Length middle(Length lower, Length upper) {
    return Length::fromPicometres(divideHalfToEven((lower + upper).picometres(), 2));
}

std::optional<OfferedBore> offeredFor(const Workbook& workbook, const SizeOnOffer& size,
                                      const LimitSet* set, int number) {
    const Bore* bore = findBore(workbook.block, number);
    if (bore == nullptr || !bore->standardSize) return std::nullopt;
    OfferedBore offered;
    offered.finish = bore->standardSize->value() + size.oversize.value();
    offered.lower = valueOf(size.lower);
    offered.upper = valueOf(size.upper);
    if (set != nullptr) {
        offered.finish = finishSizeFor(*set, *bore).value_or(offered.finish);
        const Limits& limits = limitsFor(*set, number);
        if (!offered.lower) offered.lower = valueOf(limits.sizeLower);
        if (!offered.upper) offered.upper = valueOf(limits.sizeUpper);
    }
    if (!offered.lower || !offered.upper || *offered.lower > *offered.upper) return offered;
    if (offered.finish < *offered.lower || offered.finish > *offered.upper)
        offered.finish = middle(*offered.lower, *offered.upper);
    return offered;
}

Offer offerOf(const Workbook& workbook, const SizeOnOffer& size, const std::vector<int>& bores) {
    Offer offer;
    offer.oversize = size.oversize.value();
    offer.name = *offer.oversize == Length()
                     ? "standard"
                     : size.oversize.text() + " " + std::string(symbol(size.oversize.unit()));
    offer.beyondGreatest =
        workbook.sizing.greatest && *offer.oversize > workbook.sizing.greatest->value();
    const LimitSet* set = finishSetWith(workbook, *offer.oversize);
    for (const int number : bores)
        offer.bores.push_back(offeredFor(workbook, size, set, number));
    return offer;
}

// Sizes at 20 °C in rising order, in groups.
std::vector<std::vector<Length>> pistonGroups(const FitRecord& fit, Length gap) {
    std::vector<Length> sizes;
    for (const Piston& piston : fit.pistons)
        if (const auto size = sizeOf(piston)) sizes.push_back(size->at20);
    std::ranges::sort(sizes);
    std::vector<std::vector<Length>> groups;
    for (const Length size : sizes) {
        if (groups.empty() || size - groups.back().back() > gap) groups.emplace_back();
        groups.back().push_back(size);
    }
    return groups;
}

Offer pistonOffer(const Workbook& workbook, Length smallest, Length aim, Length gap,
                  const std::vector<int>& bores) {
    const FitLimits& limits = workbook.fit.clearance;
    OfferedBore offered{smallest + aim, std::nullopt, std::nullopt};
    if (limits.lower) offered.lower = smallest + limits.lower->value();
    if (limits.upper) offered.upper = smallest + limits.upper->value();
    Offer offer;
    offer.name = "pistons at hand";
    for (const int number : bores) {
        offer.bores.emplace_back(offered);
        const Bore* bore = findBore(workbook.block, number);
        // Clearance and the pistons' own spread may put them a little past the round figure.
        if (workbook.sizing.greatest && bore != nullptr && bore->standardSize)
            offer.beyondGreatest = offer.beyondGreatest ||
                                   offered.finish > bore->standardSize->value() +
                                                        workbook.sizing.greatest->value() + gap;
    }
    return offer;
}

} // namespace

std::vector<Offer> offersOf(const Workbook& workbook, const std::vector<int>& bores) {
    std::vector<Offer> offers;
    for (const SizeOnOffer& size : workbook.sizing.sizes)
        offers.push_back(offerOf(workbook, size, bores));
    const auto aim = aimOf(workbook.fit.clearance);
    if (!aim || bores.empty()) return offers;
    const Length gap = isInchFamily(naturalUnits(workbook).size)
                           ? Length::whole(2, Unit::thou)
                           : Length::whole(50, Unit::micrometre);
    std::vector<Length> smallest;
    for (const auto& group : pistonGroups(workbook.fit, gap))
        if (group.size() >= bores.size()) smallest.push_back(group.front());
    for (const Length size : smallest) {
        offers.push_back(pistonOffer(workbook, size, *aim, gap, bores));
        if (smallest.size() > 1)
            offers.back().name += ", " + sizeWithUnit(size, naturalUnits(workbook));
    }
    return offers;
}

} // namespace borewright
