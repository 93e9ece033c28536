// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of the results file that tell sizes and fits; inside core/results only.
#pragma once

#include "core/results/results.h"

#include <nlohmann/json.hpp>

namespace borewright {

// Which size cleans up the block ($defs/sizing of resources/results.schema.json).
nlohmann::ordered_json sizingJson(const Workbook& workbook, const SizingResult& result);
// Which piston and ring go where ($defs/fit).
nlohmann::ordered_json fitJson(const Workbook& workbook, const FitResult& result);

} // namespace borewright
