// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gauging/slips.h"

#include "core/gauging/slip_parts.h"

#include <algorithm>
#include <cmath>

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

std::vector<Suspicion> findSlips(const Workbook&, const Survey& survey) {
    return slips::knockedReadings(survey);
}

} // namespace borewright
