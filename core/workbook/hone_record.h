// SPDX-License-Identifier: GPL-3.0-or-later
// What was recorded of honing: the hone, the stones, each pass of a stone through a bore, what was
// done to the stones between, and how the user divides the work into stages.
#pragma once

#include "core/length/number_text.h"
#include "core/workbook/block.h"
#include "core/workbook/timestamp.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

enum class StoneKind {
    rough,  // takes stock
    finish, // takes the last thou and leaves the surface
};

// How fast a stone was found to cut elsewhere, carried here with it: the start of what is learned
// in this workbook. Natural logarithm of micrometres off the diameter a stroke.
struct StoneExperience {
    double logRate = 0;
    double logRateDoubt = 0; // one standard deviation, > 0
    int passes = 0;          // that it rests on
    UnknownFields unknown{};
    friend bool operator==(const StoneExperience&, const StoneExperience&) = default;
};

// A set of stones as it goes into the hone.
struct Stone {
    std::string id;   // "k1"; unique in the workbook, never changes
    std::string name; // "short 100"
    std::string grit; // in his words: "100"
    StoneKind kind = StoneKind::rough;
    // The abrasive on its carrier, from the carrier's lower end up: what lies below `begins` is
    // guide or dead length, and keeps the abrasive that far from the closed end.
    TypedLength begins;
    TypedLength ends; // > begins; the abrasive is ends − begins long
    // How far the abrasive may stand out of either end, where there is room: common practice, a
    // third of its length. Nothing = that.
    std::optional<TypedLength> outOfOpenEnd;
    std::optional<TypedLength> outOfClosedEnd;
    std::optional<StoneExperience> experience;
    UnknownFields unknown{};
    friend bool operator==(const Stone&, const Stone&) = default;
};

// The hone and how it is driven.
struct Hone {
    std::optional<double> speedRpm; // of the spindle
    double beatsPerMinute = 60;     // a beat is a stroke: down and back
    std::string feed;               // spring or feed setting, in his words
    std::optional<bool> oil;        // honed with oil, or dry; nothing = not said
    UnknownFields unknown{};
    friend bool operator==(const Hone&, const Hone&) = default;
};

// Where each stone stops: on the diameter, what is still to go. Nothing = common practice
// (core/honing/stages.h).
struct HoneStages {
    std::optional<TypedLength> roughStopsAt;  // 4.5 thou: full rough stones
    std::optional<TypedLength> closedEndLead; // 0.8 thou: the short stone brings the closed end
    std::optional<TypedLength> nextStopsAt;   // 1.0 thou: what the finish stones take
    std::optional<TypedLength> coolBelow;     // 0.3 thou to go: only on a cool bore
    UnknownFields unknown{};
    friend bool operator==(const HoneStages&, const HoneStages&) = default;
};

// One stroking of a set-up: from … to is where the lower end of the abrasive reverses.
struct StrokeWindow {
    TypedLength from;              // the upper reversal, ≤ to
    TypedLength to;                // the lower reversal
    std::optional<double> strokes; // down and back; else `seconds` at the hone's beat
    std::optional<double> seconds;
    double holdSeconds = 0; // standing at the lower reversal, in all
    UnknownFields unknown{};
    friend bool operator==(const StrokeWindow&, const StrokeWindow&) = default;
};

// What was done with one stone in one bore before it was measured again: a set-up.
struct Pass {
    std::string id; // "h1"; unique in the workbook
    int bore = 1;
    std::string stone; // id
    Timestamp time;    // when it ended
    // The last survey before it (id; empty = none): places it among the surveys, whatever the
    // clocks say.
    std::string after;
    std::vector<StrokeWindow> windows;
    std::optional<double> speedRpm; // where it was not the hone's
    bool simulated = false;         // played by the demonstration, nothing was honed
    std::string notes;
    std::optional<std::string> struck; // struck out, with why; never deleted
    UnknownFields unknown{};
    friend bool operator==(const Pass&, const Pass&) = default;
};

// What was done to a stone between passes.
struct StoneCare {
    enum class Kind { turnedEndForEnd, runInReverse, dressed };
    std::string id;    // "c1"
    std::string stone; // id
    Kind kind = Kind::dressed;
    Timestamp time;
    std::string afterPass; // id of the last pass logged before it; empty = before all
    std::optional<std::string> struck;
    UnknownFields unknown{};
    friend bool operator==(const StoneCare&, const StoneCare&) = default;
};

// Done to a bore at the end; the sheet warns until they are.
struct BoreTicks {
    bool portsChamfered = false;
    bool washed = false;
    UnknownFields unknown{};
    friend bool operator==(const BoreTicks&, const BoreTicks&) = default;
};

struct HoneRecord {
    Hone hone;
    std::vector<Stone> stones;
    HoneStages stages;
    std::vector<Pass> passes;     // in the order logged
    std::vector<StoneCare> care;  // in the order logged
    std::map<int, BoreTicks> ticks; // by engine number
    UnknownFields unknown{};
    friend bool operator==(const HoneRecord&, const HoneRecord&) = default;
};

const Stone* findStone(const HoneRecord& record, const std::string& id);
// By id, else by its name as typed (case and outer spaces do not count).
const Stone* stoneCalled(const HoneRecord& record, const std::string& nameOrId);
std::string freshStoneId(const HoneRecord& record);
std::string freshPassId(const HoneRecord& record);
std::string freshCareId(const HoneRecord& record);

// Strokes of a window: as logged, else its seconds at the beat.
double strokesOf(const StrokeWindow& window, const Hone& hone);

// The lowest and the highest that the lower end of a stone's abrasive may stand in a bore: the
// carrier touches the closed end, or the abrasive stands out as far as it may. Refuses, saying why,
// where the stone is longer than the bore or the bore has no depth.
struct StoneReach {
    Length highest; // depth of the abrasive's lower end when it stands out of the open end
    Length lowest;
};
Result<StoneReach> reachOf(const Stone& stone, const Bore& bore);

// What to say before a stone goes into a bore of that surface; empty = nothing. A pass in a plated
// bore is refused with it, in bare aluminium it is a caution.
std::string surfaceCaution(Surface surface);

// Refuse, with the place, what cannot stand: a stone of no length, a window upside down or through
// the closed end, no strokes at all, a pass of a stone or bore that is not there, a plated bore.
// A pass struck out need not fit its block.
Result<void> checkStone(const Stone& stone);
Result<void> checkPass(const Pass& pass, const HoneRecord& record, const Block& block);
Result<void> checkHone(const HoneRecord& record);                     // alone
Result<void> checkHone(const HoneRecord& record, const Block& block); // beside its block

} // namespace borewright
