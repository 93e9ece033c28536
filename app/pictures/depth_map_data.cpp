// SPDX-License-Identifier: GPL-3.0-or-later
// What the map depth × bore shows.
#include "app/pictures/depth_map.h"
#include "app/pictures/reading_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <set>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("DepthMap", text);
}

// The size that most of the block is judged by: 0 of the map.
std::optional<Length> baseOf(const Workbook& workbook, const Survey& survey,
                             const SurveyResult& result, const DisplayUnits& units, QString& head) {
    const QString unit = unitSymbol(units.small);
    for (const BoreResult& bore : result.bores)
        if (bore.finishSize) {
            head = tr("larger or smaller than the finish size %1, %2")
                       .arg(qs(sizeWithUnit(*bore.finishSize, units)), unit);
            return bore.finishSize;
        }
    if (purposeOf(survey.header.kind) == LimitPurpose::worn)
        for (const Bore& bore : workbook.block.bores)
            if (bore.standardSize) {
                const Length size = bore.standardSize->value();
                head = tr("larger or smaller than the standard size %1, %2")
                           .arg(qs(sizeWithUnit(size, units)), unit);
                return size;
            }
    std::vector<Length> sizes;
    for (const BoreResult& bore : result.bores)
        for (const StationResult& station : bore.stations)
            if (station.diameter) sizes.push_back(*station.diameter);
    if (sizes.empty()) return std::nullopt;
    const Length middle = mean(sizes);
    head = tr("larger or smaller than the mean %1, %2").arg(qs(sizeWithUnit(middle, units)), unit);
    return middle;
}

DepthMapCell cellOf(const StationResult& station, Length base, const DisplayUnits& units) {
    DepthMapCell cell{station.station, {}, {}, station.wall, !station.odd.empty(), station.judged};
    if (station.diameter) {
        const Length deviation = *station.diameter - base;
        cell.deviation_um = deviation.in(Unit::micrometre);
        cell.text = qs(formatSmall(deviation, units, Sign::always));
    } else if (!station.wall) {
        cell.text = QStringLiteral("–");
    }
    return cell;
}

// The strongest colour: what nine readings in ten stay below, so that one slip does not pale all.
double reachOf(const DepthMapData& data) {
    std::vector<double> sizes;
    for (const auto& row : data.rows)
        for (const auto& cell : row)
            if (cell && cell->deviation_um && !cell->odd)
                sizes.push_back(std::abs(*cell->deviation_um));
    if (sizes.empty()) return 1;
    std::ranges::sort(sizes);
    return std::max(1.0, sizes[(sizes.size() - 1) * 19 / 20]);
}

} // namespace

DepthMapData depthMapData(const Workbook& workbook, const Results& results,
                          const std::string& survey, const DisplayUnits& units,
                          const std::optional<Station>& chosen) {
    DepthMapData data;
    data.depthUnit = unitSymbol(units.size);
    data.chosen = chosen;
    data.friendly = tr("No readings yet.");
    const Survey* recorded = findSurvey(workbook, survey);
    const SurveyResult* result = findResult(results, survey);
    if (recorded == nullptr || result == nullptr) return data;
    const auto base = baseOf(workbook, *recorded, *result, units, data.head);
    if (!base) return data;
    for (const Axis& axis : workbook.block.axes)
        data.axes << qs(axis.id);
    std::set<Length> depths;
    for (const BoreResult& bore : result->bores) {
        data.bores.push_back(bore.bore);
        for (const StationResult& station : bore.stations)
            depths.insert(station.station.depth);
    }
    for (const Length depth : depths) {
        data.depths << qs(formatDepth(depth, units));
        auto& row = data.rows.emplace_back();
        for (const BoreResult& bore : result->bores)
            for (const Axis& axis : workbook.block.axes) {
                const StationResult* station = findStation(bore, depth, axis.id);
                row.push_back(station == nullptr ? std::nullopt
                                                 : std::optional(cellOf(*station, *base, units)));
            }
    }
    data.reach_um = reachOf(data);
    const bool any = std::ranges::any_of(data.rows, [](const auto& row) {
        return std::ranges::any_of(row,
                                   [](const auto& cell) { return cell && cell->deviation_um; });
    });
    if (any) data.friendly.clear();
    return data;
}

QString describeDepthMap(const DepthMapData& data) {
    if (!data.friendly.isEmpty()) return data.friendly;
    QStringList rows;
    for (std::size_t r = 0; r < data.rows.size(); ++r) {
        QStringList cells;
        for (const auto& cell : data.rows[r])
            if (cell && !cell->text.isEmpty())
                cells << tr("bore %1 %2 %3")
                             .arg(cell->station.bore)
                             .arg(qs(cell->station.axis), cell->wall ? cell->text : tr("no wall"));
        if (!cells.isEmpty())
            rows << data.depths[static_cast<qsizetype>(r)] + QStringLiteral(": ") +
                        cells.join(QStringLiteral(", "));
    }
    return tr("Map of depth and bore, %1. From the open end down, depth in %2: %3.")
        .arg(data.head, data.depthUnit, rows.join(QStringLiteral("; ")));
}

} // namespace borewright
