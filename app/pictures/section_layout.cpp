// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/section_layout.h"

#include "app/pictures/section_parts.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double leastSpan_um = 12; // a bore read once, or read equal, must not fill the strip

void widen(std::optional<DeviationRange>& range, double value) {
    if (!range) range = DeviationRange{value, value};
    range->lowest_um = std::min(range->lowest_um, value);
    range->highest_um = std::max(range->highest_um, value);
}

// An odd reading is perhaps a slip of the pen: it may widen the strip by half, never more.
void widenByOdd(DeviationRange& range, const std::vector<SectionProfile>& profiles) {
    const double slack = std::max(leastSpan_um, range.highest_um - range.lowest_um) / 2;
    const DeviationRange most{range.lowest_um - slack, range.highest_um + slack};
    for (const SectionProfile& profile : profiles)
        for (const SectionReading& reading : profile.points) {
            if (!reading.odd) continue;
            range.lowest_um =
                std::min(range.lowest_um, std::max(most.lowest_um, reading.deviation_um));
            range.highest_um =
                std::max(range.highest_um, std::min(most.highest_um, reading.deviation_um));
        }
}

DeviationRange rangeOfProfile(const SectionProfile& profile) {
    std::optional<DeviationRange> range;
    for (const SectionReading& reading : profile.points)
        if (!reading.odd) widen(range, reading.deviation_um);
    return range.value_or(DeviationRange{});
}

// Heights of what stands above and below the bore.
void layHeader(SectionLayout& l, const QRectF& rect, const SectionData& data,
               const PictureStyle& style, bool values) {
    const double u = l.unit;
    double y = rect.top();
    if (data.options.title && rect.height() >= 130 * u) {
        const int lines = titleLines(data, rect.width(), style);
        const double height =
            lineHeight(sectionTitleFont(style)) + (lines > 1 ? lineHeight(sectionFont(style)) : 0);
        l.title = QRectF(rect.left(), y, rect.width(), height);
        y += height + 5 * u;
    }
    if (rect.height() >= 120 * u) {
        l.openLabel = QRectF(rect.left(), y, rect.width(), lineHeight(sectionSmallFont(style)));
        y += l.openLabel.height() + 2 * u;
    }
    if (values) {
        l.values.setTop(y);
        y += 2 * lineHeight(sectionSmallFont(style));
    }
    l.top = y + 2 * u;
}

double layFooter(SectionLayout& l, const QRectF& rect, const SectionData& data,
                 const PictureStyle& style) {
    const double u = l.unit;
    double y = rect.bottom();
    if (data.options.captions && rect.height() >= 130 * u) {
        const int lines = rect.height() >= 420 * u ? 4 : rect.height() >= 300 * u ? 2 : 0;
        const double key = keyHeight(sectionKey(data), rect.width(), lines, style);
        if (key > 0) l.key = QRectF(rect.left(), y - key, rect.width(), key);
        y -= key;
        const double height = lineHeight(sectionSmallFont(style));
        l.caption = QRectF(rect.left(), y - height, rect.width(), height);
        y -= height + 4 * u;
    }
    return y;
}

double depthsWidth(const SectionData& data, const PictureStyle& style) {
    double width = data.columnHeads.isEmpty()
                       ? 0
                       : textWidth(data.columnHeads.front(), sectionSmallFont(style));
    for (const SectionRow& row : data.rows)
        width = std::max(width, textWidth(row.depth, sectionFont(style)));
    return data.rows.empty() ? 0 : width + 10 * style.unit();
}

double zonesWidth(const SectionData& data, const PictureStyle& style, double rectWidth) {
    const double u = style.unit();
    if (data.zones.empty() || rectWidth < 230 * u) return 0;
    double width = 0;
    for (const SectionZone& zone : data.zones)
        width = std::max(width, textWidth(zone.name, sectionSmallFont(style)));
    // Beside a narrow bore the names run upward.
    return rectWidth >= 360 * u ? width + 10 * u : lineHeight(sectionSmallFont(style)) + 8 * u;
}

