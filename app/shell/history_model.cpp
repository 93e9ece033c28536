// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/history_model.h"

#include <algorithm>

namespace borewright {

QString HistoryModel::text(const HistoryLine& line, int column) {
    const auto qs = [](const std::string& text) { return QString::fromStdString(text); };
    switch (column) {
    case when:
        return tr("%1, %2").arg(qs(dateInWords(line.time)), qs(clockTime(line.time)));
    case who:
        return line.who.empty() ? tr("not known") : qs(line.who);
    case what:
        return qs(line.what);
    case where:
        return line.code.empty() ? qs(line.where) : tr("check code %1").arg(qs(line.code));
    case before:
        return qs(line.before.value_or(""));
    case after:
        return line.before && !line.after ? tr("not known any more") : qs(line.after.value_or(""));
    default:
        return {};
    }
}

HistoryModel::Prepared HistoryModel::prepare(std::vector<HistoryLine> lines) {
    std::vector<QString> search;
    search.reserve(lines.size());
    for (const HistoryLine& line : lines) {
        QString all;
        for (int column = 0; column < columns; ++column)
            all += text(line, column).toLower() + u'\n';
        search.push_back(all);
    }
    return {std::move(lines), std::move(search)};
}

void HistoryModel::setLines(Prepared lines) {
    m_lines = std::move(lines.lines);
    m_search = std::move(lines.search);
    choose();
}

void HistoryModel::setFilter(const QString& typed) {
    m_words = typed.toLower().simplified().split(u' ', Qt::SkipEmptyParts);
    choose();
}

void HistoryModel::choose() {
    beginResetModel();
    m_rows.clear();
    for (int i = 0; i < all(); ++i) {
        const QString& search = m_search[static_cast<std::size_t>(i)];
        if (std::ranges::all_of(m_words,
                                [&](const QString& word) { return search.contains(word); }))
            m_rows.push_back(i);
    }
    endResetModel();
}

int HistoryModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int HistoryModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant HistoryModel::data(const QModelIndex& index, int role) const {
    const bool words = role == Qt::DisplayRole || role == Qt::ToolTipRole;
    if (!index.isValid() || !words) return {};
    const int line = m_rows[static_cast<std::size_t>(index.row())];
    return text(m_lines[static_cast<std::size_t>(line)], index.column());
}

QVariant HistoryModel::headerData(int section, Qt::Orientation way, int role) const {
    if (way != Qt::Horizontal || role != Qt::DisplayRole) return {};
    const QStringList names{tr("When"),  tr("Who"),    tr("What"),
                            tr("Where"), tr("Before"), tr("After")};
    return names.value(section);
}

std::vector<HistoryLine> HistoryModel::shown() const {
    std::vector<HistoryLine> lines;
    for (const int row : m_rows)
        lines.push_back(m_lines[static_cast<std::size_t>(row)]);
    return lines;
}

} // namespace borewright
