// SPDX-License-Identifier: GPL-3.0-or-later
// What a trial of a ledger came to, in sentences.
#pragma once

#include "app/ledger/ledger_trial.h"

#include <QString>

namespace borewright {

// "Reached: PostgreSQL 15.18, encrypted. Its tables were made. It holds no job yet."
QString inWords(const LedgerTrial& trial, const LedgerAccess& access);
// "Not reached: …"
QString refusalOf(const Error& error);

} // namespace borewright
