// SPDX-License-Identifier: GPL-3.0-or-later
// The stone on its carrier at its lower reversal, and the windows beside it: a bar each, from where
// the lower end of the abrasive turns above to where it turns below.
#include "app/pictures/hone_section_layout.h"
#include "app/pictures/picture_text.h"

#include <algorithm>

namespace borewright {
namespace {

constexpr double abrasiveShare = 0.36; // of what stone and carrier take across

// Grains, so that the abrasive needs no colour: dots in a fixed disorder.
void paintGrains(QPainter& painter, const QRectF& rect, const PictureStyle& style, double u) {
    painter.save();
    painter.setClipRect(rect);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.ink);
    const double step = 5 * u;
    int row = 0;
    for (double y = rect.top() + step / 2; y < rect.bottom(); y += step, ++row)
        for (double x = rect.left() + step * (row % 2 == 0 ? 0.35 : 0.85); x < rect.right();
             x += step)
            painter.drawEllipse(QPointF(x, y), 0.75 * u, 0.75 * u);
    painter.restore();
}

void paintBreak(QPainter& painter, const QRectF& rod, const PictureStyle& style, double u) {
    painter.setPen(QPen(style.faintInk, u));
    const double step = rod.width() / 4;
    QPolygonF zigzag;
    for (int i = 0; i <= 4; ++i)
        zigzag << QPointF(rod.left() + step * i, rod.top() + (i % 2 == 0 ? 0 : 3 * u));
    painter.drawPolyline(zigzag);
}

void paintStone(QPainter& painter, const HoneSectionLayout& l, const HoneStoneDrawn& stone,
                const PictureStyle& style) {
    const double u = l.unit;
    const double face = l.stone.left() + u;
    const double abrasive = l.stone.width() * abrasiveShare;
    const double upper = std::max(l.roof, l.y(stone.lower_mm - stone.length_mm));
    const double lower = l.y(stone.lower_mm);
    const double end = l.y(stone.lower_mm + stone.below_mm);
    const QRectF carrier(face + abrasive, upper, l.stone.width() - abrasive, end - upper);
    painter.setPen(QPen(style.ink, 1.1 * u));
    painter.setBrush(blended(style.metal, style.background, 0.55));
    // The rod by which it is driven goes out of the open end.
    const QRectF rod(carrier.center().x() - carrier.width() / 5, l.roof, carrier.width() / 2.5,
                     std::max(0.0, upper - l.roof));
    if (rod.height() > 2 * u) {
        painter.drawLine(rod.topLeft(), rod.bottomLeft());
        painter.drawLine(rod.topRight(), rod.bottomRight());
        paintBreak(painter, rod, style, u);
        painter.setPen(QPen(style.ink, 1.1 * u));
    }
    painter.drawRect(carrier);
    if (end > lower + u) { // guide or dead length: keeps the abrasive off the closed end
        const QRectF guide(face, lower, abrasive, end - lower);
        painter.setBrush(style.background);
        painter.drawRect(guide);
        hatch(painter, guide, QPen(style.faintInk, 0.8 * u), 4.5 * u, true);
    }
    const QRectF stoneRect(face, upper, abrasive, lower - upper);
    painter.setBrush(blended(style.axisB, style.background, 0.3));
    painter.drawRect(stoneRect);
    paintGrains(painter, stoneRect, style, u);
    // The edge that all depths of the windows speak of.
    painter.setPen(QPen(style.ink, 0.9 * u, Qt::DotLine, Qt::FlatCap));
    painter.drawLine(QPointF(carrier.right() + u, lower), QPointF(l.barX(0) - 4 * u, lower));
    painter.setPen(QPen(style.ink, 2.4 * u, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(stoneRect.bottomLeft(), stoneRect.bottomRight());
}

void paintStoneName(QPainter& painter, const HoneSectionLayout& l, const HoneStoneDrawn& stone,
                    const PictureStyle& style) {
    const double upper = std::max(l.roof, l.y(stone.lower_mm - stone.length_mm));
    const double length = l.y(stone.lower_mm + stone.below_mm) - upper;
    const QFont font = honeSectionFont(style);
    const double width = l.stone.width() * (1 - abrasiveShare);
    if (textWidth(stone.name, font) > length - 6 * l.unit || lineHeight(font) > width) return;
    painter.save();
    painter.translate(l.stone.right() - width / 2, upper + length / 2);
    painter.rotate(-90);
    drawText(painter, style, QRectF(-length / 2, -lineHeight(font) / 2, length, lineHeight(font)),
             Qt::AlignHCenter, stone.name, font, style.ink);
    painter.restore();
}

void paintTrack(QPainter& painter, const HoneSectionLayout& l, const HoneStoneDrawn& stone,
                double x, const PictureStyle& style) {
    if (stone.highest_mm > stone.lowest_mm) return; // too long for the bore: no stroke is possible
    painter.setPen(QPen(style.grid, 3 * l.unit, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(x, std::max(l.roof, l.y(stone.highest_mm))),
                     QPointF(x, l.y(stone.lowest_mm)));
}

void paintBar(QPainter& painter, const HoneSectionLayout& l, const HoneBar& bar, double x,
              const PictureStyle& style) {
    const double u = l.unit;
    const QPointF from(x, l.y(bar.from_mm));
    const QPointF to(x, l.y(bar.to_mm));
    painter.setPen(QPen(style.accent, 3.4 * u, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(from, to);
    painter.setPen(QPen(style.accent, 1.6 * u));
    painter.setBrush(style.background);
    for (const QPointF& end : {from, to})
        painter.drawEllipse(end, 3.6 * u, 3.6 * u);
    if (bar.hold.isEmpty()) return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.accent);
    painter.drawRect(QRectF(x - 5.5 * u, to.y() - 1.5 * u, 11 * u, 3.6 * u));
}

// Along the bar, or beside it; kept between the ends of the bore.
void paintBarWords(QPainter& painter, const HoneSectionLayout& l, const HoneBar& bar, double x,
                   const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double height = lineHeight(font);
    const double u = l.unit;
    const QStringList lines = honeBarLines(bar, l.lines);
    double longest = 0;
    for (const QString& line : lines)
        longest = std::max(longest, textWidth(line, font));
    const double room = l.bottom - l.top - 4 * u;
    const double along =
        l.upright ? std::min(longest + 0.6, room) : height * static_cast<double>(lines.size());
    const double middle = std::clamp(l.y((bar.from_mm + bar.to_mm) / 2), l.top + 2 * u + along / 2,
                                     l.bottom - 2 * u - along / 2);
    painter.save();
    painter.translate(x + 7 * u, middle);
    if (l.upright) painter.rotate(-90);
    double down = l.upright ? 0 : -along / 2;
    for (const QString& line : lines) {
        const QRectF at = l.upright ? QRectF(-along / 2, down, along, height)
                                    : QRectF(0, down, l.column - 16 * u, height);
        drawText(painter, style, at, l.upright ? Qt::AlignHCenter : Qt::AlignLeft, line, font,
                 style.ink);
        down += height;
    }
    painter.restore();
}

} // namespace

void paintHoneTool(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                   const PictureStyle& style) {
    if (!data.stone) return;
    painter.save();
    paintStone(painter, l, *data.stone, style);
    paintStoneName(painter, l, *data.stone, style);
    for (std::size_t i = 0; i < data.windows.size(); ++i) {
        paintTrack(painter, l, *data.stone, l.barX(i), style);
        paintBar(painter, l, data.windows[i], l.barX(i), style);
        paintBarWords(painter, l, data.windows[i], l.barX(i), style);
    }
    painter.restore();
}

} // namespace borewright
