// SPDX-License-Identifier: GPL-3.0-or-later
// Page two and on, the shop's: every reading of every survey, how the gauge was set, the limits,
// and what was struck out.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double points = 7.5;
constexpr double depthWidth = 90;
constexpr double cardGap = 60;
constexpr double nameWidth = 330;
constexpr double limitNameWidth = 480;

// Widths of a reading as typed and as a diameter: of the longest in the survey.
struct CellWidths {
    double typed = 100;
    double diameter = 100;
    [[nodiscard]] double both() const { return typed + diameter; }
};

double line() {
    return lineHeight(sheetFont(points)) + 2;
}

CellWidths widthsOf(const SheetSurvey& survey, double page) {
    const QFont font = sheetFont(points);
    CellWidths widths;
    qsizetype axes = 1;
    widths.typed = std::max(widths.typed, textWidth(survey.typedUnit, font) + 12);
    for (const SheetCard& card : survey.cards) {
        axes = std::max(axes, card.axes.size());
        for (const auto& [depth, cells] : card.rows)
            for (const SheetCell& cell : cells) {
                widths.typed = std::max(widths.typed, textWidth(cell.typed, font) + 12);
                widths.diameter = std::max(widths.diameter, textWidth(cell.diameter, font) + 28);
            }
    }
    const double most = (page - depthWidth) / static_cast<double>(axes);
    widths.typed = std::min(widths.typed, most - widths.diameter);
    return widths;
}

double cardWidth(const SheetCard& card, const CellWidths& widths) {
    return depthWidth + widths.both() * static_cast<double>(card.axes.size());
}

double cardHeight(const SheetCard& card) {
    return line() * (static_cast<double>(card.rows.size()) + 2) + 16;
}

// A reading: as typed, and behind it the diameter.
void cell(SheetComposer& sheet, double x, double y, const CellWidths& widths, const SheetCell& cell,
          Ink ink) {
    const QFont font = sheetFont(points);
    sheet.text({x, y, widths.typed, line()}, Qt::AlignRight, cell.typed, font, ink);
    sheet.text({x + widths.typed, y, widths.diameter, line()}, Qt::AlignRight, cell.diameter, font,
               ink);
}

void composeCard(SheetComposer& sheet, const SheetCard& card, double x, double y,
                 const SheetSurvey& survey, const CellWidths& widths, const QString& sizeUnit) {
    const QFont font = sheetFont(points);
    const auto at = [&](std::size_t axis) {
        return x + depthWidth + widths.both() * static_cast<double>(axis);
    };
    const auto axes = static_cast<std::size_t>(card.axes.size());
    sheet.text({x, y, depthWidth + 30, line()}, Qt::AlignLeft, card.title, sheetFont(points, true));
    for (std::size_t a = 0; a < axes; ++a)
        sheet.text({at(a) + 40, y, widths.both() - 40, line()}, Qt::AlignRight,
                   card.axes[static_cast<qsizetype>(a)], sheetFont(points, true));
    y += line();
    sheet.text({x, y, depthWidth, line()}, Qt::AlignRight, sizeUnit, font, Ink::faint);
    for (std::size_t a = 0; a < axes; ++a)
        cell(sheet, at(a), y, widths, {survey.typedUnit, sizeUnit}, Ink::faint);
    y += line() + 2;
    sheet.rule(y, x, x + cardWidth(card, widths));
    y += 4;
    for (const auto& [depth, cells] : card.rows) {
        sheet.text({x, y, depthWidth, line()}, Qt::AlignRight, depth, font, Ink::faint);
        for (std::size_t a = 0; a < cells.size(); ++a)
            cell(sheet, at(a), y, widths, cells[a], Ink::full);
        y += line();
    }
}

