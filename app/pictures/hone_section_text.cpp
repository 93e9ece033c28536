// SPDX-License-Identifier: GPL-3.0-or-later
// What is written round a set-up's drawing: title, depths, what is to go, where to measure,
// the chance of going over, the key.
#include "app/pictures/hone_section_layout.h"
#include "app/pictures/picture_text.h"
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("HoneSection", text);
}

QString symbolOf(Unit unit) {
    const auto text = symbol(unit);
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

void paintTitle(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                const PictureStyle& style) {
    const QFont bold = style.sized(1.0, true);
    const QFont plain = style.sized(0.86);
    const double u = l.unit;
    const double first = lineHeight(bold);
    const QRectF ink = drawText(painter, style, {l.title.topLeft(), QSizeF(l.title.width(), first)},
                                Qt::AlignLeft, data.title, bold, style.ink);
    if (data.word.isEmpty()) return;
    QRectF room(ink.right() + 12 * u, l.title.top(), l.title.right() - ink.right() - 12 * u, first);
    if (l.title.height() > first + u)
        room = QRectF(l.title.left(), l.title.top() + first, l.title.width(),
                      l.title.height() - first);
    paintVerdictMark(painter, QRectF(room.left(), room.center().y() - 5 * u, 10 * u, 10 * u),
                     data.verdict, style);
    drawText(painter, style, room.adjusted(14 * u, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
             data.word, plain, verdictColour(data.verdict, style));
}

// The least of 1, 2, 5, 10 … that is at least `least`.
double roundStep(double least) {
    const double power = std::pow(10.0, std::floor(std::log10(std::max(1e-9, least))));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= least * (1 - 1e-9)) return factor * power;
    return 10 * power;
}

void paintDepth(QPainter& painter, const HoneSectionLayout& l, Length depth, const QString& text,
                const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double height = lineHeight(font);
    const double y = l.y(depth.in(Unit::millimetre));
    painter.setPen(QPen(style.faintInk, 0.9 * l.unit));
    painter.drawLine(QPointF(l.outer - 4 * l.unit, y), QPointF(l.outer, y));
    drawText(painter, style,
             QRectF(l.depths.left(), y - height / 2, l.depths.width() - 6 * l.unit, height),
             Qt::AlignRight, text, font, style.faintInk);
}

// Round depths, and the closed end's own.
void paintDepths(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                 const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double height = lineHeight(font);
    const Unit unit = data.units.size;
    const Length end = Length::nearest(data.depth_mm, Unit::millimetre);
    const double pixels = l.pixelsPerMm * Length::whole(1, unit).in(Unit::millimetre);
    const double step = roundStep(2 * height / std::max(1e-6, pixels));
    for (double at = 0; at < end.in(unit); at += step) {
        const Length depth = Length::nearest(at, unit);
        if (l.bottom - l.y(depth.in(Unit::millimetre)) < height) break;
        const QString text =
            at == 0 ? symbolOf(unit) : QString::fromStdString(formatDepth(depth, data.units));
        paintDepth(painter, l, depth, text, style);
    }
    paintDepth(painter, l, end, QString::fromStdString(formatDepth(end, data.units)), style);
}

// What is to go, over the open end: figures at round amounts.
void paintScale(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double height = lineHeight(font);
    const double u = l.unit;
    const double um = Length::whole(1, data.units.small).in(Unit::micrometre);
    const double pixels = l.plot.width() / (l.highest_um - l.lowest_um) * um;
    const double step = roundStep(34 * u / std::max(1e-9, pixels));
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
    double least = l.plot.right() + l.marks.width(); // from the right to the left
    for (double k = std::ceil(-l.highest_um / um / step); k * step * um <= -l.lowest_um; ++k) {
        const double toGo = k * step;
        const double x = l.x(-toGo * um);
        painter.setPen(QPen(style.faintInk, 0.9 * u));
        painter.drawLine(QPointF(x, l.top - 3 * u), QPointF(x, l.top));
        QString text = QString::number(std::abs(toGo), 'f', decimals);
        if (toGo < -1e-9) text.prepend(QChar(0x2212));
        const double width = textWidth(text, font) + 0.6;
        const double left = std::max(x - width / 2, l.plot.left());
        if (left + width > least) continue;
        least = left - 4 * u;
        drawText(painter, style, QRectF(left, l.top - height - 3 * u, width, height),
                 Qt::AlignHCenter, text, font, style.faintInk);
    }
    const QString head = tr("to go, %1").arg(symbolOf(data.units.small));
    const double wide = std::max(l.plot.width(), textWidth(head, font) + 0.6);
    drawText(painter, style,
             QRectF(l.plot.center().x() - wide / 2, l.top - 2 * height - 4 * u, wide, height),
             Qt::AlignHCenter, head, font, style.ink);
}

// A number in a disc; true numbers are what the gauge goes round by.
void paintNumber(QPainter& painter, const QPointF& at, int number, const PictureStyle& style) {
    const double r = 7.5 * style.unit();
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.ink);
    painter.drawEllipse(at, r, r);
    drawText(painter, style, QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r),
             Qt::AlignHCenter | Qt::AlignVCenter, QString::number(number), style.sized(0.72, true),
             style.background);
}

