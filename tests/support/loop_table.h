// SPDX-License-Identifier: GPL-3.0-or-later
// What many runs of the closed loop come to, as one row of a table.
#pragma once

#include "tests/support/closed_loop.h"

namespace borewright::test {

struct LoopSummary {
    std::size_t runs = 0;
    double straight = 0; // share within straight_um over the stations, true
    double setUps = 0, setUpsP90 = 0;
    double spread = 0, spreadP95 = 0; // over the stations
    double spreadAll = 0, spreadAllP90 = 0;
    double spreadMost = 0; // median, all but the last 6 mm above the stop
    double most = 0;     // beyond the finish size, of any run at any time
    double over = 0;     // share of runs beyond it by more than overCap_um
    double underP90 = 0; // how far the smallest station is left under the finish size
    double changes = 0, windows = 0;
    double unsaid = 0; // share of runs that never said "done"
    // Of what was promised, slips of the reader left out (beyond 8 sd).
    std::size_t promises = 0;
    double covered = 0; // share of readings within 1.96 sd
    double chanceMean = 0, chanceHappened = 0;
    std::size_t chances = 0;
    double chanceLargest = 0;
    double thinking_s = 0, slowest_s = 0; // mean a plan, slowest
};

LoopSummary summaryOf(const std::vector<LoopResult>& results);

// Two lines a row: the figures, and what was promised where anything was.
std::string loopTableHead();
std::string loopTableRow(const std::string& policy, const std::string& bench,
                         const LoopSummary& summary);

// Share p of sorted values lies below; 0 where there are none.
double quantileOf(std::vector<double> values, double p);

} // namespace borewright::test
