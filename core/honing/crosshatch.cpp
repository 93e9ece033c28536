// SPDX-License-Identifier: GPL-3.0-or-later
// Angle from speeds, speeds from the angle.
#include "core/honing/crosshatch.h"

#include <cmath>
#include <numbers>

namespace borewright {
namespace {

constexpr double degreesARadian = 180 / std::numbers::pi;

struct Needed {
    double value;
    const char* place;
    const char* without;
};

Result<void> allThere(std::initializer_list<Needed> needs) {
    for (const Needed& need : needs)
        if (!(need.value > 0) || !std::isfinite(need.value))
            return refuse(need.place, need.without);
    return {};
}

Needed bore(const HoneMotion& m) {
    return {m.bore_mm, "bore", "its diameter is needed for the crosshatch"};
}
Needed speed(const HoneMotion& m) {
    return {m.rpm, "speed", "a hone that does not turn leaves no crosshatch"};
}
Needed travel(const HoneMotion& m) {
    return {m.travel_mm, "stroke", "without travel there is no crosshatch, only rings"};
}
Needed beat(const HoneMotion& m) {
    return {m.beats, "beat", "without strokes there is no crosshatch, only rings"};
}

// tan(α/2)
Result<double> steepness(double degrees) {
    if (!(degrees > 0) || !(degrees < 180))
        return refuse("angle", "a crosshatch lies between 0° and 180°");
    return std::tan(degrees / 2 / degreesARadian);
}

} // namespace

Result<double> crosshatchDegrees(const HoneMotion& m) {
    if (auto all = allThere({bore(m), speed(m), travel(m), beat(m)}); !all)
        return tl::unexpected(all.error());
    const double axial = 2 * m.travel_mm * m.beats;
    const double turn = std::numbers::pi * m.bore_mm * m.rpm;
    return 2 * std::atan2(axial, turn) * degreesARadian;
}

Result<double> rpmForCrosshatch(double degrees, const HoneMotion& m) {
    if (auto all = allThere({bore(m), travel(m), beat(m)}); !all)
        return tl::unexpected(all.error());
    return steepness(degrees).map([&](double steep) {
        return 2 * m.travel_mm * m.beats / (std::numbers::pi * m.bore_mm * steep);
    });
}

Result<double> beatsForCrosshatch(double degrees, const HoneMotion& m) {
    if (auto all = allThere({bore(m), speed(m), travel(m)}); !all)
        return tl::unexpected(all.error());
    return steepness(degrees).map([&](double steep) {
        return std::numbers::pi * m.bore_mm * m.rpm * steep / (2 * m.travel_mm);
    });
}

std::string crosshatchConvention() {
    return "where the scratches of the down and the up strokes cross, opening towards the way "
           "round "
           "the bore; who counts it opening towards the bore's ends has 180° less this";
}

} // namespace borewright
