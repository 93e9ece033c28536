// SPDX-License-Identifier: GPL-3.0-or-later
// The pictures: geometry from known answers, hit tests, no text clipped or over another, and
// golden pictures compared exactly. Each picture, light and dark, is written to look at.
#include "app/pictures/block_sections.h"
#include "app/pictures/depth_map.h"
#include "app/pictures/plan.h"
#include "app/pictures/section.h"
#include "app/pictures/section_layout.h"
#include "app/pictures/section_view.h"
#include "app/pictures/strip.h"
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

QFont pictureFont() {
    QFont font("Noto Sans");
    font.setPixelSize(14);
    return font;
}

PictureStyle styleOf(bool dark) {
    return dark ? PictureStyle::darkScreen(pictureFont()) : PictureStyle::light(pictureFont());
}

// A block of one bore whose closed end is `v_thou` smaller than its open end, straight between.
Workbook vBlock(double v_thou, std::string& survey) {
    Workbook workbook = test::inchBlock(1);
    survey = test::addSurvey(workbook, SurveyKind::asFound, "as found");
    test::typeShape(workbook, survey, 1, [v_thou](double depth_in, const std::string&) {
        return 3.0 - v_thou * (depth_in - 0.5) / 3.0;
    });
    return workbook;
}

SectionData sectionOf(const Workbook& workbook, const std::string& survey, int bore,
                      SectionOptions::Mode mode = SectionOptions::Mode::trueSize) {
    const DisplayUnits units = naturalUnits(workbook);
    SectionOptions options;
    options.mode = mode;
    return sectionData(workbook, compute(workbook, units), survey, bore, units, options);
}

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

// ---- texts

using Painter = std::function<void(QPainter&, const QRectF&, const PictureStyle&)>;

struct NamedPicture {
    std::string name;
    QSize size;
    Painter paint;
};

void addSections(std::vector<NamedPicture>& all, const Workbook& w, const std::string& name) {
    for (const Survey& survey : w.surveys)
        for (const auto mode : {SectionOptions::Mode::trueSize, SectionOptions::Mode::aboutMean})
            for (const QSize size : {QSize(160, 220), QSize(320, 460), QSize(900, 1200)}) {
                const SectionData data = sectionOf(w, survey.header.id, 1, mode);
                all.push_back({"section-" + name + "-" + survey.header.id +
                                   (mode == SectionOptions::Mode::trueSize ? "" : "-mean") + "-" +
                                   std::to_string(size.width()),
                               size, [data](QPainter& p, const QRectF& r, const PictureStyle& s) {
                                   paintSection(p, r, data, s);
                               }});
            }
}

void addBlockPictures(std::vector<NamedPicture>& all, const Workbook& w, const std::string& name) {
    const DisplayUnits units = naturalUnits(w);
    const Results results = compute(w, units);
    for (const Survey& survey : w.surveys) {
        const std::string id = survey.header.id;
        const std::string tail = name + "-" + id;
        BlockSectionsOptions options;
        options.chosen = 2;
        const auto sections = blockSectionsData(w, results, id, units, options);
        const auto plan = planData(w, results, id, 2);
        const auto map = depthMapData(w, results, id, units, Station{});
        const auto strip = stripData(w, results, id, units, 2);
        for (const QSize size : {QSize(300, 220), QSize(720, 420), QSize(1100, 760)})
            all.push_back({"block-" + tail + "-" + std::to_string(size.width()), size,
                           [sections](QPainter& p, const QRectF& r, const PictureStyle& s) {
                               paintBlockSections(p, r, sections, s);
                           }});
        for (const QSize size : {QSize(120, 160), QSize(260, 360), QSize(420, 200)})
            all.push_back({"plan-" + tail + "-" + std::to_string(size.width()), size,
                           [plan](QPainter& p, const QRectF& r, const PictureStyle& s) {
                               paintPlan(p, r, plan, s);
                           }});
        for (const QSize size : {QSize(280, 160), QSize(640, 320)})
            all.push_back({"map-" + tail + "-" + std::to_string(size.width()), size,
                           [map](QPainter& p, const QRectF& r, const PictureStyle& s) {
                               paintDepthMap(p, r, map, s);
                           }});
        for (const QSize size : {QSize(280, 160), QSize(640, 280)})
            all.push_back({"strip-" + tail + "-" + std::to_string(size.width()), size,
                           [strip](QPainter& p, const QRectF& r, const PictureStyle& s) {
                               paintStrip(p, r, strip, s);
                           }});
    }
    const auto story = storySectionsData(w, results, {}, units);
    all.push_back(
        {"story-" + name, {600, 260}, [story](QPainter& p, const QRectF& r, const PictureStyle& s) {
             paintBlockSections(p, r, story, s);
         }});
}

