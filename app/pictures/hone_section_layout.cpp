// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/hone_section_layout.h"

#include "app/pictures/picture_text.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double unread_mm = 5;
constexpr double leastSpan_um = 14;   // a straight bore must not fill the plot with its noise
constexpr double mostHeadroom = 0.4;  // of the depth: what stands out of the open end is cut off
constexpr double carrierShown = 0.08; // of the depth, above the abrasive
constexpr double leastPlot = 130;
constexpr double easyPlot = 280;

double shareOut(const HoneSectionData& data) {
    if (!data.stone) return 0;
    const double above = data.stone->length_mm - data.stone->lower_mm;
    return std::min(std::max(0.0, above / data.depth_mm) + carrierShown, mostHeadroom);
}

double shareBelow(const HoneSectionData& data) {
    if (!data.stone || data.closedEnd) return 0;
    const double below = data.stone->lower_mm + data.stone->below_mm - data.depth_mm;
    return std::clamp(below / data.depth_mm, 0.0, mostHeadroom);
}

double titleHeight(const HoneSectionData& data, double width, const PictureStyle& style) {
    const double both = textWidth(data.title, style.sized(1.0, true)) + 26 * style.unit() +
                        textWidth(data.word, style.sized(0.86));
    const double first = lineHeight(style.sized(1.0, true));
    return data.word.isEmpty() || both <= width ? first : first + lineHeight(style.sized(0.86));
}

// Captions and key, from the bottom up; returns where the bore may end.
double layFoot(HoneSectionLayout& l, const QRectF& rect, const HoneSectionData& data,
               const PictureStyle& style) {
    const double u = l.unit;
    double y = rect.bottom();
    const int keyLines = rect.height() >= 440 * u ? 4 : rect.height() >= 330 * u ? 2 : 1;
    const double key = keyHeight(honeSectionKey(data, style), rect.width(), keyLines, style);
    if (key > 0) l.key = QRectF(rect.left(), y - key, rect.width(), key);
    y -= key;
    double captions = 0;
    const QFont font = style.sized(0.86);
    for (const HoneCaption& caption : honeCaptions(data))
        captions += std::min(2.0, paragraphHeight(caption.text, font, rect.width() - 18 * u) /
                                      lineHeight(font)) *
                    lineHeight(font);
    if (captions > 0 && rect.height() >= 300 * u) {
        l.caption = QRectF(rect.left(), y - captions - 3 * u, rect.width(), captions);
        y -= captions + 3 * u;
    }
    return y - 4 * u;
}

void layDown(HoneSectionLayout& l, const QRectF& rect, const HoneSectionData& data,
             const PictureStyle& style) {
    const double u = l.unit;
    l.title = QRectF(rect.left(), rect.top(), rect.width(), titleHeight(data, rect.width(), style));
    l.roof = l.title.bottom() + 4 * u;
    const double floor = 11 * u;
    const double room = std::max(20.0, layFoot(l, rect, data, style) - floor - l.roof);
    const double small = lineHeight(honeSectionFont(style));
    const double words = 2 * small + 6 * u; // heads and figures over the open end
    const double depth = std::max(1e-3, data.depth_mm);
    const double below = shareBelow(data) * depth;
    const double out = shareOut(data) * depth;
    l.pixelsPerMm =
        std::max(1e-3, std::min(room / (out + depth + below), (room - words) / (depth + below)));
    l.top = l.roof + std::max(words, out * l.pixelsPerMm);
    l.bottom = l.y(depth);
    l.roof = std::max(l.roof, l.y(-out));
}

// Width of a window's column, written along it or beside it.
double columnWidth(const HoneSectionData& data, bool upright, int lines,
                   const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double u = style.unit();
    if (upright) return 17 * u + lines * lineHeight(font);
    double width = 0;
    for (const HoneBar& bar : data.windows)
        for (const QString& line : honeBarLines(bar, 4))
            width = std::max(width, textWidth(line, font));
    return 26 * u + width;
}

double marksWidth(const HoneSectionData& data, bool terse, const PictureStyle& style) {
    const QFont font = honeSectionFont(style);
    const double u = style.unit();
    double width = 0;
    for (const HoneMarkRow& row : honeMarkRows(data)) {
        double here = 18 * u + (terse ? 0 : textWidth(row.depth, font));
        for (const HoneStationMark& mark : row.marks)
            here += 24 * u + textWidth(mark.axis, font);
        width = std::max(width, here);
    }
    return width;
}

double depthsWidth(const HoneSectionData& data, const PictureStyle& style) {
    const Length depth = Length::nearest(data.depth_mm, Unit::millimetre);
    const QString widest = QString::fromStdString(formatDepth(depth, data.units));
    return std::max(textWidth(widest, honeSectionFont(style)),
                    textWidth(QStringLiteral("0.00"), honeSectionFont(style))) +
           9 * style.unit();
}

