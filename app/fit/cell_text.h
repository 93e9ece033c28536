// SPDX-License-Identifier: GPL-3.0-or-later
// What a cell says and how it is read: lengths in the unit of the column's head, which a cell typed
// in another unit names behind its number; temperatures, counts and bores.
#pragma once

#include "core/length/temperature.h"
#include "core/workbook/block.h"

#include <QString>

#include <optional>

namespace borewright::cell_text {

QString length(const std::optional<TypedLength>& length, Unit unit);
Result<void> readInto(std::optional<TypedLength>& length, const QString& text, Unit unit);
// The same for an amount that the small unit is meant for: readAmount in number_text.h.
Result<void> readAmountInto(std::optional<TypedLength>& length, const QString& text, Unit unit);
QString temperature(const std::optional<TypedTemperature>& temperature);
Result<void> readInto(std::optional<TypedTemperature>& temperature, const QString& text);
// A bore's number, refused where the block has no such bore.
QString bore(const std::optional<int>& bore);
Result<void> readInto(std::optional<int>& bore, const QString& text, const Block& block);

} // namespace borewright::cell_text
