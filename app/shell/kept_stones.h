// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's own stones in the file of preferences.
#pragma once

#include "core/workbook/hone_record.h"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace borewright {

nlohmann::ordered_json stonesJson(const std::vector<Stone>& stones);
// Reads them into `stones`; what is wrong with them, or an empty text.
std::string readStones(const nlohmann::ordered_json& list, std::vector<Stone>& stones);

} // namespace borewright
