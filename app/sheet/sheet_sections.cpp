// SPDX-License-Identifier: GPL-3.0-or-later
// The bores cut open side by side: on the customer's page, or in the record where that has not the
// room.
#include "app/pictures/picture_text.h"
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double gap = 42;
constexpr double leastHeight = 240;
constexpr double headPoints = 8.5;

double headHeight() {
    return lineHeight(sheetFont(headPoints)) + 12;
}

// The height at which sections side by side have the shape of a bore: one row up to eight bores,
// two rows above where there is `room` for them.
double heightOf(std::size_t bores, double width, double room) {
    const auto inRows = [&](double rows) {
        const double columns = std::ceil(static_cast<double>(bores) / rows);
        return std::min(1150.0, rows * (width / columns * 1.35 + 60) + 90);
    };
    if (bores > 8 && inRows(2) <= room) return inRows(2);
    // A crowded page has lower sections rather than no place to sign.
    const double least = std::clamp(room, 0.5 * leastHeight, leastHeight);
    return std::max(least, std::min(inRows(1), room));
}

} // namespace

double sheetSectionsLeast(const SheetData& data) {
    return data.sections.bores.empty() ? 0 : headHeight() + 0.5 * leastHeight + gap;
}

void composeSections(SheetComposer& sheet, const SheetData& data, double below) {
    if (data.sections.bores.empty()) return;
    sheet.need(headHeight() + 0.5 * leastHeight);
    const QFont font = sheetFont(headPoints);
    sheet.text({sheet.left(), sheet.y(), sheet.width(), lineHeight(font)}, Qt::AlignLeft,
               SheetWords::tr("Shape of the bores cut open, each about its own mean, all on one "
                              "scale: as found faint, now dark"),
               font, SheetComposer::Ink::faint);
    sheet.down(headHeight());
    const double height =
        heightOf(data.sections.bores.size(), sheet.width(), sheet.rest() - below - gap);
    const QRectF rect(sheet.left(), sheet.y(), sheet.width(), std::min(height, sheet.rest()));
    sheet.draw([rect, sections = data.sections](QPainter& painter, const PictureStyle& style) {
        PictureStyle own = sheetStyle(sections.bores.size() > 5 ? 6 : 7);
        own.log = style.log;
        paintBlockSections(painter, rect, sections, own);
    });
    sheet.down(rect.height() + gap);
}

} // namespace borewright
