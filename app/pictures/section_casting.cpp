// SPDX-License-Identifier: GPL-3.0-or-later
// The cut metal of the section: casting on both sides, closed end, ports, limits.
#include "app/pictures/section_parts.h"

#include <QPainterPath>

#include <algorithm>
#include <map>

namespace borewright {
namespace {

QPolygonF metalOf(const SectionLayout& l, const std::vector<MetalEdge>& edge, bool right) {
    const double outer = right ? l.rightOuter + l.casting : l.leftOuter - l.casting;
    QPolygonF metal;
    metal << QPointF(outer, l.top);
    for (const MetalEdge& point : edge)
        metal << QPointF(l.wall(kept(l, point.deviation_um), right), l.y(point.depth_mm));
    metal << QPointF(outer, l.bottom);
    return metal;
}

// The ports are gaps in the metal, hatched one way for the first axis and the other for the rest.
void paintPorts(QPainter& painter, const SectionLayout& l, const SectionData& data,
                const PictureStyle& style, const QPolygonF& metal) {
    QPainterPath clip;
    clip.addPolygon(metal);
    clip.closeSubpath();
    for (const SectionPorts& ports : data.ports) {
        const QRectF around = metal.boundingRect();
        const QRectF gap(QPointF(around.left(), l.y(std::max(0.0, ports.from_mm))),
                         QPointF(around.right(), l.y(std::min(data.depth_mm, ports.to_mm))));
        painter.save();
        painter.setClipPath(clip);
        painter.fillRect(gap, style.background);
        for (const int axis : ports.axes) {
            const QColor colour = blended(style.axisColour(axis), style.background, 0.5);
            hatch(painter, gap, QPen(colour, 0.9 * l.unit), 6 * l.unit, axis == 0);
        }
        painter.setPen(QPen(style.portHatch, l.unit));
        painter.drawLine(gap.topLeft(), gap.topRight());
        painter.drawLine(gap.bottomLeft(), gap.bottomRight());
        painter.restore();
    }
}

void paintEnds(QPainter& painter, const SectionLayout& l, const SectionData& data,
               const PictureStyle& style, double openLeft, double openRight) {
    const double u = l.unit;
    const double left = l.leftOuter - l.casting;
    const double right = l.rightOuter + l.casting;
    const QPen solid(style.ink, 1.5 * u, Qt::SolidLine, Qt::FlatCap);
    if (data.closedEnd) {
        const QRectF floor(left, l.bottom, right - left, 10 * u);
        painter.fillRect(floor, style.metal);
        hatch(painter, floor, QPen(style.faintInk, 0.9 * u), 7 * u, true);
    }
    painter.setPen(solid);
    painter.drawLine(QPointF(left, l.top), QPointF(openLeft, l.top));
    painter.drawLine(QPointF(openRight, l.top), QPointF(right, l.top));
    if (data.closedEnd)
        painter.drawLine(QPointF(left, l.bottom), QPointF(right, l.bottom));
    else {
        painter.drawLine(QPointF(left, l.bottom), QPointF(l.left(l.lowest_um), l.bottom));
        painter.drawLine(QPointF(l.right(l.lowest_um), l.bottom), QPointF(right, l.bottom));
    }
}

} // namespace

double kept(const SectionLayout& layout, double deviation_um) {
    return std::clamp(deviation_um, layout.lowest_um, layout.highest_um);
}

std::vector<MetalEdge> metalEdge(const SectionData& data) {
    std::map<double, double> largest;
    for (const SectionProfile& profile : data.now)
        for (const SectionReading& reading : profile.points) {
            const auto [at, fresh] = largest.try_emplace(reading.depth_mm, reading.deviation_um);
            if (!fresh) at->second = std::max(at->second, reading.deviation_um);
        }
    if (largest.empty()) return {{0, 0}, {data.depth_mm, 0}};
    std::vector<MetalEdge> edge{{0, largest.begin()->second}};
    for (const auto& [depth, deviation] : largest)
        edge.push_back({depth, deviation});
    edge.push_back({data.depth_mm, largest.rbegin()->second});
    return edge;
}

void paintCasting(QPainter& painter, const SectionLayout& l, const SectionData& data,
                  const PictureStyle& style) {
    const std::vector<MetalEdge> edge = metalEdge(data);
    for (const bool right : {false, true}) {
        const QPolygonF metal = metalOf(l, edge, right);
        painter.setPen(Qt::NoPen);
        painter.setBrush(style.metal);
        painter.drawPolygon(metal);
        paintPorts(painter, l, data, style, metal);
    }
    const double mouth = kept(l, edge.front().deviation_um);
    paintEnds(painter, l, data, style, l.left(mouth), l.right(mouth));
}

void paintLimits(QPainter& painter, const SectionLayout& l, const SectionData& data,
                 const PictureStyle& style) {
    const double height = l.bottom - l.top;
    for (const bool right : {false, true}) {
        if (data.lower_um || data.upper_um) {
            const double a = l.wall(kept(l, data.lower_um.value_or(l.lowest_um)), right);
            const double b = l.wall(kept(l, data.upper_um.value_or(l.highest_um)), right);
            painter.fillRect(QRectF(std::min(a, b), l.top, std::abs(a - b), height),
                             style.limitBand);
        }
        const bool finish = data.finish_um.has_value();
        const double zero = data.finish_um.value_or(0);
        if (zero < l.lowest_um || zero > l.highest_um) continue;
        painter.setPen(finish ? QPen(style.finishLine, 1.1 * l.unit, Qt::DashDotLine, Qt::FlatCap)
                              : QPen(style.faintInk, 0.8 * l.unit, Qt::DotLine, Qt::FlatCap));
        const double x = l.wall(zero, right);
        painter.drawLine(QPointF(x, l.top), QPointF(x, l.bottom));
    }
}

} // namespace borewright
