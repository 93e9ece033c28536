// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/warmth.h"

#include "core/constants.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

// Thermometers of the bench, ± °C, limits (common practice, no source).
constexpr double thermometerLimits = 0.5;

const Bore* firstBore(const Workbook& workbook) {
    return workbook.block.bores.empty() ? nullptr : &workbook.block.bores.front();
}

std::optional<Length> sizeOf(const Workbook& workbook, const SurveyHeader& survey) {
    if (survey.gauge.setSize) return survey.gauge.setSize->value();
    const Bore* bore = firstBore(workbook);
    if (bore != nullptr && bore->standardSize) return bore->standardSize->value();
    return std::nullopt;
}

std::string worthOf(const std::optional<Length>& size, Expansion material, double celsius,
                    const DisplayUnits& units) {
    if (!size) return "something";
    return smallWithUnit(growthOf(*size, material, celsius), units, Sign::negative, 1);
}

std::optional<std::string> endWarning(const Workbook& workbook, const GaugeSetting& gauge,
                                      const std::optional<Length>& size,
                                      const DisplayUnits& units) {
    if (!gauge.blockTemperature || !gauge.closedEndTemperature) return std::nullopt;
    const double along = gauge.closedEndTemperature->celsius() - gauge.blockTemperature->celsius();
    if (std::abs(along) < 1) return std::nullopt;
    const Bore* bore = firstBore(workbook);
    const bool deep = bore != nullptr && bore->depth && bore->depth->value() > Length();
    const char* done = !gauge.masterTemperature
                           ? "not corrected, as the master's temperature is not given"
                       : !deep ? "not corrected, as the bore's depth is not given"
                               : "corrected evenly along the depth";
    return fmt::format("The {} end is {:.1f} °C warmer, which would fake a taper of {}: {}.",
                       along > 0 ? "closed" : "open", std::abs(along),
                       worthOf(size, gauge.blockExpansion, std::abs(along), units), done);
}

std::optional<std::string> gaugeWarning(const GaugeSetting& gauge,
                                        const std::optional<Length>& size,
                                        const DisplayUnits& units) {
    if (!gauge.gaugeWarmedBy || *gauge.gaugeWarmedBy == 0 || !size) return std::nullopt;
    const double by = std::abs(*gauge.gaugeWarmedBy);
    const bool warmed = *gauge.gaugeWarmedBy > 0;
    return fmt::format("The gauge {} by {:.1f} °C since it was set, which makes bores read {} {}: "
                       "corrected.",
                       warmed ? "warmed" : "cooled", by,
                       worthOf(size, Expansion::gaugeSteel, by, units), warmed ? "small" : "large");
}

double wait(double room, double earlier, double later, double apart_min, double within) {
    const double tau = apart_min / std::log((earlier - room) / (later - room));
    return std::max(0.0, tau * std::log((later - room) / within));
}

} // namespace

std::optional<double> blockCelsiusAt(const GaugeSetting& gauge, const Bore* bore, Length depth) {
    if (!gauge.blockTemperature) return std::nullopt;
    const double open = gauge.blockTemperature->celsius();
    if (!gauge.closedEndTemperature || bore == nullptr || !bore->depth ||
        bore->depth->value() <= Length())
        return open;
    const double share = std::clamp(
        depth.in(Unit::millimetre) / bore->depth->value().in(Unit::millimetre), 0.0, 1.0);
    return open + share * (gauge.closedEndTemperature->celsius() - open);
}

double expansionDoubt(Expansion material) {
    return material == Expansion::sleeveInAluminium ? constants::expansionSleeveDoubt
                                                    : constants::expansionDoubt;
}

Length growthOf(Length size, Expansion material, double celsius) {
    return Length::nearest(size.in(Unit::micrometre)*expansionPerCelsius(material) * celsius,
                           Unit::micrometre);
}

std::vector<std::string> warmthWarnings(const Workbook& workbook, const SurveyHeader& survey,
                                        const DisplayUnits& units) {
    std::vector<std::string> warnings;
    const GaugeSetting& gauge = survey.gauge;
    const auto size = sizeOf(workbook, survey);
    const auto worth = [&](double celsius) {
        return worthOf(size, gauge.blockExpansion, celsius, units);
    };
    const bool known = gauge.blockTemperature && gauge.masterTemperature;
    if (survey.minutesSinceWarm && *survey.minutesSinceWarm < stillWarmMinutes && !known)
        warnings.push_back(
            fmt::format("The block was honed or washed {} minutes before: it may still be warm. "
                        "Each 5 °C makes the bore read {} large. Wait, or take its temperature.",
                        *survey.minutesSinceWarm, worth(5)));
    else if (!known && !gauge.stoodTogether && (gauge.blockTemperature || gauge.masterTemperature))
        warnings.push_back(fmt::format(
            "Only the temperature of the {} is given, so nothing is corrected; give both.",
            gauge.blockTemperature ? "block" : "master"));
    else if (!known && !gauge.stoodTogether)
        warnings.push_back(
            fmt::format("No temperatures are given, so nothing is corrected; each 5 °C that the "
                        "block is warmer than the master is worth {}.",
                        worth(5)));
    if (known) {
        const double warmer =
            gauge.blockTemperature->celsius() - gauge.masterTemperature->celsius();
        if (warmer > 2)
            warnings.push_back(
                fmt::format("The block is {:.1f} °C warmer than the master, worth {}: corrected, "
                            "but better measured cold.",
                            warmer, worth(warmer)));
    }
    if (survey.cooling)
        if (const auto down = coolDown(*survey.cooling))
            warnings.push_back("For a cold block, " + coolDownWords(*down) + ".");
    if (auto warning = endWarning(workbook, gauge, size, units))
        warnings.push_back(std::move(*warning));
    if (auto warning = gaugeWarning(gauge, size, units)) warnings.push_back(std::move(*warning));
    return warnings;
}

Result<CoolDown> coolDown(const Cooling& cooling, double within_celsius) {
    const double room = cooling.room.celsius();
    const double earlier = cooling.earlier.celsius();
    const double later = cooling.later.celsius();
    if (!(cooling.minutesApart > 0)) return refuse("minutes apart", "must be more than zero");
    if (!(later > room))
        return refuse("later temperature", "is not above the room's: no need to wait");
    if (!(earlier > later))
        return refuse("later temperature", "the block has to have cooled between the two");
    CoolDown down{};
    down.timeConstant_min = cooling.minutesApart / std::log((earlier - room) / (later - room));
    down.wait_min = wait(room, earlier, later, cooling.minutesApart, within_celsius);
    // u² = Σ (∂t/∂T_i · a/√3)² by small steps (JCGM 100, 5.1); k = 2.
    constexpr double h = 1e-4;
    double square = 0;
    for (int i = 0; i < 3; ++i) {
        const double moved = wait(room + (i == 0 ? h : 0), earlier + (i == 1 ? h : 0),
                                  later + (i == 2 ? h : 0), cooling.minutesApart, within_celsius);
        const double slope = (moved - down.wait_min) / h;
        square += slope * slope * thermometerLimits * thermometerLimits / 3;
    }
    down.doubt_min = 2 * std::sqrt(square);
    return down;
}

std::string coolDownWords(const CoolDown& down) {
    return fmt::format("wait about {:.0f} minutes (± {:.0f}) until the block is within 1 °C of the "
                       "room",
                       std::ceil(down.wait_min), std::ceil(down.doubt_min));
}

} // namespace borewright
