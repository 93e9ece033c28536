// SPDX-License-Identifier: GPL-3.0-or-later
// How the grid looks: cells with the marks of their state, and headings with the bore's number
// over its axes.
#pragma once

#include <QHeaderView>
#include <QStyledItemDelegate>

namespace borewright {

// Paints a cell: the figure at the right; a small triangle where a reading looks odd; ×2 for
// repeats; a slash where there is no wall; a dot where a reading waits; quieter type where the
// verdict does not count it. Its editor takes what was typed and accepts with the arrows too.
class GridDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;

signals:
    // Keep what is typed and go on by so many rows and columns, as in a spreadsheet.
    void leftBy(QWidget* editor, int rows, int columns);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

// Bore numbers above, spanning the axes below them.
class BoreHeader : public QHeaderView {
    Q_OBJECT
public:
    explicit BoreHeader(QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;
};

} // namespace borewright
