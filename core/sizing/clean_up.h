// SPDX-License-Identifier: GPL-3.0-or-later
// The smallest diameter that cleans up a worn bore: no worn or damaged wall left anywhere.
//
// D is a diameter as found, S the size it was made to, e = max(0, D − S) its wear, s the depth of a
// score into the wall there (0 elsewhere). Common practice, no source; plane geometry:
//   centred on the worn bore      D + 2s
//   centred on the original axis  wear on one side:   S + 2e + 2s
//                                 on both sides alike: S + e + 2s
// The bore's size is the largest of these over its readings and its damages. D at a damage lies on
// the straight line between the readings above and below it, on its axis; beyond the last reading
// it is the last; where its axis is not said or was not read, the larger over the axes.
// What the formulas allow and what not: the original axis is never too small (and too large by 2e
// where the score is on the side that is not worn). The worn bore is right where the wear falls
// away to its sides as a cosine does or faster; wear that stays deep far round between the gauge's
// axes takes more, up to what the original axis takes.
#pragma once

#include "core/sizing/measured_bore.h"
#include "core/workbook/limits.h"
#include "core/workbook/sizing_plan.h"

namespace borewright {

struct CleanUp {
    Length size;
    Length depth;                      // where it is decided
    std::string axis;                  // of a damage as the user gave it: empty = not said
    std::optional<std::size_t> damage; // which of BoreWear::damages decides; nothing = wear
    // Standard uncertainty; of a felt damage its own part alone where the readings' is not known.
    std::optional<Length> u;
    bool gaugeDoubtKnown = false; // the readings' part is in u
    // Places that ask for less than `size` but are known less well, so that they may ask for more.
    struct LessSure {
        Length size;
        Length u;
    };
    std::vector<LessSure> lessSure;
};
// The guard band w that covers the deciding place and every less sure one: the largest of k·u and,
// over these, k·uᵢ − (size − sizeᵢ); k of the rule (core/verdict/verdict.h), u not known = 0. A
// finish size of `size` + w or more is k·u clear of each.
Length guardBand(const CleanUp& cleanUp, const DecisionRule& rule);

struct BoreCleanUp {
    int bore = 1;
    std::string survey;
    MeasuredAt largest;
    MeasuredAt smallest;
    CleanUp wornBore;
    std::optional<CleanUp> originalAxis; // nothing where the size it was made to is not known
    // The same without any damage: what one would have without the score.
    CleanUp wornOnly;
    std::optional<CleanUp> originalOnly;
    // Even its smallest reading is further over the standard size than any bore wears, and nobody
    // said what it was last made to: no original axis.
    bool boredBefore = false;
    std::optional<Length> standardSize;
    bool sideAssumed = false; // one side was assumed for originalAxis, nobody said
    bool undamaged = true;    // no damage is recorded
    double coverage = 2;
    bool complete = true;
};

// u of a size is that of D times what D counts (2 on the original axis with one-sided wear). Damage
// that is felt adds ± half its depth, limits (rectangular): 2·(s/2)/√3; a measured one adds
// nothing. `bore.at` must not be empty.
BoreCleanUp cleanUpOf(const MeasuredBore& bore, const BoreWear& wear);
const CleanUp& cleanUpBy(const BoreCleanUp& bore, Centring centring); // wornBore where no original
const CleanUp& withoutDamage(const BoreCleanUp& bore, Centring centring);

// What has to come off below the deepest mark, and what a bar leaves for the hone, on the diameter:
// the user's, else common practice, no source (0.0005 in or 0.010 mm; 0.003 in or 0.075 mm, within
// the usual 0.002 to 0.004 in).
Length finishAllowanceOf(const SizingPlan& plan, bool inches);
Length honeStockOf(const SizingPlan& plan, bool inches);

} // namespace borewright
