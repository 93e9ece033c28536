// SPDX-License-Identifier: GPL-3.0-or-later
// Two benches changed one file, and this one's is kept.
#pragma once

#include "app/document/document.h"

namespace borewright {

// Notes in the history that this workbook is kept over what somebody else made of the file, with
// all that he noted there (core/storage/history_join.h); no step of undo. It is to be saved.
void noteKeptOver(Document& document, const Workbook& theirs);

} // namespace borewright