std::vector<double> spread(const std::vector<HoneMarkRow>& rows, const HoneSectionLayout& l,
                           double height) {
    std::vector<double> middles;
    double least = l.top + height / 2;
    for (const HoneMarkRow& row : rows) {
        middles.push_back(std::max(l.y(row.depth_mm), least));
        least = middles.back() + height;
    }
    double most = l.bottom - height / 2;
    for (auto middle = middles.rbegin(); middle != middles.rend(); ++middle) {
        *middle = std::min(*middle, most);
        most = *middle - height;
    }
    return middles;
}

void paintPlace(QPainter& painter, const QPointF& at, int axis, const PictureStyle& style) {
    const double r = 3.4 * style.unit();
    painter.setPen(QPen(style.axisColour(axis), 1.5 * style.unit()));
    painter.setBrush(style.background);
    if (axis == 1)
        painter.drawRect(QRectF(at.x() - r * 0.88, at.y() - r * 0.88, r * 1.76, r * 1.76));
    else
        painter.drawEllipse(at, r, r);
}

// Depth, and each axis with its number.
void paintMarkRow(QPainter& painter, const HoneSectionLayout& l, const HoneMarkRow& row,
                  double middle, const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double u = l.unit;
    const auto word = [&](double x, const QString& text, const QColor& colour) {
        const double width = textWidth(text, font) + 0.6;
        drawText(painter, style, QRectF(x, middle - lineHeight(font) / 2, width, lineHeight(font)),
                 Qt::AlignLeft, text, font, colour);
        return x + width;
    };
    double x = l.marks.left() + 13 * u;
    if (!l.terse) x = word(x, row.depth, style.ink) + 4 * u;
    for (const HoneStationMark& mark : row.marks) {
        x = word(x, mark.axis, style.axisColour(mark.axisIndex));
        paintNumber(painter, {x + 9 * u, middle}, mark.order, style);
        x += 23 * u;
    }
}

// Where to measure afterwards: on the line that is expected, and in words at the right.
void paintMarks(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                const PictureStyle& style) {
    const std::vector<HoneMarkRow> rows = honeMarkRows(data);
    if (rows.empty() || l.marks.isNull()) return;
    const QFont font = honeSectionFont(style);
    const double u = l.unit;
    const double height = std::max(lineHeight(font), 16 * u);
    const std::vector<double> middles = spread(rows, l, height);
    const HoneLine& line = data.hasThen() ? data.curves.then : data.curves.now;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (middles[i] < l.top) continue; // more rows than the picture is high
        const double y = l.y(rows[i].depth_mm);
        const QPointF at(l.x(honeLineAt(data, line, rows[i].depth_mm)), y);
        painter.setPen(QPen(blended(style.faintInk, style.background, 0.7), 0.8 * u));
        painter.drawLine(at, QPointF(l.plot.right(), y));
        painter.drawLine(QPointF(l.plot.right(), y), QPointF(l.marks.left() + 10 * u, middles[i]));
        double shift = -3.5 * u * static_cast<double>(rows[i].marks.size() - 1);
        for (const HoneStationMark& mark : rows[i].marks) {
            paintPlace(painter, at + QPointF(shift, 0), mark.axisIndex, style);
            shift += 7 * u;
        }
        paintMarkRow(painter, l, rows[i], middles[i], style);
    }
}

void paintCaptions(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                   const PictureStyle& style) {
    if (l.caption.isNull()) return;
    const QFont font = style.sized(0.86);
    const double u = l.unit;
    double y = l.caption.top();
    for (const HoneCaption& caption : honeCaptions(data)) {
        const bool sign = caption.warns || caption.forbids;
        const QRectF mark(l.caption.left() + 2 * u, y + lineHeight(font) / 2 - 5 * u, 10 * u,
                          10 * u);
        if (caption.forbids)
            paintVerdictMark(painter, mark, Verdict::outside, style);
        else if (caption.warns)
            paintOddMark(painter, mark.center(), style);
        const QRectF room(l.caption.left() + (sign ? 18 * u : 0), y, l.caption.width() - 18 * u,
                          std::min(2 * lineHeight(font), l.caption.bottom() - y));
        y += drawParagraph(painter, style, room, caption.text, font,
                           caption.forbids ? style.outside : style.ink);
    }
}

void paintFriendly(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                   const PictureStyle& style) {
    const QFont font = style.sized(0.86);
    const double left = (data.stone ? l.plot.left() : l.wall) + 8 * l.unit;
    const double width = l.plot.right() - 8 * l.unit - left;
    const double height = paragraphHeight(data.friendly, font, width);
    const double top = std::max(l.top + 4 * l.unit, (l.top + l.bottom - height) / 2);
    drawParagraph(painter, style, QRectF(left, top, width, l.bottom - top), data.friendly, font,
                  style.faintInk, Qt::AlignHCenter);
}

} // namespace

void paintHoneText(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                   const PictureStyle& style) {
    paintTitle(painter, l, data, style);
    paintDepths(painter, l, data, style);
    if (!data.stone)
        drawText(painter, style, l.openLabel, Qt::AlignLeft, data.openEnd, honeSectionFont(style),
                 style.faintInk);
    if (data.empty())
        paintFriendly(painter, l, data, style);
    else
        paintScale(painter, l, data, style);
    paintMarks(painter, l, data, style);
    paintCaptions(painter, l, data, style);
    if (!l.key.isNull()) paintKey(painter, l.key, honeSectionKey(data, style), style);
}

} // namespace borewright