void layAcross(HoneSectionLayout& l, const QRectF& rect, const HoneSectionData& data,
               const PictureStyle& style) {
    const double u = l.unit;
    l.depths = QRectF(rect.left(), l.top, depthsWidth(data, style), l.bottom - l.top);
    l.outer = l.depths.right();
    l.wall = l.outer + std::clamp(rect.width() * 0.03, 7 * u, 18 * u);
    double marks = marksWidth(data, false, style);
    double left = l.wall;
    if (data.stone) {
        const double across = std::clamp(rect.width() * 0.1, 30 * u, 78 * u);
        l.stone = QRectF(l.wall, l.top, across, l.bottom - l.top);
        left += across + 8 * u;
    }
    l.bars = left;
    const auto count = static_cast<double>(data.windows.size());
    const auto rest = [&](bool upright, int lines) {
        return rect.right() - marks - left - count * columnWidth(data, upright, lines, style);
    };
    l.upright = rest(false, 4) < easyPlot * u;
    l.lines = !l.upright ? 4 : rest(true, 2) >= leastPlot * u ? 2 : 1;
    l.terse = l.lines == 1 && rest(true, 1) < 0.75 * leastPlot * u;
    if (l.terse) marks = marksWidth(data, true, style);
    l.column = columnWidth(data, l.upright, l.lines, style);
    left += count * l.column + (data.windows.empty() ? 6 * u : 2 * u);
    // Nothing drawn in between: the name of the open end needs its room all the same.
    const QFont font = honeSectionFont(style);
    if (!data.stone && data.windows.empty())
        left = std::max(left, l.outer + textWidth(data.openEnd, font) + 8 * u);
    l.plot = QRectF(left, l.top, std::max(20.0, rect.right() - marks - left), l.bottom - l.top);
    if (marks > 0) l.marks = QRectF(l.plot.right(), l.top, marks, l.bottom - l.top);
    l.openLabel = QRectF(l.outer, l.top - lineHeight(font) - 3 * u, l.plot.left() - l.outer,
                         lineHeight(font));
}

// The last millimetres at either end, where no gauge reads, may stand far back: they run off the
// plot's edge rather than squash the rest.
bool setsTheRange(const HoneSectionData& data, std::size_t cell) {
    const double depth = cell < data.curves.depth_mm.size() ? data.curves.depth_mm[cell] : 0;
    const double end = std::min(unread_mm, data.depth_mm / 8);
    return depth >= end && depth <= data.depth_mm - end;
}

void widen(HoneSectionLayout& l, const HoneSectionData& data, const HoneLine& line) {
    for (std::size_t i = 0; i < line.mean_um.size(); ++i) {
        if (!setsTheRange(data, i)) continue;
        const double band = i < line.band_um.size() ? line.band_um[i] : 0;
        l.lowest_um = std::min(l.lowest_um, line.mean_um[i] - band);
        l.highest_um = std::max(l.highest_um, line.mean_um[i] + band);
    }
}

void layRange(HoneSectionLayout& l, const HoneSectionData& data) {
    const double aim = data.aim_um.value_or(0) / 2;
    l.lowest_um = std::min(-aim, data.lower_um.value_or(0));
    l.highest_um = std::max(aim, data.upper_um.value_or(0));
    widen(l, data, data.curves.now);
    widen(l, data, data.curves.then);
    // An odd reading is perhaps a slip of the pen: it stands at the edge.
    for (const HoneReadAt& read : data.read) {
        if (read.odd) continue;
        l.lowest_um = std::min(l.lowest_um, read.found_um);
        l.highest_um = std::max(l.highest_um, read.found_um);
    }
    const double span = l.highest_um - l.lowest_um;
    const double more = std::max(0.06 * span, (leastSpan_um - span) / 2);
    l.lowest_um -= more;
    l.highest_um += more;
}

} // namespace

double HoneSectionLayout::x(double size_um) const {
    const double share = (size_um - lowest_um) / std::max(1e-9, highest_um - lowest_um);
    return plot.left() + std::clamp(share, 0.0, 1.0) * plot.width();
}

double HoneSectionLayout::barX(std::size_t window) const {
    return bars + column * static_cast<double>(window) + 8 * unit;
}

QFont honeSectionFont(const PictureStyle& style) {
    return style.sized(0.8);
}

HoneSectionLayout layOutHoneSection(const QRectF& rect, const HoneSectionData& data,
                                    const PictureStyle& style) {
    HoneSectionLayout l;
    l.unit = style.unit();
    layDown(l, rect, data, style);
    layAcross(l, rect, data, style);
    layRange(l, data);
    return l;
}

} // namespace borewright
