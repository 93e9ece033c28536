// SPDX-License-Identifier: GPL-3.0-or-later
// A ring's gap anywhere in any bore from one gap measured at a known place:
//   gap(z) = gap0 + π·(D(z) − D0)
// D the mean diameter over the axes. The ring is taken as inextensible and closing on its bore all
// round; at room temperature. "About 3 thou of gap a thou of bore" is common practice, no source.
#pragma once

#include "core/length/format.h"
#include "core/sizing/assignment.h"
#include "core/sizing/measured_bore.h"
#include "core/verdict/verdict.h"
#include "core/workbook/fit_record.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct GapAt {
    Length depth;
    Length gap;
};
// How much to take off, in steps: measured again after each.
struct Filing {
    // So that the smallest gap becomes the aim, no less than the lower limit and its guard band w;
    // less where the largest would pass the upper limit, and then in whole tenths of a thou or
    // micrometres, as it is shown. That limit is kept without a guard: a gap too large leaks, one
    // too small seizes.
    Length total;
    // Each the step, the last what is left; what is left but would be shown as nothing is added to
    // the one before. Empty if over mostFileSteps.
    std::vector<Length> steps;
    bool cutShort = false;
};
inline constexpr int mostFileSteps = 200;
struct RingGap {
    // By depth: ring travel, levels with a reading. Where ports cut an axis away, D is the mean of
    // the walls that are left there.
    std::vector<GapAt> at;
    GapAt smallest; // measure here
    GapAt largest;
    // Where ports cut the ring's travel: the smallest gap above and below the bands.
    std::optional<GapAt> abovePorts;
    std::optional<GapAt> belowPorts;
    // Of the smallest, standard: √(u_ring² + π²·u_ΔD²). Between readings of one survey what moves
    // them all alike cancels in ΔD. Nothing where the readings' is not known, and where the gap
    // stands as it was measured with a doubt not given.
    std::optional<Length> u;
    bool ringDoubtKnown = false; // else u is the readings' alone, and said so
    double coverage = 2;
    // A gap of nothing is outside whatever the limits; "not measured" where it would be within but
    // not all that was asked for was read.
    Verdict smallestVerdict = Verdict::notJudged; // against the lower limit
    Verdict largestVerdict = Verdict::notJudged;  // against the upper limit
    // Where the smallest is not surely within its lower limit (without one: is below its aim) and
    // there is room at the largest. A gap that is good is left alone.
    std::optional<Filing> filing;
    std::string why; // "the bore differs by more along its depth than the limits allow", …
};

// `measured`: the bore that the gap was measured in; may be the same. Refuses: no gap, no place, a
// place outside what was read of that bore, nothing read in the ring's travel. `units`: of the
// words, and of the finest amount filed; nothing = as the gap was typed.
Result<RingGap> ringGapOf(const MeasuredBore& bore, const MeasuredBore& measured, const Ring& ring,
                          const FitLimits& limits, Length fileStep,
                          const std::optional<DisplayUnits>& units = {});
Length fileStepOf(const FitRecord& fit, bool inches); // else 0.002 in or 0.05 mm

// Rings of one groove dealt to bores: least worst departure of the smallest gap from the aim; a
// ring that is too large already counts what it lacks, one that is too small only the filing.
struct RingDeal {
    int groove = 1;
    std::vector<int> bores;
    std::vector<std::optional<std::size_t>> ring; // by bore: place in the record
    std::vector<std::optional<RingGap>> gap;      // by bore: that ring there
    std::vector<std::string> refused;             // by bore
    int equals = 1;
    std::string why; // why nothing is dealt
};
// `inches`: the block's own, for the step of filing; `units` as in ringGapOf.
std::vector<RingDeal> dealRings(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                                bool inches, const std::optional<DisplayUnits>& units = {});

} // namespace borewright
