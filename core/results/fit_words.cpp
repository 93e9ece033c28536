// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_words.h"

namespace borewright {

void wordPistons(const Workbook& workbook, const DisplayUnits& /*units*/, FitResult& result) {
    if (workbook.fit.pistons.empty())
        result.headline = "Enter the pistons: label, size, and the height it was measured at.";
    else if (!result.matching.why.empty())
        result.headline = "No matching: " + result.matching.why + ".";
}

void wordRings(const Workbook& workbook, const DisplayUnits& /*units*/, FitResult& result) {
    if (workbook.fit.rings.empty())
        result.ringHeadline = "Enter the rings: groove, and a gap measured in a bore.";
}

} // namespace borewright
