// SPDX-License-Identifier: GPL-3.0-or-later
// Which size cleans up the block, with the sentences that say so. Part of Results.
#pragma once

#include "core/length/format.h"
#include "core/sizing/size_choice.h"
#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct SizingResult {
    std::vector<int> bores; // of the block, rising
    // By bore, from its last survey "as found" or "before boring" that read it.
    std::vector<std::optional<BoreCleanUp>> cleanUps;
    std::vector<std::string> notKnown; // by bore: why there is none; else empty
    Centring centring = Centring::wornBore;
    Length finishAllowance;
    Length honeStock;
    SizeChoice choice;   // by `centring`
    SizeChoice otherWay; // the same with the cut centred the other way

    // "Bore 4 decides: 0.020 in cleans all six, margin 1.8 ± 0.3 thou." or what is missing.
    std::string headline;
    // What it would take to get one size lower, how the cut was taken to be centred and what the
    // other way would give, bores beyond the last size, what was assumed.
    std::vector<std::string> sentences;
    // How: what comes off with the hone alone, or what the bar cuts to and leaves; finish size and
    // limits. Empty where no size is chosen.
    std::vector<std::string> how;
    std::vector<std::string> cautions; // wall thickness is unseen, …
    std::vector<std::string>
        boreWords; // by bore: what decides there, "3.4355 in: score at 1.40, B"
};

struct Results;
SizingResult sizingOf(const Workbook& workbook, const Results& results, const DisplayUnits& units);

// What the honing page is handed for the chosen offer (of `result.choice.offers`), by bore: only
// bores that it is for, and that are not beyond it unless each bore has its own size.
FinishTargets targetsOf(const SizingResult& result, std::size_t offer, const DisplayUnits& units);
// The same where each bore has its own size.
FinishTargets ownTargetsOf(const SizingResult& result, const DisplayUnits& units);

// A bore as a survey's result read it; nothing where it read nothing.
struct SurveyResult;
struct BoreResult;
std::optional<MeasuredBore> measuredBore(const Workbook& workbook, const SurveyResult& survey,
                                         const BoreResult& bore);

} // namespace borewright
