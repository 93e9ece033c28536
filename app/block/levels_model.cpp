// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/block/levels_model.h"

#include "app/block/block_verbs.h"
#include "app/fields/length_text.h"

#include <algorithm>

namespace borewright {

QString zoneName(Zone zone) {
    switch (zone) {
    case Zone::unmapped:
        return QCoreApplication::translate("LevelsModel", "no map");
    case Zone::ridgeLand:
        return QCoreApplication::translate("LevelsModel", "ridge land");
    case Zone::ringTravel:
        return QCoreApplication::translate("LevelsModel", "ring travel");
    case Zone::portBand:
        return QCoreApplication::translate("LevelsModel", "port band");
    case Zone::skirtOnly:
        return QCoreApplication::translate("LevelsModel", "skirt only");
    }
    return {};
}

LevelsModel::LevelsModel(BoreScope& scope, QObject* parent)
    : QAbstractTableModel(parent)
    , m_scope(scope) {
    connect(&scope, &BoreScope::changed, this, &LevelsModel::refresh);
    refresh();
}

void LevelsModel::refresh() {
    const Bore* bore = m_scope.shown();
    const auto& axes = m_scope.document().workbook().block.axes;
    const auto levels = bore == nullptr ? std::vector<Level>() : bore->levels;
    if (levels.size() != m_levels.size() || axes.size() != m_axes.size() || bore == nullptr) {
        beginResetModel();
        m_levels = levels;
        m_axes = axes;
        endResetModel();
        return;
    }
    m_levels = levels;
    m_axes = axes;
    emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int LevelsModel::rowCount(const QModelIndex& parent) const {
    if (parent.isValid() || m_scope.shown() == nullptr) return 0;
    return static_cast<int>(m_levels.size()) + 1;
}

int LevelsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : firstAxisColumn + static_cast<int>(m_axes.size());
}

QString LevelsModel::depthText(int row) const {
    return shownLength(m_levels[static_cast<std::size_t>(row)].depth);
}

QString LevelsModel::judgedText(int row) const {
    const Level& level = m_levels[static_cast<std::size_t>(row)];
    switch (level.judging) {
    case Judging::always:
        return tr("yes");
    case Judging::never:
        return tr("no");
    case Judging::byMap:
        return isJudged(*m_scope.shown(), level.depth.value()) ? tr("yes, by the map")
                                                               : tr("no, by the map");
    }
    return {};
}

QVariant LevelsModel::data(const QModelIndex& index, int role) const {
    const int row = index.row();
    const bool last = row >= static_cast<int>(m_levels.size());
    const int column = index.column();
    if (last) {
        if (role == Qt::DisplayRole && column == depthColumn) return tr("add a depth");
        if (role == Qt::EditRole && column == depthColumn) return QString();
        if (role == Qt::AccessibleTextRole) return tr("Add a level: type its depth");
        return {};
    }
    const Length depth = m_levels[static_cast<std::size_t>(row)].depth.value();
    if (column >= firstAxisColumn) {
        const Axis& axis = m_axes[static_cast<std::size_t>(column - firstAxisColumn)];
        const bool wall = hasWall(*m_scope.shown(), depth, axis.id);
        if (role == Qt::CheckStateRole) return wall ? Qt::Checked : Qt::Unchecked;
        if (role == Qt::DisplayRole) return wall ? tr("wall") : tr("no wall");
        return {};
    }
    if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
    if (column == depthColumn) return depthText(row);
    if (column == judgedColumn) return judgedText(row);
    return zoneName(zoneAt(*m_scope.shown(), depth));
}

QVariant LevelsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole) return {};
    if (orientation == Qt::Vertical) return section + 1;
    switch (section) {
    case depthColumn:
        return tr("Depth from the open end");
    case judgedColumn:
        return tr("Judged");
    case zoneColumn:
        return tr("Zone");
    default:
        return tr("Axis %1").arg(
            QString::fromStdString(m_axes[static_cast<std::size_t>(section - firstAxisColumn)].id));
    }
}

