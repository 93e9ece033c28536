// SPDX-License-Identifier: GPL-3.0-or-later
// Colours, pens and type of every picture. Painters take a painter, a rectangle, data and a style;
// screen, PNG and sheet share them.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>
#include <QRectF>
#include <QString>

#include <vector>

namespace borewright {

// A text as it was drawn, so that tests find what is clipped or overlaps.
struct DrawnText {
    QString text;
    QRectF ink;  // what the letters take, in device pixels or sheet units
    QRectF room; // what they were given
};
using TextLog = std::vector<DrawnText>;

struct PictureStyle {
    QColor background, ink, faintInk, grid, accent;
    QColor metal;                   // the cut casting
    QColor axisA, axisB, axisOther; // lines also differ by dash
    QColor limitBand, finishLine, portHatch;
    QColor within, outside, tooClose, notMeasured; // always with a word and a shape
    QFont font;
    double line = 1.6; // width of a profile line, in device-independent pixels or points
    bool dark = false;
    bool paper = false;
    TextLog* log = nullptr; // where the texts drawn are noted; usually nowhere

    static PictureStyle light(const QFont& font);
    static PictureStyle darkScreen(const QFont& font);
    // Black on white, and told apart without colour; a picture's units are sheet units.
    static PictureStyle onPaper(const QFont& font);
    // Light or dark by the palette's lightness.
    static PictureStyle forPalette(const QPalette& palette, const QFont& font);

    // All measures of a picture follow its type: 1 at a type of 14 pixels.
    [[nodiscard]] double unit() const;
    // The style's font, `factor` as large; never under 6 pixels.
    [[nodiscard]] QFont sized(double factor, bool bold = false) const;
    // Colour of the axis at a place in the block's order: 0 = A, 1 = B.
    [[nodiscard]] QColor axisColour(int axis) const;
};

} // namespace borewright
