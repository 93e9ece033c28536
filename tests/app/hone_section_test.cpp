// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing of a set-up: what it is made from, where things lie to scale, that no text hides
// another in any state.
#include "app/pictures/hone_section.h"
#include "app/pictures/hone_section_layout.h"
#include "app/pictures/picture_text.h"
#include "tests/app/picture_support.h"
#include "tests/support/hone_outlooks.h"

#include <QDir>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

HoneSectionData dataOf(const BoreOutlook& outlook, const std::optional<HoneOwnDraft>& own = {},
                       DisplayUnits units = DisplayUnits::inch()) {
    return honeSectionData(honeBlock(), outlook, units, own);
}

StrokeWindow strokeWindow(const char* from_in, const char* to_in, double strokes) {
    StrokeWindow window;
    window.from = typedIn(from_in);
    window.to = typedIn(to_in);
    window.strokes = strokes;
    return window;
}

HoneOwnDraft ownDraft() {
    HoneOwnDraft own;
    own.stone = "k1";
    own.windows = {strokeWindow("2.40", "4.04", 60)};
    OwnSetUp expected;
    expected.curves = shortStoneOutlook().curves;
    expected.curves.then = vLine(expected.curves.depth_mm, 4, 30, 9);
    expected.chanceOver = 0.04;
    expected.forbidden = true;
    expected.sentences = {"4 chances in 100 that some depth goes over size: more than is proposed"};
    own.expected = expected;
    return own;
}

// ---- data

TEST(HoneSectionData, HoldsTheStoneAtItsLowerReversalAndItsWindows) {
    const HoneSectionData data = dataOf(shortStoneOutlook());
    ASSERT_TRUE(data.stone);
    EXPECT_NEAR(data.stone->lower_mm, 4.04 * 25.4, 1e-9);
    EXPECT_NEAR(data.stone->length_mm, 25.4, 1e-9);
    EXPECT_NEAR(data.stone->below_mm, 0.06 * 25.4, 1e-9);
    // The carrier touches the closed end: 4.10 less 0.06 in.
    EXPECT_NEAR(data.stone->lowest_mm, 4.04 * 25.4, 1e-9);
    ASSERT_EQ(data.windows.size(), 3U);
    EXPECT_EQ(data.windows[1].strokes.toStdString(), "24 strokes");
    EXPECT_EQ(data.windows[1].seconds.toStdString(), "24 s");
    EXPECT_EQ(data.windows[1].depths.toStdString(), "3.30–4.04 in");
    EXPECT_EQ(data.windows[2].hold.toStdString(), "hold 3 s");
    EXPECT_TRUE(data.windows[0].hold.isEmpty());
    EXPECT_EQ(data.title.toStdString(), "Bore 1 · short 100");
    EXPECT_TRUE(data.modelOnly);
}

TEST(HoneSectionData, SpeaksTheUnitsShown) {
    const HoneSectionData data = dataOf(shortStoneOutlook(), {}, DisplayUnits::metric());
    EXPECT_EQ(data.windows[1].depths.toStdString(), "83.82–102.616 mm");
    EXPECT_EQ(data.finish.toStdString(), "finish 89.408 mm");
}

TEST(HoneSectionData, StationsAreNumberedByWhatTheyTell) {
    const auto rows = honeMarkRows(dataOf(shortStoneOutlook()));
    ASSERT_EQ(rows.size(), 4U) << "one row a depth, from the open end down";
    EXPECT_EQ(rows[0].depth.toStdString(), "0.60");
    ASSERT_EQ(rows[0].marks.size(), 2U);
    EXPECT_EQ(rows[0].marks[0].order, 2);
    EXPECT_EQ(rows[0].marks[1].order, 5);
    EXPECT_EQ(rows[0].marks[1].axis.toStdString(), "B");
    EXPECT_EQ(rows[3].marks[0].order, 1);
}

TEST(HoneSectionData, DoneSaysStopAndDrawsNoStone) {
    const HoneSectionData data = dataOf(outlookOf(HoneOutcome::done, 0, 2));
    EXPECT_EQ(data.word.toStdString(), "stop");
    EXPECT_EQ(data.verdict, Verdict::within);
    EXPECT_FALSE(data.stone);
    EXPECT_FALSE(data.hasThen());
    EXPECT_TRUE(data.chance.startsWith("Straight within 0.19"));
}

