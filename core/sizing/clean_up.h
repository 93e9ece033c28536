// SPDX-License-Identifier: GPL-3.0-or-later
// The smallest diameter that cleans up a worn bore: no worn or damaged wall left anywhere.
//
// D is a diameter as found, S the size it was made to, e = max(0, D − S) its wear, s the depth of a
// score into the wall there (0 elsewhere). Common practice, no source; plane geometry:
//   centred on the worn bore      D + 2s
//   centred on the original axis  wear on one side:   S + 2e + 2s
//                                 on both sides alike: S + e + 2s
// The bore's size is the largest of these over its readings and its damages (D at a damage lies on
// the straight line between the readings above and below it, on its axis).
#pragma once

#include "core/sizing/measured_bore.h"
#include "core/workbook/sizing_plan.h"

namespace borewright {

struct CleanUp {
    Length size;
    Length depth; // where it is decided
    std::string axis;
    std::optional<std::size_t> damage; // which of BoreWear::damages decides; nothing = wear
    std::optional<Length> u;           // standard uncertainty, where the readings' is known
};

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
    bool sideAssumed = false; // one side was assumed, nobody said
    bool undamaged = true;    // no damage is recorded
    double coverage = 2;
    bool complete = true;
};

// u of a damage that is felt: ± half its depth, limits (rectangular); of a measured one: nothing
// beyond the readings'.
BoreCleanUp cleanUpOf(const MeasuredBore& bore, const BoreWear& wear);
const CleanUp& cleanUpBy(const BoreCleanUp& bore, Centring centring); // wornBore where no original
const CleanUp& withoutDamage(const BoreCleanUp& bore, Centring centring);

// What has to come off below the deepest mark, and what a bar leaves for the hone, on the diameter:
// the user's, else common practice, no source (0.0005 in or 0.010 mm; 0.003 in or 0.075 mm, within
// the usual 0.002 to 0.004 in).
Length finishAllowanceOf(const SizingPlan& plan, bool inches);
Length honeStockOf(const SizingPlan& plan, bool inches);

} // namespace borewright
