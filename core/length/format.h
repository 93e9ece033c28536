// SPDX-License-Identifier: GPL-3.0-or-later
// Showing a length: the one place where it is rounded, once, half to even (ASTM E29; ISO 80000-1
// Annex B rule A). The unit is an argument of display, never a global.
#pragma once

#include "core/length/length.h"

#include <string>

namespace borewright {

enum class Sign {
    negative, // a typographic minus before negative values (screens, sheet)
    always,   // a typographic plus or minus before any value but zero
    plain,    // an ASCII minus before negative values (files, typed text)
};

// `value` in `unit` with `decimals` digits behind a decimal point (0 … 12). A value that rounds to
// zero carries no sign.
std::string format(Length value, Unit unit, int decimals, Sign sign = Sign::negative);

// The units and decimals in which a screen, a sheet or a table shows things: a large unit for
// sizes and depths, a small one for what is a few thou.
struct DisplayUnits {
    Unit size = Unit::inch;
    Unit small = Unit::thou;

    static DisplayUnits inch() { return {Unit::inch, Unit::thou}; }
    static DisplayUnits metric() { return {Unit::millimetre, Unit::micrometre}; }
    friend bool operator==(const DisplayUnits&, const DisplayUnits&) = default;
};

// Decimals that show a tenth of a thou or a micrometre in `unit`: in 4, thou 1, tenths 0, mm 3,
// hundredths 1, µm 0.
int usualDecimals(Unit unit);

// A size ("3.4240") or a small amount ("2.9", "−1.6") in the units of `units`, with the usual
// decimals plus `extra` (a mean deserves one more).
std::string formatSize(Length value, const DisplayUnits& units, int extra = 0);
std::string formatSmall(Length value, const DisplayUnits& units, Sign sign = Sign::negative,
                        int extra = 0);
// A depth: as a size, with at least two (inch) or no (millimetre) decimals and no needless zeros.
std::string formatDepth(Length value, const DisplayUnits& units);
// The same with the unit's symbol behind.
std::string sizeWithUnit(Length value, const DisplayUnits& units, int extra = 0);
std::string smallWithUnit(Length value, const DisplayUnits& units, Sign sign = Sign::negative,
                          int extra = 0);
std::string depthWithUnit(Length value, const DisplayUnits& units);

} // namespace borewright
