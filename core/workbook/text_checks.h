// SPDX-License-Identifier: GPL-3.0-or-later
// What no file could hold is refused where it is typed, or else nothing could be saved any more.
// Part of edit.h.
#pragma once

#include "core/workbook/edit.h"

namespace borewright {

// Refuses, naming the field, a text of an edit that is longer than `longestText` (edit_checks.h).
Result<void> checkTexts(const Edit& edit);

} // namespace borewright
