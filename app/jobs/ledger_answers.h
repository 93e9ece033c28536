// SPDX-License-Identifier: GPL-3.0-or-later
// What the ledger answers, as sheets: the window, the command line and the files show the same.
// Called from the thread that the store belongs to.
#pragma once

#include "app/jobs/ledger_sheet.h"
#include "app/ledger/ledger_store.h"

namespace borewright {

// `units` = nothing: as each job is naturally shown, and files in millimetres.
using LedgerUnits = std::optional<DisplayUnits>;

// A row a job.
Result<LedgerSheet> jobsSheet(LedgerStore& store, const LedgerQuestion& question,
                              const LedgerUnits& units);
// A row a bore of each job whose engine holds these words, latest first.
Result<LedgerSheet> neededSheet(LedgerStore& store, const std::string& engine,
                                const LedgerUnits& units);
// A row a stone, grit and surface; of engines that hold these words (empty = all).
Result<LedgerSheet> ratesSheet(LedgerStore& store, const std::string& engine,
                               const LedgerUnits& units);
// A row a survey read with this gauge or set on this master, latest first. Refuses an empty name.
Result<LedgerSheet> gaugeSheet(LedgerStore& store, const std::string& gauge,
                               const LedgerUnits& units);

// "2026-03-20"; empty without a time.
std::string dayOf(const std::optional<Timestamp>& time);

} // namespace borewright
