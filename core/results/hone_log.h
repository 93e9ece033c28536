// SPDX-License-Identifier: GPL-3.0-or-later
// What was done with the hone, in order, bore by bore: passes between surveys, what each took off,
// what is odd about the log, what is still to be ticked. Part of Results; no search.
#pragma once

#include "core/length/format.h"
#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct LoggedPass {
    std::string pass;                 // id
    std::string stone;                // name
    std::string words;                // "24 strokes 3.3–4.04, 8 strokes 3.9–4.04 in"
    std::string before;               // id of the survey of this bore before it; empty = none
    std::string behind;               // id of the survey of this bore after it; empty = none yet
    std::optional<Length> tookOff;    // mean of what both surveys read, where no pass lies between
    std::optional<Length> leadBefore; // of the closed end, signed
    std::optional<Length> leadBehind;
    bool struck = false;
    bool simulated = false;
};

struct BoreHoneLog {
    int bore = 1;
    std::vector<LoggedPass> passes; // in the order of the work
    bool waitsForSurvey = false;    // the last thing was a pass
    std::optional<Timestamp> lastPass;
    std::vector<std::string> oddities; // out of time order, a survey missing between passes, …
    std::vector<std::string> toTick;   // "ports chamfered", "washed": not yet done
    std::optional<double> crosshatchDegrees; // of the last finish pass: angle between the scratches
    std::string crosshatchWords;             // with the convention, or why it is not known
};

struct HoneLog {
    bool empty = true;                 // no pass logged: nothing to show on a sheet
    std::vector<BoreHoneLog> bores;    // every bore with passes or a target, by number
    std::vector<std::string> warnings; // for the sheet: "bore 3: not ticked as washed"
    std::vector<std::string> cautions;
};

struct Results;
HoneLog honeLogOf(const Workbook& workbook, const Results& results, const DisplayUnits& units);

} // namespace borewright
