// SPDX-License-Identifier: GPL-3.0-or-later
// What choosing the size hands to the hone, without a window.
#pragma once

#include "core/results/results.h"
#include "core/workbook/edit.h"

#include <optional>

namespace borewright {

struct HoneOrder {
    FinishTargets targets;
    // Targets, and finish limits for each of their oversizes that has limits and no set yet.
    Edit edit;
    std::string what; // "0.020 in over", "each bore its own size"
};

// For the chosen size, or for each bore's own; nothing where none is chosen.
std::optional<HoneOrder> honeOrder(const Workbook& workbook, const Results& results,
                                   const DisplayUnits& units);

// Whether the hone aims at an order already: the same lengths, in whichever unit they are written.
bool sameAim(const FinishTargets& one, const FinishTargets& other);

} // namespace borewright
