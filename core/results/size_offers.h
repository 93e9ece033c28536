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
// those of the finish limits. It is not for a bore whose standard size its limits do not belong to.
//
// Pistons whose size is known make a group where they differ by no more than 0.002 in or 0.050 mm;
// a group with one for each bore asks for its middle + the aimed clearance, within limits that give
// each of them, in any bore, a clearance that is allowed. A group too wide for that is no offer.
std::vector<Offer> offersOf(const Workbook& workbook, const std::vector<int>& bores);

// Whether a finish size is beyond the engine maker's greatest oversize, where he gives one: by more
// than a thou, which clearance and pistons may ask for. True too where the standard size is not
// known: what cannot be told is not advised.
bool isBeyondGreatest(const Workbook& workbook, int number, Length finish);

} // namespace borewright
