// SPDX-License-Identifier: GPL-3.0-or-later
// Colours after Okabe and Ito (Color Universal Design, 2008): blue 0072B2, vermilion D55E00,
// bluish green 009E73, orange E69F00, sky blue 56B4E9, reddish purple CC79A7.
#include "app/pictures/picture_style.h"

#include <QFontInfo>

#include <algorithm>
#include <cmath>

namespace borewright {

PictureStyle PictureStyle::light(const QFont& font) {
    PictureStyle s;
    s.background = QColor(0xFFFFFF);
    s.ink = QColor(0x1F2933);
    s.faintInk = QColor(0x5F6B76);
    s.grid = QColor(0xD5DADF);
    s.accent = QColor(0x0072B2);
    s.metal = QColor(0xE6E9EC);
    s.axisA = QColor(0x0072B2);
    s.axisB = QColor(0xD55E00);
    s.axisOther = QColor(0xA8558A);
    s.limitBand = QColor(0, 158, 115, 52);
    s.finishLine = QColor(0x00785A);
    s.portHatch = QColor(0x98A2AC);
    s.within = QColor(0x007A59);
    s.outside = QColor(0xB84A00);
    s.tooClose = QColor(0x8A6100);
    s.notMeasured = QColor(0x5F6B76);
    s.font = font;
    return s;
}

PictureStyle PictureStyle::darkScreen(const QFont& font) {
    PictureStyle s;
    s.background = QColor(0x1D2125);
    s.ink = QColor(0xE8EBEE);
    s.faintInk = QColor(0xA3ADB6);
    s.grid = QColor(0x3A4148);
    s.accent = QColor(0x56B4E9);
    s.metal = QColor(0x343A41);
    s.axisA = QColor(0x56B4E9);
    s.axisB = QColor(0xF08A3C);
    s.axisOther = QColor(0xD896BC);
    s.limitBand = QColor(0, 190, 140, 58);
    s.finishLine = QColor(0x3FCFA4);
    s.portHatch = QColor(0x707A84);
    s.within = QColor(0x3FCFA4);
    s.outside = QColor(0xF59A52);
    s.tooClose = QColor(0xEBC14A);
    s.notMeasured = QColor(0xA3ADB6);
    s.font = font;
    s.dark = true;
    return s;
}

PictureStyle PictureStyle::onPaper(const QFont& font) {
    PictureStyle s = light(font);
    s.ink = QColor(0x111418);
    s.faintInk = QColor(0x4A535C);
    s.metal = QColor(0xE4E7EA);
    s.grid = QColor(0xC4CAD0);
    s.paper = true;
    return s;
}

PictureStyle PictureStyle::forPalette(const QPalette& palette, const QFont& font) {
    const bool isDark = palette.color(QPalette::Window).lightness() <
                        palette.color(QPalette::WindowText).lightness();
    PictureStyle s = isDark ? darkScreen(font) : light(font);
    s.background = palette.color(QPalette::Base);
    return s;
}

double PictureStyle::unit() const {
    const int pixels = font.pixelSize() > 0 ? font.pixelSize() : QFontInfo(font).pixelSize();
    return std::max(0.5, pixels / 14.0);
}

QFont PictureStyle::sized(double factor, bool bold) const {
    QFont sized = font;
    sized.setPixelSize(std::max(6, static_cast<int>(std::lround(14.0 * unit() * factor))));
    sized.setBold(bold);
    return sized;
}

QColor PictureStyle::axisColour(int axis) const {
    return axis == 0 ? axisA : axis == 1 ? axisB : axisOther;
}

} // namespace borewright
