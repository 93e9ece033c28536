// SPDX-License-Identifier: GPL-3.0-or-later
// Size, out-of-round, taper and lead of one bore, from two-point diameters (ISO 14405-1) at
// stations in the judged zone.
#pragma once

#include "core/gauging/gauging.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// A diameter at a depth on an axis.
struct Diameter {
    Length depth;
    std::string axis;
    Length size;
};

struct Extreme {
    Length value;
    Length depth;
    std::string axis;
};

struct AxisTaper {
    std::string axis;
    Length taper;     // by the taper rule, ≥ 0
    Length lead;      // lowest station less topmost: plus = larger at the closed end
    Length largestAt; // depth of the axis's largest and smallest diameter
    Length smallestAt;
};

struct BoreForm {
    Extreme largest;
    Extreme smallest;
    Length mean; // of all diameters, to the picometre
    // Largest less smallest over the axes at one depth; of the bore: the largest over depths where
    // at least two axes were read. A difference of diameters: twice the radial roundness of
    // ISO 1101 for a pure oval on the axes. Nothing where no depth has two axes.
    struct OutOfRound {
        Length value;
        Length depth;
    };
    std::optional<OutOfRound> outOfRound;
    // Axes with at least two depths, in the order of the block. The bore's taper is the largest.
    std::vector<AxisTaper> tapers;
    std::optional<AxisTaper> worstTaper;
    // Mean over the axes at the lowest depth less the same at the topmost, of those axes read at
    // both: plus = closed end larger.
    std::optional<Length> lead;
};

// The form of `diameters` (one per station); nothing where there is none. Ties go to the
// shallower depth, then to the axis first in `axisOrder`.
std::optional<BoreForm> formOf(const std::vector<Diameter>& diameters,
                               const std::vector<std::string>& axisOrder, TaperRule rule);

// Largest less smallest along one axis, the worst axis, over all depths given: what the aim of
// straightness is answered by. Nothing where no axis has two depths.
std::optional<Length> straightness(const std::vector<Diameter>& diameters);

} // namespace borewright
