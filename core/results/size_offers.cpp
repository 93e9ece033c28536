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
    const Length nominal = bore->standardSize->value() + size.oversize.value();
    OfferedBore offered;
    offered.finish = nominal;
    offered.lower = valueOf(size.lower);
    offered.upper = valueOf(size.upper);
    if (set != nullptr) {
        offered.finish = finishSizeFor(*set, *bore).value_or(offered.finish);
        const Limits& limits = limitsFor(*set, number);
        if (!offered.lower) offered.lower = valueOf(limits.sizeLower);
        if (!offered.upper) offered.upper = valueOf(limits.sizeUpper);
    }
    for (const auto& one : {std::optional(offered.finish), offered.lower, offered.upper})
        if (one && !limitBelongs(*one, nominal)) return std::nullopt; // another oversize's limits
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
    for (const int number : bores) {
        offer.bores.push_back(offeredFor(workbook, size, set, number));
        if (const auto& offered = offer.bores.back())
            offer.beyondGreatest =
                offer.beyondGreatest || isBeyondGreatest(workbook, number, offered->finish);
    }
    return offer;
}

// Sizes at 20 °C in rising order, in groups no wider than `gap`.
std::vector<std::vector<Length>> pistonGroups(const FitRecord& fit, Length gap) {
    std::vector<Length> sizes;
    for (const Piston& piston : fit.pistons)
        if (const auto size = sizeOf(piston)) sizes.push_back(size->at20);
    std::ranges::sort(sizes);
    std::vector<std::vector<Length>> groups;
    for (const Length size : sizes) {
        if (groups.empty() || size - groups.back().front() > gap) groups.emplace_back();
        groups.back().push_back(size);
    }
    return groups;
}

// A size at which each piston of the group goes into any bore with a clearance that is allowed:
// from the largest and the least clearance to the smallest and the most. Nothing where the group is
// too wide for that.
std::optional<OfferedBore> sizeForAll(const FitLimits& limits, Length aim, Length smallest,
                                      Length largest) {
    OfferedBore offered{middle(smallest, largest) + aim, std::nullopt, std::nullopt};
    if (limits.lower) offered.lower = largest + limits.lower->value();
    if (limits.upper) offered.upper = smallest + limits.upper->value();
    if (offered.lower && offered.upper && *offered.lower > *offered.upper) return std::nullopt;
    if (offered.lower) offered.finish = std::max(offered.finish, *offered.lower);
    if (offered.upper) offered.finish = std::min(offered.finish, *offered.upper);
    return offered;
}

Offer pistonOffer(const Workbook& workbook, const OfferedBore& offered,
                  const std::vector<int>& bores) {
    Offer offer;
    offer.name = "pistons at hand";
    for (const int number : bores) {
        offer.bores.emplace_back(offered);
        offer.beyondGreatest =
            offer.beyondGreatest || isBeyondGreatest(workbook, number, offered.finish);
    }
    return offer;
}

} // namespace

bool isBeyondGreatest(const Workbook& workbook, int number, Length finish) {
    if (!workbook.sizing.greatest) return false;
    const Length aLittle = Length::whole(1, Unit::thou);
    const Bore* bore = findBore(workbook.block, number);
    if (bore == nullptr || !bore->standardSize) return true; // what cannot be told is not advised
    return finish > bore->standardSize->value() + workbook.sizing.greatest->value() + aLittle;
}

std::vector<Offer> offersOf(const Workbook& workbook, const std::vector<int>& bores) {
    std::vector<Offer> offers;
    for (const SizeOnOffer& size : workbook.sizing.sizes)
        offers.push_back(offerOf(workbook, size, bores));
    const auto aim = aimOf(workbook.fit.clearance);
    if (!aim || bores.empty()) return offers;
    const Length gap = isInchFamily(naturalUnits(workbook).size)
                           ? Length::whole(2, Unit::thou)
                           : Length::whole(50, Unit::micrometre);
    std::vector<std::pair<OfferedBore, Length>> found; // with the smallest piston
    for (const auto& group : pistonGroups(workbook.fit, gap)) {
        const auto offered = sizeForAll(workbook.fit.clearance, *aim, group.front(), group.back());
        if (group.size() >= bores.size() && offered) found.emplace_back(*offered, group.front());
    }
    for (const auto& [offered, smallest] : found) {
        offers.push_back(pistonOffer(workbook, offered, bores));
        if (found.size() > 1)
            offers.back().name += ", " + sizeWithUnit(smallest, naturalUnits(workbook));
    }
    return offers;
}

} // namespace borewright
