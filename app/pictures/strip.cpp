// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/strip.h"

#include "app/pictures/picture_key.h"
#include "app/pictures/picture_text.h"
#include "app/pictures/strip_parts.h"
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>
#include <QPicture>

#include <qcustomplot.h>

#include <algorithm>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Strip", text);
}

struct StripLayout {
    QRectF head;
    QRectF plot; // with the figures at its left
    QRectF area; // of the readings
    QRectF heads;
    QRectF key;
    bool words = false;
};

std::vector<KeyItem> keyOf(const StripData& data) {
    std::vector<KeyItem> items;
    for (int i = 0; i < data.axisLabels.size(); ++i)
        items.push_back({KeyItem::Sign::axis, data.axisLabels[i], i});
    bool limits = false;
    bool odd = false;
    for (const StripBore& bore : data.bores) {
        limits = limits || bore.lower || bore.upper;
        for (const auto& points : bore.axes)
            odd = odd || std::ranges::any_of(points, &StripPoint::odd);
    }
    if (limits) items.push_back({KeyItem::Sign::band, tr("allowed")});
    if (odd) items.push_back({KeyItem::Sign::odd, tr("looks odd")});
    items.push_back({KeyItem::Sign::none, tr("each from the open end (left) to the closed end")});
    return items;
}

StripLayout layOut(const QRectF& rect, const StripData& data, const PictureStyle& style) {
    StripLayout l;
    const double u = style.unit();
    const QFont small = style.sized(0.82);
    const double line = lineHeight(small);
    l.head = QRectF(rect.left(), rect.top(), rect.width(), line + 4 * u);
    const double key =
        rect.height() >= 200 * u ? keyHeight(keyOf(data), rect.width(), 2, style) + 5 * u : 0;
    l.key = QRectF(rect.left(), rect.bottom() - key, rect.width(), key);
    const double left = textWidth(QStringLiteral("−100.0"), small) + 4 * u;
    const double cell =
        (rect.width() - left) / static_cast<double>(std::max<std::size_t>(1, data.bores.size()));
    double widest = 0;
    for (const StripBore& bore : data.bores)
        widest = std::max(widest, textWidth(bore.word, small) + 14 * u);
    l.words = widest > 14 * u && widest <= cell - 4 * u;
    const double heads = line * (l.words ? 2 : 1) + (l.words ? 0 : 12 * u) + 4 * u;
    l.heads = QRectF(rect.left() + left, l.key.top() - heads, rect.width() - left, heads);
    l.plot = QRectF(rect.left(), l.head.bottom(), rect.width(), l.heads.top() - l.head.bottom());
    l.area = l.plot.adjusted(left, 0, 0, 0);
    return l;
}

// The plot as vectors, so that paper gets lines and letters, not pixels.
QPicture plotted(const StripLayout& l, const StripData& data, const PictureStyle& style) {
    QCustomPlot plot;
    plot.setAntialiasedElements(QCP::aeAll);
    auto* area = plot.axisRect();
    area->setAutoMargins(QCP::msNone);
    const auto left = static_cast<int>(l.area.left() - l.plot.left() + 0.5);
    area->setMargins(QMargins(left, 0, 0, 0));
    plot.plotLayout()->setRowSpacing(0);
    setUpStrip(plot, data, style);
    QPicture picture;
    QCPPainter painter(&picture);
    plot.toPainter(&painter, static_cast<int>(l.plot.width() + 0.5),
                   static_cast<int>(l.plot.height() + 0.5));
    painter.end();
    return picture;
}

QRectF cellOf(const StripLayout& l, std::size_t i, std::size_t count) {
    const double width = l.area.width() / static_cast<double>(count);
    return {l.area.left() + static_cast<double>(i) * width, l.area.top(), width,
            l.heads.bottom() - l.area.top()};
}

