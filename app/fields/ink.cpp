// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/fields/ink.h"

#include <QPalette>

namespace borewright {

bool isDark(const QPalette& palette) {
    return palette.color(QPalette::Window).lightness() <
           palette.color(QPalette::WindowText).lightness();
}

QColor warningColour(const QPalette& palette) {
    // Vermillion of Okabe and Ito, darkened on white to stay readable.
    return isDark(palette) ? QColor(0xff, 0x8a, 0x4c) : QColor(0xb0, 0x46, 0x00);
}

QColor faintInk(const QPalette& palette) {
    return palette.color(QPalette::PlaceholderText);
}

QColor hairline(const QPalette& palette) {
    return palette.color(QPalette::Mid);
}

} // namespace borewright
