// SPDX-License-Identifier: GPL-3.0-or-later
// Workbooks of a size that a shop may reach, for the benchmarks.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::bench {

// `bores` bores × `levels` levels × two axes, `surveys` surveys fully read, with limits.
Workbook largeBlock(int bores, int levels, int surveys);

} // namespace borewright::bench
