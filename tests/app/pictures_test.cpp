// SPDX-License-Identifier: GPL-3.0-or-later
// The pictures: geometry from known answers, and hit tests.
#include "app/pictures/block_sections.h"
#include "app/pictures/depth_map.h"
#include "app/pictures/plan.h"
#include "app/pictures/section.h"
#include "app/pictures/section_layout.h"
#include "app/pictures/section_view.h"
#include "app/pictures/strip.h"
#include "tests/app/picture_support.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"

#include <QDir>
#include <QElapsedTimer>
#include <QTest>

#include <gtest/gtest.h>

#include <functional>
#include <set>
#include <string>

namespace borewright {
namespace {

using namespace test;

// ---- geometry

TEST(Section, AVOf2ThouMovesTheClosedEndsPointsInwardByHalfOfItMagnified) {
    std::string survey;
    const Workbook workbook = vBlock(2, survey);
    const SectionData data = sectionOf(workbook, survey, 1);
    const PictureStyle style = styleOf(false);
    const QRectF rect(0, 0, 400, 600);
    const SectionLayout layout = layOutSection(rect, data, style);
    const auto points = sectionPoints(rect, data, style);
    ASSERT_EQ(points.size(), 20u) << "5 levels, 2 axes, 2 walls";
    // 2 thou = 0.0508 mm on the diameter: 0.0254 mm at each wall.
    const double inward = 0.0254 * layout.pixelsPerMm * layout.magnification;
    EXPECT_NEAR(points[8].position.x() - points[0].position.x(), inward, 0.01) << "left wall";
    EXPECT_NEAR(points[1].position.x() - points[9].position.x(), inward, 0.01) << "right wall";
    EXPECT_GT(inward, 8) << "a V must be seen";
    EXPECT_NEAR(points[8].position.y() - points[0].position.y(), 3.0 * 25.4 * layout.pixelsPerMm,
                0.01)
        << "3 inches apart in depth";
}

TEST(Section, BothWallsBendOutwardWhereTheBoreIsLarger) {
    std::string survey;
    const SectionData data = sectionOf(vBlock(-2, survey), survey, 1);
    const auto points = sectionPoints(QRectF(0, 0, 400, 600), data, styleOf(false));
    ASSERT_EQ(points.size(), 20u);
    EXPECT_LT(points[8].position.x(), points[0].position.x()) << "left wall goes left";
    EXPECT_GT(points[9].position.x(), points[1].position.x()) << "right wall goes right";
}

TEST(Section, TheMagnificationIsRoundAndTheWallsStayInTheirStrips) {
    EXPECT_EQ(roundMagnification(999), 500);
    EXPECT_EQ(roundMagnification(1000), 1000);
    EXPECT_EQ(roundMagnification(199.9), 100);
    EXPECT_EQ(roundMagnification(49), 20);
    EXPECT_EQ(roundMagnification(0.3), 1);
    std::string survey;
    const SectionData data = sectionOf(vBlock(2, survey), survey, 1);
    for (const QSize size : {QSize(160, 220), QSize(320, 460), QSize(900, 1200)}) {
        const SectionLayout l = layOutSection(QRectF(QPointF(), size), data, styleOf(false));
        for (const double deviation : {l.lowest_um, l.highest_um}) {
            EXPECT_GE(l.left(deviation), l.leftOuter - 0.01) << size.width();
            EXPECT_LE(l.left(deviation), l.leftOuter + l.room + 0.01) << size.width();
            EXPECT_LE(l.right(deviation), l.rightOuter + 0.01) << size.width();
        }
    }
}

TEST(Section, AboutItsMeanAVIsSeenHoweverLargeTheOversize) {
    const Workbook workbook = demo::saltmarsh();
    const SectionData data =
        sectionOf(workbook, workbook.surveys[1].header.id, 1, SectionOptions::Mode::aboutMean);
    double sum = 0;
    double count = 0;
    for (const SectionProfile& profile : data.now)
        for (const SectionReading& reading : profile.points) {
            sum += reading.deviation_um;
            ++count;
        }
    ASSERT_GT(count, 0);
    EXPECT_NEAR(sum / count, 0, 30) << "µm; drawn about the mean of the judged zone";
    EXPECT_FALSE(data.lower_um || data.upper_um) << "limits have no place about a mean";
}

TEST(Section, AnOddReadingDoesNotFlattenTheOthers) {
    std::string survey;
    Workbook workbook = vBlock(2, survey);
    SectionData data = sectionOf(workbook, survey, 1);
    const DeviationRange before = rangeOf(data);
    data.now.front().points.front().odd = true;
    data.now.front().points.front().deviation_um = 5000;
    const DeviationRange after = rangeOf(data);
    EXPECT_LE(after.highest_um - after.lowest_um, 1.51 * (before.highest_um - before.lowest_um));
}

// ---- hit tests

TEST(Section, APointIsFoundUnderTheMouseAndOnlyThere) {
    std::string survey;
    const SectionData data = sectionOf(vBlock(2, survey), survey, 1);
    const auto points = sectionPoints(QRectF(0, 0, 400, 600), data, styleOf(false));
    ASSERT_FALSE(points.empty());
    const SectionPoint* found = nearestPoint(points, points[4].position + QPointF(3, -2), 16);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->station.depth, points[4].station.depth);
    EXPECT_FALSE(found->text.isEmpty());
    EXPECT_EQ(nearestPoint(points, QPointF(200, 5), 16), nullptr);
}

TEST(Plan, EveryBoreIsHitAtItsPlaceAndArrowsLeadToTheNeighbour) {
    const Workbook workbook = test::inchBlock(6);
    const PlanData data = planOfNumbers(workbook.block, 1);
    const QRectF rect(0, 0, 260, 360);
    const PictureStyle style = styleOf(false);
    std::set<int> hit;
    for (int y = 0; y < 360; y += 4)
        for (int x = 0; x < 260; x += 4)
            if (const int bore = planHit(rect, data, style, QPointF(x, y))) hit.insert(bore);
    EXPECT_EQ(hit, (std::set<int>{1, 2, 3, 4, 5, 6}));
    EXPECT_EQ(planNeighbour(rect, data, style, 1, Qt::Key_Down), 2);
    EXPECT_EQ(planNeighbour(rect, data, style, 1, Qt::Key_Up), 1) << "the edge holds";
    EXPECT_EQ(planNeighbour(rect, data, style, 6, Qt::Key_Up), 5);
}

TEST(DepthMap, EveryStationOfTheSurveyIsHitInItsCell) {
    const Workbook workbook = demo::saltmarsh();
    const DisplayUnits units = naturalUnits(workbook);
    const Results results = compute(workbook, units);
    const DepthMapData data =
        depthMapData(workbook, results, workbook.surveys[0].header.id, units, {});
    std::set<Station> hit;
    for (int y = 0; y < 320; y += 9)
        for (int x = 0; x < 640; x += 9)
            if (const auto station =
                    depthMapHit(QRectF(0, 0, 640, 320), data, styleOf(false), QPointF(x, y)))
                hit.insert(*station);
    EXPECT_EQ(hit.size(), 72u) << "6 bores, 6 levels, 2 axes";
}

TEST(BlockSections, EveryBoreIsHitAndAllShareOneScale) {
    const Workbook workbook = demo::saltmarsh();
    const DisplayUnits units = naturalUnits(workbook);
    const Results results = compute(workbook, units);
    const BlockSectionsData data =
        blockSectionsData(workbook, results, workbook.surveys[0].header.id, units, {});
    ASSERT_EQ(data.bores.size(), 6u);
    for (const SectionData& bore : data.bores) {
        ASSERT_TRUE(bore.options.range);
        EXPECT_EQ(bore.options.range->lowest_um, data.bores[0].options.range->lowest_um);
        EXPECT_EQ(bore.options.range->highest_um, data.bores[0].options.range->highest_um);
    }
    std::set<int> hit;
    for (int y = 0; y < 420; y += 5)
        for (int x = 0; x < 720; x += 5)
            hit.insert(blockSectionsHit(QRectF(0, 0, 720, 420), data, styleOf(false),
                                        {double(x), double(y)}));
    hit.erase(0);
    EXPECT_EQ(hit.size(), 6u);
}

// ---- views

class FixedClock final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

TEST(SectionView, AClickChoosesTheStationAndArrowsGoOn) {
    FixedClock clock;
    Document document(clock);
    Selection selection(document);
    std::string survey;
    document.open(vBlock(2, survey));
    const auto revision = document.revision();
    SectionView view(document, selection);
    view.resize(400, 600);
    view.setFont(pictureFont());
    view.show();
    const QRectF rect = QRectF(0, 0, 400, 600).adjusted(5, 5, -5, -5);
    const auto points =
        sectionPoints(rect, view.data(), PictureStyle::forPalette(view.palette(), view.font()));
    ASSERT_EQ(points.size(), 20u);
    QTest::mouseClick(&view, Qt::LeftButton, {}, points[4].position.toPoint());
    ASSERT_TRUE(selection.station());
    EXPECT_EQ(selection.station()->depth, points[4].station.depth);
    QTest::keyClick(&view, Qt::Key_Down);
    EXPECT_EQ(selection.station()->depth, points[6].station.depth);
    QTest::keyClick(&view, Qt::Key_Right);
    EXPECT_EQ(selection.station()->axis, "B");
    EXPECT_TRUE(view.accessibleDescription().contains("0.50"))
        << view.accessibleDescription().toStdString();
    EXPECT_EQ(document.revision(), revision) << "a view never writes";
}

} // namespace
} // namespace borewright
