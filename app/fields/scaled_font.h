// SPDX-License-Identifier: GPL-3.0-or-later
// A font larger or smaller than another, whether that was sized in points or in pixels.
#pragma once

#include <QFont>

namespace borewright {

inline QFont scaledFont(QFont font, double factor) {
    if (font.pointSizeF() > 0)
        font.setPointSizeF(font.pointSizeF() * factor);
    else
        font.setPixelSize(static_cast<int>(font.pixelSize() * factor + 0.5));
    return font;
}

} // namespace borewright
