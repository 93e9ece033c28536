// SPDX-License-Identifier: GPL-3.0-or-later
// Made blocks whose doubt is known: the figures of the gear are those of the two usual sets.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::test {

// Six bores, found and finished with a tenth dial set on a ring, all stood together. As found,
// bore 1 is worn past its limit, bore 2 has a taper just under its limit (too close to call), bore
// 3 has a V of 2 thou, bore 4 a bell-mouth, 5 and 6 are straight. Finished, all are straight at
// 0.020 over, but bore 5, whose largest size lies on its limit.
Workbook wellKnownBlock();
// Two bores, found with a dial of half a thou set on a micrometer, the block at 29 °C fresh from
// the hone, the master at 20 °C. Bore 1 has a taper just under its limit: too close to call.
Workbook warmBlock();

} // namespace borewright::test
