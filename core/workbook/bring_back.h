// SPDX-License-Identifier: GPL-3.0-or-later
// An earlier state of the workbook brought back, as one edit that can be undone like any other.
#pragma once

#include "core/workbook/edit.h"

#include <string>

namespace borewright {

// Makes all that was recorded as it was in `earlier`. What is above the record stays as it is now:
// whether it is a demonstration, and fields of later versions that stand at the very top.
Edit bringBack(const Workbook& now, const Workbook& earlier);

// Makes one survey as it was, its heading and its readings; one that is not there any more is put
// back in its place. Refuses, saying why: no such survey in `earlier`, readings of a bore or an
// axis that the block has no more, limits that are gone.
Result<Edit> bringBackSurvey(const Workbook& now, const Workbook& earlier, const std::string& id);

} // namespace borewright
