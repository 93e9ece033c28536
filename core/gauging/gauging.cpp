// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/gauging.h"

#include "core/constants.h"
#include "core/gauging/warmth.h"
#include "core/length/format.h"

#include <algorithm>
#include <tuple>

namespace borewright {
namespace {

double growth(Expansion material, double celsius) {
    return expansionPerCelsius(material) * (celsius - constants::referenceCelsius);
}

// A reading with the place it is sorted by: bore, depth, rank of its axis in the block.
struct Placed {
    int bore;
    Length depth;
    std::size_t axisRank;
    const Station* station;
    const Reading* reading; // null where the station is only asked for
};

std::size_t rankOf(const Block& block, const std::string& axis) {
    const auto found = std::ranges::find(block.axes, axis, &Axis::id);
    return static_cast<std::size_t>(found - block.axes.begin());
}

auto place(const Placed& p) {
    return std::tuple(p.bore, p.depth, p.axisRank);
}

std::vector<Placed> placeAll(const Workbook& workbook, const Survey& survey,
                             const std::vector<Station>& asked) {
    std::vector<Placed> placed;
    placed.reserve(asked.size() + survey.readings.size());
    const auto add = [&](const Station& station, const Reading* reading) {
        placed.push_back(
            {station.bore, station.depth, rankOf(workbook.block, station.axis), &station, reading});
    };
    for (const Station& station : asked)
        add(station, nullptr);
    for (const Reading& reading : survey.readings)
        if (!reading.struck) add(reading.station, &reading);
    std::ranges::stable_sort(placed, {}, place);
    return placed;
}

// One station's readings become its mean diameter.
Gauged gaugeStation(std::span<const Placed> here, const GaugeSetting& setting,
                    const ZeroHistory& zero, const Bore* bore) {
    Gauged gauged;
    gauged.station = *here.front().station;
    std::vector<Length> diameters;
    for (const Placed& p : here) {
        if (p.reading == nullptr) continue;
        const Conditions conditions = conditionsOf(zero, setting, bore, *p.reading);
        if (const auto diameter = diameterAt20(p.reading->typed, setting, conditions)) {
            diameters.push_back(*diameter);
            gauged.times.push_back(p.reading->time);
        } else {
            gauged.refused = diameter.error().what;
        }
    }
    gauged.repeats = static_cast<int>(diameters.size());
    if (!diameters.empty()) gauged.diameter = mean(diameters);
    return gauged;
}

} // namespace

bool correctsTemperature(const GaugeSetting& gauge) {
    return gauge.masterTemperature && gauge.blockTemperature;
}

Result<Length> deviationOf(const TypedLength& typed, const GaugeSetting& gauge) {
    if (gauge.entry == Entry::deviation)
        return gauge.dial.larger == Dial::Larger::plus ? typed.value() : -typed.value();
    if (!gauge.setSize) return refuse("set size", "the size the gauge was set to is not entered");
    return typed.value() - gauge.setSize->value();
}

Conditions conditionsOf(const ZeroHistory& zero, const GaugeSetting& gauge, const Bore* bore,
                        const Reading& reading) {
    return {zero.at(reading.time), blockCelsiusAt(gauge, bore, reading.station.depth)};
}

Result<Length> diameterAt20(const TypedLength& typed, const GaugeSetting& gauge,
                            const Conditions& conditions) {
    if (gauge.entry == Entry::deviation && !gauge.setSize)
        return refuse("set size", "the size the gauge was set to is not entered");
    Length size = typed.value();
    if (gauge.entry == Entry::deviation) size = gauge.setSize->value() + *deviationOf(typed, gauge);
    size -= conditions.zero;
    const double set_pm = gauge.setSize ? static_cast<double>(gauge.setSize->value().picometres())
                                        : static_cast<double>(size.picometres());
    if (gauge.gaugeWarmedBy && *gauge.gaugeWarmedBy != 0)
        size += Length::nearest(set_pm * expansionPerCelsius(Expansion::gaugeSteel) *
                                    *gauge.gaugeWarmedBy / 1e6,
                                Unit::micrometre);
    if (!correctsTemperature(gauge)) return size;

    const double block = conditions.blockCelsius.value_or(gauge.blockTemperature->celsius());
    const double warm_pm =
        static_cast<double>(size.picometres()) +
        set_pm * growth(gauge.masterExpansion, gauge.masterTemperature->celsius());
    const double cold_pm = warm_pm / (1.0 + growth(gauge.blockExpansion, block));
    // The exact part is kept apart, so that only the small correction passes through a double.
    const double correction_um = (cold_pm - static_cast<double>(size.picometres())) / 1e6;
    return size + Length::nearest(correction_um, Unit::micrometre);
}

std::vector<Gauged> gauge(const Workbook& workbook, const Survey& survey) {
    const std::vector<Station> asked = askedStations(workbook, survey.header);
    const std::vector<Placed> placed = placeAll(workbook, survey, asked);
    const ZeroHistory zero(survey.header);
    std::vector<Gauged> result;
    for (std::size_t begin = 0; begin < placed.size();) {
        std::size_t end = begin + 1;
        while (end < placed.size() && place(placed[end]) == place(placed[begin]))
            ++end;
        const std::span here(placed.data() + begin, end - begin);
        Gauged gauged = gaugeStation(here, survey.header.gauge, zero,
                                     findBore(workbook.block, placed[begin].bore));
        result.push_back(std::move(gauged));
        begin = end;
    }
    return result;
}

std::optional<ZeroDrift> zeroDrift(const SurveyHeader& survey) {
    if (survey.zeroChecks.empty()) return std::nullopt;
    const auto byShown = [](const ZeroCheck& check) { return check.shows.value(); };
    const auto [least, most] = std::ranges::minmax_element(survey.zeroChecks, {}, byShown);
    return ZeroDrift{byShown(*most) - byShown(*least), byShown(survey.zeroChecks.back()),
                     static_cast<int>(survey.zeroChecks.size())};
}

} // namespace borewright
