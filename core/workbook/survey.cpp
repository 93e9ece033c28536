// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/survey.h"

#include "core/constants.h"

#include <cmath>

namespace borewright {
namespace {

constexpr int mostMinutes = 31 * 24 * 60;

// The texts are literals below, so reading them cannot fail.
Dial dial(std::string_view graduation, std::string_view turn, std::string_view travel, Unit unit) {
    Dial result;
    result.graduation = *readTyped(graduation, unit);
    result.oneTurn = *readTyped(turn, unit);
    result.travel = *readTyped(travel, unit);
    return result;
}

} // namespace

Dial tenthDial() {
    return dial("0.1", "10", "50", Unit::thou);
}
Dial halfThouDial() {
    return dial("0.5", "50", "250", Unit::thou);
}
Dial micrometreDial() {
    return dial("0.001", "0.2", "1", Unit::millimetre);
}
Dial hundredthDial() {
    return dial("0.01", "1", "5", Unit::millimetre);
}

double expansionPerCelsius(Expansion material) {
    switch (material) {
    case Expansion::greyIron:
        return constants::expansionGreyIron;
    case Expansion::sleeveInAluminium:
        return constants::expansionSleeveInAluminium;
    case Expansion::aluminium:
        return constants::expansionCastAluminium;
    case Expansion::gaugeSteel:
        return constants::expansionGaugeSteel;
    }
    return 0;
}

GaugeSetting keptPart(GaugeSetting setting) {
    setting.setSize.reset();
    setting.masterTemperature.reset();
    setting.blockTemperature.reset();
    setting.closedEndTemperature.reset();
    setting.stoodTogether = false;
    setting.gaugeWarmedBy.reset();
    setting.differenceDoubt.reset();
    setting.temperatureDoubt.reset();
    return setting;
}

GaugeSetting gaugeAgain(const GaugeSetting& last) {
    GaugeSetting gauge = keptPart(last);
    gauge.differenceDoubt = last.differenceDoubt;
    gauge.temperatureDoubt = last.temperatureDoubt;
    return gauge;
}

Result<void> checkHeader(const SurveyHeader& header) {
    const GaugeSetting& gauge = header.gauge;
    if (auto good = checkGear(gauge.gear); !good) return good;
    const auto badDoubt = [](const std::optional<double>& celsius) {
        return celsius && !(*celsius >= 0 && *celsius <= 50);
    };
    if (badDoubt(gauge.differenceDoubt) || badDoubt(gauge.temperatureDoubt))
        return refuse("doubt of the temperature", "lies between 0 and 50 °C");
    if (gauge.gaugeWarmedBy && !(std::abs(*gauge.gaugeWarmedBy) <= 50))
        return refuse("gauge warmed by", "lies between −50 and 50 °C");
    if (header.minutesSinceWarm &&
        (*header.minutesSinceWarm < 0 || *header.minutesSinceWarm > mostMinutes))
        return refuse("minutes since the last pass", "lie between 0 and a month");
    if (header.cooling &&
        !(header.cooling->minutesApart > 0 && header.cooling->minutesApart <= mostMinutes))
        return refuse("minutes apart", "must be more than zero");
    return {};
}

std::string_view nameOf(SurveyKind kind) {
    switch (kind) {
    case SurveyKind::asFound:
        return "as found";
    case SurveyKind::beforeBoring:
        return "before boring";
    case SurveyKind::check:
        return "check";
    case SurveyKind::final:
        return "final";
    }
    return "";
}

} // namespace borewright
