// SPDX-License-Identifier: GPL-3.0-or-later
// The way into the room: a reading becomes a diameter at 20 °C, and readings that cannot be.
// Those that are merely odd: slips.h.
#pragma once

#include "core/gauging/zero_history.h"
#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// What stood about one reading besides the gauge's setting.
struct Conditions {
    Length zero;                        // what the gauge's zero faked, plus = too large
    std::optional<double> blockCelsius; // where it was read; nothing = as the setting says
};
Conditions conditionsOf(const ZeroHistory& zero, const GaugeSetting& gauge, const Bore* bore,
                        const Reading& reading);

// The diameter at 20 °C that a typed number means under a gauge setting.
//   deviation entry:  D = S·(1 + α_s·(T_s − 20)) ± d, with + where a larger bore reads plus
//   diameter entry:   D = d, scaled likewise from the set size: S's growth is added to d
//   D20 = (D − z + S·α_g·ΔT_g) / (1 + α_b·(T_b − 20))
// S set size of the master at 20 °C, d the typed number, z what zero had drifted, α expansion per
// °C, T_s and T_b the temperatures of master and block in °C, of which both must be given, else
// neither is corrected for; ΔT_g what the gauge warmed by since it was set (a gauge grown longer
// reads a bore small). Exact where no correction is made; else rounded to the picometre, half to
// even. Refuses a deviation where no set size is given.
Result<Length> diameterAt20(const TypedLength& typed, const GaugeSetting& gauge,
                            const Conditions& conditions = {});
// Whether diameterAt20 corrects for temperature under this setting.
bool correctsTemperature(const GaugeSetting& gauge);
// The deviation from the set size that the bore has by this typed number, with plus = larger.
Result<Length> deviationOf(const TypedLength& typed, const GaugeSetting& gauge);

// Refuses, in words for the bench, a typed number that cannot be a reading: a diameter where a
// deviation is meant or the other way round, beyond the travel of the dial. `standardSize` bounds
// diameters where the gauge has no set size (a tenth either way).
Result<void> checkReading(const TypedLength& typed, const GaugeSetting& gauge,
                          std::optional<Length> standardSize);

// A station with what was read there.
struct Gauged {
    Station station;
    std::optional<Length> diameter; // mean of the unstruck repeats; nothing where none
    int repeats = 0;
    std::vector<Timestamp> times;       // of those readings
    std::optional<std::string> refused; // why a reading has no diameter
};

// Every station of a survey that was asked for or read, in order of bore, depth, axis.
std::vector<Gauged> gauge(const Workbook& workbook, const Survey& survey);

// Largest less smallest of what the zero checks showed, and the last; nothing without checks.
struct ZeroDrift {
    Length spread;
    Length last;
    int checks = 0;
};
std::optional<ZeroDrift> zeroDrift(const SurveyHeader& survey);

} // namespace borewright
