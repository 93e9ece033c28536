// SPDX-License-Identifier: GPL-3.0-or-later
// The picture of the sizes: what it is made from, where things lie, that no text hides another.
#include "app/pictures/size_bars.h"
#include "app/pictures/size_bars_layout.h"
#include "app/pictures/size_bars_view.h"
#include "tests/app/picture_support.h"
#include "tests/support/bench_context.h"
#include "tests/support/demo_scenarios.h"

#include <QDir>
#include <QTest>

#include <gtest/gtest.h>

#include <cmath>

namespace borewright {
namespace {

using namespace test;

SizeOnOffer offered(const char* oversize_in) {
    SizeOnOffer size;
    size.oversize = typedIn(oversize_in);
    return size;
}

// Six bores, the score in bore 4, four sizes and one that the engine maker does not allow.
Workbook sixBores() {
    Workbook workbook = demo::correctedSaltmarsh();
    workbook.fit = {};
    workbook.sizing = {};
    for (const char* size : {"0", "0.010", "0.020", "0.030", "0.040"})
        workbook.sizing.sizes.push_back(offered(size));
    workbook.sizing.greatest = typedIn("0.030");
    Damage score;
    score.depth = typedIn("1.40");
    score.axis = "B";
    score.deep = typedThou("6");
    score.what = "score, exhaust side";
    workbook.sizing.bores[4].damages.push_back(score);
    return workbook;
}

// Sixteen bores, each some thou larger than the one before, and eight sizes.
Workbook sixteenBores() {
    Workbook workbook = inchBlock(16);
    const std::string survey = addSurvey(workbook, SurveyKind::asFound, "as found");
    for (int bore = 1; bore <= 16; ++bore)
        typeShape(workbook, survey, bore,
                  [bore](double depth, const std::string&) { return 0.4 * bore + depth; });
    for (const char* size : {"0", "0.005", "0.010", "0.015", "0.020", "0.025", "0.030", "0.040"})
        workbook.sizing.sizes.push_back(offered(size));
    workbook.sizing.greatest = typedIn("0.030");
    return workbook;
}

SizeBarsData dataOf(const Workbook& workbook, int chosen = 1) {
    const DisplayUnits units = naturalUnits(workbook);
    return sizeBarsData(workbook, compute(workbook, units), units, chosen);
}

TEST(SizeBarsData, ARowHoldsWhatWasFoundAndWhereItCleansUp) {
    const SizeBarsData data = dataOf(sixBores());
    ASSERT_EQ(data.bores.size(), 6U);
    const SizeBarsBore& four = data.bores[3];
    EXPECT_EQ(four.number, 4);
    // As read: 3.4243 at most; the score is 6 thou deep where the wall is at 3.4235, so
    // 3.4235 + 2·0.0060 = 3.4355; about the axis of 3.4200 the wear of 3.5 thou counts once more.
    EXPECT_NEAR(four.largest, 3.4243, 5e-5);
    ASSERT_TRUE(four.cleanUp && four.otherWay);
    EXPECT_NEAR(four.cleanUp->size, 3.4355, 5e-5);
    EXPECT_NEAR(*four.otherWay, 3.4390, 5e-5);
    EXPECT_GT(four.cleanUp->around, 0);
    EXPECT_TRUE(four.deciding);
    EXPECT_EQ(four.verdict, Verdict::within);
    EXPECT_TRUE(four.word.startsWith("cleans, margin 4.0")) << four.word.toStdString();
    EXPECT_TRUE(four.why.startsWith("3.4355 in: score at 1.40")) << four.why.toStdString();
    EXPECT_NEAR(four.greatest.value_or(0), 3.45, 1e-9);
    EXPECT_FALSE(data.bores[0].deciding);
}

TEST(SizeBarsData, ASizeIsALineAndTheChosenOneIsMarked) {
    const SizeBarsData data = dataOf(sixBores());
    ASSERT_EQ(data.lines.size(), 5U);
    const char* names[] = {"standard", "0.010 in", "0.020 in", "0.030 in", "0.040 in"};
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_EQ(data.lines[i].name.toStdString(), names[i]);
        EXPECT_EQ(data.lines[i].chosen, i == 2) << names[i];
        EXPECT_EQ(data.lines[i].beyond, i == 4) << names[i];
        ASSERT_EQ(data.lines[i].at.size(), 6U);
        EXPECT_NEAR(*data.lines[i].at[0], 3.42 + 0.01 * static_cast<double>(i), 1e-9);
    }
    EXPECT_EQ(data.lines[2].size.toStdString(), "3.4400");
}

TEST(SizeBarsData, ABoreBeyondTheLastSizeIsASleeveAndSaysSo) {
    Workbook workbook = sixBores();
    workbook.sizing.bores[4].damages[0].deep = typedThou("30");
    const SizeBarsData data = dataOf(workbook);
    EXPECT_EQ(data.bores[3].verdict, Verdict::outside);
    EXPECT_TRUE(data.bores[3].word.contains("sleeve")) << data.bores[3].word.toStdString();
    EXPECT_EQ(data.bores[0].verdict, Verdict::within);
}

TEST(SizeBarsData, WithOwnSizesEachRowNamesItsSize) {
    Workbook workbook = sixBores();
    workbook.sizing.ownSizes = true;
    const SizeBarsData data = dataOf(workbook);
    EXPECT_TRUE(data.bores[0].word.startsWith("0.010 in: cleans"))
        << data.bores[0].word.toStdString();
    EXPECT_TRUE(data.bores[3].word.startsWith("0.020 in: cleans"))
        << data.bores[3].word.toStdString();
    EXPECT_EQ(data.bores[3].own, 2U);
    for (const SizeBarsLine& line : data.lines)
        EXPECT_FALSE(line.chosen) << line.name.toStdString();
}

TEST(SizeBarsData, WhatIsMissingIsSaidKindly) {
    EXPECT_TRUE(dataOf(emptyWorkbook()).friendly.contains("Block page"));
    EXPECT_TRUE(dataOf(inchBlock(2)).friendly.contains("as found"));
    Workbook half = inchBlock(2);
    const std::string survey = addSurvey(half, SurveyKind::asFound, "as found");
    type(half, survey, 1, "0.5", "A", "1.0");
    const SizeBarsData data = dataOf(half);
    EXPECT_TRUE(data.friendly.isEmpty());
    EXPECT_TRUE(data.bores[0].smallest);
    EXPECT_FALSE(data.bores[1].smallest);
    EXPECT_EQ(data.bores[1].verdict, Verdict::notMeasured);
    EXPECT_FALSE(data.bores[1].why.isEmpty());
}

TEST(SizeBarsData, ItIsSaidInWords) {
    const QString said = describeSizeBars(dataOf(sixBores()));
    for (const char* part : {"0.020 in (chosen)", "0.040 in (more than the engine maker allows)",
                             "Bore 4, decides, cleans, margin 4.0", "score at 1.40"})
        EXPECT_TRUE(said.contains(part)) << part << " in: " << said.toStdString();
}

TEST(SizeBarsLayout, NamesStandApartAndAsNearAsTheyCan) {
    // Free: each stays where it is.
    EXPECT_EQ(spread({10, 50}, {10, 10}, 2, 0, 100), (std::vector<double>{10, 50}));
    // Two on one spot share the way to both sides.
    EXPECT_EQ(spread({50, 50}, {10, 10}, 2, 0, 100), (std::vector<double>{44, 56}));
    // At the edge they are pushed inward.
    EXPECT_EQ(spread({0, 1}, {10, 10}, 2, 0, 100), (std::vector<double>{5, 17}));
    EXPECT_EQ(spread({99, 100}, {10, 10}, 2, 0, 100), (std::vector<double>{83, 95}));
    // No room.
    EXPECT_TRUE(spread({10, 20}, {60, 60}, 2, 0, 100).empty());
    EXPECT_TRUE(spread({}, {}, 2, 0, 100).empty());
}

TEST(SizeBarsLayout, MarksOfTheAxisAreOneTwoOrFive) {
    EXPECT_NEAR(sizeBarsStep(0.0007), 0.001, 1e-12);
    EXPECT_NEAR(sizeBarsStep(0.0011), 0.002, 1e-12);
    EXPECT_NEAR(sizeBarsStep(0.003), 0.005, 1e-12);
    EXPECT_NEAR(sizeBarsStep(0.007), 0.01, 1e-12);
    EXPECT_NEAR(sizeBarsStep(2), 2, 1e-12);
}

TEST(SizeBarsLayout, ADeepDamageDoesNotSqueezeTheSizesIntoACorner) {
    Workbook workbook = sixBores();
    workbook.sizing.bores[4].damages[0].deep = typedThou("150");
    const auto layout = layOutSizeBars(QRectF(0, 0, 900, 330), dataOf(workbook), styleOf(false));
    const double sizes = layout.x(3.46) - layout.x(3.42);
    EXPECT_GT(sizes, layout.plot.width() * 0.45);
}

struct Picture {
    std::string name;
    SizeBarsData data;
    QSize size;
};

std::vector<Picture> pictures() {
    std::vector<Picture> all;
    Workbook own = sixBores();
    own.sizing.ownSizes = true;
    Workbook sleeve = sixBores();
    sleeve.sizing.bores[4].damages[0].deep = typedThou("150");
    Workbook bare = sixBores();
    bare.sizing.sizes.clear();
    for (const QSize size : {QSize(560, 300), QSize(1118, 336), QSize(1740, 360)}) {
        const std::string width = std::to_string(size.width());
        all.push_back({"six-" + width, dataOf(sixBores(), 4), size});
        all.push_back({"own-" + width, dataOf(own), size});
        all.push_back({"sleeve-" + width, dataOf(sleeve), size});
        all.push_back({"bare-" + width, dataOf(bare), size});
        all.push_back({"metric-" + width, dataOf(demo::rushmere()), size});
        all.push_back({"sixteen-" + width, dataOf(sixteenBores(), 3), QSize(size.width(), 470)});
    }
    return all;
}

TEST(SizeBarsPicture, NoTextLeavesItOrLiesOverAnother) {
    const QDir folder(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures"));
    ASSERT_TRUE(QDir().mkpath(folder.path()));
    for (const Picture& picture : pictures())
        for (const bool dark : {false, true}) {
            TextLog log;
            PictureStyle style = styleOf(dark);
            style.log = &log;
            const QImage image = renderSizeBars(picture.size, picture.data, style);
            const QRectF outer(QPointF(), picture.size);
            for (std::size_t i = 0; i < log.size(); ++i) {
                EXPECT_TRUE(outer.contains(log[i].ink))
                    << picture.name << ": outside: " << log[i].text.toStdString();
                for (std::size_t j = i + 1; j < log.size(); ++j) {
                    const QRectF both = log[i].ink.intersected(log[j].ink);
                    EXPECT_FALSE(both.width() > 0.6 && both.height() > 2.5)
                        << picture.name << ": '" << log[i].text.toStdString() << "' over '"
                        << log[j].text.toStdString() << "'";
                }
            }
            const QString file =
                QString::fromStdString("sizes-" + picture.name) + (dark ? "-dark.png" : ".png");
            EXPECT_TRUE(image.save(folder.filePath(file))) << picture.name;
        }
}

TEST(SizeBarsPicture, TheDecidingBoreAndTheVerdictsNeedNoColour) {
    TextLog log;
    PictureStyle style = PictureStyle::onPaper(pictureFont());
    style.log = &log;
    const QImage image = renderSizeBars({1000, 330}, dataOf(sixBores()), style);
    QStringList texts;
    for (const DrawnText& text : log)
        texts << text.text;
    EXPECT_EQ(texts.count("decides"), 1);
    EXPECT_EQ(texts.filter("cleans, margin").size(), 6);
    EXPECT_TRUE(texts.contains("more than the engine maker allows"));
    EXPECT_TRUE(image.convertToFormat(QImage::Format_Grayscale8)
                    .save(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures/sizes-grey.png")));
}

TEST(SizeBarsView, ClickAndArrowsChooseABore) {
    Bench bench(sixBores());
    SizeBarsView view(bench.document, bench.selection);
    view.resize(1000, 340);
    view.show();
    const double row = view.height() / 9.0;
    QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(200, static_cast<int>(row * 4.6)));
    const int clicked = bench.selection.bore();
    EXPECT_GT(clicked, 1);
    QTest::keyClick(&view, Qt::Key_Down);
    EXPECT_EQ(bench.selection.bore(), clicked + 1);
    QTest::keyClick(&view, Qt::Key_Up);
    QTest::keyClick(&view, Qt::Key_Up);
    EXPECT_EQ(bench.selection.bore(), clicked - 1);
    for (int i = 0; i < 9; ++i)
        QTest::keyClick(&view, Qt::Key_Up);
    EXPECT_EQ(bench.selection.bore(), 1);
}

TEST(SizeBarsView, ItAsksForTheHeightOfItsRows) {
    Bench bench(sixBores());
    const SizeBarsView view(bench.document, bench.selection);
    const int six = view.sizeHint().height();
    EXPECT_LT(view.minimumSizeHint().height(), six);
    bench.document.open(sixteenBores());
    EXPECT_GT(view.sizeHint().height(), six + 300);
    EXPECT_LT(view.minimumSizeHint().height(), 480) << "16 bores still fit a window of 800 px";
}

} // namespace
} // namespace borewright
