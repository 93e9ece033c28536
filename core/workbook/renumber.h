// SPDX-License-Identifier: GPL-3.0-or-later
// Giving bores other numbers. Part of edit.h.
#pragma once

#include "core/workbook/edit.h"

namespace borewright {

// Carries the new numbers to whatever names a bore; returns the inverse. Refuses, changing
// nothing, a number given twice or away from 1 … 999.
Result<Edit> renumber(Workbook& workbook, const Renumber& edit);

} // namespace borewright
