// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/fit_record.h"

#include "core/utf8.h"

#include <cmath>
#include <set>
#include <utility>

namespace borewright {
namespace {

const Length largestSize = Length::whole(3000, Unit::millimetre);
const Length widestGap = Length::whole(10, Unit::millimetre);
const Length widestClearance = Length::whole(3, Unit::millimetre); // where no piston has a size
constexpr std::int64_t leastShareOfPiston = 50;                    // a clearance is less than 2 %
constexpr int lastBore = 999;
constexpr std::size_t longestLabel = 24;                 // bytes, in a refusal
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

Result<void> checkBore(const char* name, const std::optional<int>& bore) {
    if (bore && (*bore < 1 || *bore > lastBore))
        return refuse(name, "bores are numbered from 1 to " + std::to_string(lastBore));
    return {};
}

Result<void> checkPiston(const Piston& piston) {
    if (auto good = checkBore("bore", piston.bore); !good) return good;
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
    if (auto good = checkBore("bore", ring.bore); !good) return good;
    if (auto good = checkBore("measured in", ring.measuredIn); !good) return good;
    if (ring.groove < 1 || ring.groove > 9) return refuse("groove", "lies between 1 and 9");
    return checkAmounts({}, {{"depth", &ring.measuredAt}, {"gap", &ring.gap}, {"±", &ring.doubt}});
}

Result<void> checkFitLimits(const FitLimits& limits) {
    if (limits.aim && limits.aim->value() <= Length())
        return refuse("aim", "aim at more than nothing");
    if (auto good = checkAmounts({{"most", &limits.upper}, {"aim", &limits.aim}},
                                 {{"least", &limits.lower}});
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

// The largest of the limits, if it is so large that a wrong unit is the likelier reason.
const TypedLength* over(Length most, const FitLimits& limits) {
    for (const auto* limit : {&limits.upper, &limits.lower, &limits.aim})
        if (*limit && (*limit)->value() > most) return &**limit;
    return nullptr;
}

Result<void> checkClearanceUnit(const FitRecord& fit) {
    const Piston* smallest = nullptr;
    for (const Piston& piston : fit.pistons)
        if (piston.size && (smallest == nullptr || piston.size->value() < smallest->size->value()))
            smallest = &piston;
    if (smallest == nullptr) {
        const TypedLength* wide = over(widestClearance, fit.clearance);
        if (wide == nullptr) return {};
        return refuse("clearance of " + wide->withUnit() + ": is the unit right?");
    }
    const Length most = Length::fromPicometres(
        divideHalfToEven(smallest->size->value().picometres(), leastShareOfPiston));
    const TypedLength* wide = over(most, fit.clearance);
    if (wide == nullptr) return {};
    return refuse("clearance of " + wide->withUnit() + " for a piston of " +
                  smallest->size->withUnit() + ": is the unit right?");
}

Result<void> checkGapUnit(const FitRecord& fit) {
    const TypedLength* wide = over(widestGap, fit.ringGap);
    if (wide == nullptr) return {};
    return refuse("ring gap of " + wide->withUnit() + ": is the unit right?");
}

std::string calledBy(const char* what, const std::string& label, const std::string& id) {
    if (label.empty() && id.empty()) return std::string("a ") + what + " without a label";
    return std::string(what) + " " + shortened(label.empty() ? id : label, longestLabel);
}

Result<void> checkPistons(const FitRecord& fit) {
    if (fit.pistons.size() > mostPistons)
        return refuse("pistons", "more than " + std::to_string(mostPistons));
    std::set<std::string> ids;
    std::set<int> bores;
    for (const Piston& piston : fit.pistons) {
        const std::string where = called(piston);
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
        const std::string where = called(ring);
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

std::string called(const Piston& piston) {
    return calledBy("piston", piston.label, piston.id);
}

std::string called(const Ring& ring) {
    return calledBy("ring", ring.label, ring.id);
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
    if (auto good = checkClearanceUnit(fit); !good) return good;
    if (auto good = checkGapUnit(fit); !good) return good;
    if (fit.fileStep && fit.fileStep->value() <= Length())
        return refuse("file in steps of", "must be more than zero");
    return {};
}

Result<void> checkFit(const FitRecord& fit, const Block& block) {
    if (auto good = checkFit(fit); !good) return good;
    for (const Piston& piston : fit.pistons) {
        if (!piston.size) continue;
        const Length size = piston.size->value();
        bool known = false, near = false;
        for (const Bore& bore : block.bores) {
            if (!bore.standardSize) continue;
            const Length standard = bore.standardSize->value();
            known = true;
            near = near || 10 * (size - standard).magnitude() <= standard;
        }
        if (known && !near)
            return refuse("piston " + called(piston) + ": size",
                          piston.size->withUnit() +
                              " is more than a tenth away from the bores' standard size: is the "
                              "unit right?");
    }
    return {};
}

} // namespace borewright
