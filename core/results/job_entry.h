// SPDX-License-Identifier: GPL-3.0-or-later
// What one workbook puts into the shop's ledger of jobs: a plain value, taken from what was
// recorded and what was computed of it. Lengths are exact; they are rounded where they are shown.
#pragma once

#include "core/results/results.h"
#include "core/workbook/workbook.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// Smallest and largest diameter that a survey read in the judged zone of a bore, at 20 °C where
// corrected.
struct SizeSpan {
    Length smallest;
    Length largest;
    friend bool operator==(const SizeSpan&, const SizeSpan&) = default;
};

struct BoreEntry {
    int bore = 1; // engine number
    std::optional<Length> standardSize;
    std::optional<SizeSpan> before; // by the first survey that read it; nothing = never read
    std::optional<SizeSpan> after;  // by the last; nothing where it was read in one survey only
    Verdict verdict = Verdict::notMeasured; // of the last survey that read it
    // Above the standard size, of what the record aims at: the bore's own target, else the only
    // finish limits. Nothing where neither says.
    std::optional<Length> oversize;
    friend bool operator==(const BoreEntry&, const BoreEntry&) = default;
};

// One survey and what it was read with.
struct GaugeEntry {
    std::string survey; // name
    std::string kind;   // "as found"
    Timestamp time;
    std::string gauge;       // "dial bore gauge no. 2", as typed; may be empty
    std::string setOn;       // "ring 3.5000"
    std::string lastChecked; // "March 2026, certificate 12"
    std::string bores;       // that it read: "1, 2 and 6"
    friend bool operator==(const GaugeEntry&, const GaugeEntry&) = default;
};

// A stone of the record and how fast it cut: only passes that were honed in earnest, not struck
// out, with a survey on either side.
struct StoneEntry {
    std::string name;
    std::string grit;
    Surface surface = Surface::iron; // of the bores it cut; one entry a surface
    int passes = 0;                  // measured; 0 = how fast is not known
    double strokes = 0;              // of these passes
    Length tookOff{};                // of these passes together, on the diameter
    friend bool operator==(const StoneEntry&, const StoneEntry&) = default;
};
// On the diameter, a stroke; nothing where no pass was measured.
std::optional<double> micrometresPerStroke(const StoneEntry& stone);

struct JobEntry {
    std::string file;          // path as the caller gave it: what tells one job from another
    std::uint64_t content = 0; // hash of the file's bytes, as the caller reckoned it
    std::string customer;
    std::string engine;
    std::string serial;
    std::optional<Timestamp> opened;     // time of the earliest survey
    std::optional<Timestamp> lastSurvey; // of the latest
    DisplayUnits units;                  // that the job is naturally shown in
    bool invented = false;               // a demonstration
    std::vector<BoreEntry> bores;        // in the order of the block
    std::vector<GaugeEntry> gauges;      // in the order of the surveys
    std::vector<StoneEntry> stones;      // in the order of the record
    friend bool operator==(const JobEntry&, const JobEntry&) = default;
};

// `results` must have been computed from `workbook`.
JobEntry jobEntry(const Workbook& workbook, const Results& results, const std::string& file,
                  std::uint64_t content);

// Over all bores: smallest and largest of the spans; the weightiest verdict (not measured for a job
// without bores); the greatest oversize.
std::optional<SizeSpan> sizeBefore(const JobEntry& job);
std::optional<SizeSpan> sizeAfter(const JobEntry& job);
Verdict worstVerdict(const JobEntry& job);
std::optional<Length> oversizeOf(const JobEntry& job);

// "iron", "iron sleeve in aluminium", "plated", "bare aluminium".
std::string_view surfaceName(Surface surface);

} // namespace borewright
