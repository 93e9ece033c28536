// SPDX-License-Identifier: GPL-3.0-or-later
// What a block cannot be. Files that hold it are refused, and edits that would make it: whatever
// the program saves, it can open again.
#pragma once

#include "core/result.h"
#include "core/workbook/block.h"

#include <cstddef>
#include <span>

namespace borewright {

inline constexpr int mostBores = 64;

// One bore: number 1 … 999, a size more than zero and at most a metre, depths from zero on, no
// level twice, ports and marks on axes that there are.
Result<void> checkBore(const Bore& bore, std::span<const Axis> axes);
// The whole: at most 64 bores and 32 axes, no number and no axis twice, and each bore.
Result<void> checkBlock(const Block& block);

} // namespace borewright
