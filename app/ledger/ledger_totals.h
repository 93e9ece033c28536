// SPDX-License-Identifier: GPL-3.0-or-later
// What a rebuilder asks his own past: what this engine needed, how fast the stones cut, which jobs
// a gauge touched.
#pragma once

#include "app/ledger/ledger_store.h"

namespace borewright {

struct NeededJob {
    LedgerRow job;
    std::vector<BoreEntry> bores; // in the order of the block
};
// Each job whose engine holds these words, latest first.
Result<std::vector<NeededJob>> neededBy(LedgerStore& store, const std::string& engine);

// A stone over all jobs: those of one name (case and accents do not count), grit and surface.
struct StoneRate {
    StoneEntry sum; // name as it was spelled last in the alphabet; passes, strokes, taken off
    int jobs = 0;   // in which it was measured
    // Least and most of a job, µm off the diameter a stroke.
    double slowest_um = 0;
    double fastest_um = 0;
};
// Stones that were measured; of jobs whose engine holds these words (empty = all). By name.
Result<std::vector<StoneRate>> stoneRates(LedgerStore& store, const std::string& engine);

struct TouchedSurvey {
    LedgerRow job;
    GaugeEntry gauge;
};
// Each survey that was read with a gauge, or set on a master, whose name holds this one;
// latest first.
Result<std::vector<TouchedSurvey>> touchedBy(LedgerStore& store, const std::string& gauge);

} // namespace borewright
