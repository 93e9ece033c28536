// SPDX-License-Identifier: GPL-3.0-or-later
// Lengths in the fields of the Block page: shown as they were typed, with their unit; a number
// with no unit is taken in the unit its neighbours were typed in.
#pragma once

#include "core/workbook/workbook.h"

#include <QString>

#include <optional>

namespace borewright {

// "3.4200 in"; empty where nothing is given.
QString shownLength(const std::optional<TypedLength>& length);

// Inch or millimetre for a size typed with no unit where nothing else tells: no engine has a bore
// of 20 in, none of 20 mm measured with a bore gauge (common practice, no source).
Unit unitOfSize(const QString& text);
// Inch or millimetre, as the block's sizes and depths were typed; nothing where none was.
std::optional<Unit> unitOfBlock(const Block& block);

// What a field says: nothing where it is empty, else the length. `before` is what it said until
// now, whose unit counts first; then the block's; then what the number itself suggests.
Result<std::optional<TypedLength>>
readField(const QString& text, const std::optional<TypedLength>& before, const Block& block);

// Refuses a length that is not above zero.
Result<void> mustBePositive(const std::optional<TypedLength>& length, const QString& what);
// Refuses an allowance (out-of-round, taper) that can only be a slip of unit: over 0.1 in.
Result<void> mustBeSmall(const std::optional<TypedLength>& length);
// Refuses a size that can only be a slip: more than a tenth away from the standard size.
Result<void> mustBeNear(const std::optional<TypedLength>& size,
                        const std::optional<TypedLength>& standard);
// Refuses an oversize below zero, and one that can only be a slip of unit: more than a tenth of the
// standard size.
Result<void> mustBeOversize(const std::optional<TypedLength>& oversize, const Block& block);

} // namespace borewright