// Cards side by side, as many as the page is wide.
void composeCards(SheetComposer& sheet, const SheetSurvey& survey, const QString& sizeUnit) {
    const CellWidths widths = widthsOf(survey, sheet.width());
    for (std::size_t first = 0; first < survey.cards.size();) {
        double width = 0, height = 0;
        std::size_t last = first;
        while (last < survey.cards.size()) {
            const double more =
                cardWidth(survey.cards[last], widths) + (last > first ? cardGap : 0);
            if (last > first && width + more > sheet.width()) break;
            width += more;
            height = std::max(height, cardHeight(survey.cards[last]));
            ++last;
        }
        sheet.need(height);
        double x = sheet.left();
        for (; first < last; ++first) {
            composeCard(sheet, survey.cards[first], x, sheet.y(), survey, widths, sizeUnit);
            x += cardWidth(survey.cards[first], widths) + cardGap;
        }
        sheet.down(height + 12);
    }
}

void composeSurvey(SheetComposer& sheet, const SheetSurvey& survey, const QString& sizeUnit) {
    const QFont head = sheetFont(10.5, true);
    const double facts = sheetFactsHeight(survey.facts, sheet.width(), nameWidth, points);
    const double firstCards = survey.cards.empty() ? 0 : cardHeight(survey.cards.front());
    sheet.need(std::min(lineHeight(head) + facts + firstCards + 60, sheet.whole()));
    const double width = std::min(textWidth(survey.title, head) + 1, sheet.width() * 0.6);
    sheet.text({sheet.left(), sheet.y(), width, lineHeight(head)}, Qt::AlignLeft, survey.title,
               head);
    sheet.text({sheet.left() + width + 30, sheet.y(), sheet.width() - width - 30, lineHeight(head)},
               Qt::AlignRight | Qt::AlignVCenter, survey.when, sheetFont(8.5), Ink::faint);
    sheet.down(lineHeight(head) + 4);
    composeFacts(sheet, survey.facts, sheet.left(), sheet.width(), nameWidth, points);
    sheet.down(22);
    composeCards(sheet, survey, sizeUnit);
    for (const QString& remark : survey.remarks)
        sheet.paragraph(sheet.left(), sheet.width(), remark, sheetFont(points));
    sheet.down(50);
}

} // namespace

void composeRecord(SheetComposer& sheet, const SheetData& data, bool withSections) {
    sheet.onNewPage([&data](SheetComposer& page) {
        const QFont font = sheetFont(8.5);
        page.text({page.left(), page.y(), page.width() * 0.62, lineHeight(font)}, Qt::AlignLeft,
                  data.title, font, Ink::faint);
        page.text(
            {page.left() + page.width() * 0.65, page.y(), page.width() * 0.35, lineHeight(font)},
            Qt::AlignRight, SheetWords::tr("the shop's record"), font, Ink::faint);
        page.down(lineHeight(font) + 10);
        page.rule(page.y(), page.left(), page.right());
        page.down(30);
    });
    sheet.newPage();
    composeFacts(sheet, data.record, sheet.left(), sheet.width(), limitNameWidth, 8);
    composeFacts(sheet, data.limits, sheet.left(), sheet.width(), limitNameWidth, 8);
    const bool parts = data.sizing.there() || data.hone.there || data.fit.there;
    if (parts) sheet.down(36);
    if (withSections) composeSections(sheet, data, 0);
    composeSizing(sheet, data.sizing);
    composeHone(sheet, data.hone);
    composeFit(sheet, data.fit);
    // So that the readings' head does not stand alone at the foot of a page.
    if (parts) sheet.need(sheet.whole() / 3);
    sheet.down(14);
    sheet.paragraph(sheet.left(), sheet.width(),
                    SheetWords::tr("Readings: as typed, then the diameter. A question mark: looks "
                                   "odd, kept as typed. %1.")
                        .arg(data.axesKey),
                    sheetFont(8), Ink::faint);
    sheet.down(36);
    for (const SheetSurvey& survey : data.surveys)
        composeSurvey(sheet, survey, data.sizeUnit);
    sheet.onNewPage({});
}

} // namespace borewright
