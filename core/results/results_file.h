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

// The same head with the size that cleans up the block, or with pistons and rings, alone.
std::string sizingFile(const Workbook& workbook, const Results& results);
std::string fitFile(const Workbook& workbook, const Results& results);

// A row a bore and survey, comma-separated, decimal point, CR LF (RFC 4180); lengths in `units`,
// the unit said in the head, with one decimal more than a screen shows. What cleans the bore up,
// and its piston and rings, stand in the row of the survey that they are reckoned from.
std::string resultsCsv(const Workbook& workbook, const Results& results,
                       const std::vector<std::string>& ids, const DisplayUnits& units);

} // namespace borewright
