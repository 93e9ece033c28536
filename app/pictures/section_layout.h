// SPDX-License-Identifier: GPL-3.0-or-later
// Where things of a section lie: depth down the picture to scale, walls magnified.
#pragma once

#include "app/pictures/picture_style.h"
#include "app/pictures/section_data.h"

#include <QRectF>

namespace borewright {

struct SectionLayout {
    double unit = 1;          // measures follow the type
    double top = 0;           // open end
    double bottom = 0;        // closed end
    double pixelsPerMm = 1;   // along the depth
    double magnification = 1; // of the walls, over pixelsPerMm; a round number
    double room = 0;          // width of the strip in which a wall bends
    double lowest_um = 0;     // deviations that the strip holds
    double highest_um = 0;
    double leftOuter = 0; // outer edge of the left strip; the casting lies left of it
    double rightOuter = 0;
    double casting = 0; // its drawn thickness beyond a strip
    QRectF title;       // null where there is no room
    QRectF openLabel;   // name of the open end
    QRectF depths;      // depths at the left
    QRectF zones;       // names of zones at the right
    QRectF values;      // figures between the walls
    QRectF caption;     // magnification
    QRectF key;         // key of the lines

    // Pixels that a deviation of the diameter bends one wall: half of it, magnified.
    [[nodiscard]] double bend(double deviation_um) const {
        return deviation_um / 2 / 1000 * pixelsPerMm * magnification;
    }
    [[nodiscard]] double y(double depth_mm) const { return top + depth_mm * pixelsPerMm; }
    // Where a wall stands at a deviation; a larger bore bends both walls outward.
    [[nodiscard]] double left(double deviation_um) const {
        return leftOuter + margin() + bend(highest_um - deviation_um);
    }
    [[nodiscard]] double right(double deviation_um) const {
        return rightOuter - margin() - bend(highest_um - deviation_um);
    }
    [[nodiscard]] double wall(double deviation_um, bool rightWall) const {
        return rightWall ? right(deviation_um) : left(deviation_um);
    }

private:
    // Left over by the round magnification, half of it on either side.
    [[nodiscard]] double margin() const { return (room - bend(highest_um - lowest_um)) / 2; }
};

SectionLayout layOutSection(const QRectF& rect, const SectionData& data, const PictureStyle& style);

// The deviations that a section has to hold, in µm of diameter: readings, base, limits, finish.
DeviationRange rangeOf(const SectionData& data);

// The largest of 1, 2, 5, 10, 20 … that is at most `most`; at least 1.
double roundMagnification(double most);

} // namespace borewright
