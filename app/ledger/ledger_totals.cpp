// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_totals.h"

#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_fold.h"
#include "app/ledger/ledger_rows.h"

#include <QSqlQuery>

#include <algorithm>

namespace borewright {
namespace {

// Jobs whose engine holds each of the words. What an engine holds, the searched text holds too, and
// that is looked through by its narrow index first.
QString engineHolds(qsizetype words) {
    if (words == 0) return {};
    return QStringLiteral(" AND job.id IN (SELECT f.id FROM job f WHERE TRUE") +
           holdsEach(QStringLiteral("f.search"), words) + u')' +
           holdsEach(QStringLiteral("job.engine_key"), words);
}

} // namespace

Result<std::vector<NeededJob>> neededBy(LedgerStore& store, const std::string& engine) {
    const QStringList words = searchWords(QString::fromStdString(engine));
    std::vector<NeededJob> jobs;
    const auto done = store.connection().run(
        QStringLiteral("SELECT %1, %2 FROM job LEFT JOIN bore ON bore.job = job.id WHERE TRUE%3 "
                       "ORDER BY job.opened DESC NULLS LAST, job.id DESC, bore.place")
            .arg(rowColumns(), boreColumns(), engineHolds(words.size())),
        held(words + words), [&](const QSqlQuery& query) {
            LedgerRow row = rowOf(query);
            if (jobs.empty() || jobs.back().job.id != row.id) jobs.push_back({std::move(row), {}});
            if (!query.value(rowColumnCount).isNull())
                jobs.back().bores.push_back(boreOf(query, rowColumnCount));
        });
    if (!done) return tl::unexpected(done.error());
    return jobs;
}

Result<std::vector<StoneRate>> stoneRates(LedgerStore& store, const std::string& engine) {
    const QStringList words = searchWords(QString::fromStdString(engine));
    std::vector<StoneRate> rates;
    // A job's own rate is its sum of removal over its sum of strokes; 10⁶ pm = 1 µm.
    const auto done = store.connection().run(
        QStringLiteral(
            "SELECT MAX(s.name), s.grit, s.surface, CAST(SUM(s.passes) AS BIGINT), "
            "SUM(s.strokes), CAST(SUM(s.took_off) AS BIGINT), COUNT(DISTINCT s.job), "
            "MIN(s.took_off / s.strokes / 1e6), MAX(s.took_off / s.strokes / 1e6) "
            "FROM stone s JOIN job ON job.id = s.job WHERE s.passes > 0 AND s.strokes > 0%1 "
            "GROUP BY s.name_key, s.grit, s.surface ORDER BY s.name_key, s.grit, s.surface")
            .arg(engineHolds(words.size())),
        held(words + words), [&](const QSqlQuery& query) {
            StoneRate rate;
            rate.sum = stoneOf(query);
            rate.jobs = query.value(6).toInt();
            rate.slowest_um = query.value(7).toDouble();
            rate.fastest_um = query.value(8).toDouble();
            rates.push_back(std::move(rate));
        });
    if (!done) return tl::unexpected(done.error());
    return rates;
}

Result<std::vector<TouchedSurvey>> touchedBy(LedgerStore& store, const std::string& gauge) {
    // The name as a whole: its "3" alone would find every ring of 3.5 in.
    const QString name = folded(QString::fromStdString(gauge));
    if (name.isEmpty()) return refuse("gauge", "no gauge is named");
    std::vector<TouchedSurvey> touched;
    const auto done = store.connection().run(
        QStringLiteral("SELECT %1, %2 FROM gauge JOIN job ON job.id = gauge.job WHERE TRUE%3 "
                       "ORDER BY gauge.time DESC, job.id DESC, gauge.place DESC")
            .arg(rowColumns(), gaugeColumns(), holdsEach(QStringLiteral("gauge.search"), 1)),
        held({name}), [&](const QSqlQuery& query) {
            touched.push_back({rowOf(query), gaugeOf(query, rowColumnCount)});
        });
    if (!done) return tl::unexpected(done.error());
    return touched;
}

} // namespace borewright
