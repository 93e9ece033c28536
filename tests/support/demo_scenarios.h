// SPDX-License-Identifier: GPL-3.0-or-later
// The demonstration workbooks as tables: readings as they were typed, planted mistakes
// included. Everything in them is invented. demo/*.borebook hold the same; demo_test.cpp compares.
#pragma once

#include "core/workbook/workbook.h"

#include <string>

namespace borewright::demo {

// Six sleeves closed at the crankcase side, in inches and thou.
Workbook saltmarsh();
// The first block after its last pass, read warm with a coarse dial: what can still be said?
Workbook saltmarshWarm();
// The first block with its stones, before the hone has made it straight.
Workbook saltmarshHoning();
// A three-cylinder block with a one-piece head, in millimetres and micrometres.
Workbook rushmere();

// saltmarsh() with its planted mistakes struck out and typed again.
Workbook correctedSaltmarsh();
// A workbook with the gear's figures taken out: judged as the readings stand.
Workbook withoutDoubt(Workbook workbook);

// Strikes what stands at a station of a survey and types another text there.
void correct(Workbook& workbook, const std::string& survey, const Station& station,
             const std::string& text);
// A station by its depth as typed ("1.20 in").
Station at(int bore, const std::string& depth, const std::string& axis);

} // namespace borewright::demo
