// SPDX-License-Identifier: GPL-3.0-or-later
// Numbers, lengths and times typed behind options. A refusal names the option.
#pragma once

#include "core/length/number_text.h"
#include "core/workbook/timestamp.h"

#include <optional>
#include <string>

namespace borewright {

// Whether `text` is a length with its own unit behind it.
bool hasOwnUnit(const std::string& text);

// A length; `usual` is its unit where none stands behind it.
Result<TypedLength> lengthOption(const std::string& option, const std::string& text, Unit usual);
// The same, or nothing where `text` is empty.
Result<std::optional<TypedLength>> maybeLength(const std::string& option, const std::string& text,
                                               Unit usual);

// A decimal number, point or comma.
Result<double> numberOption(const std::string& option, const std::string& text);

// ISO 8601, or `now` where `text` is empty.
Result<Timestamp> timeOption(const std::string& option, const std::string& text, Timestamp now);

} // namespace borewright
