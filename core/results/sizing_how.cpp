// SPDX-License-Identifier: GPL-3.0-or-later
// How the block is brought to its size: what the bar cuts, what the hone takes.
#include "core/results/sizing_words.h"

namespace borewright {

std::vector<std::string> howToCut(const Workbook& /*workbook*/, const DisplayUnits& /*units*/,
                                  const SizingResult& /*result*/) {
    return {};
}

} // namespace borewright
