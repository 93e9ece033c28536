// SPDX-License-Identifier: GPL-3.0-or-later
// The inks of sentences and lines, from the palette in force.
#pragma once

#include <QColor>

class QPalette;

namespace borewright {

bool isDark(const QPalette& palette);
// Colour of a refusal or warning in a sentence, readable on the palette's window colour.
QColor warningColour(const QPalette& palette);
// Ink for what is said in passing.
QColor faintInk(const QPalette& palette);
// Thin lines between parts.
QColor hairline(const QPalette& palette);

} // namespace borewright
