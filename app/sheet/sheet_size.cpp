// SPDX-License-Identifier: GPL-3.0-or-later
// The record's part on which size cleans up the block.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>

namespace borewright {

static constexpr double barPoints = 7;

void composeSentences(SheetComposer& sheet, const QStringList& sentences, double points) {
    for (const QString& sentence : sentences) {
        sheet.paragraph(sheet.left(), sheet.width(), sentence, sheetFont(points));
        sheet.down(3);
    }
}

void composeSectionHead(SheetComposer& sheet, const QString& title, const QString& headline,
                        double least) {
    const QFont head = sheetFont(10.5, true);
    sheet.need(std::min(lineHeight(head) + least, sheet.whole()));
    sheet.paragraph(sheet.left(), sheet.width(), title, head);
    sheet.down(4);
    if (headline.isEmpty()) return;
    sheet.paragraph(sheet.left(), sheet.width(), headline, sheetFont(9));
    sheet.down(10);
}

// A row a bore, as high as is easy to read; on a page of its own where this one has not the room.
static void composeBars(SheetComposer& sheet, const SizeBarsData& bars) {
    if (bars.bores.empty() || bars.lines.empty()) return;
    const PictureStyle style = sheetStyle(barPoints);
    const double easy = std::min(sizeBarsHeight(bars, sheet.width(), style), sheet.whole());
    const double least = std::min(leastSizeBarsHeight(bars, sheet.width(), style), easy);
    sheet.need(least);
    const QRectF rect(sheet.left(), sheet.y(), sheet.width(), std::min(easy, sheet.rest()));
    sheet.draw([rect, bars](QPainter& painter, const PictureStyle& page) {
        PictureStyle own = sheetStyle(barPoints);
        own.log = page.log;
        paintSizeBars(painter, rect, bars, own);
    });
    sheet.down(rect.height() + 24);
}

void composeSizing(SheetComposer& sheet, const SheetSizing& sizing) {
    if (!sizing.there()) return;
    composeSectionHead(sheet, SheetWords::tr("Which size"), sizing.headline, 300);
    composeBars(sheet, sizing.bars);
    composeGrid(sheet, sizing.bores);
    composeSentences(sheet, sizing.how + sizing.sentences + sizing.cautions, 8);
    sheet.down(40);
}

} // namespace borewright
