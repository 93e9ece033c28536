// SPDX-License-Identifier: GPL-3.0-or-later
// What the Block page does to a block, without a window: more or fewer bores, numbering, levels.
#pragma once

#include "core/workbook/check.h"
#include "core/workbook/edit.h"

#include <QString>

namespace borewright {

// "6"; refuses what is not a whole number from 1 to mostBores.
Result<int> readBoreCount(const QString& text);

// The block with `count` bores: new ones like the last, under the next free number; the last are
// taken off. Refuses to take off a bore that has readings.
Result<Block> withBoreCount(const Workbook& workbook, int count);

// Numbers in the order tapped: the bore tapped first becomes 1. Bores not tapped get the numbers
// that are left, in the order they had.
Renumber numbered(const Block& block, const std::vector<int>& tapped);

// A further axis between those there are: C at 45°, D at 135°, then others.
Axis nextAxis(const std::vector<Axis>& axes);

// Adds a level in its place by depth; refuses a depth that the bore has or that lies beyond it.
Result<void> insertLevel(Bore& bore, const Level& level);

} // namespace borewright
