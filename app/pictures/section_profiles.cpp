// SPDX-License-Identifier: GPL-3.0-or-later
// The walls as read: lines of the axes and their points, earlier surveys faint behind.
#include "app/pictures/section_parts.h"

#include <QPainterPath>

#include <algorithm>

namespace borewright {
namespace {

QPolygonF lineOf(const SectionLayout& l, const SectionProfile& profile, bool right) {
    QPolygonF line;
    for (const SectionReading& reading : profile.points)
        line << QPointF(l.wall(kept(l, reading.deviation_um), right), l.y(reading.depth_mm));
    return line;
}

// The bands of depth where this axis has no wall.
QPainterPath cutBands(const SectionLayout& l, const SectionData& data, int axis) {
    QPainterPath bands;
    const double left = l.leftOuter - l.casting;
    const double width = l.rightOuter + l.casting - left;
    for (const SectionPorts& ports : data.ports)
        if (std::ranges::find(ports.axes, axis) != ports.axes.end())
            bands.addRect(left, l.y(ports.from_mm), width,
                          (ports.to_mm - ports.from_mm) * l.pixelsPerMm);
    return bands;
}

void paintLines(QPainter& painter, const SectionLayout& l, const SectionData& data,
                const SectionProfile& profile, const PictureStyle& style) {
    const double width = style.line * l.unit;
    const QPainterPath bands = cutBands(l, data, profile.axisIndex);
    QPainterPath all;
    all.addRect(l.leftOuter - l.casting, l.top - 50, l.rightOuter - l.leftOuter + 2 * l.casting,
                l.bottom - l.top + 100);
    painter.save();
    if (!bands.isEmpty()) painter.setClipPath(all.subtracted(bands));
    painter.setPen(axisPen(style, profile.axisIndex, width));
    for (const bool right : {false, true})
        painter.drawPolyline(lineOf(l, profile, right));
    if (!bands.isEmpty()) {
        // Through a port there is no wall: only a thread that ties the two parts together.
        painter.setClipPath(bands);
        const QColor thread = blended(style.axisColour(profile.axisIndex), style.background, 0.45);
        painter.setPen(QPen(thread, 0.7 * l.unit, Qt::DotLine, Qt::FlatCap));
        for (const bool right : {false, true})
            painter.drawPolyline(lineOf(l, profile, right));
    }
    painter.restore();
}

void paintPoint(QPainter& painter, const QPointF& at, const SectionReading& reading, int axis,
                const SectionLayout& l, const SectionData& data, const PictureStyle& style) {
    const double r = (l.room < 40 * l.unit ? 1.9 : 2.7) * l.unit;
    const QColor colour = style.axisColour(axis);
    if (data.options.chosen == reading.station) {
        painter.setPen(QPen(style.accent, 1.8 * l.unit));
        painter.setBrush(style.background);
        painter.drawEllipse(at, r + 3.4 * l.unit, r + 3.4 * l.unit);
    }
    painter.setPen(QPen(colour, 1.2 * l.unit));
    painter.setBrush(reading.judged ? colour : style.background);
    if (axis == 1) // told apart without colour, too
        painter.drawRect(QRectF(at.x() - r * 0.88, at.y() - r * 0.88, r * 1.76, r * 1.76));
    else
        painter.drawEllipse(at, r, r);
    if (reading.odd) paintOddMark(painter, at, style);
}

void paintEarlier(QPainter& painter, const SectionLayout& l, const SectionData& data,
                  const PictureStyle& style) {
    const auto count = static_cast<double>(data.earlier.size());
    double place = 0;
    for (const SectionProfile& profile : data.earlier) {
        const double part = 0.28 + 0.32 * (place++ / count);
        if (!inStrip(l, profile)) continue;
        QPen pen = axisPen(style, profile.axisIndex, 1.1 * l.unit);
        pen.setColor(blended(style.faintInk, style.background, part));
        painter.setPen(pen);
        for (const bool right : {false, true})
            painter.drawPolyline(lineOf(l, profile, right));
    }
}

// A short stroke where the gauge finds no wall.
void paintNoWall(QPainter& painter, const SectionLayout& l, const SectionData& data,
                 const PictureStyle& style) {
    const double r = 3.4 * l.unit;
    for (const SectionNoWall& place : data.noWall) {
        painter.setPen(QPen(style.axisColour(place.axisIndex), 1.4 * l.unit));
        const double shift = (place.axisIndex - 0.5) * 4 * l.unit;
        for (const double x :
             {l.leftOuter - l.casting / 2 + shift, l.rightOuter + l.casting / 2 + shift})
            painter.drawLine(QPointF(x - r, l.y(place.depth_mm) + r),
                             QPointF(x + r, l.y(place.depth_mm) - r));
    }
}

} // namespace

bool inStrip(const SectionLayout& layout, const SectionProfile& profile) {
    return std::ranges::all_of(profile.points, [&](const SectionReading& reading) {
        return reading.odd || (reading.deviation_um >= layout.lowest_um - 1e-6 &&
                               reading.deviation_um <= layout.highest_um + 1e-6);
    });
}

void paintProfiles(QPainter& painter, const SectionLayout& l, const SectionData& data,
                   const PictureStyle& style) {
    painter.setBrush(Qt::NoBrush);
    paintEarlier(painter, l, data, style);
    for (const SectionProfile& profile : data.now)
        paintLines(painter, l, data, profile, style);
    for (const SectionProfile& profile : data.now)
        for (const bool right : {false, true}) {
            const QPolygonF line = lineOf(l, profile, right);
            for (qsizetype i = 0; i < line.size(); ++i)
                paintPoint(painter, line[i], profile.points[static_cast<std::size_t>(i)],
                           profile.axisIndex, l, data, style);
        }
    paintNoWall(painter, l, data, style);
}

} // namespace borewright