void layAcross(SectionLayout& l, const QRectF& rect, const SectionData& data,
               const PictureStyle& style, double valuesWidth) {
    const double u = l.unit;
    const double depths = rect.width() >= 190 * u ? depthsWidth(data, style) : 0;
    const double zones = zonesWidth(data, style, rect.width());
    const double inner = rect.width() - depths - zones;
    l.casting = std::clamp(inner * 0.08, 4 * u, 24 * u);
    const double widest = std::max((l.bottom - l.top) * 0.9, valuesWidth + 190 * u);
    const double across = std::min(inner - 2 * l.casting, widest);
    l.room = valuesWidth > 0 ? std::min((across - valuesWidth - 8 * u) / 2, 0.36 * across)
                             : 0.37 * across;
    const double centre = rect.left() + depths + inner / 2;
    l.leftOuter = centre - across / 2;
    l.rightOuter = centre + across / 2;
    if (depths > 0)
        l.depths = QRectF(l.leftOuter - l.casting - depths, l.top, depths, l.bottom - l.top);
    if (zones > 0) l.zones = QRectF(l.rightOuter + l.casting, l.top, zones, l.bottom - l.top);
    if (valuesWidth > 0) {
        l.values.setLeft(centre - valuesWidth / 2);
        l.values.setWidth(valuesWidth);
        l.values.setBottom(l.bottom);
    }
}

void layDown(SectionLayout& l, const QRectF& rect, const SectionData& data,
             const PictureStyle& style, bool values) {
    l.values = l.title = l.openLabel = l.caption = l.key = QRectF();
    layHeader(l, rect, data, style, values);
    const double floor = 11 * l.unit;
    const double lowest = layFooter(l, rect, data, style) - floor;
    const double deepest = std::max({data.depth_mm, data.options.deepest_mm, 1e-3});
    l.pixelsPerMm = std::max(1.0, lowest - l.top) / deepest;
    l.bottom = l.y(data.depth_mm);
}

} // namespace

DeviationRange rangeOf(const SectionData& data) {
    std::optional<DeviationRange> range;
    for (const SectionProfile& profile : data.now)
        for (const SectionReading& reading : profile.points)
            if (!reading.odd) widen(range, reading.deviation_um);
    widen(range, 0);
    for (const auto& edge : {data.lower_um, data.upper_um, data.finish_um})
        if (edge) widen(range, *edge);
    widenByOdd(*range, data.now);
    const bool aboutMean = data.options.mode == SectionOptions::Mode::aboutMean;
    // Against a true size, 20 thou of boring would hide a V of 2: what lies far off stays away.
    const double most = 1.8 * std::max(leastSpan_um, range->highest_um - range->lowest_um);
    for (const SectionProfile& profile : data.earlier) {
        const DeviationRange other = rangeOfProfile(profile);
        const DeviationRange both{std::min(range->lowest_um, other.lowest_um),
                                  std::max(range->highest_um, other.highest_um)};
        if (aboutMean || both.highest_um - both.lowest_um <= most) range = both;
    }
    return *range;
}

double roundMagnification(double most) {
    if (!(most > 1)) return 1;
    const double decade = std::pow(10.0, std::floor(std::log10(most) + 1e-9));
    for (const double step : {5.0, 2.0, 1.0})
        if (step * decade <= most * (1 + 1e-9)) return step * decade;
    return decade;
}

SectionLayout layOutSection(const QRectF& rect, const SectionData& data,
                            const PictureStyle& style) {
    SectionLayout l;
    l.unit = style.unit();
    double valuesWidth = sectionValuesWidth(data, style);
    if (!data.options.values || data.empty() || rect.height() < 300 * l.unit) valuesWidth = 0;
    layDown(l, rect, data, style, valuesWidth > 0);
    layAcross(l, rect, data, style, valuesWidth);
    if (valuesWidth > 0 && l.room < 34 * l.unit) {
        layDown(l, rect, data, style, false);
        layAcross(l, rect, data, style, 0);
    }
    DeviationRange range = data.options.range.value_or(rangeOf(data));
    const double lacking = leastSpan_um - (range.highest_um - range.lowest_um);
    if (lacking > 0) range = {range.lowest_um - lacking / 2, range.highest_um + lacking / 2};
    l.lowest_um = range.lowest_um;
    l.highest_um = range.highest_um;
    const double real = (range.highest_um - range.lowest_um) / 2 / 1000 * l.pixelsPerMm;
    l.magnification = data.options.magnification > 0 ? data.options.magnification
                                                     : roundMagnification(l.room * 0.96 / real);
    return l;
}

} // namespace borewright
