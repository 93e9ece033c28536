// SPDX-License-Identifier: GPL-3.0-or-later
// What the list can be sorted by, and the indexes that give it in that order. Part of the store.
#pragma once

#include "app/ledger/ledger_store.h"

#include <QString>
#include <QStringList>

namespace borewright {

// " ORDER BY …" of the program's own words alone: what is sorted by cannot be bound. What has no
// value stands last either way; equal ones stand in the order of their ids.
QString orderOf(const QString& table, const LedgerQuestion& question, bool server);

// The statements that make the indexes.
QStringList orderIndexes(bool server);

} // namespace borewright
