// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pictures/block_sections.h"

#include "app/pictures/reading_words.h"
#include "app/pictures/section_parts.h"
#include "app/pictures/verdict_mark.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("BlockSections", text);
}

std::vector<int> numbersOf(const Block& block) {
    std::vector<int> numbers;
    for (const Bore& bore : block.bores)
        numbers.push_back(bore.number);
    std::ranges::sort(numbers);
    return numbers;
}

// The same range of deviations and the same depth for all.
void shareScale(BlockSectionsData& data) {
    std::optional<DeviationRange> all;
    double deepest = 0;
    for (const SectionData& bore : data.bores) {
        deepest = std::max(deepest, bore.depth_mm);
        if (bore.empty()) continue;
        const DeviationRange range = rangeOf(bore);
        if (!all) all = range;
        all->lowest_um = std::min(all->lowest_um, range.lowest_um);
        all->highest_um = std::max(all->highest_um, range.highest_um);
    }
    for (SectionData& bore : data.bores) {
        bore.options.range = all;
        bore.options.deepest_mm = deepest;
    }
}

SectionOptions smallSection(const BlockSectionsOptions& options) {
    SectionOptions section;
    section.mode = options.mode;
    section.earlier = options.earlier;
    section.values = section.title = section.captions = false;
    return section;
}

// How a block's sections lie in a rectangle.
struct BlockLayout {
    std::vector<QRectF> cells;
    double head = 0; // height of number and word above a section
    bool wordBelow = false;
    QRectF caption;
    std::vector<KeyItem> key;
};

std::vector<KeyItem> blockKey(const BlockSectionsData& data, double magnification) {
    std::vector<KeyItem> items;
    items.push_back({KeyItem::Sign::none,
                     tr("walls magnified ×%1").arg(QString::number(magnification, 'f', 0))});
    for (const SectionData& bore : data.bores) {
        if (bore.empty()) continue;
        for (const KeyItem& item : sectionKey(bore)) {
            const bool known = std::ranges::any_of(items, [&](const KeyItem& other) {
                return other.sign == item.sign && other.text == item.text;
            });
            if (!known) items.push_back(item);
        }
        if (bore.finish.isEmpty() && data.options.mode == SectionOptions::Mode::trueSize &&
            items.size() < 4)
            items.push_back({KeyItem::Sign::none, tr("drawn about %1").arg(bore.base)});
    }
    if (data.options.mode == SectionOptions::Mode::aboutMean)
        items.push_back({KeyItem::Sign::none, tr("each about its own mean")});
    return items;
}

// The number of columns that gives sections of the best shape: a little higher than wide.
int bestColumns(int bores, double width, double height, double head) {
    int best = 1;
    double least = 1e300;
    for (int columns = 1; columns <= bores; ++columns) {
        const int rows = (bores + columns - 1) / columns;
        const double w = width / columns;
        const double h = std::max(1.0, height / rows - head);
        const double waste = std::abs(std::log(h / (w * 1.25))) +
                             1.2 * (rows * columns - bores) / static_cast<double>(bores);
        if (waste >= least) continue;
        least = waste;
        best = columns;
    }
    return best;
}

double widestWord(const BlockSectionsData& data, const PictureStyle& style) {
    double width = 0;
    for (const SectionData& bore : data.bores)
        width = std::max(width, textWidth(bore.word, sectionSmallFont(style)));
    return width + 13 * style.unit();
}

void addCells(BlockLayout& layout, const QRectF& area, int bores, double gap, double head) {
    const int columns = bestColumns(bores, area.width(), area.height(), head);
    const int rows = (bores + columns - 1) / columns;
    const double w = (area.width() - gap * (columns - 1)) / columns;
    const double h = (area.height() - gap * (rows - 1)) / rows;
    for (int i = 0; i < bores; ++i)
        layout.cells.emplace_back(area.left() + (w + gap) * (i % columns),
                                  area.top() + (h + gap) * (i / columns), w, h);
}

