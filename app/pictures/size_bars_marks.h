// SPDX-License-Identifier: GPL-3.0-or-later
// The signs of the size bars, the same in a row and in the key.
#pragma once

#include "app/pictures/size_bars_layout.h"

namespace borewright {

class SizeBarsMarks {
public:
    SizeBarsMarks(QPainter& painter, const PictureStyle& style)
        : m_painter(painter)
        , m_style(style)
        , m_u(style.unit()) {}

    void found(const QRectF& bar);
    // A block at the size with its ± (nothing where 0) to both sides, all in picture units.
    void cleansUp(double x, double y, double half, double around, const QColor& colour);
    void otherWay(double x, double y, double half); // the same, hollow and fainter
    void beyond(const QRectF& area);
    void sign(SizeBarsSign sign, const QRectF& room);

private:
    QPainter& m_painter;
    const PictureStyle& m_style;
    double m_u;
};

} // namespace borewright
