// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says of honing: figures worked by hand, warnings until all is ticked, what was
// simulated and struck out said plainly, and nothing at all where nothing is logged.
#include "app/sheet/sheet_pdf.h"
#include "tests/app/sheet_texts.h"
#include "tests/support/hone_outlooks.h"

#include <QDir>
#include <QFile>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
using Paper = Preferences::Paper;

// What stands in a row under a head; heads of several lines as one.
std::string cell(const SheetGrid& grid, std::size_t row, const char* head) {
    for (std::size_t c = 0; c < grid.columns.size(); ++c)
        if (QString(grid.columns[c].head).replace('\n', ' ') == head)
            return row < grid.rows.size() ? grid.rows[row][c].text.toStdString() : "no such row";
    return "no such column";
}

Pass passOf(int bore, const std::string& stone, const std::string& after, double strokes) {
    Pass pass;
    pass.bore = bore;
    pass.stone = stone;
    pass.after = after;
    pass.time = {1'774'000'100, 60};
    StrokeWindow window;
    window.from = typedIn(stone == "k2" ? "3.30" : "2.20");
    window.to = typedIn("4.04");
    window.strokes = strokes;
    pass.windows = {window};
    return pass;
}

void log(Workbook& workbook, Pass pass) {
    pass.id = freshPassId(workbook.hone);
    workbook.hone.passes.push_back(std::move(pass));
}

// A bore of 3.5 in whose closed end lags by `v` thou from the middle down.
void typeV(Workbook& workbook, const std::string& survey, int bore, double level, double v) {
    typeShape(workbook, survey, bore, [=](double depth, const std::string&) {
        return level - (depth > 2 ? v * (depth - 2) / 1.5 : 0);
    });
}

// Bores 1 and 2 as found with a V of 3 thou, honed in turn, checked, finished.
Workbook honedBores(int bores = 2) {
    Workbook workbook = honeBlock();
    while (static_cast<int>(workbook.block.bores.size()) < bores) {
        workbook.block.bores.push_back(workbook.block.bores.back());
        workbook.block.bores.back().number = static_cast<int>(workbook.block.bores.size());
    }
    workbook.hone.hone.speedRpm = 400;
    workbook.hone.hone.oil = true;
    const std::string found = addSurvey(workbook, SurveyKind::asFound, "as found");
    for (int bore = 1; bore <= bores; ++bore)
        typeV(workbook, found, bore, 5, 3);
    for (int bore = 1; bore <= bores; ++bore)
        log(workbook, passOf(bore, "k2", found, 40));
    const std::string check = addSurvey(workbook, SurveyKind::check, "check 1");
    for (int bore = 1; bore <= bores; ++bore)
        typeV(workbook, check, bore, 6, 1.6);
    for (int bore = 1; bore <= bores; ++bore)
        log(workbook, passOf(bore, "k3", check, 60));
    const std::string last = addSurvey(workbook, SurveyKind::final, "final");
    for (int bore = 1; bore <= bores; ++bore)
        typeV(workbook, last, bore, 10, 0.3);
    return workbook;
}

QString allOf(const SheetData& data) {
    QString all;
    for (const TextLog& page : textsOf(data, Paper::a4))
        all += said(page) + ' ';
    return all;
}

TEST(SheetHone, NothingIsSaidWhereNothingIsLogged) {
    Workbook workbook = honedBores();
    workbook.hone.passes.clear();
    const SheetData data = dataOf(workbook);
    EXPECT_FALSE(data.hone.there);
    EXPECT_FALSE(allOf(data).contains("Honing"));
    EXPECT_FALSE(allOf(data).contains("ticked"));
}

TEST(SheetHone, TheLogSaysWhatCameOffAndHowTheLeadWent) {
    const SheetHone hone = dataOf(honedBores()).hone;
    ASSERT_EQ(hone.passes.rows.size(), 4U);
    EXPECT_EQ(cell(hone.passes, 0, "bore"), "1");
    EXPECT_EQ(cell(hone.passes, 0, "stone"), "short 100");
    EXPECT_EQ(cell(hone.passes, 0, "grit"), "100");
    EXPECT_NE(cell(hone.passes, 0, "stroked").find("40 strokes"), std::string::npos)
        << cell(hone.passes, 0, "stroked");
    // Levels 0.5, 1.25, 2, 2.75, 3.5 in: 1 thou and, lower, 1.7 and 2.4: mean 1.42.
    EXPECT_EQ(cell(hone.passes, 0, "came off"), "1.4");
    EXPECT_EQ(cell(hone.passes, 0, "lead before"), "−3.0");
    EXPECT_EQ(cell(hone.passes, 0, "lead after"), "−1.6");
    EXPECT_EQ(cell(hone.passes, 0, "checked by"), "check 1");
    EXPECT_EQ(cell(hone.passes, 1, "bore"), "") << "named once";
    EXPECT_EQ(cell(hone.passes, 1, "lead after"), "−0.3");
    EXPECT_EQ(cell(hone.passes, 2, "bore"), "2");
}

TEST(SheetHone, BeforeAndAfterStandSideBySide) {
    const SheetHone hone = dataOf(honedBores()).hone;
    ASSERT_EQ(hone.bores.rows.size(), 2U);
    EXPECT_EQ(cell(hone.bores, 0, "before"), "as found");
    EXPECT_EQ(cell(hone.bores, 0, "before: straight"), "3.0");
    EXPECT_EQ(cell(hone.bores, 0, "before: lead"), "−3.0");
    EXPECT_EQ(cell(hone.bores, 0, "after"), "final");
    EXPECT_EQ(cell(hone.bores, 0, "after: straight"), "0.3");
    EXPECT_EQ(cell(hone.bores, 0, "after: lead"), "−0.3");
    // As read: 5, 5, 5, 3.5, 2 thou over 3.5 in on both axes.
    EXPECT_EQ(cell(hone.bores, 0, "before: mean size"), "3.5041");
    EXPECT_NE(cell(hone.bores, 0, "cross- hatch"), "no such column")
        << "the last pass was a finish stone's, speed and beat are known";
    EXPECT_EQ(hone.remarks.filter("Crosshatch: the angle where the scratches").size(), 1)
        << hone.remarks.join(' ').toStdString();
    EXPECT_TRUE(hone.remarks.filter("Bore 1:").isEmpty()) << "nothing is odd about this log";
}

TEST(SheetHone, WarnsUntilPortsAndWashingAreTicked) {
    Workbook workbook = honedBores();
    SheetData data = dataOf(workbook);
    EXPECT_EQ(data.hone.warnings.join(' ').toStdString(),
              "Not yet ticked as ports chamfered: bores 1 and 2. Not yet ticked as washed: bores 1 "
              "and 2.");
    EXPECT_TRUE(said(textsOf(data, Paper::a4)[0]).contains("Not yet ticked as washed"));
    workbook.hone.ticks[1] = {true, true, {}};
    workbook.hone.ticks[2].washed = true;
    EXPECT_EQ(dataOf(workbook).hone.warnings.join(' ').toStdString(),
              "Not yet ticked as ports chamfered: bore 2.");
    EXPECT_EQ(cell(dataOf(workbook).hone.bores, 1, "ports chamfered"), "not ticked");
    workbook.hone.ticks[2].portsChamfered = true;
    EXPECT_TRUE(dataOf(workbook).hone.warnings.isEmpty());
}

TEST(SheetHone, APassThatWasNotMeasuredIsWarnedOf) {
    Workbook workbook = honedBores();
    log(workbook, passOf(2, "k3", "s3", 5));
    EXPECT_TRUE(
        dataOf(workbook).hone.warnings.contains("Not measured since the last pass: bore 2."));
}

TEST(SheetHone, SimulatedAndStruckOutAreSaidPlainly) {
    Workbook workbook = honedBores();
    workbook.hone.passes[0].simulated = true;
    Pass slip = passOf(1, "k3", "s2", 600);
    slip.struck = "typed in the wrong bore";
    log(workbook, slip);
    const SheetData data = dataOf(workbook);
    EXPECT_EQ(cell(data.hone.passes, 0, "remark"), "simulated");
    workbook.hone.passes[0].notes = "simulated: nothing was honed";
    EXPECT_EQ(cell(dataOf(workbook).hone.passes, 0, "remark"), "simulated: nothing was honed")
        << "said once";
    workbook.hone.passes[0].notes = "chattered";
    EXPECT_EQ(cell(dataOf(workbook).hone.passes, 0, "remark"), "simulated; chattered");
    bool struck = false;
    for (std::size_t row = 0; row < data.hone.passes.rows.size(); ++row)
        struck = struck ||
                 cell(data.hone.passes, row, "remark") == "struck out: typed in the wrong bore";
    EXPECT_TRUE(struck);
    EXPECT_EQ(data.hone.headline.toStdString(),
              "Bores 1 and 2: 4 passes with 2 stones; 1 struck out.");
    EXPECT_TRUE(said(textsOf(data, Paper::a4)[0])
                    .contains("Passes in bore 1 were simulated by the demonstration: nothing was "
                              "honed."));
}

TEST(SheetHone, TheLogStandsInTheRecordOnly) {
    const auto pages = textsOf(dataOf(honedBores()), Paper::a4);
    const QString front = said(pages[0]);
    EXPECT_TRUE(front.contains("Honed: bores 1 and 2"));
    EXPECT_FALSE(front.contains("40 strokes"));
    QString record;
    for (std::size_t page = 1; page < pages.size(); ++page)
        record += said(pages[page]);
    EXPECT_TRUE(record.contains("40 strokes"));
    EXPECT_TRUE(record.contains("Before and after"));
}

class SheetHoneRoom : public testing::TestWithParam<int> {};

TEST_P(SheetHoneRoom, DrawsNothingOffThePageNorOverAnotherText) {
    const SheetData data = dataOf(honedBores(GetParam()));
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        const QRectF page(QPointF(), sheetSize(paper));
        for (const TextLog& log : textsOf(data, paper))
            for (std::size_t i = 0; i < log.size(); ++i) {
                EXPECT_TRUE(page.adjusted(100, 100, -100, -80).contains(log[i].ink))
                    << log[i].text.toStdString() << " is off the page";
                for (std::size_t j = 0; j < i; ++j)
                    EXPECT_FALSE(log[i]
                                     .ink.adjusted(2, 7, -2, -7)
                                     .intersects(log[j].ink.adjusted(2, 7, -2, -7)))
                        << log[i].text.toStdString() << " over " << log[j].text.toStdString();
            }
        EXPECT_TRUE(said(textsOf(data, paper).front()).contains("Signed"))
            << "the place to sign is not on page one";
    }
    const auto pdf = renderSheetPdf(data, Paper::a4);
    ASSERT_TRUE(pdf.has_value());
    const QDir folder(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures"));
    ASSERT_TRUE(QDir().mkpath(folder.path()));
    QFile file(folder.filePath(QStringLiteral("sheet-hone-%1.pdf").arg(GetParam())));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    EXPECT_EQ(file.write(*pdf), pdf->size());
}

INSTANTIATE_TEST_SUITE_P(Bores, SheetHoneRoom, testing::Values(2, 6, 16));

} // namespace
} // namespace borewright
