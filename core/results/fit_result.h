// SPDX-License-Identifier: GPL-3.0-or-later
// Which piston in which bore, which ring, with what clearance and gap, with the sentences that say
// so. Part of Results.
#pragma once

#include "core/length/format.h"
#include "core/sizing/matching.h"
#include "core/sizing/ring_gap.h"
#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// A bore with what goes in it, as decided by the user, else as proposed.
struct BoreFit {
    int bore = 1;
    std::string survey;    // id of the survey its sizes are from; empty = never read
    bool finished = false; // that survey is a final one
    // What it measures now is not what piston and rings will run in: other bores are finished, a
    // check or a target says that it is under the hone, or no piston goes in.
    bool toHone = false;
    std::optional<std::size_t> piston; // place in the record
    bool decided = false;
    std::optional<Clearance> clearance;
    std::string clearanceRefused;
    struct RingHere {
        int groove = 1;
        std::optional<std::size_t> ring; // place in the record
        bool decided = false;
        std::optional<RingGap> gap;
        std::string refused;
    };
    std::vector<RingHere> rings; // by groove
};

struct FitResult {
    // By number, those not to be honed: as the last final survey has them, else as found.
    std::vector<MeasuredBore> measured;
    Matching matching;           // of those
    std::vector<RingDeal> deals; // of those, by groove
    std::vector<BoreFit> bores;  // every bore of the block, by number
    // Of bores to be honed, where it can be said and may be advised: not beyond the engine maker's
    // greatest oversize, nor so small that wear or damage is left.
    std::vector<FinishForPiston> finish;
    std::vector<std::string> finishWarnings; // which were left out and why, what is uncertain
    std::string finishRefused;               // why not
    bool empty = true;                       // no piston, no ring: nothing to show on a sheet

    // "Best: bores 1–6 take pistons 3 5 1 6 2 4, no clearance more than 0.1 thou from 4.2; eight
    // ways are as good.", "Any of these: …", or what is missing.
    std::string headline;
    std::vector<std::string> sentences; // ties, "any of these", doubts not known, as found only
    std::string ringHeadline;
    std::vector<std::string> ringSentences;
    std::vector<std::string> cautions;
};

struct Results;
FitResult fitOf(const Workbook& workbook, const Results& results, const DisplayUnits& units);

// What the honing page is handed: each bore's finish size from its piston.
FinishTargets pistonTargets(const FitResult& fit, const FitRecord& record,
                            const DisplayUnits& units);

} // namespace borewright
