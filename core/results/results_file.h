// SPDX-License-Identifier: GPL-3.0-or-later
// What was computed, as files for other programs: JSON (resources/results.schema.json) with every
// station, CSV with a row a bore. Nothing is computed here.
#pragma once

#include "core/results/results.h"

#include <string>
#include <vector>

namespace borewright {

// The surveys of `ids`, in the workbook's order; every survey where `ids` is empty.
//
// Lengths are JSON numbers in millimetres under keys that end in _mm, exact: a length of this
// program never needs more digits than a double keeps (14 at most).
std::string resultsJson(const Workbook& workbook, const Results& results,
                        const std::vector<std::string>& ids);

// A row a bore and survey, comma-separated, decimal point, CR LF (RFC 4180); lengths in `units`,
// the unit said in the head, with one decimal more than a screen shows.
std::string resultsCsv(const Workbook& workbook, const Results& results,
                       const std::vector<std::string>& ids, const DisplayUnits& units);

} // namespace borewright
