// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/slips.h"

#include "core/gauging/gauging.h"
#include "core/gauging/slip_judge.h"
#include "core/gauging/slip_parts.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace borewright {

double ownNoise_um(const GaugeSetting& gauge) {
    constexpr double usualRepeatability_um = 2.0;
    const Gear& gear = gauge.gear;
    const auto um = [](const TypedLength& length) { return length.value().in(Unit::micrometre); };
    const double repeatability_um =
        gear.repeatability ? um(*gear.repeatability) : usualRepeatability_um;
    const double step_um = um(gear.step ? *gear.step : gauge.dial.graduation);
    const double local_um = gear.dialLocalError ? um(*gear.dialLocalError) : 0.0;
    return std::sqrt(repeatability_um * repeatability_um + step_um * step_um / 12 +
                     local_um * local_um / 3);
}

namespace {

// A reading that nobody could have read off this dial is asked about even where it fits.
void addFiner(const Survey& survey, std::vector<Suspicion>& found) {
    for (std::size_t i = 0; i < survey.readings.size(); ++i) {
        const Reading& reading = survey.readings[i];
        if (reading.struck || reading.kept ||
            !slips::isFinerThanTheDial(reading, survey.header.gauge))
            continue;
        const bool told = std::ranges::any_of(found, [&](const Suspicion& suspicion) {
            return std::ranges::find(suspicion.readings, i) != suspicion.readings.end();
        });
        if (told) continue;
        found.push_back({{i},
                         {{Slip::unexplained,
                           1,
                           "finer than this dial can be read",
                           "finer than the dial can be read",
                           {},
                           {}}}});
    }
}

bool overlap(const Suspicion& a, const Suspicion& b) {
    return std::ranges::any_of(a.readings, [&](std::size_t reading) {
        return std::ranges::find(b.readings, reading) != b.readings.end();
    });
}

} // namespace

std::vector<Suspicion> findSlips(const Workbook& workbook, const Survey& survey) {
    std::vector<Suspicion> found = slips::knockedReadings(survey);
    // A moved zero breaks the pattern; what else is wrong there shows once that is settled.
    const std::size_t knocks = found.size();
    for (Suspicion& suspicion : slips::judgeBores(&workbook, survey)) {
        const auto knocked = std::span(found).first(knocks);
        if (std::ranges::none_of(knocked,
                                 [&](const Suspicion& knock) { return overlap(knock, suspicion); }))
            found.push_back(std::move(suspicion));
    }
    addFiner(survey, found);
    std::ranges::stable_sort(found, {}, [](const Suspicion& s) { return s.readings.front(); });
    return found;
}

} // namespace borewright
