// SPDX-License-Identifier: GPL-3.0-or-later
// Between the ledger's rows and what they mean. Part of the store.
#pragma once

#include "app/ledger/ledger_store.h"

#include <QVariant>

class QSqlQuery;

namespace borewright {

// Nothing is NULL; text with a character of value zero, which a server refuses, has a space there.
QVariant sqlText(const std::string& text);
QVariant sqlLength(const std::optional<Length>& length);
QVariant sqlFolded(const std::string& text);

std::string textOf(const QVariant& value);
std::optional<Length> lengthOf(const QVariant& value);
std::optional<SizeSpan> spanOf(const QVariant& smallest, const QVariant& largest);
std::optional<Timestamp> timeOf(const QVariant& seconds, const QVariant& offset);
// An unknown word is "not measured"; so is a row of a damaged file.
Verdict verdictOf(const QVariant& value);
Surface surfaceOf(const QVariant& value);

// The columns of a LedgerRow, the content's hash behind them, and the row read from them.
QString rowColumns();
LedgerRow rowOf(const QSqlQuery& query);
inline constexpr int rowColumnCount = 20;

// The same of a bore and a survey; `first` is the place of their first column.
QString boreColumns();
BoreEntry boreOf(const QSqlQuery& query, int first);
QString gaugeColumns();
GaugeEntry gaugeOf(const QSqlQuery& query, int first);
// name, grit, surface, passes, strokes, took_off.
StoneEntry stoneOf(const QSqlQuery& query);

// " AND search LIKE ? …" once a word, and what is bound to them.
QString holdsEach(const QString& column, qsizetype words);
QVariantList held(const QStringList& words);

} // namespace borewright
