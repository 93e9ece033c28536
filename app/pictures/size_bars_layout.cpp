// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/size_bars_layout.h"

#include "app/pictures/picture_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace borewright {
namespace {

constexpr double leastPart = 0.34; // of the picture that is left for the plot

QString tr(const char* text) {
    return QCoreApplication::translate("SizeBars", text);
}

struct Span {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double size) {
        low = std::min(low, size);
        high = std::max(high, size);
    }
    [[nodiscard]] bool empty() const { return low > high; }
};

// What is shown: all sizes found and offered; a clean-up size far beyond them (a deep damage) must
// not squeeze the rest into a corner and is shown at the edge.
Span spanOf(const SizeBarsData& data) {
    Span span;
    for (const SizeBarsLine& line : data.lines)
        for (const auto& at : line.at)
            if (at) span.take(*at);
    for (const SizeBarsBore& bore : data.bores) {
        if (!bore.smallest) continue;
        span.take(*bore.smallest);
        span.take(bore.largest);
    }
    if (span.empty()) return {0, 1};
    const double most = data.lines.empty() ? std::numeric_limits<double>::infinity()
                                           : span.high + 0.6 * (span.high - span.low);
    for (const SizeBarsBore& bore : data.bores) {
        if (bore.cleanUp) span.take(std::min(bore.cleanUp->size + bore.cleanUp->around, most));
        if (bore.otherWay) span.take(std::min(*bore.otherWay, most));
    }
    const double room = span.high > span.low ? (span.high - span.low) * 0.03 : span.high * 1e-4;
    return {span.low - room, span.high + room};
}

double nameWidth(const SizeBarsData& data, bool twoLines, const PictureStyle& style) {
    const double u = style.unit();
    const double decides = textWidth(tr("decides"), style.sized(0.8)) + 14 * u;
    double most = twoLines ? decides : 0;
    for (const SizeBarsBore& bore : data.bores)
        most = std::max(most, textWidth(bore.name, style.sized(0.92, true)) + 2 * u);
    return twoLines ? most : most + decides + 6 * u;
}

double wordWidth(const SizeBarsData& data, bool twoLines, const PictureStyle& style) {
    const double u = style.unit();
    double most = 0;
    for (const SizeBarsBore& bore : data.bores) {
        const double word =
            bore.word.isEmpty() ? 0 : textWidth(bore.word, style.sized(0.86, bore.deciding));
        const double why = textWidth(bore.why, style.sized(0.8));
        if (twoLines)
            most = std::max({most, word, why});
        else
            most = std::max(most, word > 0 ? word : why);
    }
    return most + 24 * u;
}

double labelHeight(bool sizes, const PictureStyle& style) {
    const double u = style.unit();
    return lineHeight(style.sized(0.86)) + (sizes ? lineHeight(style.sized(0.76)) : 0) + 4 * u;
}

double twoLineRow(const PictureStyle& style) {
    return lineHeight(style.sized(0.86)) + lineHeight(style.sized(0.8)) + 6 * style.unit();
}

double keyWidth(const std::vector<std::pair<SizeBarsSign, QString>>& key,
                const PictureStyle& style) {
    double width = 0;
    for (const auto& [sign, text] : key)
        width += textWidth(text, style.sized(0.8)) + 44 * style.unit();
    return width;
}

// Heights of all but the rows.
double headHeight(const PictureStyle& style) {
    return labelHeight(true, style) + 12 * style.unit();
}
double footHeight(const SizeBarsData& data, double width, const PictureStyle& style) {
    const double u = style.unit();
    const double line = lineHeight(style.sized(0.8));
    const double lines = keyWidth(sizeBarsKey(data), style) > width ? 2 : 1;
    return lineHeight(style.sized(0.76)) + 8 * u + lines * (line + u) + 6 * u;
}

// Names above their lines, spread so that none lies over another. Where there is no room for all,
// the finish sizes go first, then every other name but the chosen one's.
void placeLabels(SizeBarsLayout& layout, const QRectF& rect, const SizeBarsData& data,
                 const PictureStyle& style) {
    const double u = style.unit();
    std::vector<std::size_t> order;
    const auto foot = [&](std::size_t i) {
        for (const auto& at : data.lines[i].at)
            if (at) return layout.x(*at);
        return layout.plot.left();
    };
    for (std::size_t i = 0; i < data.lines.size(); ++i)
        order.push_back(i);
    std::ranges::stable_sort(order, {}, foot);
    for (int attempt = 0; !order.empty() && attempt < 8; ++attempt) {
        std::vector<double> centres;
        std::vector<double> widths;
        for (const std::size_t i : order) {
            const SizeBarsLine& line = data.lines[i];
            centres.push_back(foot(i));
            const double size = layout.sizesShown ? textWidth(line.size, style.sized(0.76)) : 0.0;
            widths.push_back(std::max(textWidth(line.name, style.sized(0.86, line.chosen)), size) +
                             8 * u);
        }
        const auto placed = spread(centres, widths, 4 * u, rect.left(), rect.right());
        if (!placed.empty()) {
            const double height = labelHeight(layout.sizesShown, style);
            const double top = layout.plot.top() - 12 * u - height;
            for (std::size_t k = 0; k < order.size(); ++k)
                layout.labels.push_back({order[k],
                                         QRectF(placed[k] - widths[k] / 2, top, widths[k], height),
                                         centres[k]});
            return;
        }
        if (std::exchange(layout.sizesShown, false)) continue;
        std::vector<std::size_t> fewer;
        for (std::size_t k = 0; k < order.size(); ++k)
            if (k % 2 == 0 || data.lines[order[k]].chosen) fewer.push_back(order[k]);
        if (fewer.size() == order.size()) return;
        order = std::move(fewer);
    }
}

} // namespace

