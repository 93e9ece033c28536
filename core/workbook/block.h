// SPDX-License-Identifier: GPL-3.0-or-later
// The casting: its bores, what lies where along their depth, where they are measured.
// Depth runs from the open end (0), where gauge and hone go in, down to the closed end.
#pragma once

#include "core/length/number_text.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace borewright {

// Fields of a file that this version does not know, kept as raw JSON: (key, value).
using UnknownFields = std::vector<std::pair<std::string, std::string>>;

enum class Arrangement { inLine, vee, opposed };
enum class Surface { iron, ironSleeveInAluminium, plated, bareAluminium };
enum class End { open, closed };

// A direction across the bore. The first two are A (along the crankshaft) and B (across it, the
// exhaust side); labels can be changed, more can be added.
struct Axis {
    std::string id;          // "A": what readings refer to; never changes once used
    std::string label;       // "along the crankshaft"
    double angleDegrees = 0; // from the crankshaft's line, 0 … 180
    UnknownFields unknown{};
    friend bool operator==(const Axis&, const Axis&) = default;
};

// A stretch of depth where ports cut the wall, and the axes on which no wall is left to touch.
struct PortBand {
    TypedLength from;
    TypedLength to;
    std::vector<std::string> axes; // ids of the axes it cuts
    UnknownFields unknown{};
    friend bool operator==(const PortBand&, const PortBand&) = default;
};

// What lies where along the depth. Everything is optional; without it levels go by depth alone.
struct BoreMap {
    std::optional<TypedLength> topRingLine;    // depth of the top ring at top dead centre
    std::optional<TypedLength> lowestRingLine; // the other end of ring travel
    std::vector<PortBand> ports;
    std::optional<TypedLength> gaugeFoot; // what the gauge's foot keeps it away from the closed end
    UnknownFields unknown{};
    friend bool operator==(const BoreMap&, const BoreMap&) = default;
};

// Whether readings at a level count for the verdict.
enum class Judging {
    byMap, // in ring travel: yes; elsewhere: no; with no map: yes
    always,
    never,
};

// A depth at which the bore is measured, on every axis.
struct Level {
    TypedLength depth;
    Judging judging = Judging::byMap;
    UnknownFields unknown{};
    friend bool operator==(const Level&, const Level&) = default;
};

// The user's own word on whether the gauge finds wall at a station, over what the map says.
struct WallMark {
    Length depth;
    std::string axis;
    bool wall = false;
    UnknownFields unknown{};
    friend bool operator==(const WallMark&, const WallMark&) = default;
};

struct Bore {
    int number = 1; // as the engine has it; what readings and limits refer to
    std::optional<TypedLength> standardSize;
    std::optional<TypedLength> depth;
    Surface surface = Surface::iron;
    std::string openEnd; // what the open end is, by name: "head face", "crankcase face"
    std::optional<TypedLength> roomAtOpenEnd; // a stone may stand out this far; 0 = blind
    std::optional<TypedLength> roomAtClosedEnd;
    End combustionEnd = End::open;
    BoreMap map;
    std::vector<Level> levels; // by rising depth
    std::vector<WallMark> wallMarks;
    UnknownFields unknown;
    friend bool operator==(const Bore&, const Bore&) = default;
};

struct Block {
    Arrangement arrangement = Arrangement::inLine;
    // In the order of the plan: in line from the front; a V or an opposed block front to back in
    // pairs, left bank first (so places 0 and 1 are the front pair).
    std::vector<Bore> bores;
    std::vector<Axis> axes;
    UnknownFields unknown;
    friend bool operator==(const Block&, const Block&) = default;
};

// The usual two axes, labelled by common practice.
std::vector<Axis> usualAxes();

// The bore with this engine number, or null.
const Bore* findBore(const Block& block, int number);
Bore* findBore(Block& block, int number);
const Axis* findAxis(const Block& block, const std::string& id);

// Where a bore stands on the plan from above: row 0 at the front; column 0 the left bank.
struct PlanPlace {
    int row = 0;
    int column = 0;
    friend bool operator==(const PlanPlace&, const PlanPlace&) = default;
};
PlanPlace planPlace(Arrangement arrangement, int index);

} // namespace borewright
