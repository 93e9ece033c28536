// SPDX-License-Identifier: GPL-3.0-or-later
// Clearance of a piston in a bore: total, on the diameter, at 20 °C. Bore less piston, the piston
// across its skirt square to the pin at the height its maker states; the smallest bore in ring and
// skirt travel gives the least clearance (common practice, no source).
#pragma once

#include "core/length/format.h"
#include "core/sizing/measured_bore.h"
#include "core/verdict/verdict.h"
#include "core/workbook/fit_record.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// A piston brought to 20 °C:
//   P20 = P·(1 + α_steel·(T − 20)) / (1 + α_piston·(T − 20))
// P as read, T its temperature. The micrometer is taken to be of steel (constants.h), right at
// 20 °C and as warm as the piston it lies beside: it has grown too, and reads the less for it. As
// measured where no temperature is given. A piston measured at one temperature and a bore at
// another are each brought to 20 °C by their own; nothing here can tell where one of the two is not
// given.
struct PistonSize {
    Length at20;
    std::optional<Length> u; // standard: half of the stated ±
    bool corrected = false;  // for temperature
};
// Refuses, in words: no size, no measuring height ("not given": never guessed), a size of nothing.
Result<PistonSize> sizeOf(const Piston& piston);

struct ClearanceAt {
    Length depth;
    std::string axis;
    Length value;
};
struct Clearance {
    Length value; // least
    Length depth; // where the bore is smallest
    std::string axis;
    std::vector<ClearanceAt> at; // every station in ring and skirt travel, by depth, then axis
    std::optional<Length> u; // √(u_bore² + u_piston²); nothing where the bore's is not known
    bool pistonDoubtKnown = false; // else u is the bore's alone, and said so
    double coverage = 2;
    // Against both limits, w = k·u by the limits' rule. Outside where the piston does not go in,
    // whatever the limits; "not measured" where it would be within but not all that was asked for
    // was read.
    Verdict verdict = Verdict::notJudged;
    // "too tight", "too loose", "does not go in: larger than the bore by …", or empty.
    std::string why;
};
// Ring and skirt travel: every zone but the ridge land.
// `units` are those of the words; nothing = as the piston's size was typed.
// Refuses what sizeOf refuses, and a bore with nothing read in its travel.
Result<Clearance> clearanceOf(const MeasuredBore& bore, const Piston& piston,
                              const FitLimits& limits,
                              const std::optional<DisplayUnits>& units = {});

// A model, whose sign can turn on a guessed skirt temperature:
//   hot = cold + D·α_bore·ΔT_bore − D·α_piston·ΔT_skirt
// D the bore, α expansion per °C, ΔT degrees over 20 °C.
Length hotClearance(Length cold, Length bore, double boreExpansion, double boreWarmer,
                    double pistonExpansion, double skirtWarmer);
double expansionOf(const Piston& piston); // per °C

} // namespace borewright
