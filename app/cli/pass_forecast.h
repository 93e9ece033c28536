// SPDX-License-Identifier: GPL-3.0-or-later
// What speaks against a pass that is logged: it counts all the same, since it was done.
#pragma once

#include "core/workbook/workbook.h"

#include <string>
#include <vector>

namespace borewright {

// In sentences, from the workbook as it stands before `pass` is in it: more strokes than anyone
// makes in one set-up, and with `foresee` the same forecast that the window shows where some depth
// may go over size (some tenths of a second: the whole log is learned from). Empty where nothing
// speaks against it, or nothing can be foreseen.
std::vector<std::string> doubtsOfPass(const Workbook& before, const Pass& pass, bool foresee);

} // namespace borewright
