// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/gear.h"

#include <utility>

namespace borewright {
namespace {

// The texts are literals below, so reading them cannot fail.
TypedLength thou(std::string_view text) {
    return *readTyped(text, Unit::thou);
}

} // namespace

Gear tenthDialAndRing() {
    Gear gear;
    gear.dialLocalError = thou("0.05");
    gear.step = thou("0.1");
    gear.repeatability = thou("0.08");
    gear.master = thou("0.025");
    gear.masterMeant = Meant::standard;
    gear.settingScatter = thou("0.05");
    gear.drift = thou("0.1");
    return gear;
}

Gear halfThouDialAndMicrometer() {
    Gear gear;
    gear.dialLocalError = thou("0.2");
    gear.step = thou("0.25");
    gear.repeatability = thou("0.15");
    gear.master = thou("0.2");
    gear.settingScatter = thou("0.10");
    gear.drift = thou("0.2");
    return gear;
}

Result<void> checkGear(const Gear& gear) {
    const std::pair<const char*, const std::optional<TypedLength>*> figures[] = {
        {"largest error of the dial", &gear.dialError},
        {"error between near readings", &gear.dialLocalError},
        {"doubt of the master", &gear.master},
        {"scatter of setting", &gear.settingScatter},
        {"drift", &gear.drift},
        {"rocking", &gear.rocking}};
    for (const auto& [name, figure] : figures)
        if (*figure && (*figure)->value() < Length())
            return refuse(name, "a doubt is never below zero");
    const std::pair<const char*, const std::optional<TypedLength>*> positives[] = {
        {"repeatability", &gear.repeatability},
        {"reads to", &gear.step},
        {"limit of drift", &gear.driftLimit}};
    for (const auto& [name, figure] : positives)
        if (*figure && (*figure)->value() <= Length())
            return refuse(name, "must be more than zero");
    if (gear.repeatabilityFreedom && *gear.repeatabilityFreedom < 1)
        return refuse("repeatability", "two readings are the fewest that scatter can be told from");
    return {};
}

} // namespace borewright
