// SPDX-License-Identifier: GPL-3.0-or-later
// The page for the customer who asks: how far the figures can be trusted, and why.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"
#include "core/results/doubt_words.h"

#include <algorithm>

namespace borewright {
namespace {

using Ink = SheetComposer::Ink;

constexpr double points = 8.5;
constexpr double tablePoints = 7;

QStringList explanation() {
    return {
        SheetWords::tr("Behind ± stands how far the true value may lie from the value printed, 95 "
                       "times in 100. Where two figures stand, the true value lies between the "
                       "value and the first above it, or the second below it: a difference such as "
                       "taper cannot be less than nothing."),
        SheetWords::tr("What each source adds is its own part or a shared one. An own part is new "
                       "with each reading and is lessened by reading again. A shared part moves "
                       "all readings alike, as a ring does that is not quite the size engraved on "
                       "it: it counts in every size and cancels in out-of-round and taper."),
        SheetWords::tr("Degrees of freedom say how well the doubt itself is known: a scatter found "
                       "from ten readings has nine, ∞ means taken as known. They set the factor k "
                       "that the combined doubt is multiplied by to cover 95 %."),
        SheetWords::tr("The largest less the smallest of several readings is never nothing, even "
                       "in a perfect bore, because each reading scatters."),
        QString::fromUtf8(lobesWords),
        SheetWords::tr("Method: JCGM 100 and 101 for the doubt, ISO 14253-1 and JCGM 106 for the "
                       "verdicts.")};
}

void paragraphs(SheetComposer& sheet, const QStringList& texts, double gap) {
    for (const QString& text : texts) {
        sheet.paragraph(sheet.left(), sheet.width(), text, sheetFont(points));
        sheet.down(gap);
    }
}

// The budget as a table; its columns are as wide as their longest text, stretched to the page.
void composeBudgetTable(SheetComposer& sheet, const SheetBudget& budget) {
    const QFont font = sheetFont(tablePoints), head = sheetFont(tablePoints, true);
    const double line = lineHeight(font) + 3;
    std::vector<double> widths;
    double sum = 0;
    for (qsizetype c = 0; c < budget.heads.size(); ++c) {
        double width = textWidth(budget.heads[c], head);
        for (const QStringList& row : budget.rows)
            width = std::max(width, textWidth(row[c], font));
        widths.push_back(width + (c == 3 ? 44 : 24));
        sum += widths.back();
    }
    for (double& width : widths)
        width *= sheet.width() / sum;
    const auto row = [&](const QStringList& texts, const QFont& type, Ink ink) {
        double x = sheet.left();
        for (qsizetype c = 0; c < texts.size(); ++c) {
            const double width = widths[static_cast<std::size_t>(c)];
            const bool words = c < 2 || c == 3;
            // Words behind a figure that ends where they begin.
            const double in = c == 3 ? 20 : 0;
            sheet.text({x + in, sheet.y(), width - 12 - in, line},
                       words ? Qt::AlignLeft : Qt::AlignRight, texts[c], type, ink);
            x += width;
        }
        sheet.down(line);
    };
    sheet.need(line * static_cast<double>(budget.rows.size() + 1) + 10);
    row(budget.heads, head, Ink::faint);
    sheet.rule(sheet.y(), sheet.left(), sheet.right());
    sheet.down(6);
    for (const QStringList& texts : budget.rows)
        row(texts, font, Ink::full);
}

void composeBudget(SheetComposer& sheet, const SheetBudget& budget) {
    const PictureStyle style = sheetStyle(8);
    const double height = budgetBarsHeight(budget.bars, style);
    const QFont head = sheetFont(10.5, true);
    sheet.need(lineHeight(head) + lineHeight(sheetFont(points)) + height + 60);
    sheet.paragraph(sheet.left(), sheet.width(), budget.title, head);
    sheet.paragraph(sheet.left(), sheet.width(), budget.trust, sheetFont(points));
    sheet.down(14);
    const QRectF rect(sheet.left(), sheet.y(), sheet.width(), height + 4);
    sheet.draw([rect, bars = budget.bars](QPainter& painter, const PictureStyle& page) {
        PictureStyle own = sheetStyle(8);
        own.log = page.log;
        paintBudgetBars(painter, rect, bars, own);
    });
    sheet.down(height + 24);
    composeBudgetTable(sheet, budget);
    sheet.down(14);
    paragraphs(sheet, budget.sums + budget.sentences, 4);
    sheet.down(36);
}

} // namespace

void composeDoubt(SheetComposer& sheet, const SheetData& data) {
    if (data.budgets.empty()) return;
    sheet.onNewPage([&data](SheetComposer& page) {
        const QFont font = sheetFont(8.5);
        page.text({page.left(), page.y(), page.width(), lineHeight(font)}, Qt::AlignLeft,
                  data.title, font, Ink::faint);
        page.down(lineHeight(font) + 10);
        page.rule(page.y(), page.left(), page.right());
        page.down(30);
    });
    sheet.newPage();
    sheet.paragraph(sheet.left(), sheet.width(),
                    SheetWords::tr("How far these figures can be trusted"), sheetFont(14));
    sheet.down(20);
    for (const SheetBudget& budget : data.budgets)
        composeBudget(sheet, budget);
    if (!doubtsStandAtEachFigure(data.table) && !data.shapes.isEmpty()) {
        sheet.paragraph(sheet.left(), sheet.width(), SheetWords::tr("Shapes"),
                        sheetFont(10.5, true));
        paragraphs(sheet, data.shapes, 2);
        sheet.down(24);
    }
    sheet.paragraph(sheet.left(), sheet.width(), SheetWords::tr("What it means"),
                    sheetFont(10.5, true));
    paragraphs(sheet, explanation(), 8);
    sheet.onNewPage({});
}

} // namespace borewright
