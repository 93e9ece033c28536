// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/match_model.h"

#include "app/fit/fit_words.h"
#include "app/pictures/reading_words.h"

#include <algorithm>

namespace borewright {

MatchModel::MatchModel(const Document& document, QObject* parent)
    : QAbstractTableModel(parent)
    , m_document(document) {
    refresh();
}

const Matching& MatchModel::matching() const {
    return m_document.results().fit.matching;
}

int MatchModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_rows;
}

int MatchModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_columns;
}

const MatchCell* MatchModel::cellAt(const QModelIndex& index) const {
    if (!index.isValid()) return nullptr;
    const auto row = static_cast<std::size_t>(index.row());
    const auto column = static_cast<std::size_t>(index.column());
    const auto& cells = matching().cells;
    if (row >= cells.size() || column >= cells[row].size()) return nullptr;
    return &cells[row][column];
}

int MatchModel::boreAt(int row) const {
    return matching().bores.at(static_cast<std::size_t>(row));
}

std::size_t MatchModel::pistonAt(int column) const {
    return matching().pistons.at(static_cast<std::size_t>(column));
}

bool MatchModel::isChosen(const QModelIndex& index) const {
    const auto& chosen = matching().chosen;
    const auto row = static_cast<std::size_t>(index.row());
    return row < chosen.size() && chosen[row] == static_cast<std::size_t>(index.column());
}

// By the record, so that a pair can be seen to be fixed where there is no matching yet.
bool MatchModel::isFixed(const QModelIndex& index) const {
    const auto& pistons = m_document.workbook().fit.pistons;
    const std::size_t piston = pistonAt(index.column());
    return piston < pistons.size() && pistons[piston].bore == boreAt(index.row());
}

QModelIndex MatchModel::chosenFor(int bore) const {
    for (int row = 0; row < m_rows; ++row) {
        const auto place = static_cast<std::size_t>(row);
        if (boreAt(row) != bore || place >= matching().chosen.size()) continue;
        if (const auto column = matching().chosen[place])
            return index(row, static_cast<int>(*column));
    }
    return {};
}

QVariant MatchModel::data(const QModelIndex& index, int role) const {
    const MatchCell* cell = cellAt(index);
    if (cell == nullptr) return {};
    const DisplayUnits& units = m_document.units();
    switch (role) {
    case Qt::DisplayRole:
        return cell->clearance ? qs(formatSmall(cell->clearance->value, units))
                               : QStringLiteral("–");
    case missRole:
        return cell->clearance && matching().best ? qs(formatSmall(cell->miss, units)) : QString();
    case verdictRole:
        return static_cast<int>(cell->clearance ? cell->clearance->verdict : Verdict::notMeasured);
    case chosenRole:
        return isChosen(index);
    case fixedRole:
        return isFixed(index);
    case anyFixedRole:
        return std::ranges::any_of(m_document.workbook().fit.pistons,
                                   [](const Piston& piston) { return piston.bore.has_value(); });
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole:
        return fit_words::pair(*this, m_document, index).join(QStringLiteral(" "));
    case Qt::TextAlignmentRole:
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    default:
        return {};
    }
}

QVariant MatchModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) {
        if (role != Qt::DisplayRole || section >= m_rows) return {};
        return tr("Bore %1").arg(boreAt(section));
    }
    if (section >= m_columns) return {};
    const std::size_t place = pistonAt(section);
    const auto& pistons = m_document.workbook().fit.pistons;
    if (place >= pistons.size()) return {};
    if (role == Qt::DisplayRole) return fit_words::shortPiston(m_document.workbook().fit, place);
    if (role == spareRole && pistons[place].size)
        return qs(formatSize(pistons[place].size->value(), m_document.units()));
    if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole)
        return fit_words::piston(m_document.workbook().fit, place, m_document.units());
    return {};
}

void MatchModel::refresh() {
    const Matching& now = matching();
    const int rows = static_cast<int>(now.cells.size());
    const int columns = rows > 0 ? static_cast<int>(now.pistons.size()) : 0;
    if (rows != m_rows || columns != m_columns) {
        beginResetModel();
        m_rows = rows;
        m_columns = columns;
        endResetModel();
    } else if (rows > 0 && columns > 0) {
        emit dataChanged(index(0, 0), index(rows - 1, columns - 1));
        emit headerDataChanged(Qt::Horizontal, 0, columns - 1);
        emit headerDataChanged(Qt::Vertical, 0, rows - 1);
    }
}

} // namespace borewright
