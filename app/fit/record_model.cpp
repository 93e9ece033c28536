// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/record_model.h"

#include "app/pictures/reading_words.h"

#include <algorithm>

namespace borewright {

RecordModel::RecordModel(Document& document, QObject* parent)
    : QAbstractTableModel(parent)
    , m_document(document) {}

int RecordModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : m_pieces + 1;
}

int RecordModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columnsWanted();
}

RecordModel::Place RecordModel::placeOf(const QModelIndex& index) const {
    return {isLast(index.row()) ? std::string() : idOf(index.row()), index.column()};
}

QString RecordModel::hintAt(int row, int where) const {
    if (!isLast(row)) return column(where).hint;
    return where == 0 ? tr("add a %1").arg(pieceName()) : QString();
}

QString RecordModel::spoken(const QModelIndex& index) const {
    const QString name = column(index.column()).name;
    if (isLast(index.row())) return tr("%1 of a new %2").arg(name, pieceName());
    QString text = data(index, Qt::EditRole).toString();
    if (text.isEmpty()) text = tr("not given");
    const QString why = data(index, refusalRole).toString();
    const QString said = tr("%1 of %2: %3").arg(name, nameOf(index.row()), text);
    return why.isEmpty() ? said : said + QStringLiteral(". ") + why;
}

QVariant RecordModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() > m_pieces) return {};
    const auto draft = m_drafts.find(placeOf(index));
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
        return hintAt(index.row(), index.column());
    case Qt::AccessibleTextRole:
        return spoken(index);
    case Qt::TextAlignmentRole:
        return column(index.column()).figure ? QVariant(Qt::AlignRight | Qt::AlignVCenter)
                                             : QVariant(Qt::AlignLeft | Qt::AlignVCenter);
    default:
        return {};
    }
}

QVariant RecordModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical)
        return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::DisplayRole) return column(section).head;
    if (role == Qt::TextAlignmentRole)
        return column(section).figure ? QVariant(Qt::AlignRight | Qt::AlignBottom)
                                      : QVariant(Qt::AlignLeft | Qt::AlignBottom);
    return {};
}

Qt::ItemFlags RecordModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable;
}

Result<void> RecordModel::putInto(FitRecord& fit, int row, int where, const QString& text) const {
    while (countIn(fit) <= row) {
        const int before = countIn(fit);
        append(fit);
        if (countIn(fit) == before) return refuse("there is no room for another");
    }
    return put(fit, row, where, text);
}

bool RecordModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid()) return false;
    const QString text = value.toString().trimmed();
    const bool last = isLast(index.row());
    const QString before = last ? QString() : textAt(index.row(), index.column());
    m_pasteRefused.clear();
    if (text == before) {
        dropDraft(index);
        return true;
    }
    const int row = index.row();
    FitRecord trial = record();
    auto done = putInto(trial, row, index.column(), text);
    if (done) done = checkFit(trial);
    const QString step = last ? tr("another %1").arg(pieceName())
                              : tr("%1 of %2").arg(column(index.column()).name, nameOf(row));
    if (done) {
        m_drafts.erase(placeOf(index));
        done = m_document.edit(SetFit{std::move(trial)}, step);
    }
    if (!done) {
        keepDraft(index, text, done.error());
        return false;
    }
    if (last) handOnDrafts(row);
    emit refusalsChanged();
    return true;
}

void RecordModel::keepDraft(const QModelIndex& index, const QString& text, const Error& error) {
    m_drafts[placeOf(index)] = {text, qs(error.what)};
    emit dataChanged(index, index);
    emit refusalsChanged();
}

void RecordModel::dropDraft(const QModelIndex& index) {
    m_drafts.erase(placeOf(index));
    emit dataChanged(index, index);
    emit refusalsChanged();
}

// What stood refused in the last row belongs to the piece that the row has become.
void RecordModel::handOnDrafts(int row) {
    if (row >= m_pieces) return;
    for (int where = 0; where < columnCount(); ++where)
        if (auto draft = m_drafts.extract({std::string(), where})) {
            draft.key() = {idOf(row), where};
            m_drafts.insert(std::move(draft));
        }
}

void RecordModel::forgetLostDrafts() {
    std::erase_if(m_drafts, [this](const auto& draft) {
        const std::string& id = draft.first.first;
        if (id.empty()) return false;
        for (int row = 0; row < m_pieces; ++row)
            if (idOf(row) == id) return false;
        return true;
    });
}

