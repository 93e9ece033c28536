// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/station_step.h"

#include <algorithm>

namespace borewright {

std::optional<Station> steppedStation(const Block& block, int number,
                                      const std::optional<Station>& from, int levels, int axes) {
    const Bore* bore = findBore(block, number);
    if (bore == nullptr || bore->levels.empty() || block.axes.empty()) return std::nullopt;
    int level = 0;
    int axis = 0;
    if (from && from->bore == number) {
        const auto lastLevel = static_cast<int>(bore->levels.size()) - 1;
        const auto lastAxis = static_cast<int>(block.axes.size()) - 1;
        // The level at the station's depth, or the one next below it.
        while (level < lastLevel &&
               bore->levels[static_cast<std::size_t>(level)].depth.value() < from->depth)
            ++level;
        while (axis < lastAxis && block.axes[static_cast<std::size_t>(axis)].id != from->axis)
            ++axis;
        level = std::clamp(level + levels, 0, lastLevel);
        axis = std::clamp(axis + axes, 0, lastAxis);
    }
    return Station{number, bore->levels[static_cast<std::size_t>(level)].depth.value(),
                   block.axes[static_cast<std::size_t>(axis)].id};
}

} // namespace borewright
