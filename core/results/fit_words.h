// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences of fitting pistons and rings. Part of results.
#pragma once

#include "core/results/fit_result.h"

namespace borewright {

// Fill headline, sentences, ringHeadline, ringSentences and cautions of a result whose figures
// stand.
void wordPistons(const Workbook& workbook, const DisplayUnits& units, FitResult& result);
void wordRings(const Workbook& workbook, const DisplayUnits& units, FitResult& result);

// Parts of wordPistons, a source file each.
std::string pistonHeadline(const Workbook& workbook, const DisplayUnits& units,
                           const FitResult& result);
std::vector<std::string> pistonSentences(const Workbook& workbook, const DisplayUnits& units,
                                         const FitResult& result);

// Every bore that was read is still to be honed: the pistons come first, finish sizes follow.
bool pistonsFirst(const FitResult& result);
// What is scribed on it, else its id.
std::string nameOf(const Piston& piston);
std::string nameOf(const Ring& ring);
// "bores 1–6 take pistons 3 5 1 6 2 4".
std::string pairsWords(const Workbook& workbook, const Matching& matching,
                       const std::vector<std::optional<std::size_t>>& pistons);
// "the pistons' own order misses by at most 0.2 thou, and this gauge cannot tell the difference
// (0.4 thou)"; only where it is any of these.
std::string cannotTell(const Matching& matching, const DisplayUnits& units);
// "1–6", "1 and 3", "1, 2 and 5".
std::string numbersInShort(const std::vector<int>& numbers);

} // namespace borewright