// Sixteen bores in a V, read once each; and an empty bore.
void addExtremes(std::vector<NamedPicture>& all) {
    Workbook big = test::inchBlock(16);
    big.block.arrangement = Arrangement::vee;
    const std::string survey = test::addSurvey(big, SurveyKind::asFound, "as found");
    test::addWornLimits(big, "3.505", "1.0", "2.0");
    for (int bore = 1; bore <= 16; ++bore)
        test::type(big, survey, bore, "0.5", "A", std::to_string(bore % 5) + ".5");
    addBlockPictures(all, big, "sixteen");
    const SectionData empty = sectionOf(test::inchBlock(1), "", 1);
    const SectionData once = sectionOf(big, survey, 3);
    for (const auto& [name, data] : {std::pair("empty", empty), std::pair("once", once)})
        for (const QSize size : {QSize(160, 220), QSize(320, 460)})
            all.push_back({std::string("section-") + name + "-" + std::to_string(size.width()),
                           size,
                           [data = data](QPainter& p, const QRectF& r, const PictureStyle& s) {
                               paintSection(p, r, data, s);
                           }});
}

std::vector<NamedPicture> allPictures() {
    std::vector<NamedPicture> all;
    addSections(all, demo::saltmarsh(), "inch");
    addSections(all, demo::rushmere(), "metric");
    addBlockPictures(all, demo::saltmarsh(), "inch");
    addBlockPictures(all, demo::rushmere(), "metric");
    addExtremes(all);
    return all;
}

QImage drawn(const NamedPicture& picture, PictureStyle style, TextLog* log = nullptr) {
    style.log = log;
    QImage image(picture.size, QImage::Format_ARGB32_Premultiplied);
    image.fill(style.background);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    picture.paint(painter, QRectF(QPointF(), picture.size).adjusted(5, 5, -5, -5), style);
    return image;
}

void expectTidy(const NamedPicture& picture, const TextLog& log) {
    const QRectF outer(QPointF(), picture.size);
    for (std::size_t i = 0; i < log.size(); ++i) {
        EXPECT_TRUE(outer.adjusted(-0.5, -0.5, 0.5, 0.5).contains(log[i].ink))
            << picture.name << ": outside: " << log[i].text.toStdString();
        for (std::size_t j = i + 1; j < log.size(); ++j) {
            const QRectF both = log[i].ink.intersected(log[j].ink);
            EXPECT_FALSE(both.width() > 0.6 && both.height() > 2.5)
                << picture.name << ": '" << log[i].text.toStdString() << "' over '"
                << log[j].text.toStdString() << "'";
        }
    }
}

TEST(Pictures, NoTextLeavesItsPictureOrLiesOverAnother) {
    const QDir folder(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures"));
    ASSERT_TRUE(QDir().mkpath(folder.path()));
    for (const NamedPicture& picture : allPictures())
        for (const bool dark : {false, true}) {
            TextLog log;
            const QImage image = drawn(picture, styleOf(dark), &log);
            expectTidy(picture, log);
            const QString file = QString::fromStdString(picture.name + (dark ? "-dark" : ""));
            EXPECT_TRUE(image.save(folder.filePath(file + ".png"))) << picture.name;
        }
}

// ---- golden pictures

TEST(Pictures, AreAsTheGoldenOnesToThePixel) {
    const bool update = qEnvironmentVariableIsSet("BOREWRIGHT_UPDATE_GOLDEN");
    const QDir golden(QStringLiteral(BOREWRIGHT_SOURCE_DIR "/tests/app/golden"));
    const QDir built(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures"));
    ASSERT_TRUE(QDir().mkpath(built.path()));
    const std::set<std::string> kept{
        "section-inch-s1-320", "section-inch-s2-320", "section-metric-s1-320", "block-inch-s1-720",
        "plan-inch-s1-260",    "map-inch-s1-640",     "strip-inch-s1-640"};
    std::size_t compared = 0;
    for (const NamedPicture& picture : allPictures()) {
        if (!kept.contains(picture.name)) continue;
        ++compared;
        const QString file = QString::fromStdString(picture.name) + ".png";
        const QImage actual = drawn(picture, styleOf(false)).convertToFormat(QImage::Format_RGB32);
        if (update) {
            ASSERT_TRUE(actual.save(golden.filePath(file)));
        }
        const QImage wanted = QImage(golden.filePath(file)).convertToFormat(QImage::Format_RGB32);
        if (actual == wanted) continue;
        const QString written = built.filePath("differs-" + file);
        actual.save(written);
        ADD_FAILURE() << picture.name
                      << " differs from tests/app/golden; drawn now: " << written.toStdString()
                      << "; if it is meant, run again with "
                      << "BOREWRIGHT_UPDATE_GOLDEN=1";
    }
    EXPECT_EQ(compared, kept.size());
}

} // namespace
} // namespace borewright
