// SPDX-License-Identifier: GPL-3.0-or-later
// Which size cleans up the block: a row a bore with its sizes as found and the size at which it
// cleans up, and every size on offer as a line across all rows.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/results/results.h"

#include <QImage>
#include <QPainter>

#include <optional>
#include <vector>

namespace borewright {

// Sizes are in the large unit shown.
struct SizeBarsCleanUp {
    double size = 0;
    double around = 0; // ±, 95 %; 0 = not known
};
struct SizeBarsBore {
    int number = 0;
    QString name;                   // "Bore 4"
    std::optional<double> smallest; // as found; nothing = not known, and `why` says it
    double largest = 0;
    std::optional<SizeBarsCleanUp> cleanUp;
    std::optional<double> otherWay; // with the cut centred the other way, where it differs
    QString word;                   // "cleans, 4.0 ± 0.3 thou to spare"
    QString why;                    // "3.4355 in: score at 1.40 in, B"
    Verdict verdict = Verdict::notJudged;
    bool deciding = false;
    std::optional<std::size_t> own; // place of the size that is chosen for this bore
    std::optional<double> greatest; // more than this the engine maker does not allow
};
struct SizeBarsLine {
    QString name;                          // "0.020 in"
    QString size;                          // "3.4400": the finish size, where it is one
    std::vector<std::optional<double>> at; // by bore
    bool chosen = false;
    bool beyond = false; // more than the engine maker allows
};
struct SizeBarsData {
    std::vector<SizeBarsBore> bores;
    std::vector<SizeBarsLine> lines;
    QString unit;     // "in"
    QString centred;  // "centred on the worn bore"
    QString otherWay; // "centred on the original axis"
    int chosen = 0;   // bore
    QString friendly; // said where there is nothing to show
};

SizeBarsData sizeBarsData(const Workbook& workbook, const Results& results,
                          const DisplayUnits& units, int chosen);
void paintSizeBars(QPainter& painter, const QRectF& rect, const SizeBarsData& data,
                   const PictureStyle& style);
// The heights at which rows are at ease, and at which they are as low as can be read.
double sizeBarsHeight(const SizeBarsData& data, double width, const PictureStyle& style);
double leastSizeBarsHeight(const SizeBarsData& data, double width, const PictureStyle& style);
// Number of the bore whose row is at `point`; 0 = none.
int sizeBarsHit(const QRectF& rect, const SizeBarsData& data, const PictureStyle& style,
                const QPointF& point);
QString describeSizeBars(const SizeBarsData& data);
QImage renderSizeBars(const QSize& size, const SizeBarsData& data, const PictureStyle& style,
                      double pixelRatio = 1);

} // namespace borewright
