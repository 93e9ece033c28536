// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes, pistons and rings on paper, from one bore to sixteen: the words are there, nothing is off
// the page, cut, or drawn over another text.
#include "app/sheet/sheet_pdf.h"
#include "tests/app/sheet_texts.h"
#include "tests/support/piston_block.h"

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using Paper = Preferences::Paper;

TEST(SheetFitPaper, StandsInThePdf) {
    const auto pdf = renderSheetPdf(dataOf(pistonBlock(6, 7)), Paper::a4);
    ASSERT_TRUE(pdf.has_value());
    QTemporaryDir folder;
    QFile file(folder.filePath("sheet.pdf"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(*pdf);
    file.close();
    QProcess process;
    process.start("pdftotext", {"-layout", file.fileName(), "-"});
    ASSERT_TRUE(process.waitForFinished(30000));
    const QString text = QString::fromUtf8(process.readAllStandardOutput()).simplified();
    for (const char* part :
         {"Which size", "Bore 6 decides: 0.020 in cleans all six", "Pistons, clearance and rings",
          "bore 1 as decided, bores 2–6 as proposed", "allowed 3.8 to 4.8 thou, aim 4.2 thou",
          "spare, scribed K", "Ring gaps, groove 1 from the crown",
          "Ring gaps, groove 2 from the crown", "Clearance by depth",
          "outside micrometer, 3 to 4 in", "Wall thickness is not seen by any of this",
          "a seizure at speed on the water can hurt"})
        EXPECT_TRUE(text.contains(QString::fromUtf8(part))) << "the sheet does not say: " << part;
}

class SheetFitRoom : public testing::TestWithParam<std::tuple<int, Paper>> {};

TEST_P(SheetFitRoom, DrawsNothingOffThePageNorOverAnotherText) {
    const auto& [bores, paper] = GetParam();
    const QRectF page(QPointF(), sheetSize(paper));
    for (const Workbook& workbook :
         {pistonBlock(bores, bores * 3 / 2), pistonBlockAsFound(bores, bores * 3 / 2)}) {
        int number = 0;
        for (const TextLog& log : textsOf(dataOf(workbook), paper)) {
            ++number;
            for (std::size_t i = 0; i < log.size(); ++i) {
                EXPECT_TRUE(page.adjusted(100, 100, -100, -80).contains(log[i].ink))
                    << "page " << number << ": \"" << log[i].text.toStdString()
                    << "\" is off the page";
                for (std::size_t j = 0; j < i; ++j)
                    EXPECT_FALSE(log[i]
                                     .ink.adjusted(2, 7, -2, -7)
                                     .intersects(log[j].ink.adjusted(2, 7, -2, -7)))
                        << "page " << number << ": \"" << log[i].text.toStdString() << "\" over \""
                        << log[j].text.toStdString() << "\"";
            }
        }
    }
}

// Cut would be a figure that ends in "…".
TEST_P(SheetFitRoom, CutsNoFigure) {
    const auto& [bores, paper] = GetParam();
    const auto pages = textsOf(dataOf(pistonBlock(bores, bores * 3 / 2)), paper);
    for (const TextLog& log : pages)
        for (const DrawnText& text : log) {
            const bool figure = text.text.startsWith("spare") || text.text.left(1).toInt() > 0;
            EXPECT_FALSE(figure && text.text.contains(QChar(0x2026))) << text.text.toStdString();
        }
}

TEST_P(SheetFitRoom, KeepsTheCustomersPartOnPageOne) {
    const auto& [bores, paper] = GetParam();
    const auto pages = textsOf(dataOf(pistonBlock(bores, bores * 3 / 2)), paper);
    const QString front = said(pages.front());
    EXPECT_TRUE(front.contains("Signed")) << "the place to sign is not on page one";
    EXPECT_TRUE(front.contains("least clearance in thou"))
        << "the customer is not told of the clearances";
    // The sections give way, and then stand in the record.
    QString all;
    for (const TextLog& page : pages)
        all += said(page);
    EXPECT_EQ(all.count("Shape of the bores cut open"), 1);
    EXPECT_TRUE(said(pages[1]).contains("How far these figures can be trusted"));
}

INSTANTIATE_TEST_SUITE_P(Bores, SheetFitRoom,
                         testing::Combine(testing::Values(1, 2, 6, 9, 16),
                                          testing::Values(Paper::a4, Paper::letter)));

} // namespace
} // namespace borewright
