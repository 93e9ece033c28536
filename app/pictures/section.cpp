// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/section.h"

#include "app/pictures/section_parts.h"

#include <cmath>

namespace borewright {

void paintSection(QPainter& painter, const QRectF& rect, const SectionData& data,
                  const PictureStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (data.bore == 0) {
        drawParagraph(painter, style, rect, data.friendly, sectionFont(style), style.faintInk,
                      Qt::AlignHCenter);
        painter.restore();
        return;
    }
    const SectionLayout layout = layOutSection(rect, data, style);
    paintCasting(painter, layout, data, style);
    paintLimits(painter, layout, data, style);
    paintProfiles(painter, layout, data, style);
    paintSectionText(painter, layout, data, style);
    painter.restore();
}

std::vector<SectionPoint> sectionPoints(const QRectF& rect, const SectionData& data,
                                        const PictureStyle& style) {
    std::vector<SectionPoint> points;
    if (data.bore == 0) return points;
    const SectionLayout layout = layOutSection(rect, data, style);
    for (const SectionProfile& profile : data.now)
        for (const SectionReading& reading : profile.points)
            for (const bool right : {false, true})
                points.push_back({{layout.wall(kept(layout, reading.deviation_um), right),
                                   layout.y(reading.depth_mm)},
                                  reading.station,
                                  reading.text});
    return points;
}

const SectionPoint* nearestPoint(const std::vector<SectionPoint>& points, const QPointF& position,
                                 double reach) {
    const SectionPoint* nearest = nullptr;
    for (const SectionPoint& point : points) {
        const QPointF way = point.position - position;
        const double distance = std::hypot(way.x(), way.y());
        if (distance > reach) continue;
        nearest = &point;
        reach = distance;
    }
    return nearest;
}

QImage renderSection(const QSize& size, const SectionData& data, const PictureStyle& style,
                     double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintSection(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
