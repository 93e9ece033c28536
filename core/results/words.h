// SPDX-License-Identifier: GPL-3.0-or-later
// Results in words: the word a bore has on the plan, and small tools for sentences.
#pragma once

#include "core/results/results.h"

#include <string>
#include <vector>

namespace borewright {

// The word of a bore on the plan; `underWay` while it is being honed.
std::string wordFor(const BoreResult& bore, bool underWay, const DisplayUnits& units);
// The qualities that earn the bore's verdict, as a list: "largest size, taper".
std::string whyOf(const BoreResult& bore);

// "one" … "sixteen", then figures.
std::string numberWord(int number);
// "1, 2 and 6"; "A and B".
std::string listed(const std::vector<int>& numbers);
std::string listed(const std::vector<std::string>& texts);
// A bore as a survey read it.
struct BoreOfSurvey {
    std::string survey;
    int bore = 1;
};
// "Bore 6: a reading looks like a slip; settle it first." Empty where none of these does.
std::string slipsWords(const Results& results, const std::vector<BoreOfSurvey>& used);
// A length as a claim "within …": rounded away from zero where rounding would promise more than
// was measured, with no needless zeros: 0.2 → "0.2 thou", 0.24 → "0.24 thou", 0.241 → "0.25 thou".
std::string claimed(Length value, const DisplayUnits& units);

} // namespace borewright
