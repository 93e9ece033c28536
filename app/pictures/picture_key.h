// SPDX-License-Identifier: GPL-3.0-or-later
// The key below a picture: small signs with their meaning, flowing over a few centred lines.
#pragma once

#include "app/pictures/picture_style.h"

#include <QImage>
#include <QPainter>
#include <QPen>

#include <vector>

namespace borewright {

// The line of an axis: A full, B dashed, any other dash-dotted, so that colour is not needed.
QPen axisPen(const PictureStyle& style, int axis, double width);
// `colour` laid over `under` at `part` (0 … 1); opaque, so that crossing lines do not add up.
QColor blended(const QColor& colour, const QColor& under, double part);

struct KeyItem {
    enum class Sign {
        none,
        axis,
        earlier,
        band,
        finish,
        ports,
        odd,
        upDown,
        leftRight,
        line, // `pen`, on a strip of `under`
    };
    Sign sign = Sign::none;
    QString text;
    int axis = 0;
    QPen pen{};
    QColor under{};
};

// Height that the items take, at most `lines` lines; what does not fit is left away.
double keyHeight(const std::vector<KeyItem>& items, double width, int lines,
                 const PictureStyle& style);
void paintKey(QPainter& painter, const QRectF& rect, const std::vector<KeyItem>& items,
              const PictureStyle& style);
// The mark of a reading that looks odd, round a point.
void paintOddMark(QPainter& painter, const QPointF& at, const PictureStyle& style);
// Hatching of `area`; rising to the right, or falling.
void hatch(QPainter& painter, const QRectF& area, const QPen& pen, double spacing, bool rising);

// An empty image of `size` device-independent pixels, and the rectangle of a picture in it.
QImage blankPicture(const QSize& size, const PictureStyle& style, double pixelRatio);
QRectF pictureArea(const QSizeF& size, const PictureStyle& style);

} // namespace borewright
