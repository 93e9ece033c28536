// SPDX-License-Identifier: GPL-3.0-or-later
// What is written in and round the section.
#include "app/pictures/section_parts.h"
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Section", text);
}

bool isChosen(const SectionData& data, const SectionRow& row) {
    return data.options.chosen && data.options.chosen->bore == data.bore &&
           std::abs(data.options.chosen->depth.in(Unit::millimetre)-row.depth_mm) < 1e-9;
}

void paintTitle(QPainter& painter, const SectionLayout& l, const SectionData& data,
                const PictureStyle& style) {
    if (l.title.isNull()) return;
    const QFont bold = sectionTitleFont(style);
    const QFont plain = sectionFont(style);
    const double u = l.unit;
    const double first = lineHeight(bold);
    QRectF room(l.title.left(), l.title.top(), l.title.width(), first);
    const double mark = 13 * u;
    const double word = data.word.isEmpty() ? 0 : mark + textWidth(data.word, plain);
    if (titleLines(data, l.title.width(), style) > 1) {
        drawText(painter, style, room, Qt::AlignHCenter, data.title, bold, style.ink);
        room = QRectF(room.left(), room.bottom(), room.width(), l.title.height() - first);
        room.setLeft(std::max(room.left(), room.center().x() - word / 2));
    } else {
        const double title = textWidth(data.title, bold);
        const double gap = word > 0 ? 12 * u : 0;
        room.setLeft(std::max(room.left(), room.center().x() - (title + gap + word) / 2));
        const QRectF ink =
            drawText(painter, style, QRectF(room.left(), room.top(), title + 0.4, first),
                     Qt::AlignLeft, data.title, bold, style.ink);
        room.setLeft(ink.right() + gap);
    }
    if (word == 0) return;
    paintVerdictMark(painter, QRectF(room.left(), room.center().y() - 5 * u, 10 * u, 10 * u),
                     data.verdict, style);
    drawText(painter, style, room.adjusted(mark, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
             data.word, plain, verdictColour(data.verdict, style));
}

// Rows' middles, moved apart just enough not to overlap; nothing where even that does not fit.
std::vector<double> spreadRows(const SectionLayout& l, const SectionData& data, double height) {
    std::vector<double> middles;
    for (const SectionRow& row : data.rows)
        middles.push_back(l.y(row.depth_mm));
    const double lowest = l.bottom - height / 2;
    if (static_cast<double>(middles.size()) * height > l.bottom - l.top) return {};
    double least = l.top + height / 2;
    for (double& middle : middles) {
        middle = std::max(middle, least);
        least = middle + height;
    }
    double most = lowest;
    for (auto middle = middles.rbegin(); middle != middles.rend(); ++middle) {
        *middle = std::min(*middle, most);
        most = *middle - height;
    }
    return middles;
}

void paintDepths(QPainter& painter, const SectionLayout& l, const SectionData& data,
                 const PictureStyle& style, const std::vector<double>& middles) {
    if (l.depths.isNull()) return;
    const double u = l.unit;
    const double height = lineHeight(sectionFont(style));
    const double right = l.depths.right() - 8 * u;
    const QFont small = sectionSmallFont(style);
    drawText(painter, style,
             QRectF(l.depths.left(), l.top - lineHeight(small) - 2 * u, l.depths.width() - 8 * u,
                    lineHeight(small)),
             Qt::AlignRight, data.columnHeads.value(0), small, style.faintInk);
    for (std::size_t i = 0; i < middles.size(); ++i) {
        const SectionRow& row = data.rows[i];
        const QColor colour = isChosen(data, row) ? style.accent
                              : row.judged        ? style.ink
                                                  : style.faintInk;
        painter.setPen(QPen(isChosen(data, row) ? style.accent : style.faintInk, 0.9 * u));
        painter.drawLine(QPointF(right + 2 * u, middles[i]),
                         QPointF(l.depths.right() + 1 * u, l.y(row.depth_mm)));
        drawText(painter, style,
                 QRectF(l.depths.left(), middles[i] - height / 2, right - l.depths.left(), height),
                 Qt::AlignRight, row.depth, sectionFont(style), colour);
    }
}

void paintValueHeads(QPainter& painter, const SectionLayout& l, const SectionData& data,
                     const PictureStyle& style) {
    const QFont small = sectionSmallFont(style);
    const double height = lineHeight(small);
    const double wide = std::max(l.values.width(), textWidth(data.valuesHead, small));
    drawText(painter, style, QRectF(l.values.center().x() - wide / 2, l.values.top(), wide, height),
             Qt::AlignHCenter, data.valuesHead, small, style.faintInk);
    double x = l.values.left();
    for (qsizetype i = 1; i < data.columnHeads.size(); ++i) {
        const double width = sectionColumnWidth(data, static_cast<int>(i - 1), style);
        drawText(painter, style, QRectF(x, l.values.top() + height, width - 5 * l.unit, height),
                 Qt::AlignRight, data.columnHeads[i], sectionSmallFont(style),
                 style.axisColour(static_cast<int>(i - 1)));
        x += width;
    }
}

void paintValues(QPainter& painter, const SectionLayout& l, const SectionData& data,
                 const PictureStyle& style, const std::vector<double>& middles) {
    if (l.values.isNull() || middles.empty()) return;
    paintValueHeads(painter, l, data, style);
    const double height = lineHeight(sectionFont(style));
    for (std::size_t row = 0; row < middles.size(); ++row) {
        double x = l.values.left();
        for (qsizetype i = 0; i < data.rows[row].values.size(); ++i) {
            const double width = sectionColumnWidth(data, static_cast<int>(i), style);
            const bool chosen =
                isChosen(data, data.rows[row]) &&
                data.options.chosen->axis == data.columnHeads.value(i + 1).toStdString();
            QFont font = sectionFont(style);
            font.setBold(chosen);
            drawText(painter, style,
                     QRectF(x, middles[row] - height / 2, width - 5 * l.unit, height),
                     Qt::AlignRight, data.rows[row].values[i], font,
                     chosen                  ? style.accent
                     : data.rows[row].judged ? style.ink
                                             : style.faintInk);
            x += width;
        }
    }
}

// Names beside the stretches they name; a stretch too short for its name goes without.
void paintZones(QPainter& painter, const SectionLayout& l, const SectionData& data,
                const PictureStyle& style) {
    if (l.zones.isNull()) return;
    const QFont small = sectionSmallFont(style);
    const double height = lineHeight(small);
    const double u = l.unit;
    for (const SectionZone& zone : data.zones) {
        const double from = l.y(zone.from_mm);
        const double to = l.y(std::min(zone.to_mm, data.depth_mm));
        painter.setPen(QPen(style.grid, u));
        painter.drawLine(QPointF(l.zones.left() + 3 * u, from + 1.5 * u),
                         QPointF(l.zones.left() + 3 * u, to - 1.5 * u));
        const bool upright = l.zones.width() > height + 9 * u;
        const double middle = (from + to) / 2;
        if (upright && to - from >= height * 0.9) {
            drawText(painter, style,
                     QRectF(l.zones.left() + 8 * u, middle - height / 2, l.zones.width() - 8 * u,
                            height),
                     Qt::AlignLeft, zone.name, small, style.faintInk);
        } else if (!upright && to - from >= textWidth(zone.name, small)) {
            painter.save();
            painter.translate(l.zones.left() + 6 * u + height / 2, middle);
            painter.rotate(90);
            drawText(painter, style, QRectF(-(to - from) / 2, -height / 2, to - from, height),
                     Qt::AlignHCenter, zone.name, small, style.faintInk);
            painter.restore();
        }
    }
}

// As much of the caption as fits.
QString captionOf(const SectionLayout& l, const SectionData& data, const QFont& font) {
    const QString times = QStringLiteral("×%1").arg(l.magnification, 0, 'f', 0);
    const QString plain = tr("walls magnified %1").arg(times);
    const bool base = data.finish.isEmpty() && !data.base.isEmpty();
    const QString whole = base ? tr("%1, drawn about %2").arg(plain, data.base) : plain;
    if (textWidth(whole, font) <= l.caption.width()) return whole;
    return textWidth(plain, font) <= l.caption.width() ? plain : times;
}

void paintFriendly(QPainter& painter, const SectionLayout& l, const SectionData& data,
                   const PictureStyle& style) {
    const QFont font = sectionFont(style);
    const double left = l.left(l.lowest_um) + 6 * l.unit;
    const double width = l.right(l.lowest_um) - 6 * l.unit - left;
    const double height = paragraphHeight(data.friendly, font, width);
    const double top = std::max(l.top + 4 * l.unit, (l.top + l.bottom - height) / 2);
    drawParagraph(painter, style, QRectF(left, top, width, l.bottom - top), data.friendly, font,
                  style.faintInk, Qt::AlignHCenter);
}

} // namespace

