// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/context/preferences.h"

#include <algorithm>

namespace borewright {

Preferences withGauge(Preferences preferences, const GaugeSetting& setting) {
    preferences.gauge = keptPart(setting);
    preferences.gearChosen = true;
    if (setting.gauge.empty()) return preferences;
    auto& gauges = preferences.gauges;
    const auto place = std::ranges::lower_bound(gauges, setting.gauge, {}, &GaugeSetting::gauge);
    if (place != gauges.end() && place->gauge == setting.gauge)
        *place = preferences.gauge;
    else
        gauges.insert(place, preferences.gauge);
    return preferences;
}

Preferences withStone(Preferences preferences, Stone stone) {
    stone.id.clear();
    auto& stones = preferences.stones;
    const auto place = std::ranges::lower_bound(stones, stone.name, {}, &Stone::name);
    if (place != stones.end() && place->name == stone.name)
        *place = std::move(stone);
    else
        stones.insert(place, std::move(stone));
    return preferences;
}

} // namespace borewright
