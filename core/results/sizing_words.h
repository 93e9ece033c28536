// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences of choosing a size. Part of results.
#pragma once

#include "core/results/sizing_result.h"

namespace borewright {

// Fills headline, sentences, how, cautions and boreWords of a result whose figures stand; `rule` is
// what its sizes were chosen by.
void wordSizing(const Workbook& workbook, const DisplayUnits& units, const DecisionRule& rule,
                SizingResult& result);

// Parts of it, a source file each.
std::string sizingHeadline(const Workbook& workbook, const DisplayUnits& units,
                           const SizingResult& result);
std::vector<std::string> sizingSentences(const Workbook& workbook, const DisplayUnits& units,
                                         const DecisionRule& rule, const SizingResult& result);
// What does not fit together in what was entered.
std::vector<std::string> sizingOddities(const Workbook& workbook, const DisplayUnits& units,
                                        const SizingResult& result);
std::vector<std::string> howToCut(const Workbook& workbook, const DisplayUnits& units,
                                  const SizingResult& result);

// "4.0 ± 0.3 thou" (95 %, rounded upward), or "4.0 thou" where the doubt is not known.
std::string marginWords(Length margin, const std::optional<Length>& u, double coverage,
                        const DisplayUnits& units);
// It cleans by the rule of the verdicts, yet its ± is larger than its margin.
bool onlyJust(const SizeCell& cell, double coverage);
// "0.020 in", "the standard size", "the size for the pistons at hand"; where these are made for a
// size on offer, "0.020 in for the pistons at hand".
std::string offerWords(const SizingResult& result, std::size_t offer);
// The score's or pit's own name without what stands behind a comma: "score"; else "damage".
std::string damageWord(const Damage& damage);
// Of a bore that the plan speaks of, else none.
const Damage* decidingDamage(const SizingPlan& plan, int bore, const CleanUp& cleanUp);
// "bore 4", "bores 1, 2 and 4".
std::string boresWords(const std::vector<int>& numbers);
std::string capitalized(std::string text);

} // namespace borewright
