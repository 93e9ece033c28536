// SPDX-License-Identifier: GPL-3.0-or-later
// A block with a size to choose and pistons to fit: something is given in every field.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::test {

// Three inch bores. Damage in bore 2, a target for 1 and 2; piston "p1" goes in bore 1, "p2" in
// bore 3, "p3" nowhere; ring "g1" was measured in bore 2 and goes in bore 3.
Workbook fittedBlock();

} // namespace borewright::test
