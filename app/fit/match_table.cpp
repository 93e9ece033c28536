// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fit/match_table.h"

#include "app/fields/scaled_font.h"
#include "app/fit/quiet_header.h"
#include "app/fit/text_table.h"
#include "app/pictures/picture_style.h"
#include "app/pictures/verdict_mark.h"

#include <QAbstractButton>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollBar>

#include <algorithm>

namespace borewright {
namespace {

constexpr double missScale = 0.82;
constexpr int markRoom = 14, pinRoom = 11, gap = 4, margin = 6, fewestRows = 6;

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

// What the size beneath a piston's label takes.
int columnHead(const QTableView& table, int column) {
    const QString size =
        table.model()->headerData(column, Qt::Horizontal, MatchModel::spareRole).toString();
    return QFontMetrics(scaledFont(table.font(), 0.9)).horizontalAdvance(size) + 2 * margin;
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
        painter.drawRoundedRect(QRectF(cell).adjusted(1.5, 1.5, -1.5, -2.5), 5, 5);
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
    const int pin = index.data(MatchModel::anyFixedRole).toBool() ? pinRoom : 0;
    return {2 * margin + markRoom + pin + width, closeRow(bold) + 2};
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
        paintPin(*painter, mark.translated(pinRoom + 1, 0).adjusted(0, -1, 0, 1), style.ink);
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

MatchHeader::MatchHeader(Qt::Orientation orientation, QWidget* parent)
    : QHeaderView(orientation, parent) {
    setSectionsClickable(false);
    setHighlightSections(false);
    setSectionResizeMode(QHeaderView::Fixed);
}

QSize MatchHeader::sizeHint() const {
    const QSize usual = QHeaderView::sizeHint();
    if (orientation() == Qt::Vertical) return {usual.width() + margin, usual.height()};
    return {usual.width(), fontMetrics().height() * 2 + 10};
}

void MatchHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
    const PictureStyle style = PictureStyle::forPalette(palette(), font());
    painter->save();
    painter->fillRect(rect, palette().window());
    painter->setPen(QPen(style.grid, 1));
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    painter->setPen(palette().color(QPalette::WindowText));
    if (orientation() == Qt::Horizontal)
        paintPiston(painter, rect, section);
    else
        painter->drawText(rect, Qt::AlignLeft | Qt::AlignVCenter,
                          model()->headerData(section, Qt::Vertical).toString());
    painter->restore();
}

void MatchHeader::paintPiston(QPainter* painter, const QRect& rect, int section) const {
    const int half = rect.height() / 2;
    QFont bold = font();
    bold.setBold(true);
    painter->setFont(bold);
    const QString label = model()->headerData(section, Qt::Horizontal).toString();
    const QRect upper = rect.adjusted(margin, 2, -margin, -half);
    painter->drawText(upper, Qt::AlignRight | Qt::AlignVCenter,
                      QFontMetrics(bold).elidedText(label, Qt::ElideRight, upper.width()));
    painter->setFont(scaledFont(font(), 0.9));
    painter->setPen(PictureStyle::forPalette(palette(), font()).faintInk);
    painter->drawText(
        rect.adjusted(margin, half, -margin, -3), Qt::AlignRight | Qt::AlignVCenter,
        model()->headerData(section, Qt::Horizontal, MatchModel::spareRole).toString());
}

MatchView::MatchView(MatchModel& model, QWidget* parent)
    : QTableView(parent)
    , m_model(model) {
    setHorizontalHeader(new MatchHeader(Qt::Horizontal, this));
    setVerticalHeader(new MatchHeader(Qt::Vertical, this));
    setModel(&model);
    setItemDelegate(new MatchDelegate(this));
    setAccessibleName(tr("Least clearance, bores down and pistons across"));
    setSelectionMode(QAbstractItemView::SingleSelection);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    viewport()->setBackgroundRole(QPalette::Window);
    // The corner between the heads says nothing and is left empty.
    if (auto* corner = findChild<QAbstractButton*>()) corner->installEventFilter(this);
    connect(&model, &QAbstractItemModel::modelReset, this, &MatchView::fit);
    connect(&model, &QAbstractItemModel::dataChanged, this, &MatchView::fit);
    connect(this, &QTableView::doubleClicked, this, &MatchView::fixWanted);
    fit();
}

void MatchView::setRoom(int height) {
    m_room = height;
    fit();
}

// Columns alike, so that the eye goes down them; as high as its rows while there is room.
void MatchView::fit() {
    constexpr int widest = 36;
    int width = 0, row = 0;
    for (int column = 0; column < m_model.columnCount(); ++column)
        width = std::max({width, sizeHintForColumn(column), columnHead(*this, column)});
    if (m_model.rowCount() > 0) row = sizeHintForRow(0);
    verticalHeader()->setDefaultSectionSize(std::max(row, 1));
    const int columns = std::max(1, m_model.columnCount());
    const int left = std::clamp(viewport()->width() / columns - width, 0, widest);
    horizontalHeader()->setDefaultSectionSize(std::max(width + left, 1));
    const bool wider = columns * width > viewport()->width();
    const int head = horizontalHeader()->sizeHint().height() +
                     (wider ? horizontalScrollBar()->sizeHint().height() : 0);
    const int rows = m_model.rowCount() * row;
    setFixedHeight(head + std::min(rows, std::max(m_room - head, fewestRows * row)));
}

bool MatchView::eventFilter(QObject* watched, QEvent* event) {
    const bool corner = qobject_cast<QAbstractButton*>(watched) != nullptr;
    return (corner && event->type() == QEvent::Paint) || QTableView::eventFilter(watched, event);
}

void MatchView::keyPressEvent(QKeyEvent* event) {
    const bool act = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter ||
                     event->key() == Qt::Key_Space;
    if (act && currentIndex().isValid())
        emit fixWanted(currentIndex());
    else
        QTableView::keyPressEvent(event);
}

void MatchView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fit();
}

void MatchView::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) fit();
}

} // namespace borewright
