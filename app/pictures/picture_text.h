// SPDX-License-Identifier: GPL-3.0-or-later
// Text in a picture: never clipped. What does not fit is elided, and every text drawn can be noted
// for the tests.
#pragma once

#include "app/pictures/picture_style.h"

#include <QFontMetricsF>
#include <QPainter>

namespace borewright {

// Draws one line of text inside `room`, aligned by `align`, elided at the right where it is too
// wide. Draws nothing where not even two letters would fit. Returns what the letters take.
QRectF drawText(QPainter& painter, const PictureStyle& style, const QRectF& room,
                Qt::Alignment align, const QString& text, const QFont& font, const QColor& colour);

// Draws text of several lines, wrapped at words, from the top of `room`; lines below `room` are
// left away, the last that fits ending in "…" behind a whole word. Returns the height taken.
double drawParagraph(QPainter& painter, const PictureStyle& style, const QRectF& room,
                     const QString& text, const QFont& font, const QColor& colour,
                     Qt::Alignment align = Qt::AlignLeft);
// The height that drawParagraph would take with room enough.
double paragraphHeight(const QString& text, const QFont& font, double width);

// The style's font for a word beside a mark: a little smaller where it would not fit otherwise.
QFont fittingFont(const QString& text, double width, const PictureStyle& style);

double textWidth(const QString& text, const QFont& font);
double lineHeight(const QFont& font);

} // namespace borewright
