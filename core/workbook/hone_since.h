// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a bore was measured, but honed since: what was read there holds no more.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright {

// By the order of the record, never by clocks; struck passes and readings do not count. False where
// the bore was never measured.
bool honedSinceMeasured(const Workbook& workbook, int bore);

} // namespace borewright
