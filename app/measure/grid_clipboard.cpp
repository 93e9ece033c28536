// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/grid_clipboard.h"

#include "core/gauging/gauging.h"

#include <algorithm>

namespace borewright {
namespace {

bool saysNothing(const QString& cell) {
    return cell.isEmpty() || cell == QStringLiteral("-") || cell == QStringLiteral("–") ||
           cell == QStringLiteral("—") || cell == QString(QChar(0x2212));
}

// Collects readings into one group of edits, as if typed one after the other.
class Collector {
public:
    Collector(const PageContext& context, const GridModel& model, Unit unit)
        : m_document(context.document)
        , m_model(model)
        , m_unit(unit)
        , m_survey(*findSurvey(context.document.workbook(), model.survey()))
        , m_end(m_survey.readings.size()) {}

    // `reason`: why what was there is struck out.
    Result<void> add(int row, int column, const QString& text, const std::string& reason) {
        if (row >= m_model.rowCount() || column >= m_model.columnCount())
            return refuse("lies outside the grid");
        const Station station = m_model.stationAt(row, column);
        const Workbook& workbook = m_document.workbook();
        const Bore* bore = findBore(workbook.block, station.bore);
        if (bore != nullptr && !hasWall(*bore, station.depth, station.axis))
            return refuse("there is no wall at " + describe(station, workbook.block));
        const auto typed = readTyped(text.toStdString(), m_unit);
        if (!typed) return tl::unexpected(typed.error());
        const auto standard = bore != nullptr && bore->standardSize
                                  ? std::optional(bore->standardSize->value())
                                  : std::nullopt;
        if (const auto possible = checkReading(*typed, m_survey.header.gauge, standard); !possible)
            return possible;
        Reading reading;
        reading.station = station;
        reading.typed = *typed;
        reading.time = m_document.now();
        if (auto strike =
                strikeStations(workbook, m_survey.header.id, {station}, {reason, reading.time}))
            m_group.edits.push_back(std::move(*strike));
        m_group.edits.push_back(InsertReading{m_survey.header.id, m_end++, reading});
        return {};
    }

    Edit take() { return std::move(m_group); }

private:
    Document& m_document;
    const GridModel& m_model;
    Unit m_unit;
    const Survey& m_survey;
    std::size_t m_end;
    EditGroup m_group;
};

tl::unexpected<Error> placed(const Error& error, int row, int column) {
    return tl::unexpected(
        error.within("row " + std::to_string(row + 1) + ", column " + std::to_string(column + 1)));
}

} // namespace

CellBlock blockOf(const QModelIndexList& selected) {
    CellBlock block;
    for (const QModelIndex& index : selected) {
        if (!block.valid()) block = {index.row(), index.column(), index.row(), index.column()};
        block.top = std::min(block.top, index.row());
        block.left = std::min(block.left, index.column());
        block.bottom = std::max(block.bottom, index.row());
        block.right = std::max(block.right, index.column());
    }
    return block;
}

QString copied(const GridModel& model, const CellBlock& block) {
    QStringList lines;
    for (int row = block.top; row <= block.bottom; ++row) {
        QStringList cells;
        for (int column = block.left; column <= block.right; ++column)
            cells << model.typedAt(row, column);
        lines << cells.join(QLatin1Char('\t'));
    }
    return lines.join(QLatin1Char('\n'));
}

Result<Edit> pasteEdit(const PageContext& context, const GridModel& model, Unit unit,
                       const QModelIndex& at, const QString& text) {
    if (!at.isValid()) return refuse("choose the cell where the block begins");
    QString lines = text;
    lines.remove(QLatin1Char('\r'));
    while (lines.endsWith(QLatin1Char('\n')))
        lines.chop(1);
    Collector collector(context, model, unit);
    int row = 0;
    bool any = false;
    for (const QString& line : lines.split(QLatin1Char('\n'))) {
        int column = 0;
        for (const QString& cell : line.split(QLatin1Char('\t'))) {
            const QString trimmed = cell.trimmed();
            if (!saysNothing(trimmed)) {
                const auto added =
                    collector.add(at.row() + row, at.column() + column, trimmed, "pasted over");
                if (!added) return placed(added.error(), row, column);
                any = true;
            }
            ++column;
        }
        ++row;
    }
    if (!any) return refuse("there is nothing to paste");
    return collector.take();
}

Result<Edit> fillEdit(const PageContext& context, const GridModel& model, Unit unit,
                      const CellBlock& block) {
    if (!block.valid() || block.bottom == block.top)
        return refuse("select the cell to copy down and the cells below it");
    Collector collector(context, model, unit);
    for (int column = block.left; column <= block.right; ++column) {
        const QString text = model.typedAt(block.top, column);
        if (text.isEmpty()) continue;
        for (int row = block.top + 1; row <= block.bottom; ++row) {
            // A fill passes over what has no wall; only a paste insists.
            const auto state = model.index(row, column).data(GridModel::stateRole).toInt();
            if (state == static_cast<int>(GridModel::State::noWall)) continue;
            const auto added = collector.add(row, column, text, "filled over");
            if (!added) return placed(added.error(), row - block.top, column - block.left);
        }
    }
    return collector.take();
}

} // namespace borewright
