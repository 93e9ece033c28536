// SPDX-License-Identifier: GPL-3.0-or-later
// What the verdicts on clearances and gaps share: the guard band of a value whose doubt is known,
// and the units that a sentence about it uses.
#pragma once

#include "core/length/format.h"
#include "core/verdict/verdict.h"
#include "core/workbook/fit_record.h"

#include <optional>

namespace borewright {

// w = k·u with k by the rule (guardFactor in verdict.h); none where u is not known.
Guard guardOf(const std::optional<Length>& u, const DecisionRule& rule);

// A clearance or gap against its limits. One of nothing or less is outside whatever limits are
// given: parts that touch are never within. `complete` false: more may be tighter or looser than
// what was read, so that "within" becomes "not measured".
Verdict judgeLeast(Length value, const FitLimits& limits, const Guard& guard, bool complete);
Verdict judgeMost(Length value, const FitLimits& limits, const Guard& guard, bool complete);

// √(a² + b²), to the picometre.
Length together(Length a, Length b);

// Inches for what was typed in inches, thou or tenths, else millimetres.
DisplayUnits unitsOf(const TypedLength& typed);

} // namespace borewright
