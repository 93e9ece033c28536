// SPDX-License-Identifier: GPL-3.0-or-later
// Colours, pens and type of every picture. Painters take a painter, a rectangle, data and a style;
// screen, PNG and sheet share them.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>

namespace borewright {

struct PictureStyle {
    QColor background, ink, faintInk, grid, accent;
    QColor axisA, axisB, axisOther; // lines also differ by dash
    QColor limitBand, finishLine, portHatch;
    QColor within, outside, tooClose, notMeasured; // always with a word and a shape
    QFont font;
    double line = 1.6;  // width of a profile line, in device-independent pixels or points
    bool dark = false;
    bool paper = false;

    static PictureStyle light(const QFont& font);
    static PictureStyle darkScreen(const QFont& font);
    static PictureStyle onPaper(const QFont& font);
    // Light or dark by the palette's lightness.
    static PictureStyle forPalette(const QPalette& palette, const QFont& font);
};

} // namespace borewright
