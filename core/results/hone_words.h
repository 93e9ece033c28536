// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences of honing. Part of results.
#pragma once

#include "core/results/hone_outlook.h"

#include <string>
#include <vector>

namespace borewright {

// "24 strokes 3.3–4.04, 8 strokes 3.9–4.04 in".
std::string strokingWords(const std::vector<StrokeWindow>& windows, const Hone& hone,
                          const DisplayUnits& units);
// "24 s with its lower end from 3.3 to 4.04 in, then 8 s from 3.9 to 4.04".
std::string windowsWords(const std::vector<PlannedWindow>& windows, const Hone& hone,
                         const DisplayUnits& units);
// "A at 0.6, 1.8, 3.05, 3.75 and B at 0.6", "A and B at 0.6, 1.8": by axis in the order of the
// block, by depth.
std::string measureWords(const std::vector<Station>& stations, const Block& block,
                         const DisplayUnits& units);
// The set-up in one sentence, from its stone, windows and stations.
std::string setUpSentence(const PlannedSetUp& setUp, const Stone& stone, const Workbook& workbook,
                          const DisplayUnits& units);

// Amounts that formulas give: "0.19 thou"; rounded upward where it is a claim or a doubt.
std::string amountWords(double um, const DisplayUnits& units, int extra = 0);
std::string claimWords(double um, const DisplayUnits& units);
// "at 1 chance in 20 that any depth goes over", "… is not worth naming".
std::string overWords(double chance);

// Said where the work is done: page, command line, sheet.
std::vector<std::string> honingCautions();

} // namespace borewright
