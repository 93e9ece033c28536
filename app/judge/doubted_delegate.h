// SPDX-License-Identifier: GPL-3.0-or-later
// Draws a figure with its doubt beside it, smaller and in lighter ink. The figures of a column end
// at one line, whatever their doubts.
#pragma once

#include <QStyledItemDelegate>

namespace borewright {

class DoubtedDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
};

} // namespace borewright
