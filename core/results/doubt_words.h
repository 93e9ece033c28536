// SPDX-License-Identifier: GPL-3.0-or-later
// A bore's figures with their doubt, and the doubt in the words of a shop: the same for screen,
// sheet, files and command line. Whatever is said of a doubt is rounded upward.
#pragma once

#include "core/results/results.h"

#include <optional>
#include <string>

namespace borewright {

// The true figure lies between value − below and value + above with 95 % confidence.
struct Around {
    Length below;
    Length above;
};

// Nothing where the doubt is not known or there is no such figure.
std::optional<Around> around(const BoreResult& bore, Quality quality);
std::optional<Around> aroundStraightness(const BoreResult& bore);
// ± k·u with the coverage factor k of the survey's budget.
std::optional<Around> aroundMean(const BoreResult& bore, const Budget& budget);
std::optional<Around> aroundLead(const BoreResult& bore, const Budget& budget);

// ± of one diameter and of a difference of two, 95 %, from a budget that is known.
Length wholeOfOne(const Budget& budget);
Length wholeOfDifference(const Budget& budget);

// A doubt rounded upward to the usual decimals of the small unit and `extra` more: "0.3".
std::string upward(Length doubt, const DisplayUnits& units, int extra = 0);
// "±0.3", or "+0.4 −0.2" where both sides differ as shown; in the small unit, which is not said.
std::string aroundText(const Around& around, const DisplayUnits& units);
// "± 0.26 thou", "+ 0.41 − 0.22 thou".
std::string aroundWords(const Around& around, const DisplayUnits& units);

// "1 chance in 40", "7 chances in 10", "less than 1 chance in 1000".
std::string chanceWords(double chance);
// "plain comparison", "5 % risk".
std::string ruleWords(const DecisionRule& rule);
// What the head of a survey says of its verdicts: "Called with 5 % risk: up to 0.21 thou kept from
// a size limit, 0.20 thou from one for out-of-round or taper." or that the doubt is not known.
std::string calledWords(const SurveyResult& survey, const DisplayUnits& units);
// "One diameter ± 0.26 thou, a difference ± 0.25 thou (95 %)." or what is missing for it.
std::string trustWords(const Budget& budget, const DisplayUnits& units);

// One word for a table: "straight", "V", "bell-mouth", "narrowed end", "barrel", "hourglass",
// "ridge", "groove".
std::string shapeWord(const BoreShape& shape);

// What two opposed contacts cannot see, and what can.
inline constexpr char lobesWords[] = "Two opposed contacts see no odd number of lobes; that takes "
                                     "a roundness machine, a three-point "
                                     "bore gauge in addition, or a ring or plug of known form.";

} // namespace borewright