QFont sectionTitleFont(const PictureStyle& style) {
    return style.sized(1.0, true);
}
QFont sectionFont(const PictureStyle& style) {
    return style.sized(0.86);
}
QFont sectionSmallFont(const PictureStyle& style) {
    return style.sized(0.8);
}

int titleLines(const SectionData& data, double width, const PictureStyle& style) {
    if (data.word.isEmpty()) return 1;
    const double both = textWidth(data.title, sectionTitleFont(style)) + 25 * style.unit() +
                        textWidth(data.word, sectionFont(style));
    return both <= width ? 1 : 2;
}

double sectionColumnWidth(const SectionData& data, int column, const PictureStyle& style) {
    QFont font = sectionFont(style);
    font.setBold(true); // the chosen one
    double width = textWidth(data.columnHeads.value(column + 1), sectionSmallFont(style));
    for (const SectionRow& row : data.rows)
        width = std::max(width, textWidth(row.values.value(column), font));
    return width + 12 * style.unit();
}

double sectionValuesWidth(const SectionData& data, const PictureStyle& style) {
    double width = 0;
    for (int i = 0; i + 1 < data.columnHeads.size(); ++i)
        width += sectionColumnWidth(data, i, style);
    return data.rows.empty() ? 0 : width;
}

std::vector<KeyItem> sectionKey(const SectionData& data) {
    std::vector<KeyItem> items;
    if (data.empty()) return items;
    for (int i = 0; i < data.axisLabels.size(); ++i)
        items.push_back({KeyItem::Sign::axis, data.axisLabels[i], i});
    if (!data.finish.isEmpty()) items.push_back({KeyItem::Sign::finish, data.finish});
    if (data.lower_um || data.upper_um) items.push_back({KeyItem::Sign::band, tr("allowed")});
    const bool odd = std::ranges::any_of(data.now, [](const SectionProfile& profile) {
        return std::ranges::any_of(profile.points, &SectionReading::odd);
    });
    if (odd) items.push_back({KeyItem::Sign::odd, tr("looks odd")});
    const DeviationRange range = data.options.range.value_or(rangeOf(data));
    SectionLayout strip;
    strip.lowest_um = range.lowest_um;
    strip.highest_um = range.highest_um;
    QStringList names;
    for (const SectionProfile& profile : data.earlier)
        if (inStrip(strip, profile) && !names.contains(profile.survey)) names << profile.survey;
    if (!names.isEmpty())
        items.push_back({KeyItem::Sign::earlier, tr("before: %1").arg(names.join(", "))});
    return items;
}

void paintSectionText(QPainter& painter, const SectionLayout& l, const SectionData& data,
                      const PictureStyle& style) {
    const QFont small = sectionSmallFont(style);
    paintTitle(painter, l, data, style);
    if (!l.openLabel.isNull()) {
        const double left = l.leftOuter - l.casting;
        const QRectF room(left, l.openLabel.top(), l.rightOuter + l.casting - left,
                          l.openLabel.height());
        drawText(painter, style, room, Qt::AlignHCenter, data.openEnd, small, style.faintInk);
    }
    const auto middles = spreadRows(l, data, lineHeight(sectionFont(style)));
    paintDepths(painter, l, data, style, middles);
    paintValues(painter, l, data, style, middles);
    paintZones(painter, l, data, style);
    if (data.empty())
        paintFriendly(painter, l, data, style);
    else if (!l.caption.isNull())
        drawText(painter, style, l.caption, Qt::AlignHCenter, captionOf(l, data, small), small,
                 style.faintInk);
    if (!l.key.isNull()) paintKey(painter, l.key, sectionKey(data), style);
}

} // namespace borewright
