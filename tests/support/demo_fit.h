// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes on offer, damage, pistons and rings of the demonstrations. Everything is invented.
#pragma once

#include "core/workbook/workbook.h"

namespace borewright::demo {

SizingPlan saltmarshSizes();
FitRecord saltmarshFit();
SizingPlan rushmereSizes();
FitRecord rushmereFit();

} // namespace borewright::demo
