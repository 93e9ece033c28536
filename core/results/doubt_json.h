// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of the results file that tell the doubt; inside core/results only.
#pragma once

#include "core/results/doubt_words.h"

#include <nlohmann/json.hpp>

namespace borewright::doubt_json {

using Json = nlohmann::ordered_json;

Json shape(const BoreShape& shape, const std::string& words);
Json rule(const DecisionRule& rule);
// Degrees of freedom that are without end are left out: JSON has no infinity.
Json budget(const Budget& budget);
Json suspicions(const std::vector<Suspicion>& suspicions);

} // namespace borewright::doubt_json
