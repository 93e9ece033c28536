// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet as its texts: what the tests of the sheet read.
#pragma once

#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"

#include <QImage>

namespace borewright::test {

inline SheetData dataOf(const Workbook& workbook) {
    const DisplayUnits units = naturalUnits(workbook);
    return sheetData(workbook, compute(workbook, units), {}, units, {1'774'000'000, 60});
}

// What is drawn on each page.
inline std::vector<TextLog> textsOf(const SheetData& data, Preferences::Paper paper) {
    std::vector<TextLog> pages;
    for (const SheetPageContent& page : composeSheet(data, paper)) {
        QImage image(sheetSize(paper).toSize() / 4, QImage::Format_RGB32);
        QPainter painter(&image);
        TextLog log;
        drawSheetPage(painter, page, &log);
        pages.push_back(std::move(log));
    }
    return pages;
}

// In the order of drawing; lines of a paragraph follow one another.
inline QString said(const TextLog& log) {
    QStringList texts;
    for (const DrawnText& text : log)
        texts << text.text;
    return texts.join(' ');
}

} // namespace borewright::test
