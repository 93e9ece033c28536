// SPDX-License-Identifier: GPL-3.0-or-later
// What the strip of readings shows.
#include "app/pictures/reading_words.h"
#include "app/pictures/strip.h"

#include <QCoreApplication>

#include <algorithm>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Strip", text);
}

// What 0 is for a bore: finish size, standard size while judged as worn, else its own mean.
std::optional<Length> baseOf(const Workbook& workbook, const Survey& survey,
                             const BoreResult& result) {
    if (result.finishSize) return result.finishSize;
    const Bore* bore = findBore(workbook.block, result.bore);
    if (bore != nullptr && bore->standardSize &&
        purposeOf(survey.header.kind) == LimitPurpose::worn)
        return bore->standardSize->value();
    if (result.form) return result.form->mean;
    return std::nullopt;
}

QString baseInWords(const BoreResult& result, const Survey& survey, Length base,
                    const DisplayUnits& units) {
    const QString size = qs(sizeWithUnit(base, units));
    if (result.finishSize) return tr("finish size %1").arg(size);
    if (purposeOf(survey.header.kind) == LimitPurpose::worn)
        return tr("standard size %1").arg(size);
    return tr("each bore's mean");
}

StripBore stripBore(const Workbook& workbook, const Survey& survey, const BoreResult& result,
                    Length base, const DisplayUnits& units) {
    StripBore bore{result.bore, qs(result.word), result.verdict, {}, {}, {}};
    for (const Axis& axis : workbook.block.axes) {
        auto& points = bore.axes.emplace_back();
        for (const StationResult& station : result.stations)
            if (station.diameter && station.station.axis == axis.id)
                points.push_back({station.station, (*station.diameter - base).in(units.small),
                                  station.judged, !station.odd.empty(),
                                  readingInWords(station, workbook.block, units)});
    }
    const auto set = judgingSet(workbook, survey.header);
    if (!set) return bore;
    const Limits& limits = limitsFor(**set, result.bore);
    if (limits.sizeLower) bore.lower = (limits.sizeLower->value() - base).in(units.small);
    if (limits.sizeUpper) bore.upper = (limits.sizeUpper->value() - base).in(units.small);
    return bore;
}

bool isEmpty(const StripBore& bore) {
    return std::ranges::all_of(bore.axes, [](const auto& points) { return points.empty(); });
}

} // namespace

StripData stripData(const Workbook& workbook, const Results& results, const std::string& survey,
                    const DisplayUnits& units, int chosen) {
    StripData data;
    data.unit = unitSymbol(units.small);
    data.chosen = chosen;
    for (const Axis& axis : workbook.block.axes)
        data.axisLabels << qs(axis.id) + QStringLiteral(" ") + qs(axis.label);
    const Survey* recorded = findSurvey(workbook, survey);
    const SurveyResult* result = findResult(results, survey);
    if (recorded != nullptr && result != nullptr)
        for (const BoreResult& bore : result->bores) {
            const auto base = baseOf(workbook, *recorded, bore);
            if (base && data.base.isEmpty()) data.base = baseInWords(bore, *recorded, *base, units);
            data.bores.push_back(
                stripBore(workbook, *recorded, bore, base.value_or(Length()), units));
        }
    if (std::ranges::all_of(data.bores, isEmpty)) data.friendly = tr("No readings yet.");
    return data;
}

QString describeStrip(const StripData& data) {
    if (!data.friendly.isEmpty()) return data.friendly;
    QStringList parts;
    for (const StripBore& bore : data.bores) {
        std::optional<double> least;
        std::optional<double> most;
        for (const auto& points : bore.axes)
            for (const StripPoint& point : points) {
                least = std::min(least.value_or(point.value), point.value);
                most = std::max(most.value_or(point.value), point.value);
            }
        QString part = tr("bore %1").arg(bore.number);
        if (least)
            part += tr(" from %1 to %2")
                        .arg(QString::number(*least, 'f', 1), QString::number(*most, 'f', 1));
        else
            part += tr(" not read");
        if (!bore.word.isEmpty()) part += QStringLiteral(", ") + bore.word;
        parts << part;
    }
    return tr("Each bore's readings against its limits, %1 from %2: %3.")
        .arg(data.unit, data.base, parts.join(QStringLiteral("; ")));
}

} // namespace borewright