BlockLayout layOut(const QRectF& rect, const BlockSectionsData& data, const PictureStyle& style) {
    BlockLayout layout;
    const double u = style.unit();
    QRectF area = rect;
    if (data.options.caption && rect.height() >= 150 * u) {
        layout.key = blockKey(data, 10000);
        const double height =
            keyHeight(layout.key, rect.width(), rect.height() >= 300 * u ? 3 : 1, style);
        layout.caption = QRectF(rect.left(), rect.bottom() - height, rect.width(), height);
        area.setBottom(layout.caption.top() - 7 * u);
    }
    const double number = lineHeight(sectionTitleFont(style));
    const double word = data.options.words ? lineHeight(sectionSmallFont(style)) : 0;
    addCells(layout, area, static_cast<int>(data.bores.size()), 10 * u, number + word);
    // Beside the number where it fits in every cell, else below it.
    const double beside = widestWord(data, style) + 34 * u;
    layout.wordBelow =
        data.options.words && !layout.cells.empty() && layout.cells.front().width() < beside;
    layout.head = number + (layout.wordBelow ? word : 0) + 2 * u;
    return layout;
}

QRectF sectionRect(const QRectF& cell, const BlockLayout& layout, double u) {
    return cell.adjusted(3 * u, layout.head + 2 * u, -3 * u, -2 * u);
}

// One magnification for all: the smallest that any of them needs.
double sharedMagnification(const BlockSectionsData& data, const BlockLayout& layout,
                           const PictureStyle& style) {
    double least = 0;
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const QRectF rect = sectionRect(layout.cells[i], layout, style.unit());
        const double own = layOutSection(rect, data.bores[i], style).magnification;
        if (least == 0 || own < least) least = own;
    }
    return least;
}

void paintHead(QPainter& painter, const QRectF& cell, const SectionData& bore,
               const BlockSectionsData& data, const BlockLayout& layout,
               const PictureStyle& style) {
    const double u = style.unit();
    const QFont bold = sectionTitleFont(style);
    const QFont small = fittingFont(bore.word, cell.width() - 17 * u, style);
    const QString number = QString::number(bore.bore);
    const QColor ink = bore.bore == data.options.chosen ? style.accent : style.ink;
    const bool word = data.options.words && !bore.word.isEmpty();
    const double mark = 13 * u;
    const double wordWidth = word ? mark + textWidth(bore.word, small) : 0;
    const double numberWidth = textWidth(number, bold);
    const double first = lineHeight(bold);
    const bool beside = word && !layout.wordBelow;
    double x = cell.center().x() - (numberWidth + (beside ? 9 * u + wordWidth : 0)) / 2;
    drawText(painter, style, QRectF(x, cell.top() + u, numberWidth + 0.4, first), Qt::AlignLeft,
             number, bold, ink);
    if (!word) return;
    x = beside                             ? x + numberWidth + 9 * u
        : wordWidth > cell.width() - 4 * u ? cell.center().x() - 5 * u
                                           : cell.center().x() - wordWidth / 2;
    const QRectF room(x, cell.top() + u + (beside ? 0 : first), wordWidth,
                      beside ? first : lineHeight(small));
    paintVerdictMark(painter, QRectF(room.left(), room.center().y() - 5 * u, 10 * u, 10 * u),
                     bore.verdict, style);
    if (room.right() > cell.right()) return; // the mark alone, rather than half a word
    drawText(painter, style, room.adjusted(mark, 0, 0.4, 0), Qt::AlignLeft | Qt::AlignVCenter,
             bore.word, small, verdictColour(bore.verdict, style));
}

} // namespace