TEST(HoneSectionData, ASetUpOfHisOwnThatMayGoOverSaysSo) {
    const HoneSectionData data = dataOf(shortStoneOutlook(), ownDraft());
    EXPECT_TRUE(data.own);
    EXPECT_TRUE(data.forbidden);
    EXPECT_EQ(data.verdict, Verdict::outside);
    EXPECT_EQ(data.stone->name.toStdString(), "full 100");
    EXPECT_EQ(data.windows.size(), 1U);
    EXPECT_TRUE(data.measure.empty()) << "the proposal's stations are not his";
    HoneOwnDraft refused = ownDraft();
    refused.expected.reset();
    refused.refused = "the stroke goes through the closed end";
    const HoneSectionData no = dataOf(shortStoneOutlook(), refused);
    EXPECT_FALSE(no.hasThen());
    EXPECT_EQ(no.chance.toStdString(), "The stroke goes through the closed end.");
    EXPECT_TRUE(no.forbidden);
}

TEST(HoneSectionData, NothingMeasuredIsSaidKindly) {
    BoreOutlook outlook;
    outlook.bore = 2;
    EXPECT_EQ(dataOf(outlook).friendly.toStdString(), "Nothing is measured yet.");
    EXPECT_EQ(honeSectionRefused(honeBlock(), 9, {}).bore, 0);
    EXPECT_EQ(honeSectionRefused(honeBlock(), 2, "No stones.").friendly.toStdString(),
              "No stones.");
}

TEST(HoneSectionData, IsSaidInWords) {
    const QString said = describeHoneSection(dataOf(shortStoneOutlook()));
    for (const char* part :
         {"Bore 1 · short 100", "24 strokes, 24 s with the lower end", "at 3.30–4.04 in",
          "hold 3 s at the bottom", "Less than 1 chance in 1000", "Model, not measured",
          "To go in thou", "Then measure A at 3.75"})
        EXPECT_TRUE(said.contains(part)) << part << " in: " << said.toStdString();
}

// ---- layout

TEST(HoneSectionLayout, DepthIsToScaleAndLargerIsRight) {
    const HoneSectionData data = dataOf(shortStoneOutlook());
    const auto l = layOutHoneSection(QRectF(0, 0, 900, 700), data, styleOf(false));
    EXPECT_NEAR(l.y(data.depth_mm), l.bottom, 1e-6);
    EXPECT_NEAR(l.depthOf(l.y(42)), 42, 1e-9);
    EXPECT_LT(l.x(-60), l.x(0));
    EXPECT_LT(l.x(0), l.x(12.7));
    EXPECT_GT(l.top, l.roof) << "the carrier stands out above the open end";
    EXPECT_GT(l.plot.width(), 250);
    EXPECT_LE(l.marks.right(), 900.5);
}

TEST(HoneSectionLayout, ALongStoneStandsOutOfTheOpenEndToScale) {
    BoreOutlook outlook = shortStoneOutlook();
    outlook.next->stone = "k1";
    outlook.next->windows = {plannedWindow("2.2", "2.4", 20)};
    const HoneSectionData data = dataOf(outlook);
    const auto l = layOutHoneSection(QRectF(0, 0, 500, 600), data, styleOf(false));
    // 3 in of abrasive, its lower end at 2.4: 0.6 in stand out.
    EXPECT_GT(l.top - l.roof, 0.6 * 25.4 * l.pixelsPerMm);
}

// ---- pictures

struct Picture {
    std::string name;
    HoneSectionData data;
};

std::vector<Picture> pictures() {
    BoreOutlook near = outlookOf(HoneOutcome::next, -9, 6);
    near.curves.then = vLine(near.curves.depth_mm, -1, 1.5, 1.6);
    near.modelOnly = false;
    near.next = shortStoneOutlook().next;
    near.next->stone = "k3";
    near.next->windows = {plannedWindow("2.10", "4.05", 12)};
    BoreOutlook waits = shortStoneOutlook();
    waits.waits = true;
    BoreOutlook checked = shortStoneOutlook();
    checked.checked.emplace();
    for (const double depth : {15.0, 46.0, 77.0, 95.0})
        for (const double axis : {1.0, -1.0})
            checked.checked->readings.push_back({{depth, axis}, {}, -58 - depth / 6 + axis, false});
    checked.checked->readings.back().odd = true;
    HoneOwnDraft refused = ownDraft();
    refused.expected.reset();
    refused.refused = "bore 1: the stroke goes 0.12 in through the closed end, where the carrier "
                      "touches; its lower end may stand at 4.05 in at most";
    BoreOutlook through = shortStoneOutlook();
    BoreOutlook bare;
    bare.bore = 1;
    return {{"next", dataOf(shortStoneOutlook())},
            {"metric", dataOf(shortStoneOutlook(), {}, DisplayUnits::metric())},
            {"near", dataOf(near)},
            {"waits", dataOf(waits)},
            {"checked", dataOf(checked)},
            {"own", dataOf(shortStoneOutlook(), ownDraft())},
            {"refused", dataOf(shortStoneOutlook(), refused)},
            {"done", dataOf(outlookOf(HoneOutcome::done, 0, 3))},
            {"cannot-tell", dataOf(outlookOf(HoneOutcome::gaugeCannotTell, -1, 6))},
            {"bare", dataOf(bare)}};
}

