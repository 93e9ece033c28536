// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/fit_record.h"

#include <cmath>
#include <set>
#include <utility>

namespace borewright {
namespace {

const Length largestSize = Length::whole(3000, Unit::millimetre);
constexpr double leastExpansion = 1, mostExpansion = 40; // 1e-6/°C: every metal a piston is made of

using Where = std::optional<TypedLength>;

Result<void>
checkAmounts(std::initializer_list<std::pair<const char*, const Where*>> moreThanNothing,
             std::initializer_list<std::pair<const char*, const Where*>> nothingOrMore) {
    for (const auto& [name, length] : moreThanNothing)
        if (*length && ((*length)->value() <= Length() || (*length)->value() > largestSize))
            return refuse(name, "must be more than zero and at most three metres");
    for (const auto& [name, length] : nothingOrMore)
        if (*length && ((*length)->value() < Length() || (*length)->value() > largestSize))
            return refuse(name, "must not be below zero, nor over three metres");
    return {};
}

Result<void> checkPiston(const Piston& piston) {
    if (auto good = checkAmounts({{"size", &piston.size}},
                                 {{"measuring height", &piston.height}, {"±", &piston.doubt}});
        !good)
        return good;
    if (piston.expansion &&
        !(*piston.expansion >= leastExpansion && *piston.expansion <= mostExpansion))
        return refuse("expansion", "lies between 1 and 40 millionths per °C");
    if (piston.skirt.size() > mostSkirtPoints)
        return refuse("skirt", "more than " + std::to_string(mostSkirtPoints) + " heights");
    std::set<Length> heights;
    for (const SkirtPoint& point : piston.skirt) {
        if (point.height.value() < Length() || point.height.value() > largestSize)
            return refuse("skirt: height", "must not be below zero, nor over three metres");
        if (point.size.value() <= Length() || point.size.value() > largestSize)
            return refuse("skirt: size", "must be more than zero and at most three metres");
        if (!heights.insert(point.height.value()).second)
            return refuse("skirt: height", point.height.withUnit() + " is given twice");
    }
    return {};
}

Result<void> checkRing(const Ring& ring) {
    if (ring.groove < 1 || ring.groove > 9) return refuse("groove", "lies between 1 and 9");
    return checkAmounts({}, {{"depth", &ring.measuredAt}, {"gap", &ring.gap}, {"±", &ring.doubt}});
}

Result<void> checkFitLimits(const FitLimits& limits) {
    if (auto good = checkAmounts(
            {}, {{"least", &limits.lower}, {"most", &limits.upper}, {"aim", &limits.aim}});
        !good)
        return good;
    if (limits.lower && limits.upper && limits.lower->value() > limits.upper->value())
        return refuse("most", "the most allowed is less than the least");
    if (limits.aim && limits.lower && limits.aim->value() < limits.lower->value())
        return refuse("aim", "is below the least allowed");
    if (limits.aim && limits.upper && limits.aim->value() > limits.upper->value())
        return refuse("aim", "is over the most allowed");
    return checkDecision(limits.decision);
}

std::string freshId(const char* prefix, const auto& list) {
    for (std::size_t n = list.size() + 1;; ++n) {
        const std::string id = prefix + std::to_string(n);
        bool taken = false;
        for (const auto& item : list)
            taken = taken || item.id == id;
        if (!taken) return id;
    }
}

std::string called(const char* what, const std::string& label, const std::string& id) {
    return std::string(what) + " " + (label.empty() ? id : label);
}

Result<void> checkPistons(const FitRecord& fit) {
    if (fit.pistons.size() > mostPistons)
        return refuse("pistons", "more than " + std::to_string(mostPistons));
    std::set<std::string> ids;
    std::set<int> bores;
    for (const Piston& piston : fit.pistons) {
        const std::string where = called("piston", piston.label, piston.id);
        if (piston.id.empty() || !ids.insert(piston.id).second)
            return refuse(where, "needs an id of its own");
        if (piston.bore && !bores.insert(*piston.bore).second)
            return refuse(where, "another piston is to go in bore " + std::to_string(*piston.bore) +
                                     " already");
        if (auto good = checkPiston(piston); !good)
            return tl::unexpected(good.error().within(where));
    }
    return {};
}

Result<void> checkRings(const FitRecord& fit) {
    if (fit.rings.size() > mostRings)
        return refuse("rings", "more than " + std::to_string(mostRings));
    std::set<std::string> ids;
    std::set<std::pair<int, int>> places;
    for (const Ring& ring : fit.rings) {
        const std::string where = called("ring", ring.label, ring.id);
        if (ring.id.empty() || !ids.insert(ring.id).second)
            return refuse(where, "needs an id of its own");
        if (ring.bore && !places.insert({*ring.bore, ring.groove}).second)
            return refuse(where, "another ring of groove " + std::to_string(ring.groove) +
                                     " is to go in bore " + std::to_string(*ring.bore) +
                                     " already");
        if (auto good = checkRing(ring); !good) return tl::unexpected(good.error().within(where));
    }
    return {};
}

} // namespace

std::optional<Length> aimOf(const FitLimits& limits) {
    if (limits.aim) return limits.aim->value();
    if (!limits.lower || !limits.upper) return std::nullopt;
    const Length both[] = {limits.lower->value(), limits.upper->value()};
    return mean(both);
}

std::string freshPistonId(const FitRecord& fit) {
    return freshId("p", fit.pistons);
}

std::string freshRingId(const FitRecord& fit) {
    return freshId("g", fit.rings);
}

Result<void> checkFit(const FitRecord& fit) {
    if (auto good = checkPistons(fit); !good) return good;
    if (auto good = checkRings(fit); !good) return good;
    if (auto good = checkFitLimits(fit.clearance); !good)
        return tl::unexpected(good.error().within("clearance"));
    if (auto good = checkFitLimits(fit.ringGap); !good)
        return tl::unexpected(good.error().within("ring gap"));
    if (fit.fileStep && fit.fileStep->value() <= Length())
        return refuse("file in steps of", "must be more than zero");
    return {};
}

} // namespace borewright
