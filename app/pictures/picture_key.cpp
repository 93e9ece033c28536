// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/picture_key.h"

#include "app/pictures/picture_text.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double textFactor = 0.8;

double signWidth(const KeyItem& item, double unit) {
    if (item.sign == KeyItem::Sign::none) return 0;
    const bool small = item.sign == KeyItem::Sign::odd || item.sign == KeyItem::Sign::upDown;
    return (small ? 16 : 26) * unit;
}

double itemWidth(const KeyItem& item, const PictureStyle& style) {
    return signWidth(item, style.unit()) + textWidth(item.text, style.sized(textFactor));
}

// Items by line; an item wider than the line is left away.
std::vector<std::vector<KeyItem>> lined(const std::vector<KeyItem>& items, double width,
                                        const PictureStyle& style) {
    const double gap = 14 * style.unit();
    std::vector<std::vector<KeyItem>> lines;
    double taken = 0;
    for (const KeyItem& item : items) {
        const double needed = itemWidth(item, style);
        if (needed > width) continue;
        if (lines.empty() || taken + gap + needed > width) {
            lines.emplace_back();
            taken = 0;
        }
        taken += (lines.back().empty() ? 0 : gap) + needed;
        lines.back().push_back(item);
    }
    return lines;
}

void arrow(QPainter& painter, const QPointF& from, const QPointF& to, double head) {
    painter.drawLine(from, to);
    const QPointF along = (to - from) / std::hypot(to.x() - from.x(), to.y() - from.y()) * head;
    const QPointF side(-along.y() * 0.6, along.x() * 0.6);
    for (const auto& [tip, back] : {std::pair(to, -along), std::pair(from, along)}) {
        painter.drawLine(tip, tip + back + side);
        painter.drawLine(tip, tip + back - side);
    }
}

void paintSign(QPainter& painter, const QRectF& r, const KeyItem& item, const PictureStyle& style) {
    const double u = style.unit();
    const double y = r.center().y();
    const QPointF from(r.left(), y);
    const QPointF to(r.right(), y);
    const QRectF box(r.left(), y - 4 * u, r.width(), 8 * u);
    switch (item.sign) {
    case KeyItem::Sign::none:
        return;
    case KeyItem::Sign::axis:
        painter.setPen(axisPen(style, item.axis, style.line * u));
        painter.drawLine(from, to);
        return;
    case KeyItem::Sign::earlier:
        painter.setPen(QPen(blended(style.faintInk, style.background, 0.55), 1.1 * u));
        painter.drawLine(from, to);
        return;
    case KeyItem::Sign::band:
        painter.fillRect(box, style.limitBand);
        return;
    case KeyItem::Sign::finish:
        painter.setPen(QPen(style.finishLine, 1.1 * u, Qt::DashDotLine, Qt::FlatCap));
        painter.drawLine(from, to);
        return;
    case KeyItem::Sign::ports:
        hatch(painter, box, QPen(style.portHatch, 0.9 * u), 4 * u, true);
        return;
    case KeyItem::Sign::odd:
        paintOddMark(painter, r.center(), style);
        return;
    case KeyItem::Sign::upDown:
        painter.setPen(QPen(style.faintInk, 1.1 * u));
        arrow(painter, {r.center().x(), y + 5 * u}, {r.center().x(), y - 5 * u}, 3 * u);
        return;
    case KeyItem::Sign::line:
        if (item.under.isValid()) painter.fillRect(box, item.under);
        painter.setPen(item.pen);
        painter.drawLine(from, to);
        return;
    case KeyItem::Sign::leftRight:
        painter.setPen(QPen(style.faintInk, 1.1 * u));
        arrow(painter, {r.left() + 4 * u, y}, {r.right() - 4 * u, y}, 3 * u);
        return;
    }
}

} // namespace

QPen axisPen(const PictureStyle& style, int axis, double width) {
    QPen pen(style.axisColour(axis), width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    if (axis == 1) pen.setDashPattern({4.2, 2.2});
    if (axis > 1) pen.setDashPattern({4.2, 1.8, 1, 1.8});
    return pen;
}

QColor blended(const QColor& colour, const QColor& under, double part) {
    const auto mix = [&](int a, int b) {
        return static_cast<int>(a * part + b * (1 - part) + 0.5);
    };
    return {mix(colour.red(), under.red()), mix(colour.green(), under.green()),
            mix(colour.blue(), under.blue())};
}

double keyHeight(const std::vector<KeyItem>& items, double width, int lines,
                 const PictureStyle& style) {
    const auto all = static_cast<int>(lined(items, width, style).size());
    return std::min(all, lines) * lineHeight(style.sized(textFactor));
}

void paintKey(QPainter& painter, const QRectF& rect, const std::vector<KeyItem>& items,
              const PictureStyle& style) {
    const double u = style.unit();
    const double gap = 14 * u;
    const QFont font = style.sized(textFactor);
    const double height = lineHeight(font);
    double y = rect.top();
    for (const auto& line : lined(items, rect.width(), style)) {
        if (y + height > rect.bottom() + 0.5) return;
        double width = -gap;
        for (const KeyItem& item : line)
            width += gap + itemWidth(item, style);
        double x = rect.center().x() - width / 2;
        for (const KeyItem& item : line) {
            const double sign = signWidth(item, u);
            paintSign(painter, QRectF(x, y, std::max(0.0, sign - 6 * u), height), item, style);
            const double text = textWidth(item.text, font);
            drawText(painter, style, QRectF(x + sign, y, text + 0.4, height), Qt::AlignLeft,
                     item.text, font, style.faintInk);
            x += sign + text + gap;
        }
        y += height;
    }
}

void paintOddMark(QPainter& painter, const QPointF& at, const PictureStyle& style) {
    const double r = 6.2 * style.unit();
    const QPointF corners[] = {{at.x(), at.y() - r * 1.05},
                               {at.x() + r, at.y() + r * 0.72},
                               {at.x() - r, at.y() + r * 0.72}};
    painter.setBrush(Qt::NoBrush);
    painter.setPen(
        QPen(style.tooClose, 1.5 * style.unit(), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolygon(corners, 3);
}

void hatch(QPainter& painter, const QRectF& area, const QPen& pen, double spacing, bool rising) {
    if (area.isEmpty()) return;
    painter.save();
    painter.setClipRect(area, Qt::IntersectClip);
    painter.setPen(pen);
    const double h = area.height();
    for (double x = area.left() - h; x < area.right(); x += spacing) {
        if (rising)
            painter.drawLine(QPointF(x, area.bottom()), QPointF(x + h, area.top()));
        else
            painter.drawLine(QPointF(x, area.top()), QPointF(x + h, area.bottom()));
    }
    painter.restore();
}

QImage blankPicture(const QSize& size, const PictureStyle& style, double pixelRatio) {
    QImage image((QSizeF(size) * pixelRatio).toSize(), QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(pixelRatio);
    image.fill(style.background);
    return image;
}

QRectF pictureArea(const QSizeF& size, const PictureStyle& style) {
    const double margin = 5 * style.unit();
    return QRectF(QPointF(), size).adjusted(margin, margin, -margin, -margin);
}

} // namespace borewright
