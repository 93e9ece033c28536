// SPDX-License-Identifier: GPL-3.0-or-later
// What warmth does to a bore and to the gauge: temperatures along the block, what is worth a
// warning, how long to wait.
#pragma once

#include "core/length/format.h"
#include "core/workbook/workbook.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// How well a temperature is known where the user does not say, ± °C, limits (common practice, no
// source).
namespace warmth_doubt {
inline constexpr double difference = 1;        // block against master: both read, or stood together
inline constexpr double unknownDifference = 3; // nobody looked
inline constexpr double readTemperature = 1;   // of both together, by the thermometer
inline constexpr double room = 3;              // a room's distance from 20 °C, nobody looked
inline constexpr double gauge = 1;             // what a hand warms a gauge by
inline constexpr double end = 0.5; // one end of a block against the other, nobody looked
// A casting that cools is not of one temperature: what each degree that it is warmer than the
// master adds to the doubt of its temperature, and of one end against the other.
inline constexpr double differenceByDegree = 0.2;
inline constexpr double endByDegree = 0.1;
} // namespace warmth_doubt

// A block this many degrees warmer just after a pass, lessening with this time constant: what is
// added to the doubt where no temperatures say better (common practice, no source).
namespace warmth_doubt {
inline constexpr double afterPass = 10;
inline constexpr double afterPassTime_min = 25;
} // namespace warmth_doubt

// Minutes within which a block is taken to be still warm from honing or washing.
inline constexpr int stillWarmMinutes = 20;

// The block's temperature at a depth: evenly between its open end and its closed end, where both
// are given; else blockTemperature. Nothing where that is not given.
std::optional<double> blockCelsiusAt(const GaugeSetting& gauge, const Bore* bore, Length depth);

// Standard fields of a material: its expansion's doubt, ± 1/°C, limits. Grey iron, aluminium and
// gauge steel ± 1e-6 (handbooks differ by as much; values from memory); a sleeve in aluminium
// ± 3e-6 (model, by wall thickness).
double expansionDoubt(Expansion material);

// D·α·ΔT: what a bore of `size` grows by when `celsius` warmer.
Length growthOf(Length size, Expansion material, double celsius);

// Sentences on warmth that a survey deserves: no temperatures, a block warm from honing with what
// it is worth, a false taper from one warm end, a gauge warmed by the hand. Empty where all is
// well.
std::vector<std::string> warmthWarnings(const Workbook& workbook, const SurveyHeader& survey,
                                        const DisplayUnits& units);

// Newton's law of cooling through two temperatures: T = T_room + (T_1 − T_room)·e^(−t/τ).
struct CoolDown {
    double timeConstant_min; // τ
    double wait_min;         // from the later temperature until within `within` of the room
    double doubt_min;        // ± of wait_min, 95 %, each temperature being ± 0.5 °C, limits
};
// Refuses temperatures that do not fall towards the room's, and no time between them.
Result<CoolDown> coolDown(const Cooling& cooling, double within_celsius = 1);
std::string coolDownWords(const CoolDown& down);

} // namespace borewright
