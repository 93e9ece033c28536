// SPDX-License-Identifier: GPL-3.0-or-later
// Workbooks made by chance, every field used by some of them; the same seed gives the same one.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::test {

Workbook randomWorkbook(unsigned seed);

} // namespace borewright::test
