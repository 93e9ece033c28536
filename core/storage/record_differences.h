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

} // namespace borewright
