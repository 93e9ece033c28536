// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/honing/stages.h"

#include <algorithm>

namespace borewright {
namespace {

Length given(const std::optional<TypedLength>& typed, Length practice) {
    return typed ? typed->value() : practice;
}

} // namespace

Stages stagesOf(const HoneStages& stages) {
    // Common practice, no source.
    Stages result{given(stages.roughStopsAt, Length::whole(45, Unit::tenth)),
                  given(stages.closedEndLead, Length::whole(8, Unit::tenth)),
                  given(stages.nextStopsAt, Length::whole(10, Unit::tenth)),
                  given(stages.coolBelow, Length::whole(3, Unit::tenth))};
    if (!stages.nextStopsAt) {
        if (stages.roughStopsAt)
            result.nextStopsAt = std::min(result.nextStopsAt, result.roughStopsAt);
        if (stages.coolBelow) result.nextStopsAt = std::max(result.nextStopsAt, result.coolBelow);
    }
    if (!stages.roughStopsAt)
        result.roughStopsAt = std::max(result.roughStopsAt, result.nextStopsAt);
    if (!stages.coolBelow) result.coolBelow = std::min(result.coolBelow, result.nextStopsAt);
    return result;
}

} // namespace borewright
