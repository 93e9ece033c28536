// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>
#include <QPixmap>

#include <algorithm>

namespace borewright {
namespace {

void lozenge(QPainter& painter, const QPointF& centre, double reach) {
    const QPointF corners[] = {{centre.x(), centre.y() - reach},
                               {centre.x() + reach, centre.y()},
                               {centre.x(), centre.y() + reach},
                               {centre.x() - reach, centre.y()}};
    painter.drawPolygon(corners, 4);
}

} // namespace

QColor verdictColour(Verdict verdict, const PictureStyle& style) {
    switch (verdict) {
    case Verdict::within:
        return style.within;
    case Verdict::outside:
        return style.outside;
    case Verdict::tooCloseToCall:
        return style.tooClose;
    case Verdict::notYet:
        return style.accent;
    case Verdict::notMeasured:
    case Verdict::notJudged:
        return style.notMeasured;
    }
    return style.notMeasured;
}

void paintVerdictMark(QPainter& painter, const QRectF& rect, Verdict verdict,
                      const PictureStyle& style) {
    const QColor colour = verdictColour(verdict, style);
    const double side = std::min(rect.width(), rect.height());
    const double line = std::max(1.0 * style.unit(), side * 0.13);
    const double r = side / 2 - line;
    const QPointF c = rect.center();
    const QRectF ring(c.x() - r, c.y() - r, 2 * r, 2 * r);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, line, Qt::SolidLine, Qt::RoundCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    switch (verdict) {
    case Verdict::within:
        painter.setBrush(colour);
        painter.drawEllipse(ring);
        break;
    case Verdict::outside:
        painter.setBrush(colour);
        lozenge(painter, c, r + line * 0.5);
        break;
    case Verdict::tooCloseToCall:
        painter.drawEllipse(ring);
        painter.setBrush(colour);
        painter.drawPie(ring, 90 * 16, 180 * 16);
        break;
    case Verdict::notYet:
        painter.drawEllipse(ring);
        painter.drawLine(QPointF(c.x(), c.y() + r * 0.45), QPointF(c.x(), c.y() - r * 0.45));
        break;
    case Verdict::notMeasured:
        painter.drawEllipse(ring);
        break;
    case Verdict::notJudged:
        painter.drawLine(QPointF(c.x() - r * 0.7, c.y()), QPointF(c.x() + r * 0.7, c.y()));
        break;
    }
    painter.restore();
}

QIcon verdictIcon(Verdict verdict, const PictureStyle& style) {
    QIcon icon;
    for (const int scale : {1, 2}) {
        QPixmap pixmap(16 * scale, 16 * scale);
        pixmap.setDevicePixelRatio(scale);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paintVerdictMark(painter, QRectF(1, 1, 14, 14), verdict, style);
        painter.end();
        icon.addPixmap(pixmap);
    }
    return icon;
}

QString verdictWord(Verdict verdict) {
    const auto name = nameOf(verdict);
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

} // namespace borewright
