// SPDX-License-Identifier: GPL-3.0-or-later
// Honing: a sentence or two for the customer with what is not yet done, the log in the record.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>

namespace borewright {

static constexpr double nameWidth = 330;
static constexpr double frontPoints = 8;

void composeHoneFront(SheetComposer& sheet, const SheetHone& hone) {
    if (!hone.there) return;
    sheet.paragraph(sheet.left(), sheet.width(), hone.front.join(' '), sheetFont(frontPoints));
    if (!hone.warnings.isEmpty())
        sheet.paragraph(sheet.left(), sheet.width(), hone.warnings.join(' '),
                        sheetFont(frontPoints, true));
    sheet.down(22);
}

void composeHone(SheetComposer& sheet, const SheetHone& hone) {
    if (!hone.there) return;
    composeSectionHead(sheet, SheetWords::tr("Honing"), hone.headline,
                       sheetFactsHeight(hone.facts, sheet.width(), nameWidth, 7.5) +
                           std::min(sheetGridHeight(sheet, hone.bores), 400.0) + 150);
    composeFacts(sheet, hone.facts, sheet.left(), sheet.width(), nameWidth, 7.5);
    if (!hone.facts.empty()) sheet.down(18);
    for (const QString& warning : hone.warnings)
        sheet.paragraph(sheet.left(), sheet.width(), warning, sheetFont(8, true));
    if (!hone.warnings.isEmpty()) sheet.down(18);
    composeGrid(sheet, hone.bores);
    composeGrid(sheet, hone.passes);
    composeSentences(sheet, hone.remarks, 8);
    sheet.down(40);
}

} // namespace borewright
