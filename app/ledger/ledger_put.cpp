// SPDX-License-Identifier: GPL-3.0-or-later
// Entering a job: its row, and its bores, surveys and stones a statement each.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_fold.h"
#include "app/ledger/ledger_rows.h"

#include <fmt/format.h>

#include <QSqlQuery>

namespace borewright {
namespace {

constexpr qsizetype rowsAtOnce = 50;

template<class Value>
QVariant whole(Value value) {
    return QVariant(static_cast<qlonglong>(value));
}

QVariant secondsOf(const std::optional<Timestamp>& time) {
    return time ? whole(time->secondsSinceEpoch) : QVariant(QMetaType::fromType<qlonglong>());
}
QVariant offsetOf(const std::optional<Timestamp>& time) {
    return time ? whole(time->offsetMinutes) : QVariant(QMetaType::fromType<qlonglong>());
}

void addSpan(QVariantList& values, const std::optional<SizeSpan>& span) {
    values += sqlLength(span ? std::optional(span->smallest) : std::nullopt);
    values += sqlLength(span ? std::optional(span->largest) : std::nullopt);
}

QVariantList jobValues(const JobEntry& job, std::int64_t round) {
    QVariantList values{sqlText(job.file), sqlText(fmt::format("{:016x}", job.content))};
    for (const std::string* text : {&job.customer, &job.engine, &job.serial})
        values += sqlText(*text);
    for (const std::string* text : {&job.customer, &job.engine, &job.serial})
        values += sqlFolded(*text);
    for (const auto& time : {job.opened, job.lastSurvey})
        values << secondsOf(time) << offsetOf(time);
    values << sqlText(std::string(key(job.units.size)))
           << sqlText(std::string(key(job.units.small)));
    values << whole(job.invented ? 1 : 0) << whole(job.bores.size());
    addSpan(values, sizeBefore(job));
    addSpan(values, sizeAfter(job));
    values << sqlLength(oversizeOf(job)) << sqlText(std::string(nameOf(worstVerdict(job))));
    values << sqlFolded(job.customer + ' ' + job.engine + ' ' + job.serial + ' ' + job.file);
    values << whole(round);
    return values;
}

const QString& jobStatement() {
    static const QString statement = [] {
        const QStringList columns{"file",           "content",         "customer",
                                  "engine",         "serial",          "customer_key",
                                  "engine_key",     "serial_key",      "opened",
                                  "opened_offset",  "last_survey",     "last_survey_offset",
                                  "size_unit",      "small_unit",      "invented",
                                  "bores",          "before_smallest", "before_largest",
                                  "after_smallest", "after_largest",   "oversize",
                                  "verdict",        "search",          "round"};
        QStringList marks, again;
        for (const QString& column : columns) {
            marks += QStringLiteral("?");
            if (column != QLatin1String("file")) again += column + " = excluded." + column;
        }
        return QStringLiteral("INSERT INTO job (%1, taken) VALUES (%2, 1) ON CONFLICT (file) DO "
                              "UPDATE SET %3, taken = job.taken + 1 RETURNING id, taken")
            .arg(columns.join(u','), marks.join(u','), again.join(u','));
    }();
    return statement;
}

QVariantList boreValues(const BoreEntry& bore) {
    QVariantList values{whole(bore.bore), sqlLength(bore.standardSize)};
    addSpan(values, bore.before);
    addSpan(values, bore.after);
    return values << sqlLength(bore.oversize) << sqlText(std::string(nameOf(bore.verdict)));
}

QVariantList gaugeValues(const GaugeEntry& gauge) {
    return {sqlText(gauge.survey),
            sqlText(gauge.kind),
            secondsOf(gauge.time),
            offsetOf(gauge.time),
            sqlText(gauge.gauge),
            sqlText(gauge.setOn),
            sqlText(gauge.lastChecked),
            sqlText(gauge.bores),
            sqlFolded(gauge.gauge + " | " + gauge.setOn)};
}

QVariantList stoneValues(const StoneEntry& stone) {
    return {sqlText(stone.name),     sqlFolded(stone.name),
            sqlText(stone.grit),     sqlText(std::string(surfaceName(stone.surface))),
            whole(stone.passes),     QVariant(stone.strokes),
            sqlLength(stone.tookOff)};
}

// Rows of one job into a table, many to a statement: a server answers each statement by itself.
template<class Entry>
Result<void> putRows(LedgerConnection& connection, const QString& table, qlonglong job,
                     const std::vector<Entry>& entries, QVariantList (*valuesOf)(const Entry&)) {
    QVariantList values;
    qsizetype rows = 0;
    qlonglong place = 0;
    QString marks;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const QVariantList row = valuesOf(entries[i]);
        values << job << place++ << row;
        marks +=
            (rows++ == 0 ? "(?,?" : ",(?,?") + QStringLiteral(",?").repeated(row.size()) + u')';
        if (rows < rowsAtOnce && i + 1 < entries.size()) continue;
        const auto done = connection.run("INSERT INTO " + table + " VALUES " + marks, values);
        if (!done) return done;
        values.clear();
        marks.clear();
        rows = 0;
    }
    return {};
}

} // namespace

Result<void> LedgerStore::put(const JobEntry& job, std::int64_t round) {
    return m_connection->together([&]() -> Result<void> {
        qlonglong id = 0;
        int taken = 0;
        auto done =
            m_connection->run(jobStatement(), jobValues(job, round), [&](const QSqlQuery& query) {
                id = query.value(0).toLongLong();
                taken = query.value(1).toInt();
            });
        if (!done) return done;
        if (taken > 1) // what stood there of it
            for (const char* table : {"bore", "gauge", "stone"})
                if (done = m_connection->run(
                        QStringLiteral("DELETE FROM %1 WHERE job = ?").arg(table), {id});
                    !done)
                    return done;
        if (done = putRows(*m_connection, "bore", id, job.bores, boreValues); !done) return done;
        if (done = putRows(*m_connection, "gauge", id, job.gauges, gaugeValues); !done) return done;
        return putRows(*m_connection, "stone", id, job.stones, stoneValues);
    });
}

} // namespace borewright
