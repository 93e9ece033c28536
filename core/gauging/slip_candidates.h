// SPDX-License-Identifier: GPL-3.0-or-later
// What one typed reading may have been meant as.
#pragma once

#include "core/gauging/slips.h"

#include <vector>

namespace borewright::slips {

// How often each slip happens, per reading (per column for reversed and skipped ones, per pair for
// exchanges): common practice, no source. Only their ratios to each other rank the stories.
double shareOf(Slip slip);

struct Candidate {
    Slip slip;
    double share; // of readings that go wrong just so
    double slope; // change of the meant value for one µm of the typed: for densities
    TypedLength value;
};

// Every value that this reading becomes when a slip of one reading is undone: digits, sign, turns,
// complement, graduation, unit. None equals what was typed; none is beyond the dial.
std::vector<Candidate> candidatesFor(const TypedLength& typed, const GaugeSetting& gauge);

} // namespace borewright::slips
