// SPDX-License-Identifier: GPL-3.0-or-later
// What a ring lies in: the mean diameter of a bore at a depth, where its gap was measured, and
// where the bore is narrowest in its travel.
#pragma once

#include "core/length/format.h"
#include "core/sizing/measured_bore.h"
#include "core/workbook/fit_record.h"

#include <optional>

namespace borewright {

struct LiesIn {
    Length diameter; // mean over the axes
    std::optional<Length> u;
    int axes = 1; // readings on so many
};

// Zones that a ring runs through.
bool inRingTravel(Zone zone);

// Between readings interpolated (meanDiameterAt); where ports cut an axis away, of the walls left.
// Nothing where the bore was not read.
std::optional<LiesIn> liesIn(const MeasuredBore& bore, Length depth);

// Where the ring's gap was measured. Refuses: no gap or none left, no bore or depth given, a depth
// outside what was read of that bore. `units`: of the words.
Result<LiesIn> measuredWhere(const MeasuredBore& measured, const Ring& ring,
                             const std::optional<DisplayUnits>& units);

// The smallest mean diameter in the ring's travel. Refuses: nothing read there.
Result<Length> narrowestOf(const MeasuredBore& bore);

// π·D: what a gap grows by when the diameter does by D.
Length growthOfGap(Length diameter);

} // namespace borewright
