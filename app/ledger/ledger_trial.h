// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a ledger can be reached, and what is found there.
#pragma once

#include "app/ledger/ledger_place.h"

#include <cstdint>
#include <string>

namespace borewright {

struct LedgerTrial {
    std::string server;     // "PostgreSQL 15.18"; empty = a file
    bool encrypted = false; // the way to the server goes through TLS
    bool made = false;      // the tables were made just now; else they were there
    std::int64_t jobs = 0;
};

// Opens the ledger, and makes it where there is none. Refuses as LedgerStore::open() does. Takes
// seconds where a server does not answer.
Result<LedgerTrial> tryLedger(const LedgerAccess& access);

} // namespace borewright
