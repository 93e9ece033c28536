// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/depth_map.h"

#include "app/pictures/picture_key.h"
#include "app/pictures/picture_text.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

struct MapLayout {
    QRectF head;
    QRectF cells; // all of them
    double depthWidth = 0;
    double headHeight = 0; // bores and axes above the cells
    double boreGap = 0;
    double width = 0; // of a cell
    double height = 0;
    double figures = 0; // size of the figures, over the style's type; 0 = no room for them
    std::size_t axes = 1;

    [[nodiscard]] QRectF cell(std::size_t row, std::size_t column) const {
        const auto bore = static_cast<double>(column / axes);
        return {cells.left() + static_cast<double>(column) * width + bore * boreGap,
                cells.top() + static_cast<double>(row) * height, width, height};
    }
};

double widestFigure(const DepthMapData& data, const QFont& font) {
    double width = 0;
    for (const auto& row : data.rows)
        for (const auto& cell : row)
            if (cell) width = std::max(width, textWidth(cell->text, font));
    return width;
}

// The largest type in which the figures fit their cells.
double figureSize(const MapLayout& l, const DepthMapData& data, const PictureStyle& style) {
    for (const double factor : {0.9, 0.82, 0.74, 0.66, 0.58}) {
        const QFont font = style.sized(factor);
        if (widestFigure(data, font) + 4 * style.unit() <= l.width &&
            lineHeight(font) <= l.height + 0.5)
            return factor;
    }
    return 0;
}

MapLayout layOut(const QRectF& rect, const DepthMapData& data, const PictureStyle& style) {
    MapLayout l;
    const double u = style.unit();
    const QFont font = style.sized(0.82);
    l.axes = static_cast<std::size_t>(std::max<qsizetype>(1, data.axes.size()));
    l.head = QRectF(rect.left(), rect.top(), rect.width(),
                    rect.height() >= 130 * u ? lineHeight(font) + 4 * u : 0);
    l.headHeight = 2 * lineHeight(font);
    l.depthWidth = textWidth(data.depthUnit, font);
    for (const QString& depth : data.depths)
        l.depthWidth = std::max(l.depthWidth, textWidth(depth, font));
    l.depthWidth += 8 * u;
    l.cells = rect.adjusted(l.depthWidth, l.head.height() + l.headHeight, 0, 0);
    const auto bores = static_cast<double>(std::max<std::size_t>(1, data.bores.size()));
    const auto rows = static_cast<double>(std::max<std::size_t>(1, data.rows.size()));
    l.boreGap = std::min(8 * u, l.cells.width() / bores * 0.12);
    l.width = (l.cells.width() - l.boreGap * (bores - 1)) / (bores * static_cast<double>(l.axes));
    l.width = std::min(l.width, 76 * u);
    l.height = std::min(l.cells.height() / rows, 34 * u);
    l.figures = figureSize(l, data, style);
    return l;
}

void paintCell(QPainter& painter, const QRectF& r, const DepthMapCell& cell, const MapLayout& l,
               const DepthMapData& data, const PictureStyle& style) {
    const double u = style.unit();
    const QRectF inner = r.adjusted(0.5 * u, 0.5 * u, -0.5 * u, -0.5 * u);
    QColor ink = style.faintInk;
    if (cell.deviation_um) {
        const QColor fill = depthMapColour(*cell.deviation_um / data.reach_um, style);
        painter.fillRect(inner, fill);
        // Rec. 709 luma: dark figures on light cells, light on dark.
        const double light = 0.2126 * fill.redF() + 0.7152 * fill.greenF() + 0.0722 * fill.blueF();
        ink = light > 0.45 ? QColor(0x14181C) : QColor(0xFFFFFF);
    } else if (!cell.wall) {
        hatch(painter, inner, QPen(style.grid, 0.9 * u), 5 * u, true);
    } else {
        painter.fillRect(inner, blended(style.metal, style.background, 0.4));
    }
    if (l.figures > 0)
        drawText(painter, style, inner, Qt::AlignCenter, cell.text, style.sized(l.figures), ink);
    if (cell.odd) {
        painter.setPen(QPen(ink, 1.1 * u, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter.setBrush(Qt::NoBrush);
        const double s = std::min(7 * u, inner.height() / 3);
        const QPointF corner[] = {inner.topRight() + QPointF(-1.5 * u - s, 1.5 * u),
                                  inner.topRight() + QPointF(-1.5 * u, 1.5 * u),
                                  inner.topRight() + QPointF(-1.5 * u, 1.5 * u + s)};
        painter.setBrush(ink);
        painter.drawPolygon(corner, 3);
    }
    if (data.chosen && *data.chosen == cell.station) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(style.background, 4 * u));
        painter.drawRect(inner);
        painter.setPen(QPen(style.ink, 2 * u));
        painter.drawRect(inner);
    }
}

