// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/grid_model.h"

#include "core/gauging/gauging.h"

#include <algorithm>
#include <set>

namespace borewright {
namespace {

QString utf8(const std::string& text) {
    return QString::fromStdString(text);
}

QString zoneName(Zone zone) {
    switch (zone) {
    case Zone::ridgeLand:
        return GridModel::tr("ridge land");
    case Zone::skirtOnly:
        return GridModel::tr("skirt only");
    case Zone::portBand:
        return GridModel::tr("port band");
    case Zone::ringTravel:
    case Zone::unmapped:
        break;
    }
    return {};
}

} // namespace

GridModel::GridModel(const PageContext& context, EntryWalk& walk, QObject* parent)
    : QAbstractTableModel(parent)
    , m_context(context)
    , m_walk(walk) {
    connect(&context.document, &Document::changed, this, [this](Change change) {
        rebuild(change != Change::units && change != Change::doubts);
    });
    connect(&context.selection, &Selection::changed, this, [this] {
        if (m_context.selection.survey() != m_survey) rebuild(true);
    });
    rebuild(true);
}

// Rows: the levels asked for and any other depth read. Columns: the bores asked for or read, each
// with every axis of the block.
void GridModel::layOut(std::vector<Length>& depths, std::vector<Column>& columns) const {
    const Workbook& workbook = m_context.document.workbook();
    const SurveyResult* result = findResult(m_context.document.surveyResults(), m_survey);
    if (result == nullptr) return;
    std::set<Length> rows;
    const Survey* survey = findSurvey(workbook, m_survey);
    const bool wholeBlock = survey != nullptr && !survey->header.asked;
    for (const BoreResult& bore : result->bores) {
        for (const StationResult& station : bore.stations)
            rows.insert(station.station.depth);
        if (const Bore* b = findBore(workbook.block, bore.bore); b != nullptr && wholeBlock)
            for (const Level& level : b->levels)
                rows.insert(level.depth.value());
        for (const Axis& axis : workbook.block.axes)
            columns.push_back({bore.bore, axis.id});
    }
    depths.assign(rows.begin(), rows.end());
}

void GridModel::rebuild(bool shapeMayDiffer) {
    const auto same = [](const Column& a, const Column& b) {
        return a.bore == b.bore && a.axis == b.axis;
    };
    std::vector<Length> depths;
    std::vector<Column> columns;
    const std::string survey = m_context.selection.survey();
    const bool otherSurvey = std::exchange(m_survey, survey) != survey;
    layOut(depths, columns);
    const bool otherShape =
        otherSurvey ||
        (shapeMayDiffer && (depths != m_depths || !std::ranges::equal(columns, m_columns, same)));
    if (otherShape) {
        beginResetModel();
        m_depths = std::move(depths);
        m_columns = std::move(columns);
        fillCells();
        endResetModel();
        return;
    }
    fillCells();
    if (m_cells.empty()) return;
    emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    emit headerDataChanged(Qt::Vertical, 0, rowCount() - 1);
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

void GridModel::fillCells() {
    m_cells.assign(m_depths.size() * m_columns.size(), {});
    const Survey* survey = findSurvey(m_context.document.workbook(), m_survey);
    const SurveyResult* result = findResult(m_context.document.surveyResults(), m_survey);
    if (survey == nullptr || result == nullptr) return;
    const auto cellOf = [this](const Station& station) -> Cell* {
        const QModelIndex at = indexOf(station);
        if (!at.isValid()) return nullptr;
        return &m_cells[static_cast<std::size_t>(at.row()) * m_columns.size() +
                        static_cast<std::size_t>(at.column())];
    };
    for (const BoreResult& bore : result->bores)
        for (const StationResult& station : bore.stations)
            if (Cell* cell = cellOf(station.station))
                cell->result = std::make_shared<const StationResult>(station);
    for (const Reading& reading : survey->readings)
        if (Cell* cell = cellOf(reading.station))
            (reading.struck ? cell->struck : cell->readings).push_back(&reading);
}

int GridModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_depths.size());
}

int GridModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
}

const GridModel::Cell& GridModel::cellAt(int row, int column) const {
    return m_cells[static_cast<std::size_t>(row) * m_columns.size() +
                   static_cast<std::size_t>(column)];
}

const StationResult* GridModel::resultAt(int row, int column) const {
    return cellAt(row, column).result.get();
}

Station GridModel::stationAt(int row, int column) const {
    const Column& c = m_columns[static_cast<std::size_t>(column)];
    return {c.bore, m_depths[static_cast<std::size_t>(row)], c.axis};
}

QModelIndex GridModel::indexOf(const Station& station) const {
    const auto depth = std::ranges::lower_bound(m_depths, station.depth);
    if (depth == m_depths.end() || *depth != station.depth) return {};
    const auto column = std::ranges::find_if(m_columns, [&](const Column& c) {
        return c.bore == station.bore && c.axis == station.axis;
    });
    if (column == m_columns.end()) return {};
    return index(static_cast<int>(depth - m_depths.begin()),
                 static_cast<int>(column - m_columns.begin()));
}

GridModel::State GridModel::stateAt(int row, int column) const {
    const Cell& cell = cellAt(row, column);
    if (!cell.readings.empty()) return State::read;
    const Station station = stationAt(row, column);
    const Bore* bore = findBore(m_context.document.workbook().block, station.bore);
    if (bore != nullptr && !hasWall(*bore, station.depth, station.axis)) return State::noWall;
    return cell.result != nullptr && cell.result->asked ? State::waiting : State::notAsked;
}

QString GridModel::typedAt(int row, int column) const {
    const Cell& cell = cellAt(row, column);
    if (cell.readings.empty()) return {};
    const TypedLength& typed = cell.readings.back()->typed;
    return typed.unit() == m_walk.unit() ? utf8(typed.text()) : utf8(typed.withUnit());
}

QString GridModel::shown(int row, int column) const {
    const Cell& cell = cellAt(row, column);
    if (cell.readings.empty()) return {};
    const DisplayUnits& units = m_context.document.units();
    const Survey* survey = findSurvey(m_context.document.workbook(), m_survey);
    const bool many = cell.readings.size() > 1;
    if (m_showing == Showing::readings && survey->header.gauge.entry == Entry::deviation) {
        std::vector<Length> typed;
        for (const Reading* reading : cell.readings)
            typed.push_back(reading->typed.value());
        const Length value = mean(typed);
        // A reading is never shown coarser than it was typed.
        int decimals = usualDecimals(units.small) + (many ? 1 : 0);
        while (decimals < 6 && typedFrom(value, units.small).unit() == units.small &&
               *readLength(format(value, units.small, decimals, Sign::plain), units.small) !=
                   value &&
               !many)
            ++decimals;
        return utf8(format(value, units.small, decimals));
    }
    if (cell.result == nullptr || !cell.result->diameter)
        return utf8(cell.readings.back()->typed.text());
    if (m_showing == Showing::toGo)
        return cell.result->toGo
                   ? utf8(formatSmall(*cell.result->toGo, units, Sign::always, many ? 1 : 0))
                   : QString();
    return utf8(formatSize(*cell.result->diameter, units, many ? 1 : 0));
}

