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

// The remedies that lessen the doubt by a twentieth or more, the most helpful first; among those
// alike to a twentieth, the cheapest. `repeats` are taken now.
std::vector<Remedy> remedies(const SurveyHeader& survey, Length size, DoubtOf of, int repeats = 1);

// "three readings at each station: ± 0.21 → ± 0.13 thou", for the band of a verdict (`factor` u).
std::string remedyWords(const Remedy& remedy, double factor, const DisplayUnits& units);

// What would settle a value that lies `gap` from its limit: the first remedy, or few together, that
// brings factor·u below the gap, as a sentence. Where none does, that is said, with the best.
std::string whatSettles(const SurveyHeader& survey, Length size, DoubtOf of, int repeats,
                        Length gap, double factor, const DisplayUnits& units);

} // namespace borewright
