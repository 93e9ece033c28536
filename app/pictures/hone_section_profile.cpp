// SPDX-License-Identifier: GPL-3.0-or-later
// The magnified wall of a set-up's drawing: the metal right of what stands now, what the set-up
// takes off, both bands, finish size, limits and aim. Larger is to the right.
#include "app/pictures/hone_section_layout.h"

#include <QPainterPath>

#include <algorithm>

namespace borewright {
namespace {

// A line against depth, `times` its band to the right, from end to end of the bore.
QPolygonF lineOf(const HoneSectionLayout& l, const HoneSectionData& data, const HoneLine& line,
                 double times) {
    QPolygonF points;
    const std::size_t count = std::min(line.mean_um.size(), data.curves.depth_mm.size());
    for (std::size_t i = 0; i < count; ++i) {
        const double band = i < line.band_um.size() ? line.band_um[i] : 0;
        const double x = l.x(line.mean_um[i] + times * band);
        if (i == 0) points << QPointF(x, l.top);
        points << QPointF(x, l.y(data.curves.depth_mm[i]));
        if (i + 1 == count) points << QPointF(x, l.bottom);
    }
    return points;
}

QPolygonF between(QPolygonF one, const QPolygonF& other) {
    for (auto point = other.rbegin(); point != other.rend(); ++point)
        one << *point;
    return one;
}

QColor thin(QColor colour, double alpha) {
    colour.setAlphaF(static_cast<float>(alpha));
    return colour;
}

void paintMetal(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                const PictureStyle& style) {
    const QPolygonF edge{l.plot.topRight(), l.plot.bottomRight()};
    const QPolygonF metal = between(lineOf(l, data, data.curves.now, 0), edge);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.metal);
    painter.drawPolygon(metal);
    QPainterPath clip;
    clip.addPolygon(metal);
    clip.closeSubpath();
    painter.save();
    painter.setClipPath(clip);
    for (const HonePorts& ports : data.ports) {
        const QRectF gap(l.plot.left(), l.y(ports.from_mm), l.plot.width(),
                         l.y(ports.to_mm) - l.y(ports.from_mm));
        painter.fillRect(gap, style.background);
        hatch(painter, gap, QPen(blended(style.portHatch, style.background, 0.7), 0.8 * l.unit),
              7 * l.unit, true);
    }
    painter.restore();
}

void paintLimits(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                 const PictureStyle& style) {
    if (data.lower_um || data.upper_um) {
        const double left = data.lower_um ? l.x(*data.lower_um) : l.plot.left();
        const double right = data.upper_um ? l.x(*data.upper_um) : l.plot.right();
        painter.fillRect(QRectF(left, l.top, right - left, l.plot.height()), style.limitBand);
        painter.setPen(QPen(style.finishLine, 1.3 * l.unit, Qt::SolidLine, Qt::FlatCap));
        if (data.upper_um) painter.drawLine(QPointF(right, l.top), QPointF(right, l.bottom));
    }
    if (data.aim_um) {
        painter.setPen(QPen(style.finishLine, 1.0 * l.unit, Qt::DotLine, Qt::FlatCap));
        for (const double at : {-*data.aim_um / 2, *data.aim_um / 2})
            painter.drawLine(QPointF(l.x(at), l.top), QPointF(l.x(at), l.bottom));
    }
    painter.setPen(QPen(style.finishLine, 1.2 * l.unit, Qt::DashDotLine, Qt::FlatCap));
    painter.drawLine(QPointF(l.x(0), l.top), QPointF(l.x(0), l.bottom));
}

void paintBand(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
               const HoneLine& line, const QColor& colour, double alpha) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(thin(colour, alpha));
    painter.drawPolygon(between(lineOf(l, data, line, -1), lineOf(l, data, line, 1)));
}

// What the set-up is expected to take off.
void paintStock(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                const PictureStyle& style) {
    QPainterPath clip;
    clip.addPolygon(
        between(lineOf(l, data, data.curves.now, 0), lineOf(l, data, data.curves.then, 0)));
    clip.closeSubpath();
    painter.save();
    painter.setClipPath(clip);
    hatch(painter, l.plot, QPen(blended(style.accent, style.background, 0.45), 0.8 * l.unit),
          6 * l.unit, false);
    painter.restore();
}

void paintReadings(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                   const PictureStyle& style) {
    const double r = 2.6 * l.unit;
    for (const HoneReadAt& read : data.read) {
        const QPointF at(l.x(read.found_um), l.y(read.depth_mm));
        const QColor colour = style.axisColour(read.axisIndex);
        painter.setPen(QPen(colour, 1.1 * l.unit));
        painter.setBrush(colour);
        if (read.axisIndex == 1)
            painter.drawRect(QRectF(at.x() - r * 0.88, at.y() - r * 0.88, r * 1.76, r * 1.76));
        else
            painter.drawEllipse(at, r, r);
        if (read.odd) paintOddMark(painter, at, style);
    }
}

} // namespace

double honeLineAt(const HoneSectionData& data, const HoneLine& line, double depth_mm) {
    const std::vector<double>& depths = data.curves.depth_mm;
    const std::size_t count = std::min(line.mean_um.size(), depths.size());
    if (count == 0) return 0;
    std::size_t above = 0;
    while (above + 1 < count && depths[above + 1] <= depth_mm)
        ++above;
    const std::size_t below = std::min(above + 1, count - 1);
    const double way = depths[below] - depths[above];
    const double share = way > 0 ? std::clamp((depth_mm - depths[above]) / way, 0.0, 1.0) : 0.0;
    return line.mean_um[above] + share * (line.mean_um[below] - line.mean_um[above]);
}

QPen honeNowPen(const PictureStyle& style) {
    return {style.ink, style.line * style.unit(), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin};
}

QPen honeThenPen(const PictureStyle& style) {
    QPen pen(style.accent, 1.15 * style.line * style.unit(), Qt::SolidLine, Qt::FlatCap,
             Qt::RoundJoin);
    pen.setDashPattern({4.2, 2.2});
    return pen;
}

void paintHoneProfile(QPainter& painter, const HoneSectionLayout& l, const HoneSectionData& data,
                      const PictureStyle& style) {
    if (data.empty()) return;
    paintMetal(painter, l, data, style);
    paintLimits(painter, l, data, style);
    if (data.hasThen()) paintStock(painter, l, data, style);
    paintBand(painter, l, data, data.curves.now, style.ink, 0.16);
    if (data.hasThen()) paintBand(painter, l, data, data.curves.then, style.accent, 0.28);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(honeNowPen(style));
    painter.drawPolyline(lineOf(l, data, data.curves.now, 0));
    if (data.hasThen()) {
        painter.setPen(honeThenPen(style));
        painter.drawPolyline(lineOf(l, data, data.curves.then, 0));
    }
    paintReadings(painter, l, data, style);
}

} // namespace borewright
