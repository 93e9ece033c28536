// SPDX-License-Identifier: GPL-3.0-or-later
// The windows of a pass out of the options of a command line.
#pragma once

#include "core/workbook/hone_record.h"

#include <string>
#include <vector>

namespace borewright {

// An option as it stood on the line: "--from", "3.3in".
struct TypedOption {
    std::string name;
    std::string text;
};

// The first --from goes with the first --to and the first of --strokes or --seconds, the second
// with the second, and so on; so "--from 3.3 --to 4.04 --strokes 24 --from 3.9 --to 4.04 --strokes
// 8" are two windows. A --hold belongs to the last --from before it; where there is one for each
// window, they go by their order too. Lengths without a unit are in `usual`. Refuses, saying what
// is missing, where the counts differ.
Result<std::vector<StrokeWindow>> windowsOf(const std::vector<TypedOption>& options, Unit usual);

} // namespace borewright
