// SPDX-License-Identifier: GPL-3.0-or-later
// A bore as one survey read it: what all sums about size and fit start from.
#pragma once

#include "core/workbook/stations.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct MeasuredAt {
    Length depth;
    std::string axis;
    Length diameter; // at 20 °C where corrected
    Zone zone = Zone::unmapped;
    std::optional<Length> u; // standard uncertainty, where known
};

// A stretch of ring travel that ports cut, by the bore map, whether or not anything was read there.
struct PortStretch {
    Length from;
    Length to;
};

struct MeasuredBore {
    int bore = 1;
    std::string survey; // id of the survey
    std::optional<Length> standardSize;
    std::optional<Length> depth;
    std::vector<MeasuredAt> at; // by depth, then axis; stations with a diameter, not empty
    std::optional<Length> ownU; // of one reading, what does not move all readings alike, standard
    double coverage = 2;        // k for 95 %
    bool complete = true;       // all that the survey asked for was read
    std::vector<PortStretch> ports{}; // by depth
};

// The largest and smallest of a bore's diameters. `at` must not be empty. Ties go to the shallower.
const MeasuredAt& largestOf(const MeasuredBore& bore);
const MeasuredAt& smallestOf(const MeasuredBore& bore);

// The diameter along one axis at a depth, on the straight line between the readings above and
// below; beyond the last reading the last reading. `axis` empty: the larger over the axes. u is the
// larger of the two readings': they share most of it; the zone that of the nearer reading. Nothing
// where the axis was not read.
std::optional<MeasuredAt> diameterAt(const MeasuredBore& bore, Length depth,
                                     const std::string& axis);
// The mean over the axes that were read, interpolated alike; what a ring lies in. Its axis is empty
// where there are several.
std::optional<MeasuredAt> meanDiameterAt(const MeasuredBore& bore, Length depth);

} // namespace borewright
