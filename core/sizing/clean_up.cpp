// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/clean_up.h"

#include "core/sizing/guarded.h"
#include "core/verdict/verdict.h"

#include <algorithm>
#include <limits>
#include <numbers>
#include <tuple>

namespace borewright {
namespace {

// No bore wears as much where it wears least (common practice, no source).
const Length mostWornAllOver = Length::whole(125, Unit::micrometre);

// How a diameter as found and a damage become the size that cleans up there.
struct Cut {
    std::optional<Length> original; // the size it was made to, where the cut keeps its axis
    bool oneSide = true;

    // What an error of the diameter counts.
    [[nodiscard]] int diameterCounts() const { return original && oneSide ? 2 : 1; }
    [[nodiscard]] Length sizeOf(Length diameter, Length deep) const {
        if (!original) return diameter + 2 * deep;
        const Length wear = std::max(Length{}, diameter - *original);
        return *original + diameterCounts() * wear + 2 * deep;
    }
};

CleanUp wearAt(const MeasuredAt& at, const Cut& cut) {
    CleanUp place;
    place.size = cut.sizeOf(at.diameter, {});
    place.depth = at.depth;
    place.axis = at.axis;
    place.gaugeDoubtKnown = at.u.has_value();
    if (at.u) place.u = cut.diameterCounts() * *at.u;
    return place;
}

// A damage felt as s lies within s ± s/2; twice that on the diameter, as a standard uncertainty.
Length feltDoubt(Length deep) {
    return Length::nearest(deep.in(Unit::micrometre) / std::numbers::sqrt3, Unit::micrometre);
}

std::optional<CleanUp> damageAt(const MeasuredBore& bore, const BoreWear& wear, std::size_t index,
                                const Cut& cut) {
    const Damage& damage = wear.damages[index];
    auto wall = diameterAt(bore, damage.depth.value(), damage.axis);
    if (!wall) wall = diameterAt(bore, damage.depth.value(), {});
    if (!wall) return std::nullopt;
    const Length deep = std::max(Length{}, damage.deep.value());
    CleanUp place = wearAt(*wall, cut);
    place.size = cut.sizeOf(wall->diameter, deep);
    place.axis = damage.axis;
    place.damage = index;
    if (damage.felt) place.u = together(place.u.value_or(Length{}), feltDoubt(deep));
    return place;
}

// The place that asks for most; of equals the shallower, and wear before damage.
CleanUp largestPlace(const std::vector<CleanUp>& places) {
    if (places.empty()) return {};
    const auto rank = [](const CleanUp& place) {
        return std::tuple(-place.size, place.depth, place.damage.has_value(), place.axis);
    };
    CleanUp decides = *std::ranges::min_element(places, {}, rank);
    const Length u = decides.u.value_or(Length{});
    for (const CleanUp& place : places)
        if (place.u && *place.u > u) decides.lessSure.push_back({place.size, *place.u});
    std::ranges::sort(decides.lessSure, {},
                      [](const CleanUp::LessSure& less) { return std::tuple(-less.size, less.u); });
    return decides;
}

CleanUp cleanUpWith(const MeasuredBore& bore, const BoreWear& wear, const Cut& cut, bool damages) {
    std::vector<CleanUp> places;
    for (const MeasuredAt& at : bore.at)
        places.push_back(wearAt(at, cut));
    for (std::size_t i = 0; damages && i < wear.damages.size(); ++i)
        if (auto place = damageAt(bore, wear, i, cut)) places.push_back(std::move(*place));
    return largestPlace(places);
}

} // namespace

Length guardBand(const CleanUp& cleanUp, const DecisionRule& rule) {
    const double k = guardFactor(rule, std::numeric_limits<double>::infinity());
    const auto band = [k](Length u) {
        return Length::nearest(k * u.in(Unit::micrometre), Unit::micrometre);
    };
    Length w = band(cleanUp.u.value_or(Length{}));
    for (const CleanUp::LessSure& less : cleanUp.lessSure)
        w = std::max(w, band(less.u) - (cleanUp.size - less.size));
    return w;
}

BoreCleanUp cleanUpOf(const MeasuredBore& bore, const BoreWear& wear) {
    BoreCleanUp result;
    result.bore = bore.bore;
    result.survey = bore.survey;
    result.standardSize = bore.standardSize;
    result.largest = largestOf(bore);
    result.smallest = smallestOf(bore);
    result.undamaged = wear.damages.empty();
    result.coverage = bore.coverage;
    result.complete = bore.complete;
    const Cut worn;
    result.wornBore = cleanUpWith(bore, wear, worn, true);
    result.wornOnly = cleanUpWith(bore, wear, worn, false);
    const std::optional<Length> madeTo =
        wear.madeTo ? std::optional(wear.madeTo->value()) : bore.standardSize;
    result.boredBefore = !wear.madeTo && bore.standardSize &&
                         result.smallest.diameter - *bore.standardSize > mostWornAllOver;
    if (madeTo && !result.boredBefore) {
        const Cut original{madeTo, wear.side != WearSide::bothSides};
        result.originalAxis = cleanUpWith(bore, wear, original, true);
        result.originalOnly = cleanUpWith(bore, wear, original, false);
        result.sideAssumed = wear.side == WearSide::notSaid;
    }
    return result;
}

const CleanUp& cleanUpBy(const BoreCleanUp& bore, Centring centring) {
    return centring == Centring::originalAxis && bore.originalAxis ? *bore.originalAxis
                                                                   : bore.wornBore;
}

const CleanUp& withoutDamage(const BoreCleanUp& bore, Centring centring) {
    return centring == Centring::originalAxis && bore.originalOnly ? *bore.originalOnly
                                                                   : bore.wornOnly;
}

Length finishAllowanceOf(const SizingPlan& plan, bool inches) {
    if (plan.finishAllowance) return plan.finishAllowance->value();
    return inches ? Length::whole(5, Unit::tenth) : Length::whole(1, Unit::hundredth);
}

Length honeStockOf(const SizingPlan& plan, bool inches) {
    if (plan.honeStock) return plan.honeStock->value();
    return inches ? Length::whole(3, Unit::thou) : Length::whole(75, Unit::micrometre);
}

} // namespace borewright
