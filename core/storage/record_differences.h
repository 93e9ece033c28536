// SPDX-License-Identifier: GPL-3.0-or-later
// What differs between two workbooks in the form that the file has: objects by their fields, lists
// by what tells their items apart. Part of differences.h.
#pragma once

#include "core/storage/differences.h"
#include "core/storage/json_value.h"

namespace borewright {

// Appends what differs between two objects of the same kind. `around` has the place and survey of
// both. Whatever differs in any field gives at least one difference.
void compareObjects(const JsonValue& was, const JsonValue& is, const Difference& around,
                    std::vector<Difference>& found);
// The same of two values that stand under `key`; empty = items of a list.
void compareValues(const JsonValue& was, const JsonValue& is, const Difference& around,
                   const std::string& key, std::vector<Difference>& found);

// What lies under this key of an object, or is this item of the list under `key`.
Difference underKey(const Difference& around, const std::string& key);
Difference inItem(const Difference& around, const std::string& key, const JsonValue& item,
                  std::size_t place);
// "topRingLine" is "top ring line". A value as it is told: texts and numbers as they stand, lists
// by how much they hold.
std::string wordsForKey(const std::string& key);
std::string inShort(const JsonValue& value);

} // namespace borewright
