// SPDX-License-Identifier: GPL-3.0-or-later
// Judging the readings of a survey, bore by bore. A story is a hypothesis: the bore as it would be
// without the slip. Its weight is the share of such slips times the likelihood of the bore so
// corrected; against it stands the bore as typed, or with a wall that is scored at that station.
// Readings are accused where all stories about them together outweigh that by accusingOdds.
#pragma once

#include "core/gauging/slip_grid.h"
#include "core/gauging/slips.h"

#include <vector>

namespace borewright::slips {

// One way in which some readings of a bore may have gone wrong.
struct Hypothesis {
    Slip slip = Slip::unexplained;
    double log = 0;                   // of share × likelihood
    std::vector<std::size_t> accused; // in survey.readings
    std::vector<SlipFix> fixes;       // empty for unexplained
    std::string words;
};

// Everything that a bore's hypotheses are made from.
struct BoreCase {
    const Workbook* workbook; // null: its plan is not known
    const Survey* survey;
    const std::vector<BoreCells>* bores; // pattern givers
    std::size_t bore;                    // which of them this is
    const std::vector<Cell>* cells;      // its readings as they stand after earlier corrections
    const BoreFit* fit;
    Grid* grid;
    double noise_um;
};

// The hypotheses that could matter, and the log weight of the bore as it was typed.
struct Weighed {
    std::vector<Hypothesis> slips;
    double clean = 0;
};
Weighed weigh(const BoreCase& bore);
// The part of it that shifts a column by a station that was passed over (slip_skipped.cpp).
void weighSkipped(const BoreCase& bore, std::vector<Hypothesis>& slips);

// Suspicions from likelihood alone. `workbook` may be null: then no station is known to be empty.
std::vector<Suspicion> judgeBores(const Workbook* workbook, const Survey& survey);

} // namespace borewright::slips