BlockSectionsData blockSectionsData(const Workbook& workbook, const Results& results,
                                    const std::string& survey, const DisplayUnits& units,
                                    const BlockSectionsOptions& options) {
    BlockSectionsData data;
    data.options = options;
    for (const int number : numbersOf(workbook.block)) {
        data.bores.push_back(
            sectionData(workbook, results, survey, number, units, smallSection(options)));
        for (const QString& name : data.bores.back().earlierNames)
            if (!data.earlierNames.contains(name)) data.earlierNames << name;
    }
    shareScale(data);
    return data;
}

BlockSectionsData storySectionsData(const Workbook& workbook, const Results& results,
                                    const std::optional<std::string>& nowSurvey,
                                    const DisplayUnits& units) {
    BlockSectionsData data;
    data.options.mode = SectionOptions::Mode::aboutMean;
    SectionOptions section = smallSection(data.options);
    for (const BoreStory& story : results.stories) {
        const auto now = nowSurvey ? nowSurvey : story.nowSurvey;
        const std::string shown = now ? *now : story.wasSurvey.value_or(std::string());
        SectionData bore = sectionData(workbook, results, shown, story.bore, units, section);
        if (now && story.wasSurvey && *story.wasSurvey != shown && !story.plateDiffers) {
            SectionData was =
                sectionData(workbook, results, *story.wasSurvey, story.bore, units, section);
            for (const SectionProfile& profile : was.now)
                if (!data.earlierNames.contains(profile.survey))
                    data.earlierNames << profile.survey;
            bore.earlier = std::move(was.now);
        }
        data.bores.push_back(std::move(bore));
    }
    shareScale(data);
    return data;
}

void paintBlockSections(QPainter& painter, const QRectF& rect, const BlockSectionsData& data,
                        const PictureStyle& style) {
    if (data.bores.empty()) {
        drawParagraph(painter, style, rect, tr("The block has no bores yet."), sectionFont(style),
                      style.faintInk, Qt::AlignHCenter);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double u = style.unit();
    const BlockLayout layout = layOut(rect, data, style);
    const double magnification = sharedMagnification(data, layout, style);
    for (std::size_t i = 0; i < data.bores.size(); ++i) {
        const QRectF& cell = layout.cells[i];
        SectionData bore = data.bores[i];
        bore.options.magnification = magnification;
        if (bore.bore == data.options.chosen) {
            painter.setPen(QPen(style.accent, 1.4 * u));
            painter.setBrush(Qt::NoBrush);
            painter.drawRoundedRect(cell.adjusted(0.5, 0.5, -0.5, -0.5), 5 * u, 5 * u);
        }
        paintHead(painter, cell, bore, data, layout, style);
        paintSection(painter, sectionRect(cell, layout, u), bore, style);
    }
    if (!layout.caption.isNull())
        paintKey(painter, layout.caption, blockKey(data, magnification), style);
    painter.restore();
}

int blockSectionsHit(const QRectF& rect, const BlockSectionsData& data, const PictureStyle& style,
                     const QPointF& position) {
    if (data.bores.empty()) return 0;
    const BlockLayout layout = layOut(rect, data, style);
    for (std::size_t i = 0; i < data.bores.size(); ++i)
        if (layout.cells[i].contains(position)) return data.bores[i].bore;
    return 0;
}

QString describeBlockSections(const BlockSectionsData& data) {
    if (data.bores.empty()) return tr("The block has no bores yet.");
    QStringList parts;
    for (const SectionData& bore : data.bores)
        parts << tr("Bore %1: %2")
                     .arg(bore.bore)
                     .arg(bore.word.isEmpty() ? (bore.empty() ? tr("no readings yet") : tr("read"))
                                              : bore.word);
    return tr("All sections on one scale. ") + parts.join(QStringLiteral("; ")) +
           QStringLiteral(".");
}

QImage renderBlockSections(const QSize& size, const BlockSectionsData& data,
                           const PictureStyle& style, double pixelRatio) {
    QImage image = blankPicture(size, style, pixelRatio);
    QPainter painter(&image);
    paintBlockSections(painter, pictureArea(size, style), data, style);
    return image;
}

} // namespace borewright
