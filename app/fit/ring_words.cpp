// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/ring_words.h"

#include "app/fit/ring_model.h"
#include "app/pictures/reading_words.h"
#include "core/results/doubt_words.h"
#include "core/results/fit_figures.h"
#include "core/results/sizing_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace borewright::ring_words {
namespace {

QString say(const char* text) {
    return QCoreApplication::translate("RingWords", text);
}

QString label(const Row& row, const FitRecord& record) {
    if (!row.here.ring) return say("none");
    const std::string& label = record.rings.at(*row.here.ring).label;
    return label.empty() ? say("row %1").arg(*row.here.ring + 1) : qs(label);
}

QString stepsWords(const Filing& filing, const DisplayUnits& units) {
    QStringList steps;
    for (const Length step : filing.steps)
        steps << qs(formatSmall(step, units));
    return steps.join(QStringLiteral(" + "));
}

bool hasPorts(const std::vector<Row>& rows) {
    return std::ranges::any_of(rows, [](const Row& row) {
        return row.here.gap && (row.here.gap->abovePorts || row.here.gap->belowPorts);
    });
}

QString at(const std::optional<GapAt>& place, const DisplayUnits& units) {
    return place ? qs(formatSmall(place->gap, units)) : QString();
}

std::vector<TextModel::Cell> gapCells(const RingGap& gap, const DisplayUnits& units, bool ports) {
    const auto doubt = wholeDoubt(gap);
    std::vector<TextModel::Cell> cells{
        {qs(formatSmall(gap.smallest.gap, units)), gap.smallestVerdict, true},
        {doubt ? QStringLiteral("±") + qs(upward(*doubt, units)) : QString(), {}, false, true},
        {qs(formatDepth(gap.smallest.depth, units))},
        {gap.filing ? qs(formatSmall(gap.filing->total, units)) : QString()},
        {qs(formatSmall(gap.largest.gap, units)), gap.largestVerdict},
        {qs(formatDepth(gap.largest.depth, units))}};
    if (ports) {
        cells.push_back({at(gap.abovePorts, units)});
        cells.push_back({at(gap.belowPorts, units)});
    }
    return cells;
}

} // namespace

std::vector<Row> rows(const FitResult& fit) {
    std::vector<Row> rows;
    for (const BoreFit& bore : fit.bores)
        for (const BoreFit::RingHere& here : bore.rings)
            rows.push_back({bore.bore, here});
    return rows;
}

TextModel::Content table(const std::vector<Row>& rows, const FitRecord& record,
                         const DisplayUnits& units) {
    TextModel::Content content;
    const QString small = QStringLiteral(",\n") + unitSymbol(units.small);
    const QString large = QStringLiteral(",\n") + unitSymbol(units.size);
    const bool ports = hasPorts(rows);
    content.heads = {say("Bore"),
                     say("Groove"),
                     say("Ring"),
                     say("Smallest") + small,
                     say("±"),
                     say("at depth") + large,
                     say("File off") + small,
                     say("Largest") + small,
                     say("at depth") + large};
    if (ports) content.heads << say("Above\nports") << say("Below\nports");
    content.words = {2};
    for (const Row& row : rows) {
        std::vector<TextModel::Cell> cells{
            {QString::number(row.bore)},
            {QString::number(row.here.groove)},
            {row.here.decided ? say("%1, fixed").arg(label(row, record)) : label(row, record),
             {},
             row.here.ring.has_value(),
             !row.here.ring}};
        if (row.here.gap)
            for (TextModel::Cell& cell : gapCells(*row.here.gap, units, ports))
                cells.push_back(std::move(cell));
        else
            cells.push_back({row.here.ring ? QStringLiteral("–") : QString(),
                             {},
                             false,
                             true,
                             qs(row.here.refused)});
        content.rows.push_back(std::move(cells));
    }
    return content;
}

QString instruction(const Row& row, const FitRecord& record, const DisplayUnits& units) {
    if (!row.here.ring) return qs(row.here.refused);
    if (!row.here.gap) return say("No gap: %1.").arg(qs(row.here.refused));
    const RingGap& gap = *row.here.gap;
    QStringList words{say("Ring %1: measure the gap %2 down, where it is smallest: %3.")
                          .arg(label(row, record), qs(depthWithUnit(gap.smallest.depth, units)),
                               qs(marginWords(gap.smallest.gap, gap.u, gap.coverage, units)))};
    if (gap.abovePorts && gap.belowPorts)
        words << say("Above the ports %1, below them %2.")
                     .arg(qs(smallWithUnit(gap.abovePorts->gap, units)),
                          qs(smallWithUnit(gap.belowPorts->gap, units)));
    if (gap.filing) {
        QString file = say("File off %1").arg(qs(smallWithUnit(gap.filing->total, units)));
        if (gap.filing->steps.size() > 1)
            file += say(", in steps of %1").arg(stepsWords(*gap.filing, units));
        words << file + say("; measure again after each step, and stop at the aim.");
    }
    if (!gap.why.empty()) words << qs(capitalized(gap.why)) + '.';
    return words.join(' ');
}

TextModel::Content byDepth(const RingGap& gap, const DisplayUnits& units) {
    TextModel::Content content;
    content.heads = {say("Depth, %1").arg(unitSymbol(units.size)),
                     say("Gap, %1").arg(unitSymbol(units.small)), QString()};
    content.words = {2};
    for (const GapAt& at : gap.at) {
        const bool smallest = at.depth == gap.smallest.depth;
        const bool largest = at.depth == gap.largest.depth;
        content.rows.push_back({{qs(formatDepth(at.depth, units))},
                                {qs(formatSmall(at.gap, units)), {}, smallest},
                                {smallest  ? say("smallest: measure here")
                                 : largest ? say("largest")
                                           : QString(),
                                 {},
                                 false,
                                 true}});
    }
    return content;
}

} // namespace borewright::ring_words