void paintHeads(QPainter& painter, const MapLayout& l, const DepthMapData& data,
                const PictureStyle& style) {
    const QFont bold = style.sized(0.82, true);
    const QFont font = style.sized(0.82);
    const double line = lineHeight(font);
    const double top = l.cells.top() - 2 * line;
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const QRectF first = l.cell(0, i * l.axes);
        const QRectF last = l.cell(0, (i + 1) * l.axes - 1);
        const bool chosen = data.chosen && data.chosen->bore == data.bores[i];
        drawText(painter, style, QRectF(first.left(), top, last.right() - first.left(), line),
                 Qt::AlignHCenter, QString::number(data.bores[i]), bold,
                 chosen ? style.accent : style.ink);
        for (std::size_t a = 0; a < l.axes; ++a) {
            const QRectF cell = l.cell(0, i * l.axes + a);
            const QString axis = data.axes.value(static_cast<qsizetype>(a));
            if (textWidth(axis, font) > cell.width()) continue;
            drawText(painter, style, QRectF(cell.left(), top + line, cell.width(), line),
                     Qt::AlignHCenter, axis, font, style.axisColour(static_cast<int>(a)));
        }
    }
}

void paintDepths(QPainter& painter, const MapLayout& l, const DepthMapData& data,
                 const PictureStyle& style) {
    const QFont font = style.sized(0.82);
    const double line = lineHeight(font);
    const double left = l.cells.left() - l.depthWidth;
    const double width = l.depthWidth - 7 * style.unit();
    drawText(painter, style, QRectF(left, l.cells.top() - line, width, line), Qt::AlignRight,
             data.depthUnit, font, style.faintInk);
    double free = -1e300;
    for (qsizetype i = 0; i < data.depths.size(); ++i) {
        const double middle = l.cell(static_cast<std::size_t>(i), 0).center().y();
        if (middle - line / 2 < free - 0.5) continue;
        free = middle + line / 2;
        drawText(painter, style, QRectF(left, middle - line / 2, width, line), Qt::AlignRight,
                 data.depths[i], font, style.ink);
    }
}

} // namespace

QColor depthMapColour(double part, const PictureStyle& style) {
    const double p = std::clamp(part, -1.0, 1.0);
    // Blue and orange are told apart by all usual kinds of colour blindness (Okabe and Ito).
    const QColor smaller = style.dark ? QColor(0x3C9BD6) : QColor(0x2F86C0);
    const QColor larger = style.dark ? QColor(0xE8913A) : QColor(0xEE8A1D);
    const QColor middle = style.dark ? QColor(0x2A3036) : QColor(0xF7F8F9);
    return blended(p < 0 ? smaller : larger, middle, std::pow(std::abs(p), 0.85));
}

void paintDepthMap(QPainter& painter, const QRectF& rect, const DepthMapData& data,
                   const PictureStyle& style) {
    if (!data.friendly.isEmpty() || data.rows.empty()) {
        drawParagraph(painter, style, rect, data.friendly, style.sized(0.86), style.faintInk,
                      Qt::AlignHCenter);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const MapLayout l = layOut(rect, data, style);
    if (l.head.height() > 0)
        drawText(painter, style, l.head, Qt::AlignLeft, data.head, style.sized(0.82),
                 style.faintInk);
    paintHeads(painter, l, data, style);
    paintDepths(painter, l, data, style);
    for (std::size_t row = 0; row < data.rows.size(); ++row)
        for (std::size_t column = 0; column < data.rows[row].size(); ++column)
            if (const auto& cell = data.rows[row][column])
                paintCell(painter, l.cell(row, column), *cell, l, data, style);
    painter.restore();
}

std::optional<Station> depthMapHit(const QRectF& rect, const DepthMapData& data,
                                   const PictureStyle& style, const QPointF& position) {
    const MapLayout l = layOut(rect, data, style);
    for (std::size_t row = 0; row < data.rows.size(); ++row)
        for (std::size_t column = 0; column < data.rows[row].size(); ++column)
            if (data.rows[row][column] && l.cell(row, column).contains(position))
                return data.rows[row][column]->station;
    return std::nullopt;
}

QImage renderDepthMap(const QSize& size, const DepthMapData& data, const PictureStyle& style,
                      double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintDepthMap(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
