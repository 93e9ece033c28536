// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/entry_model.h"

#include "app/pictures/reading_words.h"

#include <algorithm>

namespace borewright {

EntryModel::EntryModel(Document& document, QObject* parent)
    : QAbstractTableModel(parent)
    , m_document(document) {}

int EntryModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_entries + 1;
}

int EntryModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns().size());
}

// "oversize of size 0.020 in", "depth of a new damage".
QString EntryModel::placeName(int row, int column) const {
    const QString name = columns().at(static_cast<std::size_t>(column)).name;
    return isLast(row) ? tr("%1 of a new %2").arg(name, kind())
                       : tr("%1 of %2").arg(name, nameOf(row));
}

QString EntryModel::spoken(const QModelIndex& index) const {
    QString text = data(index, Qt::EditRole).toString();
    if (text.isEmpty()) text = data(index, hintRole).toString();
    QString said = placeName(index.row(), index.column());
    if (!text.isEmpty()) said += QStringLiteral(": ") + text;
    const QString why = data(index, refusalRole).toString();
    return why.isEmpty() ? said : said + QStringLiteral(". ") + why;
}

QVariant EntryModel::data(const QModelIndex& index, int role) const {
    // While the plan is already shorter than what is shown, there is nothing to show of the rest.
    if (!index.isValid() || (!isLast(index.row()) && index.row() >= count())) return {};
    const auto draft = m_drafts.find({index.row(), index.column()});
    const bool refused = draft != m_drafts.end();
    switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
        if (refused) return draft->second.text;
        return isLast(index.row()) ? textOfNew(index.column())
                                   : textAt(index.row(), index.column());
    case refusalRole:
    case Qt::ToolTipRole:
        return refused ? draft->second.why : QString();
    case hintRole:
        return isLast(index.row()) && index.column() == 0 ? tr("add a %1").arg(kind())
               : isLast(index.row())                      ? QString()
                                                          : hintAt(index.row(), index.column());
    case Qt::AccessibleTextRole:
        return spoken(index);
    default:
        return {};
    }
}

QVariant EntryModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role == Qt::TextAlignmentRole && orientation == Qt::Horizontal)
        return QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    if (orientation == Qt::Vertical) return section + 1;
    return columns().at(static_cast<std::size_t>(section)).head;
}

Qt::ItemFlags EntryModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable;
}

bool EntryModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid()) return false;
    const QString text = value.toString().trimmed();
    const bool last = isLast(index.row());
    const std::pair place(index.row(), index.column());
    m_drafts.erase(place);
    const QString before = last ? textOfNew(index.column()) : textAt(index.row(), index.column());
    const QString step = placeName(index.row(), index.column());
    Result<void> done;
    if (text != before) {
        SizingPlan trial = plan();
        done = last ? begin(trial, index.column(), text)
                    : put(trial, index.row(), index.column(), text);
        if (done) done = m_document.edit(SetSizing{std::move(trial)}, step);
    }
    if (!done) m_drafts[place] = {text, qs(done.error().what)};
    emit dataChanged(this->index(index.row(), 0), this->index(index.row(), columnCount() - 1));
    emit refusalsChanged();
    return done.has_value();
}

void EntryModel::remove(std::vector<int> rows) {
    std::ranges::sort(rows, std::greater());
    const auto twice = std::ranges::unique(rows);
    rows.erase(twice.begin(), twice.end());
    std::erase_if(rows, [this](int row) { return row < 0 || isLast(row); });
    if (rows.empty()) return;
    const QString step = rows.size() == 1 ? tr("removal of %1").arg(nameOf(rows.front()))
                                          : tr("removal of %1 rows").arg(rows.size());
    SizingPlan trial = plan();
    for (const int row : rows)
        erase(trial, row);
    (void)m_document.edit(SetSizing{std::move(trial)}, step);
}

QString EntryModel::refusals() const {
    QStringList lines;
    for (const auto& [place, draft] : m_drafts)
        lines << tr("%1 “%2” is not kept: %3.")
                     .arg(placeName(place.first, place.second), draft.text, draft.why);
    for (QString& line : lines)
        line[0] = line[0].toUpper();
    return lines.join('\n');
}

void EntryModel::forget() {
    m_drafts.clear();
}

void EntryModel::refresh() {
    const int now = count();
    if (now != m_entries) {
        // Rows have moved: a refused text of another row would stand in the wrong one. That of the
        // last row stays with it.
        std::map<std::pair<int, int>, Draft> kept;
        for (auto& [place, draft] : m_drafts)
            if (isLast(place.first)) kept[{now, place.second}] = std::move(draft);
        m_drafts = std::move(kept);
    }
    if (now > m_entries) {
        beginInsertRows({}, m_entries, now - 1);
        m_entries = now;
        endInsertRows();
    } else if (now < m_entries) {
        beginRemoveRows({}, now, m_entries - 1);
        m_entries = now;
        endRemoveRows();
    }
    emit dataChanged(index(0, 0), index(m_entries, columnCount() - 1));
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    emit refusalsChanged();
}

} // namespace borewright
