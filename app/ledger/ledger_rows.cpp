// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_rows.h"

#include "app/ledger/ledger_fold.h"

#include <QSqlQuery>

namespace borewright {

QVariant sqlText(const std::string& text) {
    QString whole = QString::fromStdString(text);
    whole.replace(QChar(0), u' ');
    return whole;
}

QVariant sqlLength(const std::optional<Length>& length) {
    if (!length) return QVariant(QMetaType::fromType<qlonglong>());
    return static_cast<qlonglong>(length->picometres());
}

QVariant sqlFolded(const std::string& text) {
    return folded(QString::fromStdString(text));
}

std::string textOf(const QVariant& value) {
    return value.toString().toStdString();
}

std::optional<Length> lengthOf(const QVariant& value) {
    if (value.isNull()) return std::nullopt;
    return Length::fromPicometres(value.toLongLong());
}

std::optional<SizeSpan> spanOf(const QVariant& smallest, const QVariant& largest) {
    if (smallest.isNull() || largest.isNull()) return std::nullopt;
    return SizeSpan{*lengthOf(smallest), *lengthOf(largest)};
}

std::optional<Timestamp> timeOf(const QVariant& seconds, const QVariant& offset) {
    if (seconds.isNull()) return std::nullopt;
    return Timestamp{seconds.toLongLong(), offset.toInt()};
}

Verdict verdictOf(const QVariant& value) {
    const std::string word = textOf(value);
    for (const Verdict verdict : {Verdict::notJudged, Verdict::notMeasured, Verdict::within,
                                  Verdict::outside, Verdict::tooCloseToCall, Verdict::notYet})
        if (nameOf(verdict) == word) return verdict;
    return Verdict::notMeasured;
}

Surface surfaceOf(const QVariant& value) {
    const std::string word = textOf(value);
    for (const Surface surface :
         {Surface::iron, Surface::ironSleeveInAluminium, Surface::plated, Surface::bareAluminium})
        if (surfaceName(surface) == word) return surface;
    return Surface::iron;
}

QString rowColumns() {
    return QStringLiteral(
        "job.id, job.file, job.customer, job.engine, job.serial, job.opened, job.opened_offset, "
        "job.last_survey, job.last_survey_offset, job.size_unit, job.small_unit, job.invented, "
        "job.bores, job.before_smallest, job.before_largest, job.after_smallest, "
        "job.after_largest, job.oversize, job.verdict, job.content");
}

LedgerRow rowOf(const QSqlQuery& query) {
    LedgerRow row;
    row.id = query.value(0).toLongLong();
    row.file = textOf(query.value(1));
    row.customer = textOf(query.value(2));
    row.engine = textOf(query.value(3));
    row.serial = textOf(query.value(4));
    row.opened = timeOf(query.value(5), query.value(6));
    row.lastSurvey = timeOf(query.value(7), query.value(8));
    row.units.size = unitFromText(textOf(query.value(9))).value_or(Unit::inch);
    row.units.small = unitFromText(textOf(query.value(10))).value_or(Unit::thou);
    row.invented = query.value(11).toInt() != 0;
    row.bores = query.value(12).toInt();
    row.before = spanOf(query.value(13), query.value(14));
    row.after = spanOf(query.value(15), query.value(16));
    row.oversize = lengthOf(query.value(17));
    row.verdict = verdictOf(query.value(18));
    return row;
}

QString boreColumns() {
    return QStringLiteral("bore.bore, bore.standard, bore.before_smallest, bore.before_largest, "
                          "bore.after_smallest, bore.after_largest, bore.oversize, bore.verdict");
}

QString gaugeColumns() {
    return QStringLiteral("gauge.survey, gauge.kind, gauge.time, gauge.time_offset, gauge.gauge, "
                          "gauge.set_on, gauge.last_checked, gauge.bores");
}

BoreEntry boreOf(const QSqlQuery& query, int first) {
    BoreEntry bore;
    bore.bore = query.value(first).toInt();
    bore.standardSize = lengthOf(query.value(first + 1));
    bore.before = spanOf(query.value(first + 2), query.value(first + 3));
    bore.after = spanOf(query.value(first + 4), query.value(first + 5));
    bore.oversize = lengthOf(query.value(first + 6));
    bore.verdict = verdictOf(query.value(first + 7));
    return bore;
}

GaugeEntry gaugeOf(const QSqlQuery& query, int first) {
    GaugeEntry gauge;
    gauge.survey = textOf(query.value(first));
    gauge.kind = textOf(query.value(first + 1));
    gauge.time = timeOf(query.value(first + 2), query.value(first + 3)).value_or(Timestamp{});
    gauge.gauge = textOf(query.value(first + 4));
    gauge.setOn = textOf(query.value(first + 5));
    gauge.lastChecked = textOf(query.value(first + 6));
    gauge.bores = textOf(query.value(first + 7));
    return gauge;
}

StoneEntry stoneOf(const QSqlQuery& query) {
    StoneEntry stone;
    stone.name = textOf(query.value(0));
    stone.grit = textOf(query.value(1));
    stone.surface = surfaceOf(query.value(2));
    stone.passes = query.value(3).toInt();
    stone.strokes = query.value(4).toDouble();
    stone.tookOff = lengthOf(query.value(5)).value_or(Length());
    return stone;
}

QString holdsEach(const QString& column, qsizetype words) {
    QString text;
    for (qsizetype i = 0; i < words; ++i)
        text += QStringLiteral(" AND ") + column + QStringLiteral(" LIKE ? ESCAPE '!'");
    return text;
}

QVariantList held(const QStringList& words) {
    QVariantList values;
    for (const QString& word : words)
        values += holding(word);
    return values;
}

} // namespace borewright
