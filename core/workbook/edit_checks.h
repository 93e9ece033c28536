// SPDX-License-Identifier: GPL-3.0-or-later
// What one part of a workbook may not do to another. Part of edit.h.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright {

// Of one text, in bytes: no file of the workbook's form holds a longer one.
inline constexpr std::size_t longestText = 64UL * 1024;

// A block may not lose a bore or an axis that a survey reads or asks for, nor a bore that was
// honed.
Result<void> keepsStations(const Workbook& workbook, const Block& block);

// Each pass is logged after a survey that is there, or before all, and fits its bore; but one whose
// work and stone are as they were stands though its bore was changed since.
Result<void> checkPasses(const Workbook& workbook, const HoneRecord& hone);

} // namespace borewright
