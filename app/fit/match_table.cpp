// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/match_table.h"

#include "app/fields/scaled_font.h"
#include "app/fit/text_table.h"
#include "app/pictures/picture_style.h"
#include "app/pictures/verdict_mark.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollBar>

#include <algorithm>

namespace borewright {
namespace {

constexpr double missScale = 0.82;
constexpr int markRoom = 16, gap = 5, margin = 8;

QFont figureFont(QFont font, bool chosen) {
    font.setBold(chosen);
    return font;
}

int missRoom(const QFont& font, const QString& widest) {
    return QFontMetrics(scaledFont(font, missScale)).horizontalAdvance(widest);
}

// A pin seen from the side: head, neck, needle.
void paintPin(QPainter& painter, const QRectF& room, const QColor& ink) {
    const QPointF c = room.center();
    const double s = std::min(room.width(), room.height()) / 2;
    painter.setPen(QPen(ink, 1.4, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(c.x(), c.y() + s * 0.2), QPointF(c.x(), c.y() + s));
    QPainterPath head;
    head.moveTo(c.x() - s * 0.65, c.y() + s * 0.2);
    head.lineTo(c.x() - s * 0.25, c.y() - s * 0.2);
    head.lineTo(c.x() - s * 0.35, c.y() - s);
    head.lineTo(c.x() + s * 0.35, c.y() - s);
    head.lineTo(c.x() + s * 0.25, c.y() - s * 0.2);
    head.lineTo(c.x() + s * 0.65, c.y() + s * 0.2);
    head.closeSubpath();
    painter.setPen(Qt::NoPen);
    painter.fillPath(head, ink);
}

bool needsMark(Verdict verdict, bool chosen) {
    if (verdict == Verdict::notJudged) return false;
    return chosen || verdict != Verdict::within;
}

void paintGround(QPainter& painter, const QStyleOptionViewItem& option, const PictureStyle& style,
                 bool chosen) {
    const QRect cell = option.rect;
    const bool current = option.state & QStyle::State_Selected;
    painter.fillRect(cell, current ? quietSelection(option.palette).color(QPalette::Highlight)
                                   : option.palette.color(QPalette::Base));
    painter.setPen(QPen(style.grid, 1));
    painter.drawLine(cell.bottomLeft(), cell.bottomRight());
    painter.setRenderHint(QPainter::Antialiasing);
    if (chosen) {
        painter.setPen(QPen(style.ink, 1.8));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(cell).adjusted(2.5, 2.5, -2.5, -3.5), 5, 5);
    }
    if (option.state & QStyle::State_HasFocus) {
        painter.setPen(QPen(style.accent, 1.6, Qt::DotLine));
        painter.drawRect(QRectF(cell).adjusted(0.8, 0.8, -0.8, -1.8));
    }
}

} // namespace

QSize MatchDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const QFontMetrics bold(figureFont(option.font, true));
    const int width = bold.horizontalAdvance(index.data().toString()) + gap +
                      missRoom(option.font, index.data(MatchModel::missRole).toString());
    return {2 * margin + 2 * markRoom + width, bold.height() + 12};
}

void MatchDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const PictureStyle style = PictureStyle::forPalette(option.palette, option.font);
    const bool chosen = index.data(MatchModel::chosenRole).toBool();
    const auto verdict = static_cast<Verdict>(index.data(MatchModel::verdictRole).toInt());
    const QString miss = index.data(MatchModel::missRole).toString();
    painter->save();
    paintGround(*painter, option, style, chosen);
    QRect room = option.rect.adjusted(margin, 0, -margin, 0);
    const double side = 11;
    const QRectF mark(room.left(), room.center().y() - side / 2 + 0.5, side, side);
    if (index.data(MatchModel::fixedRole).toBool())
        paintPin(*painter, mark.translated(markRoom, 0).adjusted(0, -1, 0, 1), style.ink);
    const bool known = index.data().toString() != QStringLiteral("–");
    if (known && needsMark(verdict, chosen)) paintVerdictMark(*painter, mark, verdict, style);
    painter->setFont(scaledFont(option.font, missScale));
    painter->setPen(style.faintInk);
    painter->drawText(room, Qt::AlignRight | Qt::AlignVCenter, miss);
    if (!miss.isEmpty()) room.setRight(room.right() - missRoom(option.font, miss) - gap);
    painter->setFont(figureFont(option.font, chosen));
    painter->setPen(known ? option.palette.color(QPalette::Text) : style.faintInk);
    painter->drawText(room, Qt::AlignRight | Qt::AlignVCenter, index.data().toString());
    painter->restore();
}

