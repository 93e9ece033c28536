// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/size_bars_marks.h"

#include "app/pictures/picture_key.h"

namespace borewright {

void SizeBarsMarks::found(const QRectF& bar) {
    m_painter.setPen(QPen(m_style.ink, 0.9 * m_u));
    m_painter.setBrush(blended(m_style.ink, m_style.background, 0.38));
    m_painter.drawRect(bar);
}

void SizeBarsMarks::otherWay(double x, double y, double half) {
    m_painter.setPen(QPen(m_style.faintInk, 1.2 * m_u));
    m_painter.setBrush(m_style.background);
    m_painter.drawRect(QRectF(x - 2 * m_u, y - half, 4 * m_u, 2 * half));
}

void SizeBarsMarks::cleansUp(double x, double y, double half, double around, const QColor& colour) {
    const double reach = half * 1.5;
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(m_style.background);
    m_painter.drawRect(QRectF(x - 3.4 * m_u, y - reach - m_u, 6.8 * m_u, 2 * (reach + m_u)));
    m_painter.setPen(QPen(colour, 1.4 * m_u, Qt::SolidLine, Qt::FlatCap));
    if (around > 0) {
        m_painter.drawLine(QPointF(x - around, y), QPointF(x + around, y));
        for (const double end : {x - around, x + around})
            m_painter.drawLine(QPointF(end, y - half * 0.6), QPointF(end, y + half * 0.6));
    }
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(colour);
    m_painter.drawRect(QRectF(x - 2.2 * m_u, y - reach, 4.4 * m_u, 2 * reach));
}

void SizeBarsMarks::beyond(const QRectF& area) {
    hatch(m_painter, area, QPen(blended(m_style.portHatch, m_style.background, 0.55), 0.9 * m_u),
          6 * m_u, true);
}

void SizeBarsMarks::sign(SizeBarsSign which, const QRectF& room) {
    const QPointF c = room.center();
    switch (which) {
    case SizeBarsSign::found:
        return found(QRectF(room.left(), c.y() - 4 * m_u, room.width(), 8 * m_u));
    case SizeBarsSign::cleansUp:
        return cleansUp(c.x(), c.y(), 4 * m_u, 0, m_style.ink);
    case SizeBarsSign::cleansUpAround:
        return cleansUp(c.x(), c.y(), 4 * m_u, 9 * m_u, m_style.ink);
    case SizeBarsSign::otherWay:
        return otherWay(c.x(), c.y(), 4 * m_u);
    case SizeBarsSign::beyond:
        return beyond(QRectF(room.left(), c.y() - 5 * m_u, room.width(), 10 * m_u));
    }
}

} // namespace borewright
