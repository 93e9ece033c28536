// SPDX-License-Identifier: GPL-3.0-or-later
// The small shapes that go with a verdict's word: a full disc = within, a lozenge = outside, a
// half disc = too close to call, a ring = not measured, a rising bar in a ring = not yet, a dash =
// not judged. Drawn, never letters of a font.
#pragma once

#include "app/pictures/picture_style.h"
#include "core/verdict/verdict.h"

#include <QIcon>
#include <QPainter>

namespace borewright {

QColor verdictColour(Verdict verdict, const PictureStyle& style);
void paintVerdictMark(QPainter& painter, const QRectF& rect, Verdict verdict,
                      const PictureStyle& style);
// The same as an icon for lists and labels.
QIcon verdictIcon(Verdict verdict, const PictureStyle& style);
// A verdict's name, translated.
QString verdictWord(Verdict verdict);

} // namespace borewright
