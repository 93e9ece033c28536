// SPDX-License-Identifier: GPL-3.0-or-later
// A strip of each bore's readings against its limits, plotted with QCustomPlot; on paper the same
// plot goes in as vectors.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/results/results.h"

#include <QImage>
#include <QPainter>

#include <optional>

class QCustomPlot;

namespace borewright {

struct StripPoint {
    Station station;
    double value = 0; // deviation from the bore's base, in the unit shown
    bool judged = true;
    bool odd = false;
    QString text;
};

struct StripBore {
    int number = 0;
    QString word;
    Verdict verdict = Verdict::notJudged;
    std::vector<std::vector<StripPoint>> axes; // readings by axis, in the order of the block
    std::optional<double> lower;               // size limits, as values
    std::optional<double> upper;
};

struct StripData {
    std::vector<StripBore> bores;
    QStringList axisLabels;
    QString unit;     // "thou"
    QString base;     // what 0 is: "finish size 3.4400 in"
    int chosen = 0;   // bore
    QString friendly; // said where there is nothing to show
};

StripData stripData(const Workbook& workbook, const Results& results, const std::string& survey,
                    const DisplayUnits& units, int chosen);

// Fills a plot with the strip; colours, grid and type by the style.
void setUpStrip(QCustomPlot& plot, const StripData& data, const PictureStyle& style);
void paintStrip(QPainter& painter, const QRectF& rect, const StripData& data,
                const PictureStyle& style);
QString describeStrip(const StripData& data);
QImage renderStrip(const QSize& size, const StripData& data, const PictureStyle& style,
                   double pixelRatio = 1);

} // namespace borewright
