// SPDX-License-Identifier: GPL-3.0-or-later
// Workbooks of a size that a shop may reach, for the benchmarks.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::bench {

enum class WithGear { no, yes }; // whether the doubt of the gauge is known

// `bores` bores × `levels` levels × two axes, `surveys` surveys fully read, with limits.
Workbook largeBlock(int bores, int levels, int surveys, WithGear gear = WithGear::no);

// The same with four sizes on offer, a piston and a half for each bore and two rings, so that size
// and fit are reckoned after every reading too.
Workbook withSizesAndFit(Workbook workbook);

} // namespace borewright::bench
