// SPDX-License-Identifier: GPL-3.0-or-later
// The station that an arrow key leads to.
#pragma once

#include "core/workbook/stations.h"

#include <optional>

namespace borewright {

// The station `levels` down and `axes` to the right of `from` in the bore's plan; the edge holds.
// With no station of this bore chosen: its first. Nothing where the bore has no levels.
std::optional<Station> steppedStation(const Block& block, int bore,
                                      const std::optional<Station>& from, int levels, int axes);

} // namespace borewright
