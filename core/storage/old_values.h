// SPDX-License-Identifier: GPL-3.0-or-later
// Old values of a history (core/workbook/history.h) in the record that they belong to. Part of
// history_log.h and history_lines.h.
#pragma once

#include "core/storage/json_value.h"
#include "core/workbook/workbook.h"

#include <string>
#include <string_view>
#include <vector>

namespace borewright {

// All that is recorded, as the file has it; the history is left out.
Result<JsonValue> recordJson(Workbook workbook);

// The steps of a JSON pointer (RFC 6901): "/a/0/b~1c" is a, 0, b/c. Empty for what is none.
std::vector<std::string> pointerSteps(std::string_view pointer);

// A member of an object by its key, an item of a list by its place; null where there is none.
JsonValue* stepInto(JsonValue& value, const std::string& step);

// Puts one value back; false, and possibly half done, where there is no such place.
bool putBack(JsonValue& root, const OldValue& old);

} // namespace borewright