QString GridModel::told(int row, int column) const {
    const Cell& cell = cellAt(row, column);
    const Workbook& workbook = m_context.document.workbook();
    const DisplayUnits& units = m_context.document.units();
    QStringList lines{utf8(describe(stationAt(row, column), workbook.block))};
    switch (stateAt(row, column)) {
    case State::waiting:
        lines << tr("not read yet");
        break;
    case State::noWall:
        lines << tr("no wall here for the gauge");
        break;
    case State::notAsked:
        lines << tr("not asked for in this survey");
        break;
    case State::read:
        break;
    }
    for (const Reading* reading : cell.readings) {
        QString line =
            tr("typed %1, %2").arg(utf8(reading->typed.withUnit()), utf8(clockTime(reading->time)));
        if (reading->angleOffAxis) line += tr(", %1° off the axis").arg(*reading->angleOffAxis);
        lines << line;
    }
    if (cell.result != nullptr && cell.result->diameter)
        lines << tr("diameter %1").arg(utf8(sizeWithUnit(*cell.result->diameter, units)));
    if (cell.result != nullptr)
        for (const std::string& why : cell.result->odd)
            lines << tr("odd: %1").arg(utf8(why));
    for (const Reading* reading : cell.struck)
        lines << tr("struck out: %1 (%2)")
                     .arg(utf8(reading->typed.withUnit()), utf8(reading->struck->reason));
    return lines.join(QLatin1Char('\n'));
}

QVariant GridModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const int row = index.row();
    const int column = index.column();
    const Cell& cell = cellAt(row, column);
    switch (role) {
    case Qt::DisplayRole:
        return shown(row, column);
    case Qt::EditRole:
        return typedAt(row, column);
    case Qt::ToolTipRole:
    case Qt::AccessibleDescriptionRole:
        return told(row, column);
    case Qt::AccessibleTextRole: {
        const QString text = shown(row, column);
        return text.isEmpty() ? told(row, column) : text;
    }
    case Qt::TextAlignmentRole:
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    case stateRole:
        return static_cast<int>(stateAt(row, column));
    case oddRole:
        return cell.result != nullptr && !cell.result->odd.empty();
    case repeatsRole:
        return static_cast<int>(cell.readings.size());
    case judgedRole: {
        const Station station = stationAt(row, column);
        const Bore* bore = findBore(m_context.document.workbook().block, station.bore);
        return bore == nullptr || isJudged(*bore, station.depth);
    }
    case boreRole:
        return m_columns[static_cast<std::size_t>(column)].bore;
    default:
        return {};
    }
}

QVariant GridModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (section < 0 || section >= (orientation == Qt::Horizontal ? columnCount() : rowCount()))
        return {};
    if (orientation == Qt::Horizontal) {
        const Column& column = m_columns[static_cast<std::size_t>(section)];
        if (role == Qt::DisplayRole) return utf8(column.axis);
        if (role == boreRole) return column.bore;
        if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole) {
            const Axis* axis = findAxis(m_context.document.workbook().block, column.axis);
            return tr("bore %1, %2")
                .arg(column.bore)
                .arg(axis == nullptr ? utf8(column.axis) : utf8(axis->id + " " + axis->label));
        }
        return {};
    }
    const Length depth = m_depths[static_cast<std::size_t>(section)];
    if (role == Qt::DisplayRole) return utf8(formatDepth(depth, m_context.document.units()));
    if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole) {
        QString text =
            utf8(depthWithUnit(depth, m_context.document.units())) + tr(" from the open end");
        const auto& bores = m_context.document.workbook().block.bores;
        if (!bores.empty()) {
            const QString zone = zoneName(zoneAt(bores.front(), depth));
            if (!zone.isEmpty()) text += QStringLiteral(", ") + zone;
        }
        return text;
    }
    return {};
}

Qt::ItemFlags GridModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable;
}

bool GridModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid()) return false;
    const QString text = value.toString().trimmed();
    // Opening a cell and leaving it changes nothing.
    if (text.isEmpty() || text == typedAt(index.row(), index.column())) return false;
    m_context.selection.setStation(stationAt(index.row(), index.column()));
    m_walk.cancelMode();
    const EntryWalk::Outcome outcome = m_walk.keep(text);
    if (!outcome.kept) emit refused(outcome.refusal);
    if (!outcome.odd.isEmpty()) emit odd(outcome.odd);
    return outcome.kept;
}

void GridModel::setShowing(Showing showing) {
    if (showing == m_showing) return;
    m_showing = showing;
    rebuild(false);
}

} // namespace borewright
