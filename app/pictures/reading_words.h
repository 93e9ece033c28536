// SPDX-License-Identifier: GPL-3.0-or-later
// Readings, zones and units in words, as the pictures' tooltips and descriptions say them.
#pragma once

#include "core/results/results.h"

#include <QString>

namespace borewright {

// A text of the core (UTF-8) for the screen.
QString qs(const std::string& text);
QString unitSymbol(Unit unit);
// "ring travel"; empty where nothing is mapped.
QString zoneWord(Zone zone);
// "Bore 3, 1.75 in down, across: 3.4219 in, mean of 2 readings, 0.6 thou to go. Odd: …"
QString readingInWords(const StationResult& station, const Block& block, const DisplayUnits& units);

} // namespace borewright
