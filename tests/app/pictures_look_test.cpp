// SPDX-License-Identifier: GPL-3.0-or-later
// The pictures: no text clipped or over another, and golden pictures compared exactly. Each picture,
// light and dark, is written to look at.
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
