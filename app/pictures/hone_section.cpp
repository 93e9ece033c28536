// SPDX-License-Identifier: GPL-3.0-or-later
// The casting of a set-up's drawing, and its parts in their order.
#include "app/pictures/hone_section.h"

#include "app/pictures/hone_section_layout.h"
#include "app/pictures/picture_text.h"

#include <algorithm>

namespace borewright {
namespace {

// The left wall true to scale; the right one belongs to the magnified profile.
void paintWall(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
               const PictureStyle& style) {
    const QRectF metal(l.outer, l.top, l.wall - l.outer, l.bottom - l.top);
    painter.fillRect(metal, style.metal);
    for (const HonePorts& ports : data.ports) {
        const QRectF gap(metal.left(), l.y(ports.from_mm), metal.width(),
                         l.y(ports.to_mm) - l.y(ports.from_mm));
        painter.fillRect(gap, style.background);
        hatch(painter, gap, QPen(style.portHatch, 0.9 * l.unit), 5 * l.unit, true);
    }
    painter.setPen(QPen(style.ink, 1.5 * l.unit, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(l.wall, l.top), QPointF(l.wall, l.bottom));
    painter.drawLine(QPointF(l.outer, l.top), QPointF(l.wall, l.top));
}

void paintFloor(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                const PictureStyle& style) {
    const double u = l.unit;
    painter.setPen(QPen(style.ink, 1.5 * u, Qt::SolidLine, Qt::FlatCap));
    if (!data.closedEnd) {
        painter.drawLine(QPointF(l.outer, l.bottom), QPointF(l.wall, l.bottom));
        return;
    }
    const QRectF floor(l.outer, l.bottom, l.plot.right() - l.outer, 10 * u);
    painter.fillRect(floor, style.metal);
    hatch(painter, floor, QPen(style.faintInk, 0.9 * u), 7 * u, true);
    painter.setPen(QPen(style.ink, 1.5 * u, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(floor.topLeft(), floor.topRight());
}

} // namespace

void paintHoneSection(QPainter& painter, const QRectF& rect, const HoneSectionData& data,
                      const PictureStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (data.bore == 0) {
        drawParagraph(painter, style, rect, data.friendly, style.sized(0.86), style.faintInk,
                      Qt::AlignHCenter);
        painter.restore();
        return;
    }
    const HoneSectionLayout layout = layOutHoneSection(rect, data, style);
    paintWall(painter, layout, data, style);
    paintHoneProfile(painter, layout, data, style);
    paintFloor(painter, layout, data, style);
    paintHoneTool(painter, layout, data, style);
    paintHoneText(painter, layout, data, style);
    painter.restore();
}

QImage renderHoneSection(const QSize& size, const HoneSectionData& data, const PictureStyle& style,
                         double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintHoneSection(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
