// SPDX-License-Identifier: GPL-3.0-or-later
// Entering jobs, many together: their rows, then the bores, surveys and stones of all of them.
#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_fold.h"
#include "app/ledger/ledger_rows.h"

#include <fmt/format.h>

#include <QSqlQuery>

#include <algorithm>
#include <map>

namespace borewright {
namespace {

constexpr qsizetype rowsAtOnce = 128; // a power of two
constexpr std::size_t jobsAtOnce = 64;

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

const QStringList& jobColumns() {
    static const QStringList columns{"file",           "content",         "customer",
                                     "engine",         "serial",          "customer_key",
                                     "engine_key",     "serial_key",      "opened",
                                     "opened_offset",  "last_survey",     "last_survey_offset",
                                     "size_unit",      "small_unit",      "invented",
                                     "bores",          "before_smallest", "before_largest",
                                     "after_smallest", "after_largest",   "oversize",
                                     "verdict",        "search",          "round"};
    return columns;
}

// "(?,?,1),(?,?,1)" for as many rows.
QString marks(qsizetype rows, qsizetype columns, const QString& behind = {}) {
    const QString one = u'(' + QStringLiteral("?,").repeated(columns - 1) + u'?' + behind + u')';
    return QString(one + u',').repeated(rows).chopped(1);
}

QString jobStatement(qsizetype rows) {
    QStringList again;
    for (const QString& column : jobColumns())
        if (column != QLatin1String("file")) again += column + " = excluded." + column;
    return QStringLiteral("INSERT INTO job (%1, taken) VALUES %2 ON CONFLICT (file) DO UPDATE "
                          "SET %3, taken = job.taken + 1 RETURNING id, taken, file")
        .arg(jobColumns().join(u','), marks(rows, jobColumns().size(), ",1"), again.join(u','));
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

// Calls `put(from, rows)` for all rows, a power of two at a time: a server answers each statement
// by itself, and no more than one statement of each size has to stay prepared.
template<class Put>
Result<void> inPortions(qsizetype rows, Put&& put) {
    for (qsizetype from = 0, portion = rowsAtOnce; from < rows;) {
        while (portion > rows - from)
            portion /= 2;
        if (const auto done = put(from, portion); !done) return done;
        from += portion;
    }
    return {};
}

// The jobs of one batch, from their rows to all that hangs on them.
class Batch {
public:
    Batch(LedgerConnection& connection, std::int64_t round)
        : m_connection(connection)
        , m_round(round) {}

    // Of one file only the later counts; a server refuses a statement that has it twice.
    void add(const JobEntry& job) { m_jobs[sqlText(job.file).toString()] = &job; }

    Result<void> put() {
        if (auto done = putJobs(); !done) return done;
        for (const char* table : {"bore", "gauge", "stone"})
            if (auto done = takeOut(QString::fromLatin1(table)); !done) return done;
        if (auto done = putRows("bore", &JobEntry::bores, boreValues); !done) return done;
        if (auto done = putRows("gauge", &JobEntry::gauges, gaugeValues); !done) return done;
        return putRows("stone", &JobEntry::stones, stoneValues);
    }

private:
    Result<void> putJobs() {
        QList<const JobEntry*> jobs;
        for (const auto& [file, job] : m_jobs)
            jobs += job;
        return inPortions(jobs.size(), [&](qsizetype from, qsizetype rows) {
            QVariantList values;
            for (const JobEntry* job : jobs.sliced(from, rows))
                values += jobValues(*job, m_round);
            return m_connection.run(jobStatement(rows), values, [&](const QSqlQuery& query) {
                const qlonglong id = query.value(0).toLongLong();
                m_ids[query.value(2).toString()] = id;
                if (query.value(1).toInt() > 1) m_stood << id;
            });
        });
    }

    // What stood there of jobs that had been entered before.
    Result<void> takeOut(const QString& table) {
        return inPortions(m_stood.size(), [&](qsizetype from, qsizetype rows) {
            return m_connection.run("DELETE FROM " + table + " WHERE job IN " + marks(1, rows),
                                    m_stood.sliced(from, rows));
        });
    }

    template<class Entry>
    Result<void> putRows(const QString& table, std::vector<Entry> JobEntry::*entries,
                         QVariantList (*valuesOf)(const Entry&)) {
        QList<QVariantList> rows;
        for (const auto& [file, job] : m_jobs) {
            qlonglong place = 0;
            for (const Entry& entry : job->*entries)
                rows += QVariantList{m_ids[file], place++} + valuesOf(entry);
        }
        return inPortions(rows.size(), [&](qsizetype from, qsizetype count) {
            QVariantList values;
            for (const QVariantList& row : rows.sliced(from, count))
                values += row;
            return m_connection.run(
                "INSERT INTO " + table + " VALUES " + marks(count, rows[from].size()), values);
        });
    }

    LedgerConnection& m_connection;
    std::int64_t m_round;
    std::map<QString, const JobEntry*> m_jobs; // by file, as it stands in the table
    std::map<QString, qlonglong> m_ids;        // the same
    QVariantList m_stood;                      // ids
};

} // namespace

Result<void> LedgerStore::put(const JobEntry& job, std::int64_t round) {
    return putAll({&job, 1}, round);
}

Result<void> LedgerStore::putAll(std::span<const JobEntry> jobs, std::int64_t round) {
    return m_connection->together([&]() -> Result<void> {
        for (std::size_t from = 0; from < jobs.size(); from += jobsAtOnce) {
            Batch batch(*m_connection, round);
            for (const JobEntry& job : jobs.subspan(from, std::min(jobsAtOnce, jobs.size() - from)))
                batch.add(job);
            if (auto done = batch.put(); !done) return done;
        }
        return {};
    });
}

} // namespace borewright
