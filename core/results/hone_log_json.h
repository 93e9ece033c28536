// SPDX-License-Identifier: GPL-3.0-or-later
// The part of the results file that tells what was honed; inside core/results only.
#pragma once

#include "core/results/results.h"

#include <nlohmann/json.hpp>

namespace borewright {

// The log of the hone ($defs/honeLog of resources/results.schema.json).
nlohmann::ordered_json honeLogJson(const Workbook& workbook, const HoneLog& log);

} // namespace borewright
