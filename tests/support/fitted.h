// SPDX-License-Identifier: GPL-3.0-or-later
// Bores, pistons and rings for tests of fits, in a line each.
#pragma once

#include "core/sizing/measured_bore.h"
#include "core/workbook/fit_record.h"
#include "tests/support/lengths.h"

#include <utility>
#include <vector>

namespace borewright::test {

struct LevelRead {
    const char* depth_in;
    std::vector<const char*> sizes_in; // axis A, B, …; nothing written = not read
    Zone zone = Zone::ringTravel;
};

inline MeasuredBore boreRead(int number, const std::vector<LevelRead>& levels) {
    MeasuredBore bore;
    bore.bore = number;
    bore.survey = "s1";
    for (const LevelRead& level : levels)
        for (std::size_t axis = 0; axis < level.sizes_in.size(); ++axis)
            if (*level.sizes_in[axis] != '\0')
                bore.at.push_back({in(level.depth_in),
                                   std::string(1, static_cast<char>('A' + axis)),
                                   in(level.sizes_in[axis]), level.zone, std::nullopt});
    return bore;
}

inline MeasuredBore withDoubt(MeasuredBore bore, const char* u_thou, const char* own_thou) {
    for (MeasuredAt& at : bore.at)
        at.u = thou(u_thou);
    bore.ownU = thou(own_thou);
    return bore;
}

inline Piston pistonOf(const char* size_in) {
    Piston piston;
    piston.id = "p1";
    piston.label = "1";
    piston.size = typedIn(size_in);
    piston.height = typedIn("0.5");
    return piston;
}

inline Ring ringOf(const char* gap_in, int measuredIn, const char* measuredAt_in) {
    Ring ring;
    ring.id = "g1";
    ring.label = "top 1";
    ring.measuredIn = measuredIn;
    ring.measuredAt = typedIn(measuredAt_in);
    ring.gap = typedIn(gap_in);
    return ring;
}

// Empty = not given.
inline FitLimits limitsOf(const char* lower_in, const char* upper_in, const char* aim_in = "") {
    const auto given = [](const char* text) {
        return *text == '\0' ? std::optional<TypedLength>() : std::optional(typedIn(text));
    };
    FitLimits limits;
    limits.lower = given(lower_in);
    limits.upper = given(upper_in);
    limits.aim = given(aim_in);
    return limits;
}

} // namespace borewright::test
