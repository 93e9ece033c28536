// SPDX-License-Identifier: GPL-3.0-or-later
// What the measuring gear is worth: the figures that the doubt of a reading is reckoned from. Each
// is optional; what is not given counts as nothing, and core/gauging/budget.h says what is missing.
#pragma once

#include "core/workbook/block.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// How a stated ± is meant.
enum class Meant {
    limits,   // nothing beyond it, anything between as likely: u = a/√3
    expanded, // as certificates state it, with k = 2: u = U/2
    standard, // one standard uncertainty
};

struct Gear {
    // The dial's largest error over its range, ±, limits. Moves all readings of a survey together.
    std::optional<TypedLength> dialError;
    // The dial's error between readings that lie close together on it, ±, limits; of each reading.
    std::optional<TypedLength> dialLocalError;
    std::optional<TypedLength> step; // the finest he reads off; nothing = one graduation
    // Standard deviation of one reading at one spot, out and in again each time, and the degrees of
    // freedom that it is known with; nothing = taken as known.
    std::optional<TypedLength> repeatability;
    std::optional<int> repeatabilityFreedom;
    std::optional<TypedLength> master; // doubt of the ring or micrometer it is set on, ±
    Meant masterMeant = Meant::limits;
    std::optional<TypedLength> settingScatter; // standard deviation of setting the gauge on it
    std::optional<TypedLength> drift;          // what zero may wander between checks, ±, limits
    std::optional<TypedLength> driftLimit;     // beyond it between two checks: set the gauge again
    // What tilt and being off the centre leave after rocking, at the most. Both have one sign each,
    // but which of them is left is not known: taken as ± the whole, limits, of each reading.
    std::optional<TypedLength> rocking;
    std::string lastChecked; // "March 2026, certificate 12"
    UnknownFields unknown{};
    friend bool operator==(const Gear&, const Gear&) = default;
};

// Two usual sets of gear, so that nobody needs figures of his own to begin: values from memory of
// common practice, no source. 3.5 in bores; the user's own figures are better.
Gear tenthDialAndRing();          // u of one reading about 0.13 thou
Gear halfThouDialAndMicrometer(); // about 0.28 thou

// Refuses what no gear has: a doubt below zero, a repeatability of zero, no degrees of freedom.
Result<void> checkGear(const Gear& gear);

// The same spot ten times: out and in again between readings.
struct RepeatRun {
    std::string person;
    std::string spot;
    std::vector<TypedLength> typed;
    UnknownFields unknown{};
    friend bool operator==(const RepeatRun&, const RepeatRun&) = default;
};
struct RepeatStudy {
    std::string id; // "r1"; unique in the workbook
    std::string gauge;
    std::string when; // "2026-03-11"
    std::vector<RepeatRun> runs;
    UnknownFields unknown{};
    friend bool operator==(const RepeatStudy&, const RepeatStudy&) = default;
};

} // namespace borewright
