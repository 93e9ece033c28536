// SPDX-License-Identifier: GPL-3.0-or-later
// A ledger file that cannot be used is never deleted: it is put aside under another name.
#pragma once

#include "core/result.h"

#include <string>

namespace borewright {

// Whether the file may be put aside: it has the beginning of a SQLite file, or the ending that
// ledgers have. Anything else that somebody named by mistake stays where it is.
bool looksLikeLedger(const std::string& file);

// Gives the file, and what SQLite keeps beside it, another name that is free; returns it.
Result<std::string> setAside(const std::string& file);

} // namespace borewright
