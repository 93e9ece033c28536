// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/sizing_plan.h"

#include <utility>

namespace borewright {
namespace {

const Length largestSize = Length::whole(3000, Unit::millimetre);
// A finished size is never this far from what it is a limit of.
constexpr std::int64_t nearPart = 10;

bool canBeSize(const TypedLength& size) {
    return size.value() > Length() && size.value() <= largestSize;
}

Result<void> checkLimits(const std::optional<TypedLength>& lower,
                         const std::optional<TypedLength>& upper) {
    if (lower && !canBeSize(*lower))
        return refuse("smallest", "a size is more than zero and at most three metres");
    if (upper && !canBeSize(*upper))
        return refuse("largest", "a size is more than zero and at most three metres");
    if (lower && upper && lower->value() > upper->value())
        return refuse("largest", "the largest size allowed is below the smallest");
    return {};
}

Result<void> checkWear(const BoreWear& wear) {
    if (wear.madeTo && !canBeSize(*wear.madeTo))
        return refuse("made to", "a size is more than zero and at most three metres");
    if (wear.damages.size() > mostDamages)
        return refuse("damage", "more than " + std::to_string(mostDamages) +
                                    " in one bore: give the deepest");
    for (const Damage& damage : wear.damages) {
        if (damage.depth.value() < Length() || damage.depth.value() > largestSize)
            return refuse("damage: depth", "lies between the open end (0) and the closed end");
        if (damage.deep.value() <= Length())
            return refuse("damage: deep", "how far it goes into the wall is more than zero");
        if (wear.madeTo && damage.deep.value() >= wear.madeTo->value())
            return refuse("damage: deep", "it cannot be deeper than the bore is wide");
    }
    return {};
}

Result<void> checkWearOf(const Bore& bore, const BoreWear& wear) {
    if (wear.madeTo && bore.standardSize &&
        nearPart * (wear.madeTo->value() - bore.standardSize->value()).magnitude() >
            bore.standardSize->value())
        return refuse("made to", "is more than a tenth away from the standard size");
    for (const Damage& damage : wear.damages)
        if (bore.depth && damage.depth.value() > bore.depth->value())
            return refuse("damage: depth",
                          damage.depth.withUnit() + " is below the bore's closed end");
    return {};
}

// With no standard size known, nothing can be said against it.
bool belongsToSome(const Block& block, Length oversize, Length limit) {
    bool known = false;
    for (const Bore& bore : block.bores) {
        if (!bore.standardSize) continue;
        known = true;
        if (limitBelongs(limit, bore.standardSize->value() + oversize)) return true;
    }
    return !known;
}

} // namespace

Centring centringOf(const SizingPlan& plan) {
    if (plan.centring) return *plan.centring;
    return plan.method == CutMethod::honeOnly ? Centring::wornBore : Centring::originalAxis;
}

Result<void> checkSizing(const SizingPlan& plan) {
    if (plan.sizes.size() > mostSizesOnOffer)
        return refuse("sizes on offer", "more than " + std::to_string(mostSizesOnOffer));
    for (std::size_t i = 0; i < plan.sizes.size(); ++i) {
        const SizeOnOffer& size = plan.sizes[i];
        const std::string where = "size " + size.oversize.withUnit();
        if (size.oversize.value() < Length())
            return refuse(where, "an oversize is nothing or more than the standard size");
        if (size.oversize.value() > largestSize) return refuse(where, "is over three metres");
        if (i > 0 && size.oversize.value() == plan.sizes[i - 1].oversize.value())
            return refuse(where, "is given twice");
        if (i > 0 && size.oversize.value() < plan.sizes[i - 1].oversize.value())
            return refuse(where, "sizes go from the smallest to the largest, and this one is "
                                 "below the one before it");
        if (auto good = checkLimits(size.lower, size.upper); !good)
            return tl::unexpected(good.error().within(where));
    }
    if (plan.greatest && plan.greatest->value() < Length())
        return refuse("greatest oversize", "is nothing or more");
    if (plan.finishAllowance && plan.finishAllowance->value() < Length())
        return refuse("finish allowance", "is nothing or more");
    if (plan.honeStock && plan.honeStock->value() < Length())
        return refuse("left for the hone", "is nothing or more");
    for (const auto& [number, wear] : plan.bores) {
        const std::string where = "bore " + std::to_string(number);
        if (number < 1 || number > 999) return refuse(where, "is no number of a bore");
        if (auto good = checkWear(wear); !good) return tl::unexpected(good.error().within(where));
    }
    return {};
}

bool limitBelongs(Length limit, Length nominal) {
    constexpr std::int64_t belongsPart = 500;
    return belongsPart * (limit - nominal).magnitude() <= nominal.magnitude();
}

Result<void> checkSizing(const SizingPlan& plan, const Block& block) {
    if (auto good = checkSizing(plan); !good) return good;
    for (const auto& [number, wear] : plan.bores)
        if (const Bore* bore = findBore(block, number))
            if (auto good = checkWearOf(*bore, wear); !good)
                return tl::unexpected(good.error().within("bore " + std::to_string(number)));
    for (const SizeOnOffer& size : plan.sizes)
        for (const auto& [name, limit] :
             {std::pair{"smallest", &size.lower}, std::pair{"largest", &size.upper}})
            if (*limit && !belongsToSome(block, size.oversize.value(), (*limit)->value()))
                return refuse("size " + size.oversize.withUnit() + ": " + name,
                              (*limit)->withUnit() +
                                  " is far from the standard size and this oversize together");
    return {};
}

Result<void> checkTargets(const FinishTargets& targets) {
    for (const auto& [number, target] : targets) {
        const std::string where = "target of bore " + std::to_string(number);
        if (number < 1 || number > 999) return refuse(where, "is no number of a bore");
        if (!canBeSize(target.size))
            return refuse(where, "a size is more than zero and at most three metres");
        if (auto good = checkLimits(target.lower, target.upper); !good)
            return tl::unexpected(good.error().within(where));
        const Length near = Length::fromPicometres(target.size.value().picometres() / nearPart);
        for (const auto* limit : {&target.lower, &target.upper})
            if (*limit && ((*limit)->value() - target.size.value()).magnitude() > near)
                return refuse(where, "its limits are more than a tenth away from it");
    }
    return {};
}

} // namespace borewright
