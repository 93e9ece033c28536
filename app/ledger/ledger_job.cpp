// SPDX-License-Identifier: GPL-3.0-or-later
// Reading back all that was entered of a job.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_rows.h"

#include <QSqlQuery>

namespace borewright {
namespace {

JobEntry headOf(const QSqlQuery& query) {
    const LedgerRow row = rowOf(query);
    JobEntry job;
    job.file = row.file;
    job.content = query.value(rowColumnCount - 1).toString().toULongLong(nullptr, 16);
    job.customer = row.customer;
    job.engine = row.engine;
    job.serial = row.serial;
    job.opened = row.opened;
    job.lastSurvey = row.lastSurvey;
    job.units = row.units;
    job.invented = row.invented;
    return job;
}

} // namespace

Result<std::optional<JobEntry>> LedgerStore::job(const std::string& file) {
    std::optional<JobEntry> job;
    qlonglong id = 0;
    auto done =
        m_connection->run(QStringLiteral("SELECT %1 FROM job WHERE file = ?").arg(rowColumns()),
                          {sqlText(file)}, [&](const QSqlQuery& query) {
                              job = headOf(query);
                              id = query.value(0).toLongLong();
                          });
    if (!done) return tl::unexpected(done.error());
    if (!job) return std::optional<JobEntry>();
    done = m_connection->run(
        QStringLiteral("SELECT %1 FROM bore WHERE job = ? ORDER BY place").arg(boreColumns()), {id},
        [&](const QSqlQuery& query) { job->bores.push_back(boreOf(query, 0)); });
    if (!done) return tl::unexpected(done.error());
    done = m_connection->run(
        QStringLiteral("SELECT %1 FROM gauge WHERE job = ? ORDER BY place").arg(gaugeColumns()),
        {id}, [&](const QSqlQuery& query) { job->gauges.push_back(gaugeOf(query, 0)); });
    if (!done) return tl::unexpected(done.error());
    done = m_connection->run(
        QStringLiteral("SELECT name, grit, surface, passes, strokes, took_off FROM stone "
                       "WHERE job = ? ORDER BY place"),
        {id}, [&](const QSqlQuery& query) { job->stones.push_back(stoneOf(query)); });
    if (!done) return tl::unexpected(done.error());
    return job;
}

} // namespace borewright
