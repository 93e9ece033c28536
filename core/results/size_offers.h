// SPDX-License-Identifier: GPL-3.0-or-later
// The sizes that can be had for a block: those on offer, and the pistons at hand. Part of results.
#pragma once

#include "core/sizing/size_choice.h"
#include "core/workbook/workbook.h"

#include <vector>

namespace borewright {

// `bores`: the block's numbers; every offer has an entry for each. Sizes on offer first, then the
// pistons, so that of two with one finish size the one that can be ordered is named.
//
// A size on offer asks for the finish size of the finish limits with its oversize, else standard
// size + oversize; where its limits do not hold that, for their middle. Limits are its own, else
// those of the finish limits.
//
// Pistons whose size is known make a group where no two neighbours differ by more than 0.002 in or
// 0.050 mm; a group with one for each bore asks for the smallest + the aimed clearance in every
// bore, so that any of them goes into any.
std::vector<Offer> offersOf(const Workbook& workbook, const std::vector<int>& bores);

} // namespace borewright
