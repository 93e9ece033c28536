// SPDX-License-Identifier: GPL-3.0-or-later
// The picture of this product: a bore cut open, open end at the top, closed end hatched, both
// walls drawn with the deviation magnified, so that a V looks like a V.
#pragma once

#include "app/pictures/picture_style.h"
#include "app/pictures/section_data.h"

#include <QImage>
#include <QPainter>

#include <vector>

namespace borewright {

void paintSection(QPainter& painter, const QRectF& rect, const SectionData& data,
                  const PictureStyle& style);

// A reading where it is drawn (one a wall), for mouse and keyboard.
struct SectionPoint {
    QPointF position;
    Station station;
    QString text;
};
std::vector<SectionPoint> sectionPoints(const QRectF& rect, const SectionData& data,
                                        const PictureStyle& style);
// The point nearest to `position`, if one is within reach of a hand.
const SectionPoint* nearestPoint(const std::vector<SectionPoint>& points, const QPointF& position,
                                 double reach);

// The section as an image of `size` device-independent pixels, for PNG and tests.
QImage renderSection(const QSize& size, const SectionData& data, const PictureStyle& style,
                     double pixelRatio = 1);

} // namespace borewright
