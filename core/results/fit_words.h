// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences of fitting pistons and rings. Part of results.
#pragma once

#include "core/results/fit_result.h"

namespace borewright {

// Fill headline, sentences, ringHeadline, ringSentences and cautions of a result whose figures
// stand.
void wordPistons(const Workbook& workbook, const DisplayUnits& units, FitResult& result);
void wordRings(const Workbook& workbook, const DisplayUnits& units, FitResult& result);

} // namespace borewright
