// SPDX-License-Identifier: GPL-3.0-or-later
// Where things of a set-up's drawing lie: depth to scale, stone and windows at the left, the
// magnified wall at the right, where to measure beside it; and the parts of its painter.
#pragma once

#include "app/pictures/hone_section.h"
#include "app/pictures/picture_key.h"

namespace borewright {

struct HoneSectionLayout {
    double unit = 1;
    double top = 0;    // open end
    double bottom = 0; // closed end
    double pixelsPerMm = 1;
    double roof = 0;  // what stands out of the open end is cut off here
    double outer = 0; // left edge of the casting
    double wall = 0;  // left wall, at no magnification
    QRectF title;
    QRectF openLabel;
    QRectF depths;
    QRectF stone;         // carrier and abrasive, from wall to the windows
    double bars = 0;      // left edge of the first window's column
    double column = 0;    // width of one
    bool upright = false; // what is written on the windows runs along them
    int lines = 2;        // written on each
    QRectF plot;          // the magnified wall
    double lowest_um = 0;
    double highest_um = 0;
    QRectF marks;       // where to measure; null = none
    bool terse = false; // no room for their depths
    QRectF caption;
    QRectF key;

    [[nodiscard]] double y(double depth_mm) const { return top + depth_mm * pixelsPerMm; }
    [[nodiscard]] double depthOf(double at) const { return (at - top) / pixelsPerMm; }
    [[nodiscard]] double x(double size_um) const; // kept inside the plot
    [[nodiscard]] double barX(std::size_t window) const;
};

HoneSectionLayout layOutHoneSection(const QRectF& rect, const HoneSectionData& data,
                                    const PictureStyle& style);

QFont honeSectionFont(const PictureStyle& style);
// What is written on a window, by line.
QStringList honeBarLines(const HoneBar& bar, int lines);
std::vector<KeyItem> honeSectionKey(const HoneSectionData& data, const PictureStyle& style);
// The captions below, each with whether it warns.
struct HoneCaption {
    QString text;
    bool warns = false;
    bool forbids = false;
};
std::vector<HoneCaption> honeCaptions(const HoneSectionData& data);
QPen honeNowPen(const PictureStyle& style);
QPen honeThenPen(const PictureStyle& style);
// Rows of the places to measure: one a depth, in the order of depth.
struct HoneMarkRow {
    double depth_mm = 0;
    QString depth;
    std::vector<HoneStationMark> marks;
};
std::vector<HoneMarkRow> honeMarkRows(const HoneSectionData& data);
// A line against depth at one depth; 0 where there is none.
double honeLineAt(const HoneSectionData& data, const HoneLine& line, double depth_mm);

// Parts of the painter.
void paintHoneTool(QPainter& painter, const HoneSectionLayout& layout, const HoneSectionData& data,
                   const PictureStyle& style);
void paintHoneProfile(QPainter& painter, const HoneSectionLayout& layout,
                      const HoneSectionData& data, const PictureStyle& style);
void paintHoneText(QPainter& painter, const HoneSectionLayout& layout, const HoneSectionData& data,
                   const PictureStyle& style);

} // namespace borewright
