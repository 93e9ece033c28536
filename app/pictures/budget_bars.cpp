// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/budget_bars.h"

#include "app/pictures/picture_key.h"
#include "app/pictures/picture_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BudgetBars", text);
}

struct Layout {
    double row = 0; // height of a bar with its gap
    double head = 0;
    double key = 0;
    double sources = 0; // widths of the texts
    double words = 0;
    QFont font;
};

Layout layOut(double width, const std::vector<BudgetBar>& bars, const PictureStyle& style) {
    Layout l;
    l.font = style.sized(0.9);
    l.row = lineHeight(l.font) + 3 * style.unit();
    l.head = lineHeight(style.sized(0.82)) + 4 * style.unit();
    l.key = 2 * lineHeight(style.sized(0.82)) + 8 * style.unit();
    for (const BudgetBar& bar : bars) {
        l.sources = std::max(l.sources, textWidth(bar.source, l.font) + 1);
        l.words = std::max(l.words, textWidth(bar.word, l.font) + 1);
    }
    l.words = std::max(l.words, textWidth(tr("0.00 of both kinds"), l.font) + 1);
    l.sources = std::min(l.sources, width * 0.45);
    return l;
}

// The bars that fit; the last stands for what does not.
std::vector<BudgetBar> fitting(const std::vector<BudgetBar>& bars, double rows) {
    const auto most = static_cast<std::size_t>(std::max(1.0, std::floor(rows)));
    if (bars.size() <= most) return bars;
    std::vector<BudgetBar> shown(bars.begin(), bars.begin() + static_cast<std::ptrdiff_t>(most));
    BudgetBar& last = shown.back();
    double square = 0;
    for (std::size_t i = most - 1; i < bars.size(); ++i)
        square += bars[i].amount * bars[i].amount;
    last.source = tr("%1 smaller ones together").arg(bars.size() - most + 1);
    last.amount = std::sqrt(square);
    last.word = tr("%1 of both kinds").arg(last.amount, 0, 'f', 2);
    last.shared = true;
    return shown;
}

void paintBar(QPainter& painter, const QRectF& bar, bool shared, const PictureStyle& style) {
    const double u = style.unit();
    painter.setPen(QPen(style.accent, 1.2 * u));
    painter.setBrush(shared ? blended(style.accent, style.background, 0.12) : style.accent);
    painter.drawRect(bar);
    if (shared) hatch(painter, bar, QPen(style.accent, 0.9 * u), 5 * u, true);
}

void paintKeys(QPainter& painter, const QRectF& rect, const PictureStyle& style) {
    const double u = style.unit();
    const QFont font = style.sized(0.82);
    const double line = lineHeight(font);
    double y = rect.top() + 4 * u;
    for (const bool shared : {false, true}) {
        const double side = 9 * u;
        paintBar(painter, QRectF(rect.left() + u, y + (line - side) / 2, 2 * side, side), shared,
                 style);
        drawText(painter, style, QRectF(rect.left() + 26 * u, y, rect.width() - 26 * u, line),
                 Qt::AlignLeft | Qt::AlignVCenter,
                 shared ? tr("shared: moves all readings alike, cancels in out-of-round and taper")
                        : tr("own: each reading's own, does not cancel"),
                 font, style.faintInk);
        y += line;
    }
}

} // namespace

double budgetBarsHeight(const BudgetBarsData& data, const PictureStyle& style) {
    const Layout l = layOut(1000, data.bars, style);
    return l.head + l.row * static_cast<double>(data.bars.size()) + l.key;
}

void paintBudgetBars(QPainter& painter, const QRectF& rect, const BudgetBarsData& data,
                     const PictureStyle& style) {
    if (!data.friendly.isEmpty()) {
        drawParagraph(painter, style, rect, data.friendly, style.sized(0.86), style.faintInk);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double u = style.unit();
    const Layout l = layOut(rect.width(), data.bars, style);
    drawText(painter, style, QRectF(rect.left(), rect.top(), rect.width(), l.head), Qt::AlignLeft,
             data.head, style.sized(0.82), style.faintInk);
    const auto bars = fitting(data.bars, (rect.height() - l.head - l.key) / l.row + 0.01);
    const double left = rect.left() + l.sources + 10 * u;
    // A bar that is not the page wide is easier to compare by.
    const double room = std::min(rect.right() - l.words - 8 * u - left, 420 * u);
    double most = 0;
    for (const BudgetBar& bar : bars)
        most = std::max(most, bar.amount);
    double y = rect.top() + l.head;
    for (const BudgetBar& bar : bars) {
        const double line = l.row - 3 * u;
        const double length = most > 0 ? std::max(room * bar.amount / most, u) : 0;
        drawText(painter, style, QRectF(rect.left(), y, l.sources, line),
                 Qt::AlignLeft | Qt::AlignVCenter, bar.source, l.font, style.ink);
        paintBar(painter, QRectF(left, y + 3 * u, length, line - 6 * u), bar.shared, style);
        drawText(painter, style, QRectF(left + length + 6 * u, y, l.words, line),
                 Qt::AlignLeft | Qt::AlignVCenter, bar.word, l.font, style.ink);
        y += l.row;
    }
    paintKeys(painter, QRectF(rect.left(), y, rect.width(), l.key), style);
    painter.restore();
}

QImage renderBudgetBars(const QSize& size, const BudgetBarsData& data, const PictureStyle& style,
                        double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintBudgetBars(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