void paintHeads(QPainter& painter, const StripLayout& l, const StripData& data,
                const PictureStyle& style) {
    const double u = style.unit();
    const QFont bold = style.sized(0.86, true);
    const QFont small = style.sized(0.82);
    const double line = lineHeight(small);
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const StripBore& bore = data.bores[i];
        const QRectF cell = cellOf(l, i, data.bores.size());
        const bool chosen = bore.number == data.chosen;
        drawText(painter, style, QRectF(cell.left(), l.heads.top() + 2 * u, cell.width(), line),
                 Qt::AlignHCenter | Qt::AlignVCenter, QString::number(bore.number), bold,
                 chosen ? style.accent : style.ink);
        if (bore.word.isEmpty()) continue;
        const double word = l.words ? textWidth(bore.word, small) + 4 * u : 0;
        const double x = cell.center().x() - (10 * u + word) / 2;
        const double y = l.heads.top() + 2 * u + line;
        const double middle = l.words ? y + line / 2 : y + 6 * u;
        paintVerdictMark(painter, QRectF(x, middle - 5 * u, 10 * u, 10 * u), bore.verdict, style);
        if (l.words)
            drawText(painter, style, QRectF(x + 14 * u, y, word - 4 * u + 0.4, line), Qt::AlignLeft,
                     bore.word, small, verdictColour(bore.verdict, style));
    }
}

} // namespace

void paintStrip(QPainter& painter, const QRectF& rect, const StripData& data,
                const PictureStyle& style) {
    if (!data.friendly.isEmpty()) {
        drawParagraph(painter, style, rect, data.friendly, style.sized(0.86), style.faintInk,
                      Qt::AlignHCenter);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double u = style.unit();
    const StripLayout l = layOut(rect, data, style);
    drawText(painter, style, l.head, Qt::AlignLeft,
             data.base.isEmpty() ? data.unit : tr("%1 from %2").arg(data.unit, data.base),
             style.sized(0.82), style.faintInk);
    for (std::size_t i = 0; i < data.bores.size(); ++i)
        if (data.bores[i].number == data.chosen) {
            painter.setPen(QPen(style.accent, 1.4 * u));
            painter.setBrush(Qt::NoBrush);
            painter.drawRoundedRect(cellOf(l, i, data.bores.size()).adjusted(u, u, -u, -u), 5 * u,
                                    5 * u);
        }
    painter.save();
    painter.translate(l.plot.topLeft());
    painter.drawPicture(0, 0, plotted(l, data, style));
    painter.restore();
    paintHeads(painter, l, data, style);
    if (l.key.height() > 0) paintKey(painter, l.key.adjusted(0, 5 * u, 0, 0), keyOf(data), style);
    painter.restore();
}

std::vector<StripPlace> stripPlaces(const QRectF& rect, const StripData& data,
                                    const PictureStyle& style) {
    std::vector<StripPlace> places;
    if (!data.friendly.isEmpty()) return places;
    const StripLayout l = layOut(rect, data, style);
    QCustomPlot plot;
    setUpStrip(plot, data, style);
    const QCPRange y = plot.yAxis->range();
    const double width = l.area.width() / static_cast<double>(data.bores.size());
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const auto& axes = data.bores[i].axes;
        for (std::size_t axis = 0; axis < axes.size(); ++axis)
            for (std::size_t p = 0; p < axes[axis].size(); ++p) {
                const double x = stripPlaceAlong(i, axis, axes.size(), p, axes[axis].size()) + 0.5;
                const double up = (axes[axis][p].value - y.lower) / y.size();
                places.push_back(
                    {{l.area.left() + x * width, l.area.bottom() - up * l.area.height()},
                     &axes[axis][p]});
            }
    }
    return places;
}

int stripHit(const QRectF& rect, const StripData& data, const PictureStyle& style,
             const QPointF& position) {
    if (!data.friendly.isEmpty()) return 0;
    const StripLayout l = layOut(rect, data, style);
    for (std::size_t i = 0; i < data.bores.size(); ++i)
        if (cellOf(l, i, data.bores.size()).contains(position)) return data.bores[i].number;
    return 0;
}

QImage renderStrip(const QSize& size, const StripData& data, const PictureStyle& style,
                   double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintStrip(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
