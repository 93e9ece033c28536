// SPDX-License-Identifier: GPL-3.0-or-later
// What next with the hone: for each bore what stands, the next set-up with what is expected of it,
// and for the block which stone to fit. Screens, command line and files show this and compute
// nothing themselves. It takes a search of up to a second, so it is no part of Results: it is asked
// for apart, off the window's thread, with progress and cancel. The same workbook gives the same
// outlook.
#pragma once

#include "core/honing/planning.h"
#include "core/results/results.h"
#include "core/workbook/hone_record.h"

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// How the user wants it planned.
struct HoneWishes {
    bool oneStone = false;             // no change of stone in this bore's plan
    bool noShort = false;              // "I have no short stone"
    bool fewerStops = false;           // less straight, fewer stops to measure
    std::optional<std::string> fitted; // id of the stone that is in the hone now
    friend bool operator==(const HoneWishes&, const HoneWishes&) = default;
};

// A line against depth, µm of the diameter beyond the finish size, at depth_mm of HoneCurves.
struct HoneLine {
    std::vector<double> mean_um;
    std::vector<double> band_um; // 95 % of the larger axis, either way
};
struct HoneCurves {
    std::vector<double> depth_mm;
    HoneLine now;
    HoneLine then; // after the next set-up; empty where there is none
};

struct PlannedWindow {
    TypedLength from; // depth of the abrasive's lower end
    TypedLength to;
    double strokes = 0; // whole
    double seconds = 0; // at the hone's beat
    double holdSeconds = 0;
};

struct PlannedSetUp {
    std::string stone; // id
    std::vector<PlannedWindow> windows;
    std::vector<Station> measure; // afterwards, most telling first
    std::string sentence;         // "Short stone: 24 s with its lower end from 3.3 to 4.04 in, …"
    double minutes = 0;           // with changing, washing, measuring: common practice
    double chanceOver = 0;        // of any depth going over size
    std::string overWords;        // "less than 1 chance in 1000 that any depth goes over"
    double spread_um = 0;         // expected over the stations afterwards
    double spreadAll_um = 0;      // over all depths
};

// An alternative with its price.
struct HoneAlternative {
    std::string name;     // "one stone only"
    std::string sentence; // "two stops more, 0.1 thou less straight"
    bool possible = false;
};

struct BoreOutlook {
    int bore = 1;
    HoneOutcome outcome = HoneOutcome::notMeasured;
    std::string headline;               // the set-up in one sentence, or "… stop", or why not
    std::vector<std::string> sentences; // what else: lead and its trend, warmth, cautions of size
    std::optional<PlannedSetUp> next;
    std::vector<std::string> outline; // the rest of the plan, a line a set-up; all where it waits
    int setUpsLeft = 0;
    int stoneChanges = 0;
    bool waits = false; // for another stone: nothing to do in this bore at this stop
    // Where to read, the bore having been honed since it was measured; most telling first.
    std::vector<Station> toRead;
    bool good = false; // straight and to size beyond doubt, whatever ended it
    HoneCurves curves;
    std::optional<double> cap_um;   // upper size limit beyond the finish size
    std::optional<double> lower_um; // lower size limit
    std::optional<Length> finishSize;
    // The last check against what was expected.
    struct Checked {
        std::string survey; // id
        std::vector<Found::At> readings;
        bool surprised = false;
        std::vector<std::string> sentences; // expected against found, what could explain it
    };
    std::optional<Checked> checked;
    std::vector<HoneAlternative> alternatives; // filled where asked for
    std::vector<std::string> oddities;         // passes out of time order, a survey missing, …
    bool modelOnly = true; // no pass of the next stone has been measured: "model, not measured"
};

// What has been learned of a stone.
struct StoneOutlook {
    std::string stone;        // id
    double rate_um = 0;       // off the diameter a stroke
    double rateFactor95 = 1;  // between rate/this and rate·this with 95 %
    int passes = 0;           // measured
    double wedge_um = 0;      // of the face: what its lower end stands back against its upper end,
    double wedgeDoubt_um = 0; // as printed on the diameter; standard
    double longer_mm = 0;     // than entered, as it seems by how it cuts; 0 = nothing speaks for it
    std::string sentence;     // "takes 1.9 thou ± 0.3 in 60 strokes; its face is straight …"
    std::optional<std::string> advice; // turn end for end, dress, measure
};

struct HoneOutlook {
    std::vector<BoreOutlook> bores;     // that were asked for, by number
    std::vector<StoneOutlook> stones;   // as in the record
    std::string headline;               // the block's next stop in one sentence
    std::vector<std::string> sentences; // stops and stone changes left, how long
    std::optional<std::string> fit;     // id of the stone to fit for this stop
    int stopsLeft = 0;
    int changesLeft = 0;
    std::vector<std::string> cautions; // of the work itself
    std::string refused;               // why nothing can be planned at all
    bool cancelled = false;
};

// What was planned before, so that a re-plan is quick. Bound to nothing: any workbook may use it,
// but what it holds must have come from the same job. Safe to keep between calls.
class HoneMemory;
std::shared_ptr<HoneMemory> newHoneMemory();

using HoneProgress = std::function<bool(double)>; // false = give up

// Plans these bores (empty = all). `withAlternatives` costs several searches.
HoneOutlook honeOutlook(const Workbook& workbook, const Results& results, const DisplayUnits& units,
                        const HoneWishes& wishes, const std::vector<int>& bores,
                        bool withAlternatives, const HoneProgress& progress = {},
                        const std::shared_ptr<HoneMemory>& memory = {});

// What a set-up of the user's own in this bore would do: expected curves, chance of going over, in
// words; or why it cannot be done (through the closed end, no strokes, a stone that is not there).
struct OwnSetUp {
    HoneCurves curves;
    double chanceOver = 0;
    bool forbidden = false; // more than 1 % chance of going over
    std::vector<std::string> sentences;
};
Result<OwnSetUp> foreseeOwn(const Workbook& workbook, const Results& results,
                            const DisplayUnits& units, int bore, const std::string& stone,
                            const std::vector<StrokeWindow>& windows,
                            const std::shared_ptr<HoneMemory>& memory = {});

// The next set-ups as JSON ($defs/honePlan of resources/results.schema.json), lengths in _mm.
std::string honePlanFile(const Workbook& workbook, const HoneOutlook& outlook);

} // namespace borewright