PistonHeader::PistonHeader(QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent) {
    setSectionsClickable(false);
    setHighlightSections(false);
    setSectionResizeMode(QHeaderView::Fixed);
}

QSize PistonHeader::sizeHint() const {
    return {QHeaderView::sizeHint().width(), fontMetrics().height() * 2 + 12};
}

void PistonHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
    const PictureStyle style = PictureStyle::forPalette(palette(), font());
    const int half = rect.height() / 2;
    painter->save();
    painter->fillRect(rect, palette().window());
    QFont bold = font();
    bold.setBold(true);
    painter->setFont(bold);
    painter->setPen(palette().color(QPalette::WindowText));
    const QString label = model()->headerData(section, orientation()).toString();
    const QRect upper = rect.adjusted(margin, 3, -margin, -half);
    painter->drawText(upper, Qt::AlignRight | Qt::AlignVCenter,
                      QFontMetrics(bold).elidedText(label, Qt::ElideRight, upper.width()));
    painter->setFont(scaledFont(font(), 0.9));
    painter->setPen(style.faintInk);
    painter->drawText(
        rect.adjusted(margin, half, -margin, -3), Qt::AlignRight | Qt::AlignVCenter,
        model()->headerData(section, orientation(), MatchModel::spareRole).toString());
    painter->setPen(QPen(style.grid, 1));
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    painter->restore();
}

MatchTable::MatchTable(MatchModel& model, QWidget* parent)
    : QTableView(parent)
    , m_model(model) {
    setHorizontalHeader(new PistonHeader(this));
    setModel(&model);
    setItemDelegate(new MatchDelegate(this));
    setAccessibleName(tr("Least clearance, bores down and pistons across"));
    setSelectionMode(QAbstractItemView::SingleSelection);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    verticalHeader()->setHighlightSections(false);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    connect(&model, &QAbstractItemModel::modelReset, this, &MatchTable::fit);
    connect(&model, &QAbstractItemModel::dataChanged, this, &MatchTable::fit);
    connect(this, &QTableView::doubleClicked, this, &MatchTable::fixWanted);
    fit();
}

// Every row is shown, the page scrolls; columns alike, so that the eye goes down them.
void MatchTable::fit() {
    constexpr int widest = 36;
    int width = 0, height = 0;
    for (int column = 0; column < m_model.columnCount(); ++column)
        width = std::max({width, sizeHintForColumn(column),
                          QFontMetrics(font()).horizontalAdvance("3.4358") + 2 * margin});
    if (m_model.rowCount() > 0) height = sizeHintForRow(0);
    verticalHeader()->setDefaultSectionSize(std::max(height, 1));
    const int columns = std::max(1, m_model.columnCount());
    const int left = std::clamp(viewport()->width() / columns - width, 0, widest);
    horizontalHeader()->setDefaultSectionSize(std::max(width + left, 1));
    const bool wider = columns * width > viewport()->width();
    setFixedHeight(horizontalHeader()->sizeHint().height() + m_model.rowCount() * height +
                   (wider ? horizontalScrollBar()->sizeHint().height() : 0));
}

void MatchTable::keyPressEvent(QKeyEvent* event) {
    const bool act = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter ||
                     event->key() == Qt::Key_Space;
    if (act && currentIndex().isValid())
        emit fixWanted(currentIndex());
    else
        QTableView::keyPressEvent(event);
}

void MatchTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fit();
}

void MatchTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) fit();
}

} // namespace borewright
