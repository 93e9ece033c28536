// SPDX-License-Identifier: GPL-3.0-or-later
// Every physical constant of the program, each with its source.
#pragma once

namespace borewright::constants {

// Reference temperature of dimensional measurement, °C. ISO 1:2022 (20 °C = 68 °F exactly).
inline constexpr double referenceCelsius = 20.0;

// Linear expansion, 1/°C.
// Grey iron G1800-G4000: Callister, Materials Science and Engineering, Table B.6.
inline constexpr double expansionGreyIron = 11.4e-6;
// Cast aluminium 356.0: Callister, Table B.6.
inline constexpr double expansionCastAluminium = 21.5e-6;
// Steel of gauge blocks and setting rings: ISO 3650 (11.5 ± 1), value from memory.
inline constexpr double expansionGaugeSteel = 11.5e-6;
// Iron sleeve bonded in aluminium: a model, not a measurement. Stiffness-weighted mean
// α = Σ(E·t·α)/Σ(E·t) of sleeve and casting gives 15 to 18 for usual wall thicknesses.
inline constexpr double expansionSleeveInAluminium = 16.0e-6;

// Doubt of the expansions above, ± 1/°C, limits: handbooks differ by as much (value from memory);
// of the sleeve, by the model over usual wall thicknesses.
inline constexpr double expansionDoubt = 1.0e-6;
inline constexpr double expansionSleeveDoubt = 3.0e-6;

} // namespace borewright::constants