Qt::ItemFlags LevelsModel::flags(const QModelIndex& index) const {
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    const bool last = index.row() >= static_cast<int>(m_levels.size());
    if (index.column() == depthColumn) return flags | Qt::ItemIsEditable;
    if (!last && index.column() >= firstAxisColumn) return flags | Qt::ItemIsUserCheckable;
    return flags;
}

bool LevelsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const bool last = index.row() >= static_cast<int>(m_levels.size());
    if (role == Qt::CheckStateRole && !last && index.column() >= firstAxisColumn)
        return setWall(index.row(), index.column() - firstAxisColumn,
                       value.toInt() == Qt::Checked);
    if (role != Qt::EditRole) return false;
    if (index.column() == judgedColumn && !last) return setJudged(index.row());
    if (index.column() == depthColumn) return setDepth(index.row(), value.toString());
    return false;
}

bool LevelsModel::settle(const Result<void>& done) {
    emit refused(done ? QString() : QString::fromStdString(done.error().what));
    return done.has_value();
}

bool LevelsModel::setDepth(int row, const QString& text) {
    const bool last = row >= static_cast<int>(m_levels.size());
    if (text.trimmed().isEmpty() || (!last && text == depthText(row))) return settle({});
    std::optional<TypedLength> before;
    if (!m_levels.empty()) before = m_levels[last ? 0 : static_cast<std::size_t>(row)].depth;
    const auto depth = readField(text, before, m_scope.document().workbook().block);
    if (!depth) return settle(tl::unexpected(depth.error()));
    if (!last) {
        const Length from = m_levels[static_cast<std::size_t>(row)].depth.value();
        return settle(m_scope.document().edit(MoveLevel{m_scope.bore(), from, **depth},
                                              tr("depth of a level, %1").arg(m_scope.name())));
    }
    Bore trial = *m_scope.shown();
    if (const auto good = insertLevel(trial, {**depth}); !good) return settle(good);
    return settle(m_scope.change(tr("another level"), [&](Bore& bore) {
        (void)insertLevel(bore, {**depth});
    }));
}

bool LevelsModel::setJudged(int row) {
    const Level& level = m_levels[static_cast<std::size_t>(row)];
    const auto next = level.judging == Judging::byMap    ? Judging::always
                      : level.judging == Judging::always ? Judging::never
                                                         : Judging::byMap;
    const Length depth = level.depth.value();
    return settle(m_scope.change(tr("whether a level is judged"), [&](Bore& bore) {
        for (Level& each : bore.levels)
            if (each.depth.value() == depth) each.judging = next;
    }));
}

bool LevelsModel::setWall(int row, int axis, bool wall) {
    const Length depth = m_levels[static_cast<std::size_t>(row)].depth.value();
    const std::string id = m_axes[static_cast<std::size_t>(axis)].id;
    const QString what = wall ? tr("wall at %1 on %2") : tr("no wall at %1 on %2");
    return settle(m_scope.change(
        what.arg(depthText(row), QString::fromStdString(id)), [&](Bore& bore) {
            std::erase_if(bore.wallMarks, [&](const WallMark& mark) {
                return mark.depth == depth && mark.axis == id;
            });
            // The map's own word needs no mark.
            if (hasWall(bore, depth, id) != wall) bore.wallMarks.push_back({depth, id, wall});
        }));
}

void LevelsModel::removeLevels(const std::vector<int>& rows) {
    std::vector<Length> depths;
    for (const int row : rows)
        if (row < static_cast<int>(m_levels.size()))
            depths.push_back(m_levels[static_cast<std::size_t>(row)].depth.value());
    if (depths.empty()) return;
    settle(m_scope.change(tr("removal of a level"), [&](Bore& bore) {
        std::erase_if(bore.levels, [&](const Level& level) {
            return std::ranges::find(depths, level.depth.value()) != depths.end();
        });
    }));
}

Result<void> LevelsModel::propose() {
    const Bore* bore = m_scope.shown();
    if (bore == nullptr || !bore->depth)
        return refuse("Enter the depth of the bore first: the levels are proposed from it.");
    const auto done = m_scope.change(tr("proposed levels"), [](Bore& each) {
        if (each.depth) each.levels = proposeLevels(each);
    });
    settle(done);
    return done;
}

} // namespace borewright
