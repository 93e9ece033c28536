// SPDX-License-Identifier: GPL-3.0-or-later
// The lines of a workbook's history as a table, newest first: those that hold what was typed.
#pragma once

#include "core/storage/history_lines.h"

#include <QAbstractTableModel>
#include <QStringList>

#include <vector>

namespace borewright {

class HistoryModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { when, who, what, where, before, after, columns };

    // Lines, and all that each of them shows in small letters, to be searched.
    struct Prepared {
        std::vector<HistoryLine> lines;
        std::vector<QString> search;
    };

    using QAbstractTableModel::QAbstractTableModel;

    // Allowed from any thread: of many lines it takes longer than a window may stand still.
    static Prepared prepare(std::vector<HistoryLine> lines);
    void setLines(Prepared lines);
    // Only lines that hold each of these words, whatever their capitals; empty = all.
    void setFilter(const QString& typed);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation way, int role) const override;

    // How many there are, shown or not.
    [[nodiscard]] int all() const { return static_cast<int>(m_lines.size()); }
    // Those that are shown, in their order.
    [[nodiscard]] std::vector<HistoryLine> shown() const;

private:
    [[nodiscard]] static QString text(const HistoryLine& line, int column);
    void choose();

    std::vector<HistoryLine> m_lines;
    std::vector<QString> m_search;
    QStringList m_words;
    std::vector<int> m_rows; // lines that are shown
};

} // namespace borewright
