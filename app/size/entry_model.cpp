// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/size/entry_model.h"

#include "app/pictures/reading_words.h"

#include <algorithm>
#include <utility>

namespace borewright {

EntryModel::EntryModel(Document& document, QObject* parent)
    : QAbstractTableModel(parent)
    , m_document(document) {
    // What was refused belongs to what is undone with it.
    QUndoStack& steps = document.undoStack();
    connect(&steps, &QUndoStack::indexChanged, this,
            [this, before = steps.index()](int now) mutable {
                if (now < std::exchange(before, now)) giveUpRefused();
            });
}

int EntryModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_rows;
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
    const int row = index.row();
    const int column = index.column();
    const bool last = isLast(row);
    m_said.clear();
    const bool wasRefused = m_drafts.erase({row, column}) > 0;
    const QString before = last ? textOfNew(column) : textAt(row, column);
    Result<void> done;
    if (wasRefused || text != before) done = write(row, column, text);
    if (!done) m_drafts[{row, column}] = {text, qs(done.error().what)};
    showAll();
    return done.has_value();
}

// One cell, as one undo step. A row goes with its entry to where that is sorted.
Result<void> EntryModel::write(int row, int column, const QString& text) {
    const QString step = placeName(row, column);
    const int entries = m_entries;
    SizingPlan trial = plan();
    const auto at = isLast(row) ? begin(trial, column, text) : put(trial, row, column, text);
    if (!at) return tl::unexpected(at.error());
    m_move = Move{row, *at};
    const auto done = m_document.edit(SetSizing{std::move(trial)}, step);
    m_move.reset();
    if (done && row == entries && m_entries > entries) tryAgain(*at);
    return done;
}

// What was refused of a row because there was too little of it may stand now.
void EntryModel::tryAgain(int row) {
    for (int column = 0; column < columnCount(); ++column)
        if (const auto draft = m_drafts.find({row, column}); draft != m_drafts.end())
            setData(index(row, column), QString(draft->second.text), Qt::EditRole);
}

void EntryModel::empty(const QModelIndexList& cells) {
    SizingPlan trial = plan();
    QStringList names;
    QStringList stay;
    for (const QModelIndex& cell : cells) {
        const int row = cell.row();
        const int column = cell.column();
        m_drafts.erase({row, column});
        const QString name = placeName(row, column);
        if (isLast(row)) {
            (void)begin(trial, column, {});
        } else if (textAt(row, column).isEmpty()) {
            continue;
        } else if (const auto done = put(trial, row, column, {}); done) {
            names << name;
        } else {
            stay << tr("%1 stays: %2.").arg(name, qs(done.error().what));
        }
    }
    const QString step = names.size() == 1 ? names.front() : tr("%1 cells").arg(names.size());
    const auto done = m_document.edit(SetSizing{std::move(trial)}, step);
    if (!done) stay << qs(done.error().message());
    for (QString& line : stay)
        line[0] = line[0].toUpper();
    m_said = stay.join('\n');
    showAll();
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
    m_said.clear();
    (void)m_document.edit(SetSizing{std::move(trial)}, step);
}

QString EntryModel::refusals() const {
    QStringList lines;
    for (const auto& [place, draft] : m_drafts)
        lines << tr("%1 “%2” is not kept: %3.")
                     .arg(placeName(place.first, place.second), draft.text, draft.why);
    for (QString& line : lines)
        line[0] = line[0].toUpper();
    if (!m_said.isEmpty()) lines << m_said;
    return lines.join('\n');
}

void EntryModel::giveUp(const QModelIndex& cell) {
    m_said.clear();
    m_drafts.erase({cell.row(), cell.column()});
    showAll();
}

void EntryModel::giveUpRefused() {
    m_said.clear();
    m_drafts.clear();
    showAll();
}

void EntryModel::hush() {
    if (std::exchange(m_said, {}).isEmpty()) return;
    emit refusalsChanged();
}

void EntryModel::forget() {
    clearNew();
    giveUpRefused();
}

void EntryModel::moveRow(int from, int to) {
    if (from == to) return;
    std::map<std::pair<int, int>, Draft> moved;
    for (auto& [place, draft] : m_drafts) {
        const int row = place.first;
        const int now = row == from               ? to
                        : row > from && row <= to ? row - 1
                        : row < from && row >= to ? row + 1
                                                  : row;
        moved[{now, place.second}] = std::move(draft);
    }
    m_drafts = std::move(moved);
    beginMoveRows({}, from, from, {}, to > from ? to + 1 : to);
    endMoveRows();
}

// The row being typed has become an entry: it goes where that is sorted, with the cursor in it, and
// an empty one comes after all.
void EntryModel::takeNewRow(int to) {
    moveRow(m_entries, to);
    clearNew();
    ++m_entries;
    beginInsertRows({}, m_entries, m_entries);
    ++m_rows;
    endInsertRows();
}

// Others have added or taken off entries: a refused text of another row would stand in the wrong
// one. That of the last row stays with it.
void EntryModel::setEntries(int now) {
    std::map<std::pair<int, int>, Draft> kept;
    for (auto& [place, draft] : m_drafts)
        if (isLast(place.first)) kept[{now, place.second}] = std::move(draft);
    m_drafts = std::move(kept);
    const bool more = now > m_entries;
    if (more)
        beginInsertRows({}, m_entries, now - 1);
    else
        beginRemoveRows({}, now, m_entries - 1);
    m_entries = now;
    m_rows = now + 1;
    if (more)
        endInsertRows();
    else
        endRemoveRows();
}

void EntryModel::refresh() {
    const int now = count();
    const auto move = std::exchange(m_move, {});
    if (move && now == m_entries + 1 && isLast(move->from))
        takeNewRow(move->to);
    else if (now != m_entries)
        setEntries(now);
    else if (move)
        moveRow(move->from, move->to);
    showAll();
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

void EntryModel::showAll() {
    emit dataChanged(index(0, 0), index(m_rows - 1, columnCount() - 1));
    emit refusalsChanged();
}

} // namespace borewright
