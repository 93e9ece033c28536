// SPDX-License-Identifier: GPL-3.0-or-later
// A block of any number of bores from found to fitted, with long names and something in every
// column of the sheet.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::test {

// Bores of 3.5 in, found worn and finished at 0.020 over, ports between the levels 2 and 2.75,
// sizes on offer and a score in the last bore; `pistons` for an aim of 4.2 thou, about 0.2 thou
// apart and given from the largest to the smallest, and rings for two grooves. The first bore's
// piston is decided, where there are pistons.
Workbook pistonBlock(int bores, int pistons);
// The same before anything was honed.
Workbook pistonBlockAsFound(int bores, int pistons);

} // namespace borewright::test
