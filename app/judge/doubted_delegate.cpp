// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/judge/doubted_delegate.h"

#include "app/judge/verdict_model.h"
#include "app/pictures/picture_style.h"

#include <QApplication>
#include <QPainter>

#include <algorithm>

namespace borewright {
namespace {

constexpr int gap = 5;

QFont doubtFont(const QFont& font) {
    QFont small = font;
    if (font.pixelSize() > 0)
        small.setPixelSize(std::max(6, font.pixelSize() * 17 / 20));
    else
        small.setPointSizeF(font.pointSizeF() * 0.85);
    return small;
}

// The room that the widest doubt of the column takes.
int doubtRoom(const QModelIndex& index, const QFont& font) {
    const QFontMetrics metrics(doubtFont(font));
    int widest = 0;
    for (int row = 0; row < index.model()->rowCount(); ++row) {
        const QString doubt = index.siblingAtRow(row).data(VerdictModel::doubtRole).toString();
        if (!doubt.isEmpty()) widest = std::max(widest, metrics.horizontalAdvance(doubt));
    }
    return widest > 0 ? widest + gap : 0;
}

} // namespace

QSize DoubtedDelegate::sizeHint(const QStyleOptionViewItem& option,
                                const QModelIndex& index) const {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.rwidth() += doubtRoom(index, option.font);
    return size;
}

void DoubtedDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const {
    const int room = doubtRoom(index, option.font);
    if (room == 0) return QStyledItemDelegate::paint(painter, option, index);
    QStyleOptionViewItem item = option;
    initStyleOption(&item, index);
    const QWidget* widget = option.widget;
    const QStyle* style = widget != nullptr ? widget->style() : QApplication::style();
    const QString value = item.text;
    item.text.clear();
    style->drawControl(QStyle::CE_ItemViewItem, &item, painter, widget);
    item.text = value;
    const int margin = style->pixelMetric(QStyle::PM_FocusFrameHMargin, &item, widget) + 1;
    const QRect inner = option.rect.adjusted(margin, 0, -margin, 0);
    painter->save();
    painter->setFont(item.font);
    painter->setPen(item.palette.color(QPalette::Text));
    const QRect left = inner.adjusted(0, 0, -room, 0);
    painter->drawText(left, Qt::AlignRight | Qt::AlignVCenter, value);
    painter->setFont(doubtFont(item.font));
    painter->setPen(PictureStyle::forPalette(item.palette, {}).faintInk);
    const QRect right(left.right() + 1 + gap, inner.top(), room - gap, inner.height());
    painter->drawText(right, Qt::AlignLeft | Qt::AlignVCenter,
                      index.data(VerdictModel::doubtRole).toString());
    painter->restore();
}

} // namespace borewright
