// SPDX-License-Identifier: GPL-3.0-or-later
// Bores as a survey read them, from literals in one unit.
#pragma once

#include "core/sizing/clean_up.h"
#include "tests/support/lengths.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright::test {

struct Spot {
    const char* depth;
    const char* axis;
    const char* diameter;
};

inline MeasuredBore wornBore(const std::vector<Spot>& spots, Unit unit = Unit::inch,
                             const char* standard = "3.4200", std::optional<Length> u = {}) {
    MeasuredBore bore;
    bore.survey = "s1";
    if (standard != nullptr) bore.standardSize = typed(standard, unit).value();
    for (const Spot& spot : spots)
        bore.at.push_back({typed(spot.depth, unit).value(), spot.axis,
                           typed(spot.diameter, unit).value(), Zone::ringTravel, u});
    return bore;
}

inline Damage damageOf(TypedLength depth, const std::string& axis, TypedLength deep,
                       bool felt = false) {
    return {std::move(depth), axis, std::move(deep), felt, "score"};
}

} // namespace borewright::test
