// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/picture_text.h"

#include <QTextLayout>

#include <cmath>

namespace borewright {
namespace {

void note(const QPainter& painter, const PictureStyle& style, const QString& text,
          const QRectF& ink, const QRectF& room) {
    if (style.log == nullptr) return;
    const QTransform transform = painter.worldTransform();
    style.log->push_back({text, transform.mapRect(ink), transform.mapRect(room)});
}

// Breaks `text` into lines no wider than `width`.
QStringList brokenLines(const QString& text, const QFont& font, double width) {
    QStringList lines;
    for (const QString& paragraph : text.split('\n')) {
        QTextLayout layout(paragraph, font);
        QTextOption option;
        option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
        layout.setTextOption(option);
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(width);
            lines << paragraph.mid(line.textStart(), line.textLength()).trimmed();
        }
        layout.endLayout();
    }
    return lines;
}

} // namespace

QFont fittingFont(const QString& text, double width, const PictureStyle& style) {
    for (const double factor : {0.82, 0.74, 0.68})
        if (textWidth(text, style.sized(factor)) <= width) return style.sized(factor);
    return style.sized(0.68);
}

double textWidth(const QString& text, const QFont& font) {
    return QFontMetricsF(font).horizontalAdvance(text);
}

double lineHeight(const QFont& font) {
    return QFontMetricsF(font).height();
}

QRectF drawText(QPainter& painter, const PictureStyle& style, const QRectF& room,
                Qt::Alignment align, const QString& text, const QFont& font, const QColor& colour) {
    const QFontMetricsF metrics(font);
    QString shown = text;
    // Half a pixel of tolerance: room measured from the same text must not elide it.
    if (metrics.horizontalAdvance(text) > room.width() + 0.5) {
        shown = metrics.elidedText(text, Qt::ElideRight, room.width());
        if (shown.size() < 3) return {};
    }
    if (shown.isEmpty()) return {};
    const double width = metrics.horizontalAdvance(shown);
    const double height = metrics.height();
    double x = room.left();
    if (align & Qt::AlignRight) x = room.right() - width;
    if (align & Qt::AlignHCenter) x = room.center().x() - width / 2;
    double y = room.top();
    if (align & Qt::AlignBottom) y = room.bottom() - height;
    if (align & Qt::AlignVCenter) y = room.center().y() - height / 2;
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QPointF(x, y + metrics.ascent()), shown);
    const QRectF ink(x, y, width, height);
    note(painter, style, shown, ink, room);
    return ink;
}

double paragraphHeight(const QString& text, const QFont& font, double width) {
    return static_cast<double>(brokenLines(text, font, width).size()) * lineHeight(font);
}

namespace {

// Half a word says nothing: whole ones give way to the dots.
QString withDots(QString line, const QFont& font, double width) {
    const QString dots = QStringLiteral(" …");
    for (auto end = line.lastIndexOf(' '); end > 0 && textWidth(line + dots, font) > width;
         end = line.lastIndexOf(' '))
        line.truncate(end);
    return line + dots;
}

} // namespace

double drawParagraph(QPainter& painter, const PictureStyle& style, const QRectF& room,
                     const QString& text, const QFont& font, const QColor& colour,
                     Qt::Alignment align) {
    QStringList lines = brokenLines(text, font, room.width());
    const double height = lineHeight(font);
    const auto fitting = static_cast<qsizetype>(std::floor((room.height() + 0.5) / height));
    if (lines.size() > fitting) {
        lines = lines.mid(0, fitting);
        if (!lines.isEmpty()) lines.last() = withDots(lines.last(), font, room.width());
    }
    double y = room.top();
    for (const QString& line : lines) {
        drawText(painter, style, QRectF(room.left(), y, room.width(), height), align | Qt::AlignTop,
                 line, font, colour);
        y += height;
    }
    return y - room.top();
}

} // namespace borewright