void expectTidy(const std::string& name, const QSize& size, const TextLog& log) {
    const QRectF outer(QPointF(), size);
    for (std::size_t i = 0; i < log.size(); ++i) {
        EXPECT_TRUE(outer.adjusted(-0.5, -0.5, 0.5, 0.5).contains(log[i].ink))
            << name << ": outside: " << log[i].text.toStdString();
        for (std::size_t j = i + 1; j < log.size(); ++j) {
            const QRectF both = log[i].ink.intersected(log[j].ink);
            EXPECT_FALSE(both.width() > 0.6 && both.height() > 2.5)
                << name << ": '" << log[i].text.toStdString() << "' over '"
                << log[j].text.toStdString() << "'";
        }
    }
}

TEST(HoneSectionPicture, NoTextLeavesItOrLiesOverAnother) {
    const QDir folder(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures"));
    ASSERT_TRUE(QDir().mkpath(folder.path()));
    for (const Picture& picture : pictures())
        for (const QSize size : {QSize(320, 340), QSize(420, 520), QSize(900, 700)})
            for (const bool dark : {false, true}) {
                TextLog log;
                PictureStyle style = styleOf(dark);
                style.log = &log;
                const QImage image = renderHoneSection(size, picture.data, style);
                const std::string name =
                    "hone-" + picture.name + "-" + std::to_string(size.width());
                expectTidy(name, size, log);
                const QString file = QString::fromStdString(name) + (dark ? "-dark.png" : ".png");
                EXPECT_TRUE(image.save(folder.filePath(file))) << name;
                if (dark || size.width() != 420) continue;
                EXPECT_TRUE(image.convertToFormat(QImage::Format_Grayscale8)
                                .save(folder.filePath(QString::fromStdString(name) + "-grey.png")));
            }
}

TEST(HoneSectionPicture, NoTrackIsDrawnForAStoneThatCannotBeStroked) {
    HoneSectionData data = dataOf(shortStoneOutlook());
    data.stone->highest_mm = data.depth_mm + 30; // of a stone longer than the bore
    const QSize size(900, 700);
    const PictureStyle style = styleOf(false);
    const QImage image = renderHoneSection(size, data, style);
    data.windows.clear();
    const QImage without = renderHoneSection(size, data, style);
    const auto l = layOutHoneSection(QRectF(QPointF(), size), data, style);
    for (int y = static_cast<int>(l.bottom) + 2; y < size.height(); ++y)
        for (int x = 0; x < size.width() / 3; ++x)
            ASSERT_EQ(image.pixel(x, y), without.pixel(x, y)) << x << ", " << y << " in the foot";
}

TEST(PictureText, AParagraphIsCutBehindAWholeWord) {
    const QString text = QStringLiteral("Reckoned on from the pass before, which has not been "
                                        "measured yet; measure it first of all.");
    const QFont font = pictureFont();
    QStringList words = QString(text).split(' ');
    for (int width = 120; width < 300; width += 7) {
        TextLog log;
        PictureStyle style = styleOf(false);
        style.log = &log;
        QImage image(320, 100, QImage::Format_ARGB32);
        QPainter painter(&image);
        drawParagraph(painter, style, QRectF(0, 0, width, 2 * lineHeight(font)), text, font,
                      Qt::black);
        ASSERT_EQ(log.size(), 2U);
        QString last = log.back().text;
        ASSERT_TRUE(last.endsWith(QStringLiteral(" …"))) << last.toStdString();
        last.chop(2);
        EXPECT_TRUE(words.contains(last.section(' ', -1))) << last.toStdString();
    }
}

TEST(HoneSectionPicture, WhatItMeansNeedsNoColour) {
    TextLog log;
    PictureStyle style = PictureStyle::onPaper(pictureFont());
    style.log = &log;
    renderHoneSection({900, 700}, dataOf(shortStoneOutlook()), style);
    QStringList texts;
    for (const DrawnText& text : log)
        texts << text.text;
    for (const char* text :
         {"to go, thou", "now, 95 %", "expected afterwards, 95 %", "finish 3.5200 in", "allowed",
          "ports", "24 strokes", "hold 3 s", "3.30–4.04 in", "aim, 0.25 thou wide"})
        EXPECT_TRUE(texts.contains(QString::fromUtf8(text))) << text;
}

} // namespace
} // namespace borewright
