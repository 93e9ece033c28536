// SPDX-License-Identifier: GPL-3.0-or-later
// A map depth × bore in colours, with the numbers in the cells: blue = smaller, white = at the
// base, orange = larger, which the colour-blind can tell; and each cell says its number.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/results/results.h"

#include <QImage>
#include <QPainter>

#include <optional>

namespace borewright {

struct DepthMapCell {
    Station station;
    std::optional<double> deviation_um; // from the base
    QString text;                       // figure in the cell
    bool wall = true;
    bool odd = false;
    bool judged = true;
};

struct DepthMapData {
    QString head;       // "deviation from 3.4200 in, thou"
    QString depthUnit;  // "in"
    QStringList depths; // one a row
    std::vector<int> bores;
    QStringList axes; // ids; the columns of a bore
    // Row by row, each bores × axes cells; a cell without a station is empty.
    std::vector<std::vector<std::optional<DepthMapCell>>> rows;
    double reach_um = 1; // deviation of the strongest colour
    std::optional<Station> chosen;
    QString friendly; // said where there is nothing to show
};

DepthMapData depthMapData(const Workbook& workbook, const Results& results,
                          const std::string& survey, const DisplayUnits& units,
                          const std::optional<Station>& chosen);

void paintDepthMap(QPainter& painter, const QRectF& rect, const DepthMapData& data,
                   const PictureStyle& style);
// The station drawn at `position`, if any.
std::optional<Station> depthMapHit(const QRectF& rect, const DepthMapData& data,
                                   const PictureStyle& style, const QPointF& position);
// Colour of a deviation, −1 … +1 of the reach.
QColor depthMapColour(double part, const PictureStyle& style);
QString describeDepthMap(const DepthMapData& data);
QImage renderDepthMap(const QSize& size, const DepthMapData& data, const PictureStyle& style,
                      double pixelRatio = 1);

} // namespace borewright
