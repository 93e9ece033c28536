// SPDX-License-Identifier: GPL-3.0-or-later
// What would make a survey's doubt smaller, and what of it would settle a verdict.
#pragma once

#include "core/gauging/budget.h"
#include "core/length/format.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// What a doubt is of: one diameter, or a difference of two, in which shared sources cancel.
enum class DoubtOf { size, difference };

// One thing to do, with what it makes of the standard uncertainty.
struct Remedy {
    std::string words; // "three readings at each station"
    double before_um;
    double after_um;
};

// The remedies that lessen the doubt by a twentieth or more, the most helpful first; other gear has
// to help half as much again as what costs nothing. `repeats` are taken now.
std::vector<Remedy> remedies(const SurveyHeader& survey, Length size, DoubtOf of, int repeats = 1);

// "three readings at each station: ± 0.21 → ± 0.13 thou", for the band of a verdict (`factor` u).
std::string remedyWords(const Remedy& remedy, double factor, const DisplayUnits& units);

// A figure that is too close to call: how far it lies from its limit, and the factor of its guard
// band.
struct OpenCall {
    DoubtOf of = DoubtOf::size;
    Length gap;
    double factor = 1.65;
};

// What would settle the calls, as one sentence part: the cheapest thing, or two together, that
// brings factor·u below the gap of most of them. Where nothing does, that is said, with what helps
// most. `repeats` are taken now. Empty without calls.
std::string whatSettles(const SurveyHeader& survey, Length size, int repeats,
                        const std::vector<OpenCall>& calls, const DisplayUnits& units);

} // namespace borewright
