// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that belong together, with the gauge setting they were taken under.
#pragma once

#include "core/length/temperature.h"
#include "core/workbook/gear.h"
#include "core/workbook/stations.h"
#include "core/workbook/timestamp.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

enum class SurveyKind {
    asFound,      // judged by the worn limits
    beforeBoring, // judged by the worn limits
    check,        // between passes of the hone: by the finish limits, as "not yet" while under way
    final,        // judged by the finish limits
};

// The dial as it looks.
struct Dial {
    enum class Face {
        balanced, // zero at the top, numbers rising both ways
        round,    // numbers rising once round: −3.5 may look like 96.5
    };
    enum class Larger { plus, minus }; // what the pointer does in a larger bore

    TypedLength graduation; // one division, > 0
    TypedLength oneTurn;    // the pointer once round, ≥ graduation
    TypedLength travel;     // how far the dial moves in all; a reading beyond cannot be
    Face face = Face::balanced;
    Larger larger = Larger::plus;
    UnknownFields unknown{};
    friend bool operator==(const Dial&, const Dial&) = default;
};

// Dials as shops have them: graduation and turn are common practice, no source; travel five turns.
Dial tenthDial();      // 0.0001 in, one turn 0.010 in
Dial halfThouDial();   // 0.0005 in, one turn 0.050 in
Dial micrometreDial(); // 0.001 mm, one turn 0.2 mm
Dial hundredthDial();  // 0.01 mm, one turn 1 mm

// What a typed number means.
enum class Entry {
    deviation, // from the set size, with the dial's own sign
    diameter,  // the size itself
};

// What expands how, for bringing a size to 20 °C (see constants.h).
enum class Expansion { greyIron, sleeveInAluminium, aluminium, gaugeSteel };
double expansionPerCelsius(Expansion material);

struct GaugeSetting {
    std::string gauge; // "dial bore gauge no. 2"
    std::string setOn; // "0-4 micrometer", "ring 3.5000"
    std::optional<TypedLength> setSize;
    Entry entry = Entry::deviation;
    Dial dial = tenthDial();
    // Size is brought to 20 °C only where both temperatures are given.
    std::optional<TypedTemperature> masterTemperature;
    std::optional<TypedTemperature> blockTemperature;
    Expansion masterExpansion = Expansion::gaugeSteel;
    Expansion blockExpansion = Expansion::greyIron;
    // Block, master and gauge lay in one room overnight: no thermometer is needed, and only the
    // room's own distance from 20 °C is in doubt.
    bool stoodTogether = false;
    std::optional<TypedTemperature>
        closedEndTemperature;               // of the block; blockTemperature = open end
    std::optional<double> gaugeWarmedBy;    // °C since it was set, by the hand
    std::optional<double> differenceDoubt;  // ± °C, block against master
    std::optional<double> temperatureDoubt; // ± °C, both together
    Gear gear;
    UnknownFields unknown{};
    friend bool operator==(const GaugeSetting&, const GaugeSetting&) = default;
};

// What of a setting belongs to the gauge, whatever it is set to: no set size, no temperatures.
GaugeSetting keptPart(GaugeSetting setting);
// What a later survey begins with: the gauge, its gear and the thermometers of the last one, but a
// warmth and a set size of its own.
GaugeSetting gaugeAgain(const GaugeSetting& last);

// The gauge put back on its master: what it showed instead of zero.
struct ZeroCheck {
    TypedLength shows;
    Timestamp time;
    UnknownFields unknown{};
    friend bool operator==(const ZeroCheck&, const ZeroCheck&) = default;
};

// Two temperatures of the cooling block some minutes apart, and the room's.
struct Cooling {
    TypedTemperature room;
    TypedTemperature earlier;
    TypedTemperature later;
    double minutesApart = 0;
    UnknownFields unknown{};
    friend bool operator==(const Cooling&, const Cooling&) = default;
};

struct Strike {
    std::string reason;
    Timestamp time;
    std::string who{}; // as the bench calls him; empty = not known
    UnknownFields unknown{};
    friend bool operator==(const Strike&, const Strike&) = default;
};

// What the user typed at a station. Several unstruck at one station are repeats.
struct Reading {
    Station station;
    TypedLength typed;
    Timestamp time;
    std::optional<double> angleOffAxis; // degrees, where a port made him turn the gauge
    std::optional<Strike> struck;       // struck out, with its reason; never deleted
    // Why this value was accepted in place of one that was struck out: "digits swapped".
    std::optional<std::string> accepted;
    bool kept = false; // looked at again and kept as it is, however odd
    UnknownFields unknown{};
    friend bool operator==(const Reading&, const Reading&) = default;
};

// Everything of a survey but its readings.
struct SurveyHeader {
    std::string id; // "s1"; unique in the workbook
    std::string name;
    SurveyKind kind = SurveyKind::asFound;
    Timestamp time;
    GaugeSetting gauge;
    std::optional<bool> plate;           // torque plate on or off; nothing = not said
    std::optional<std::string> limitSet; // id; nothing = the only set of its kind
    // What is asked for: nothing = the whole plan of the block. What was not asked for is never
    // missing.
    std::optional<std::vector<Station>> asked;
    std::vector<ZeroCheck> zeroChecks;
    std::optional<int> minutesSinceWarm; // since the last pass or wash, when it began
    std::optional<Cooling> cooling;
    std::string notes;
    UnknownFields unknown;
    friend bool operator==(const SurveyHeader&, const SurveyHeader&) = default;
};

struct Survey {
    SurveyHeader header;
    std::vector<Reading> readings; // in the order typed
    friend bool operator==(const Survey&, const Survey&) = default;
};

// Explains what cannot stand in a survey's heading: gear that is none, a doubt below zero, times
// that no one waits.
Result<void> checkHeader(const SurveyHeader& header);

// "as found", "before boring", "check", "final".
std::string_view nameOf(SurveyKind kind);

} // namespace borewright
