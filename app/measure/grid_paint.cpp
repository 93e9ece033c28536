// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measure/grid_paint.h"

#include "app/fields/scaled_font.h"
#include "app/measure/grid_model.h"
#include "app/pictures/picture_style.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QPainterPath>

namespace borewright {
namespace {

bool startsBore(const QAbstractItemModel& model, int column) {
    return column == 0 || model.headerData(column, Qt::Horizontal, GridModel::boreRole) !=
                              model.headerData(column - 1, Qt::Horizontal, GridModel::boreRole);
}

void paintOddMark(QPainter& painter, const QRect& cell, const QColor& colour) {
    const qreal size = 7;
    QPainterPath triangle;
    triangle.moveTo(cell.left() + 6, cell.top() + 5 + size);
    triangle.lineTo(cell.left() + 6 + size, cell.top() + 5 + size);
    triangle.lineTo(cell.left() + 6 + size / 2, cell.top() + 5);
    triangle.closeSubpath();
    painter.fillPath(triangle, colour);
}

void paintNoWall(QPainter& painter, const QRect& cell, const QColor& colour) {
    painter.setPen(QPen(colour, 1));
    const int half = cell.height() / 2 - 6;
    const QPoint centre = cell.center();
    painter.drawLine(centre.x() - half / 2, centre.y() + half, centre.x() + half / 2,
                     centre.y() - half);
}

} // namespace

void GridDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const PictureStyle style = PictureStyle::forPalette(option.palette, option.font);
    const QRect cell = option.rect;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool selected = option.state & QStyle::State_Selected;
    const bool current = option.state & QStyle::State_HasFocus;
    const auto state = static_cast<GridModel::State>(index.data(GridModel::stateRole).toInt());
    painter->fillRect(cell, selected ? option.palette.highlight().color()
                                     : option.palette.base().color());
    const QColor text =
        selected ? option.palette.highlightedText().color() : option.palette.text().color();
    QColor quiet = text;
    quiet.setAlphaF(0.45F);
    if (state == GridModel::State::noWall) paintNoWall(*painter, cell, quiet);
    if (state == GridModel::State::waiting) {
        painter->setPen(Qt::NoPen);
        painter->setBrush(quiet);
        painter->drawEllipse(QPointF(cell.right() - 12, cell.center().y() + 1), 1.5, 1.5);
    }
    if (index.data(GridModel::oddRole).toBool())
        paintOddMark(*painter, cell, selected ? text : style.tooClose);
    const int repeats = index.data(GridModel::repeatsRole).toInt();
    if (repeats > 1) {
        painter->setFont(scaledFont(option.font, 0.75));
        painter->setPen(quiet);
        painter->drawText(cell.adjusted(6, 0, 0, -2), Qt::AlignLeft | Qt::AlignBottom,
                          QStringLiteral("×%1").arg(repeats));
    }
    painter->setFont(option.font);
    painter->setPen(index.data(GridModel::judgedRole).toBool() ? text : quiet);
    painter->drawText(cell.adjusted(2, 0, -7, 0), Qt::AlignRight | Qt::AlignVCenter,
                      index.data(Qt::DisplayRole).toString());
    painter->setPen(
        QPen(startsBore(*index.model(), index.column()) ? style.faintInk : style.grid, 1));
    painter->drawLine(cell.topLeft(), cell.bottomLeft());
    painter->setPen(QPen(style.grid, 1));
    painter->drawLine(cell.bottomLeft(), cell.bottomRight());
    if (current) {
        painter->setRenderHint(QPainter::Antialiasing, false);
        painter->setPen(QPen(style.accent, 2));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(cell.adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

QWidget* GridDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    auto* editor = new QLineEdit(parent);
    editor->setFrame(false);
    editor->setAlignment(Qt::AlignRight);
    editor->setMaxLength(40);
    editor->setAccessibleName(
        tr("Reading %1").arg(index.data(Qt::AccessibleDescriptionRole).toString()));
    return editor;
}

// In an open cell, Enter, Tab and the arrows keep what was typed and move.
bool GridDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<QLineEdit*>(watched);
    if (editor == nullptr || event->type() != QEvent::KeyPress)
        return QStyledItemDelegate::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool shift = key->modifiers() & Qt::ShiftModifier;
    switch (key->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        emit leftBy(editor, shift ? -1 : 1, 0);
        return true;
    case Qt::Key_Down:
        emit leftBy(editor, 1, 0);
        return true;
    case Qt::Key_Up:
        emit leftBy(editor, -1, 0);
        return true;
    case Qt::Key_Tab:
        emit leftBy(editor, 0, 1);
        return true;
    case Qt::Key_Backtab:
        emit leftBy(editor, 0, -1);
        return true;
    default:
        return QStyledItemDelegate::eventFilter(watched, event);
    }
}

BoreHeader::BoreHeader(QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent) {
    setSectionsClickable(false);
    setHighlightSections(false);
    setSectionResizeMode(QHeaderView::Fixed);
}

QSize BoreHeader::sizeHint() const {
    return {QHeaderView::sizeHint().width(), fontMetrics().height() * 2 + 12};
}

void BoreHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
    painter->save();
    const PictureStyle style = PictureStyle::forPalette(palette(), font());
    painter->fillRect(rect, palette().window());
    const int half = rect.height() / 2;
    painter->setPen(palette().color(QPalette::WindowText));
    painter->drawText(rect.adjusted(2, half, -7, -4), Qt::AlignRight | Qt::AlignBottom,
                      model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString());
    if (startsBore(*model(), section)) {
        QFont bold = font();
        bold.setBold(true);
        painter->setFont(bold);
        const QString bore =
            model()->headerData(section, Qt::Horizontal, GridModel::boreRole).toString();
        painter->drawText(rect.adjusted(7, 4, 0, -half), Qt::AlignLeft | Qt::AlignVCenter, bore);
        painter->setPen(QPen(style.faintInk, 1));
        painter->drawLine(rect.topLeft(), rect.bottomLeft());
    }
    painter->setPen(QPen(style.grid, 1));
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    painter->restore();
}

} // namespace borewright
