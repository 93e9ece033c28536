// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_order.h"

namespace borewright {
namespace {

enum class Holds { number, numberOrNothing, text };

struct Sorted {
    LedgerColumn by;
    const char* column;
    Holds holds;
};

constexpr Sorted sorted[]{
    {LedgerColumn::opened, "opened", Holds::numberOrNothing},
    {LedgerColumn::lastSurvey, "last_survey", Holds::numberOrNothing},
    {LedgerColumn::customer, "customer_key", Holds::text},
    {LedgerColumn::engine, "engine_key", Holds::text},
    {LedgerColumn::serial, "serial_key", Holds::text},
    {LedgerColumn::bores, "bores", Holds::number},
    {LedgerColumn::before, "before_largest", Holds::numberOrNothing},
    {LedgerColumn::after, "after_largest", Holds::numberOrNothing},
    {LedgerColumn::oversize, "oversize", Holds::numberOrNothing},
    {LedgerColumn::verdict, "verdict", Holds::text},
    {LedgerColumn::file, "file", Holds::text},
};

// A server refuses a text in an index that is longer than a third of a page, 2.7 KB; no two texts
// that anybody reads differ further along than this.
QString inOrder(const Sorted& one, const QString& column, bool server) {
    return server && one.holds == Holds::text ? QStringLiteral("LEFT(%1, 200)").arg(column)
                                              : column;
}

} // namespace

QString orderOf(const QString& table, const LedgerQuestion& question, bool server) {
    const QString way = question.descending ? QStringLiteral("DESC") : QStringLiteral("ASC");
    for (const Sorted& one : sorted)
        if (one.by == question.sort)
            // A server reads an index backwards for the other way only where nothing is said of
            // what has no value.
            return QStringLiteral(" ORDER BY %1 %2%3, %4.id %2")
                .arg(inOrder(one, table + u'.' + QLatin1String(one.column), server), way,
                     one.holds == Holds::numberOrNothing ? QStringLiteral(" NULLS LAST")
                                                         : QString(),
                     table);
    return QStringLiteral(" ORDER BY %1.id %2").arg(table, way);
}

// SQLite cannot tell beforehand whether a word is found often or never, so its indexes hold the
// text too: it finds in one of them alone what is asked for, and that is a fifth of the table.
// A server can tell: where a word is found often it goes along an index until it has a page full,
// else it looks through the table.
QStringList orderIndexes(bool server) {
    QStringList made;
    for (const Sorted& one : sorted) {
        const QString column = QString::fromLatin1(one.column);
        made += QStringLiteral("CREATE INDEX job_by_%1 ON job (%2, id%3)")
                    .arg(column, inOrder(one, column, server),
                         server ? QString() : QStringLiteral(", search"));
        if (server && one.holds == Holds::numberOrNothing)
            made += QStringLiteral("CREATE INDEX job_by_%1_down ON job (%1 DESC NULLS LAST, id "
                                   "DESC)")
                        .arg(column);
    }
    return made;
}

} // namespace borewright
