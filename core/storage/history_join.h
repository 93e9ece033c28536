// SPDX-License-Identifier: GPL-3.0-or-later
// Two benches changed one file: the history of the one whose state is kept, with all that the other
// did in it.
#pragma once

#include "core/workbook/workbook.h"

#include <string>

namespace borewright {

// Histories only grow: theirs stands as it is in the file; behind it what leads back from theirs to
// where mine went on, what mine has that theirs has not, and that `who` kept his own at `now`. The
// way back to every sheet of both stays exact, or is refused behind what was too large to be kept.
// Mine as it is where theirs is another workbook or holds nothing that mine has not.
History joinedHistory(const Workbook& mine, const Workbook& theirs, const std::string& who,
                      const Timestamp& now);

} // namespace borewright
