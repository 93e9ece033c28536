// SPDX-License-Identifier: GPL-3.0-or-later
// A quiet table to read: clearances by depth, finish sizes, gaps. Filled anew at each change.
#pragma once

#include "core/verdict/verdict.h"

#include <QAbstractTableModel>
#include <QPalette>
#include <QStringList>
#include <QStyledItemDelegate>
#include <QTableView>

#include <optional>
#include <vector>

namespace borewright {

class TextModel final : public QAbstractTableModel {
    Q_OBJECT
public:
    struct Cell {
        QString text;
        std::optional<Verdict> mark{}; // drawn before the text
        bool bold = false;
        bool quiet = false; // in fainter ink
        QString said{};     // the whole, for the pointer and a screen reader
    };
    struct Content {
        QStringList heads;
        std::vector<std::vector<Cell>> rows;
        std::vector<int> words; // columns that are words: aligned at the left
    };
    using QAbstractTableModel::QAbstractTableModel;

    void show(Content content, const QPalette& palette);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    [[nodiscard]] int alignment(int column, Qt::AlignmentFlag vertical) const;

    Content m_content;
    QPalette m_palette;
};

// Shows every row, columns as wide as they need and wider where there is room.
class TextTable final : public QTableView {
    Q_OBJECT
public:
    TextTable(const QString& name, QWidget* parent = nullptr);
    void show(TextModel::Content content);
    using QTableView::show;
    // Rows can be chosen; Enter or a double click acts on one.
    void setChoosable();
    // No higher than this; the rest is scrolled to.
    void setMostRows(int rows);
    // This column is narrowed where all together are too wide; its cells say the whole where the
    // pointer rests (`said`).
    void setGivesWay(int column);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

signals:
    void rowChosen(int row);
    void rowTaken(int row);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void fit();

    TextModel* m_model;
    TextModel::Content m_shown;
    int m_mostRows = 0;  // 0 = all
    int m_givesWay = -1; // none
};

// A chosen row or cell is tinted, not filled: marks in it have to stay readable.
QPalette quietSelection(QPalette whole);

// Draws a cell with air at its sides and a quiet selection.
class QuietDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
};

} // namespace borewright
