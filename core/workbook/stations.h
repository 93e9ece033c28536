// SPDX-License-Identifier: GPL-3.0-or-later
// Places to measure: which the map proposes, which zone each lies in, where there is no wall, and
// in which order the hand goes round them.
#pragma once

#include "core/workbook/block.h"

#include <compare>
#include <string>
#include <vector>

namespace borewright {

// A depth on an axis of a bore.
struct Station {
    int bore = 1;
    Length depth;
    std::string axis;
    friend auto operator<=>(const Station&, const Station&) = default;
};

enum class Zone {
    unmapped,   // no map: judged
    ridgeLand,  // beyond the top ring at the combustion end: unworn witness, not judged
    ringTravel, // judged
    portBand,   // ring travel that ports cut: judged where there is wall
    skirtOnly,  // beyond ring travel at the crankcase end: not judged
};

// The zone at `depth`. Ring travel runs between the map's two ring lines; the ridge land lies
// beyond the top-ring line on the combustion side. A limit that is not given does not bound.
Zone zoneAt(const Bore& bore, Length depth);
// Whether readings at `depth` count for the verdict: the level's own word, else its zone.
bool isJudged(const Bore& bore, Length depth);
// Whether the gauge finds wall at a depth on an axis: the user's mark, else the port bands.
bool hasWall(const Bore& bore, Length depth, const std::string& axis);
// The lowest depth that the gauge reaches: depth of the bore less the gauge's foot, if both known.
std::optional<Length> gaugeReach(const Bore& bore);

// Levels proposed from the map: half-way up the ridge land (a witness), near the top of ring
// travel, half-way to the ports, just above and just below each port band, and the lowest that the
// gauge reaches; rounded to 0.05 in or 1 mm, in the unit of the bore's depth. With a depth but no
// map: five levels spread evenly. With no depth: none.
std::vector<Level> proposeLevels(const Bore& bore);

// All stations of a block's plan with wall to touch: per bore (in order of number), each level on
// each axis.
std::vector<Station> plannedStations(const Block& block);

// In which order the hand goes.
enum class Order {
    downAndUp,    // down the first axis and up the second, bore by bore: fewest moves (default)
    downEach,     // down each axis from the open end, bore by bore
    levelByLevel, // all axes at a level before the next level, bore by bore
    acrossBlock,  // one level through all bores, axis by axis, then the next level
};
// `stations` put in that order; axes in the order of the block.
std::vector<Station> inOrder(const Block& block, std::vector<Station> stations, Order order);

} // namespace borewright
