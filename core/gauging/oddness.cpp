// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/oddness.h"

#include "core/gauging/gauging.h"
#include "core/length/format.h"

#include <algorithm>

namespace borewright {
namespace {

// Wear changes slowly from one station to the next; a jump of two thou to every neighbour is rarer
// than a slip of the pencil (common practice, no source).
constexpr Length usualStep = Length::whole(2, Unit::thou);
constexpr std::int64_t stepGraduations = 4;
// Nobody reads a dial finer than a tenth of a division.
constexpr std::int64_t finestShare = 10;

// The amount in the unit the reading was typed in.
std::string told(Length amount, const TypedLength& typed) {
    return format(amount, typed.unit(), usualDecimals(typed.unit())) + " " +
           std::string(symbol(typed.unit()));
}

} // namespace

OddnessJudge::OddnessJudge(const Survey& survey)
    : m_survey(survey)
    , m_allowed(
          std::max(usualStep, stepGraduations * survey.header.gauge.dial.graduation.value())) {
    const GaugeSetting& gauge = survey.header.gauge;
    // Deviations compare within a survey as diameters do, and need no set size.
    for (const Reading& reading : survey.readings) {
        if (reading.struck) continue;
        const auto deviation = gauge.entry == Entry::diameter
                                   ? Result<Length>(reading.typed.value())
                                   : deviationOf(reading.typed, gauge);
        if (deviation)
            m_bores[reading.station.bore].push_back(
                {reading.station.depth, &reading.station.axis, *deviation, &reading});
    }
}

std::optional<std::string> OddnessJudge::reason(const Reading& reading) const {
    const GaugeSetting& gauge = m_survey.header.gauge;
    const Dial& dial = gauge.dial;
    const Length value = reading.typed.value();
    if (gauge.entry == Entry::deviation && value.magnitude() > dial.oneTurn.value())
        return "more than one turn of the dial from the set size";
    const std::int64_t finest = dial.graduation.value().picometres() / finestShare;
    if (finest > 0 && value.picometres() % finest != 0) return "finer than this dial can be read";
    const Length deviation =
        gauge.entry == Entry::diameter || dial.larger == Dial::Larger::plus ? value : -value;
    const auto step = leastStep(reading, deviation);
    if (step && *step > m_allowed)
        return "differs by " + told(*step, reading.typed) + " or more from every reading beside it";
    return std::nullopt;
}

// The smallest step from this reading to a neighbour: repeats at its station, the next level up
// and down on its axis, the other axes at its level. Nothing where it has no neighbour.
std::optional<Length> OddnessJudge::leastStep(const Reading& reading, Length deviation) const {
    const auto bore = m_bores.find(reading.station.bore);
    if (bore == m_bores.end()) return std::nullopt;
    const Length depth = reading.station.depth;
    std::optional<Length> above, below;
    for (const Known& known : bore->second) {
        if (*known.axis != reading.station.axis) continue;
        if (known.depth < depth) above = std::max(above.value_or(known.depth), known.depth);
        if (known.depth > depth) below = std::min(below.value_or(known.depth), known.depth);
    }
    std::optional<Length> least;
    for (const Known& known : bore->second) {
        if (known.reading == &reading) continue;
        const bool sameAxis = *known.axis == reading.station.axis;
        const bool beside =
            known.depth == depth || (sameAxis && (known.depth == above || known.depth == below));
        if (!beside) continue;
        const Length step = (known.deviation - deviation).magnitude();
        least = std::min(least.value_or(step), step);
    }
    return least;
}

std::optional<std::string> oddness(const Survey& survey, const Reading& reading) {
    return OddnessJudge(survey).reason(reading);
}

} // namespace borewright
