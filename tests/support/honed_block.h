// SPDX-License-Identifier: GPL-3.0-or-later
// A block under the hone: something is given in every field of what is recorded of honing.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::test {

// Three blind inch bores 5 in deep, surveys "s1" (as found) and "s2" (check). Stones "k1" (full
// 100, 3 in long), "k2" (short 100, 1 in long on 0.25 in of wood) and "k3" (full 280, finish).
// Passes: "h1" of k1 in bore 1 after s1, "h2" of k2 in bore 2 after s2, "h3" of k1 in bore 2,
// struck out. k1 was dressed after h1, k2 turned end for end at the beginning.
Workbook honedBlock();

// The same, bore 2 read before and after pass h2: 1.5 thou off everywhere, 0.5 more at the closed
// end.
Workbook measuredHonedBlock();

} // namespace borewright::test
