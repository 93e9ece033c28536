// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of the ledger, the same in SQLite and PostgreSQL. Lengths are whole picometres, times
// whole seconds since 1970 in UTC beside their offset in minutes.
#pragma once

#include "app/ledger/ledger_connection.h"

namespace borewright {

inline constexpr int ledgerVersion = 3;

enum class LedgerState {
    empty,   // nothing there yet
    ready,   // tables of this version
    older,   // made by an older version of this program
    newer,   // made by a newer version of this program
    foreign, // a database, but of something else
};

Result<LedgerState> ledgerState(LedgerConnection& connection);
// Makes the tables in an empty database.
Result<void> makeLedger(LedgerConnection& connection);
// Whether it was ever made from the workbooks; a job that was saved may come before that.
Result<bool> isFilled(LedgerConnection& connection);
Result<void> markFilled(LedgerConnection& connection);
// Takes away every table of an older version.
Result<void> dropLedger(LedgerConnection& connection);

} // namespace borewright
