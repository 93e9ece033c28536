// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes on offer filled in by steps, and limits put about each of them.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright {

struct SizeSteps {
    TypedLength from;
    TypedLength to;
    TypedLength step;
};
// The plan with a size at every step from `from` to `to`, both included where the steps reach it;
// sizes there already keep their limits. Refuses steps of nothing, a way down, a step
// that passes the end at once, too many sizes.
Result<SizingPlan> withSteps(SizingPlan plan, const SizeSteps& steps);

// The plan with every size finished between its own − `below` and + `above`. An empty one takes
// that limit away. Refuses where the standard size is not known or the bores differ in it.
Result<SizingPlan> withLimitsAbout(SizingPlan plan, const std::optional<TypedLength>& below,
                                   const std::optional<TypedLength>& above, const Block& block);

} // namespace borewright