void RecordModel::add() {
    FitRecord trial = record();
    append(trial);
    (void)m_document.edit(SetFit{std::move(trial)}, tr("another %1").arg(pieceName()));
}

void RecordModel::remove(const std::vector<int>& rows) {
    std::vector<int> falling = rows;
    std::ranges::sort(falling, std::greater());
    const auto twice = std::ranges::unique(falling);
    falling.erase(twice.begin(), twice.end());
    std::erase_if(falling, [this](int row) { return row < 0 || isLast(row); });
    if (falling.empty()) return;
    const QString step = falling.size() == 1 ? tr("removal of %1").arg(nameOf(falling.front()))
                                             : tr("removal of %1 rows").arg(falling.size());
    FitRecord trial = record();
    for (const int row : falling)
        erase(trial, row);
    (void)m_document.edit(SetFit{std::move(trial)}, step);
}

Result<void> RecordModel::putLine(FitRecord& fit, int row, int where, const QString& line) const {
    const QStringList cells = line.split('\t');
    for (int i = 0; i < cells.size(); ++i) {
        const QString cell = cells[i].trimmed();
        if (cell.isEmpty()) continue;
        if (where + i >= columnCount()) return refuse("the table has no such column");
        if (const auto done = putInto(fit, row, where + i, cell); !done) return done;
    }
    return checkFit(fit);
}

bool RecordModel::paste(const QModelIndex& at, const QString& text) {
    QString whole = text;
    whole.remove('\r');
    while (whole.endsWith('\n'))
        whole.chop(1);
    m_pasteRefused.clear();
    Result<void> done;
    if (whole.trimmed().isEmpty()) done = refuse("there is nothing to paste");
    if (!at.isValid()) done = refuse("choose the cell where the first line is to go");
    FitRecord trial = record();
    const QStringList lines = whole.split('\n');
    for (int i = 0; done && i < lines.size(); ++i) {
        done = putLine(trial, at.row() + i, at.column(), lines[i]);
        if (!done)
            done = refuse(tr("line %1, “%2”").arg(i + 1).arg(lines[i].trimmed()).toStdString(),
                          done.error().what);
    }
    if (done) done = m_document.edit(SetFit{std::move(trial)}, tr("pasting %1s").arg(pieceName()));
    if (!done) m_pasteRefused = tr("Nothing was pasted: %1.").arg(qs(done.error().message()));
    emit refusalsChanged();
    return done.has_value();
}

bool RecordModel::pasteBelow(int column, const QString& text) {
    const int first = column >= 0 ? column : text.contains('\t') ? 0 : columnOfList();
    return paste(index(m_pieces, first), text);
}

// "size of piston 3", "size of a new piston".
QString RecordModel::placeName(const std::string& id, int where) const {
    for (int row = 0; row < m_pieces; ++row)
        if (idOf(row) == id) return tr("%1 of %2").arg(column(where).name, nameOf(row));
    return tr("%1 of a new %2").arg(column(where).name, pieceName());
}

QString RecordModel::refusals() const {
    QStringList lines;
    if (!m_pasteRefused.isEmpty()) lines << m_pasteRefused;
    for (const auto& [place, draft] : m_drafts)
        lines << tr("%1 “%2” is not kept: %3.")
                     .arg(placeName(place.first, place.second), draft.text, draft.why);
    return lines.join('\n');
}

void RecordModel::forget() {
    m_drafts.clear();
    m_pasteRefused.clear();
}

void RecordModel::refresh() {
    const int pieces = count();
    const int columns = columnsWanted();
    if (columns != m_columns) {
        beginResetModel();
        m_columns = columns;
        m_pieces = pieces;
        endResetModel();
    } else if (pieces > m_pieces) {
        // The last row becomes the piece: a hand in it stays with what it has begun.
        beginInsertRows({}, m_pieces + 1, pieces);
        m_pieces = pieces;
        endInsertRows();
    } else if (pieces < m_pieces) {
        beginRemoveRows({}, pieces + 1, m_pieces);
        m_pieces = pieces;
        endRemoveRows();
    }
    forgetLostDrafts();
    emit dataChanged(index(0, 0), index(m_pieces, columns - 1));
    emit headerDataChanged(Qt::Horizontal, 0, columns - 1);
    emit refusalsChanged();
}

} // namespace borewright