double SizeBarsLayout::x(double size) const {
    const double part = std::clamp((size - low) / (high - low), 0.0, 1.0);
    return plot.left() + part * plot.width();
}

QRectF SizeBarsLayout::rowRect(std::size_t bore, const QRectF& whole) const {
    return {whole.left(), plot.top() + row * static_cast<double>(bore), whole.width(), row};
}

std::vector<std::pair<SizeBarsSign, QString>> sizeBarsKey(const SizeBarsData& data) {
    std::vector<std::pair<SizeBarsSign, QString>> key;
    const auto any = [&](auto has) { return std::ranges::any_of(data.bores, has); };
    key.emplace_back(SizeBarsSign::found, tr("smallest to largest, as found"));
    const bool doubt =
        any([](const auto& bore) { return bore.cleanUp && bore.cleanUp->around > 0; });
    key.emplace_back(
        doubt ? SizeBarsSign::cleansUpAround : SizeBarsSign::cleansUp,
        (doubt ? tr("cleans up at, ± 95 %, %1") : tr("cleans up at, %1")).arg(data.centred));
    if (any([](const auto& bore) { return bore.otherWay.has_value(); }))
        key.emplace_back(SizeBarsSign::otherWay, data.otherWay);
    if (any([](const auto& bore) { return bore.greatest.has_value(); }) &&
        std::ranges::any_of(data.lines, &SizeBarsLine::beyond))
        key.emplace_back(SizeBarsSign::beyond, tr("more than the engine maker allows"));
    return key;
}

double sizeBarsStep(double least) {
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= least) return factor * power;
    return 10 * power;
}

// Neighbours that would touch are joined into a run, which stands about the mean of where its
// members want to be.
std::vector<double> spread(const std::vector<double>& centres, const std::vector<double>& widths,
                           double gap, double left, double right) {
    struct Run {
        std::size_t first;
        double width;
        double at;   // left edge
        double wish; // sum of the wished left edges of its members, each less what lies before it
        double count;
    };
    const double all = std::accumulate(widths.begin(), widths.end(), 0.0) +
                       gap * (static_cast<double>(widths.size()) - 1);
    if (all > right - left) return {};
    const auto settle = [&](Run& run) {
        run.at = std::clamp(run.wish / run.count, left, right - run.width);
    };
    std::vector<Run> runs;
    for (std::size_t i = 0; i < centres.size(); ++i) {
        Run run{i, widths[i], 0, centres[i] - widths[i] / 2, 1};
        settle(run);
        while (!runs.empty() && runs.back().at + runs.back().width + gap > run.at) {
            const Run before = runs.back();
            runs.pop_back();
            run = {before.first, before.width + gap + run.width, 0,
                   before.wish + run.wish - run.count * (before.width + gap),
                   before.count + run.count};
            settle(run);
        }
        runs.push_back(run);
    }
    std::vector<double> placed;
    for (std::size_t r = 0; r < runs.size(); ++r) {
        const std::size_t end = r + 1 < runs.size() ? runs[r + 1].first : centres.size();
        double x = runs[r].at;
        for (std::size_t i = runs[r].first; i < end; ++i) {
            placed.push_back(x + widths[i] / 2);
            x += widths[i] + gap;
        }
    }
    return placed;
}

SizeBarsLayout layOutSizeBars(const QRectF& rect, const SizeBarsData& data,
                              const PictureStyle& style) {
    const double u = style.unit();
    SizeBarsLayout layout;
    const Span span = spanOf(data);
    layout.low = span.low;
    layout.high = span.high;
    const double head = data.lines.empty() ? 4 * u : headHeight(style);
    const double foot = footHeight(data, rect.width(), style);
    const auto count = static_cast<double>(std::max<std::size_t>(1, data.bores.size()));
    layout.row = std::max(1.0, std::min((rect.height() - head - foot) / count, 46 * u));
    layout.twoLines = layout.row >= twoLineRow(style);
    layout.names = nameWidth(data, layout.twoLines, style);
    layout.words = std::min(wordWidth(data, layout.twoLines, style),
                            rect.width() * (1 - leastPart) - layout.names);
    layout.plot = QRectF(rect.left() + layout.names + 12 * u, rect.top() + head,
                         rect.width() - layout.names - layout.words - 26 * u, layout.row * count);
    layout.axis = QRectF(layout.plot.left(), layout.plot.bottom(), layout.plot.width(),
                         lineHeight(style.sized(0.76)) + 8 * u);
    layout.key = QRectF(rect.left(), layout.axis.bottom() + 4 * u, rect.width(),
                        rect.bottom() - layout.axis.bottom() - 4 * u);
    placeLabels(layout, rect, data, style);
    return layout;
}

double sizeBarsHeight(const SizeBarsData& data, double width, const PictureStyle& style) {
    const double rows =
        (twoLineRow(style) + 4 * style.unit()) * static_cast<double>(data.bores.size());
    return headHeight(style) + rows + footHeight(data, width, style);
}

double leastSizeBarsHeight(const SizeBarsData& data, double width, const PictureStyle& style) {
    const double row = lineHeight(style.sized(0.86)) + 2 * style.unit();
    return headHeight(style) + row * static_cast<double>(data.bores.size()) +
           footHeight(data, width, style);
}

int sizeBarsHit(const QRectF& rect, const SizeBarsData& data, const PictureStyle& style,
                const QPointF& point) {
    if (!data.friendly.isEmpty()) return 0;
    const SizeBarsLayout layout = layOutSizeBars(rect, data, style);
    for (std::size_t b = 0; b < data.bores.size(); ++b)
        if (layout.rowRect(b, rect).contains(point)) return data.bores[b].number;
    return 0;
}

} // namespace borewright
