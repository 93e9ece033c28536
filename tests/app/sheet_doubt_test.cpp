// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says of its own doubt.
#include "app/sheet/sheet_composer.h"
#include "app/sheet/sheet_data.h"
#include "tests/support/doubted_blocks.h"

#include <QImage>

#include <gtest/gtest.h>

namespace borewright {
namespace {

SheetData dataOf(const Workbook& workbook) {
    const DisplayUnits units = naturalUnits(workbook);
    return sheetData(workbook, compute(workbook, units), {}, units, {1'774'000'000, 60});
}

// Every text of every page, in the order of drawing; lines of a paragraph follow one another.
QString said(const Workbook& workbook) {
    QStringList texts;
    for (const SheetPageContent& page : composeSheet(dataOf(workbook), Preferences::Paper::a4)) {
        QImage image(sheetSize(Preferences::Paper::a4).toSize() / 4, QImage::Format_RGB32);
        QPainter painter(&image);
        TextLog log;
        drawSheetPage(painter, page, &log);
        for (const DrawnText& text : log)
            texts << text.text;
    }
    return texts.join(' ');
}

TEST(SheetDoubt, IsExplainedWithItsBudget) {
    const QString known = said(test::wellKnownBlock());
    for (const char* part :
         {"± at 95 %; called with 5 % risk", "How far these figures can be trusted",
          "Final, as found", "repeatability of a reading", "degrees of freedom",
          "On a perfect bore this gauge alone would show about", "that takes a roundness machine",
          "ISO 14253-1", "too close", "Bores 1, 2, 3, 4, 5 and 6: straight as far as",
          "the gauge's doubt included"})
        EXPECT_TRUE(known.contains(QString::fromUtf8(part)))
            << "the sheet does not say: " << part << "\n"
            << known.toStdString();
    EXPECT_EQ(known.count(QString::fromUtf8("One diameter ± ")), 1) << "one gear, one budget";
    EXPECT_FALSE(known.contains("not known to this sheet"));
}

TEST(SheetDoubt, EachGearHasItsBudgetFinalsFirst) {
    Workbook workbook = test::wellKnownBlock();
    workbook.surveys[0].header.gauge.gear = halfThouDialAndMicrometer();
    const SheetData data = dataOf(workbook);
    ASSERT_EQ(data.budgets.size(), 2U);
    EXPECT_EQ(data.budgets[0].title.toStdString(), "Final");
    EXPECT_EQ(data.budgets[1].title.toStdString(), "As found");
}

TEST(SheetDoubt, ThatItIsNotKnownIsSaid) {
    Workbook workbook = test::wellKnownBlock();
    workbook.surveys[0].header.gauge.gear = {};
    const QString half = said(workbook);
    EXPECT_TRUE(half.contains("Where no ± stands the doubt of the gauge is not known"))
        << half.toStdString();
    workbook.surveys[1].header.gauge.gear = {};
    const QString unknown = said(workbook);
    EXPECT_TRUE(unknown.contains("The doubt of the gauge is not known to this sheet"));
    EXPECT_FALSE(unknown.contains("How far these figures"));
    EXPECT_FALSE(unknown.contains(QString::fromUtf8("±")));
}

} // namespace
} // namespace borewright
