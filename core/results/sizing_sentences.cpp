// SPDX-License-Identifier: GPL-3.0-or-later
// What follows the headline: one size lower, how the cut is centred, what was assumed.
#include "core/results/sizing_words.h"

namespace borewright {

std::vector<std::string> sizingSentences(const Workbook& /*workbook*/,
                                         const DisplayUnits& /*units*/,
                                         const SizingResult& /*result*/) {
    return {};
}

} // namespace borewright
