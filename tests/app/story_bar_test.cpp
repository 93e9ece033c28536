// SPDX-License-Identifier: GPL-3.0-or-later
// A slip seen, accepted, kept or measured again by one key each; driven through the real page.
#include "app/measure/measure_page.h"
#include "app/measure/story_bar.h"
#include "tests/support/bench_context.h"
#include "tests/support/demo_scenarios.h"

#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class Stories : public testing::Test {
protected:
    Stories()
        : bench(demo::saltmarsh())
        , page(bench.context()) {
        bench.selection.setSurvey("s1");
        page.resize(1100, 700);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
        bar = page.findChild<StoryBar*>();
    }
    void press(Qt::Key key) { QTest::keyClick(page.focusWidget(), key); }
    const Survey& found() const { return *findSurvey(bench.document.workbook(), "s1"); }
    std::size_t suspicions() const {
        return findResult(bench.document.results(), "s1")->suspicions.size();
    }
    std::string sizeAt(int bore, const char* depth, const char* axis) const {
        const BoreResult* result =
            findBoreResult(*findResult(bench.document.results(), "s1"), bore);
        const StationResult* station =
            findStation(*result, readTyped(depth, Unit::inch)->value(), axis);
        return formatSize(*station->diameter, DisplayUnits::inch());
    }

    Bench bench;
    MeasurePage page;
    StoryBar* bar = nullptr;
};

TEST_F(Stories, EnterAcceptsTheLikeliestAndStrikesTheOldOut) {
    ASSERT_EQ(suspicions(), 2U) << "a sign turned and a turn of the dial missed";
    press(Qt::Key_F9);
    EXPECT_TRUE(bar->isOpen());
    press(Qt::Key_Return);
    EXPECT_EQ(sizeAt(2, "1.20", "A"), "3.4216");
    EXPECT_EQ(suspicions(), 1U);
    const Reading& taken = found().readings.back();
    EXPECT_EQ(taken.accepted.value_or("not accepted"), "sign turned");
    press(Qt::Key_F9);
    press(Qt::Key_1);
    EXPECT_EQ(sizeAt(6, "0.60", "B"), "3.4238");
    EXPECT_EQ(suspicions(), 0U);
    EXPECT_FALSE(bar->isVisible()) << "nothing is left to look at";
}

TEST_F(Stories, UndoTakesBackBothTheStrikeAndTheNewReading) {
    const Workbook before = bench.document.workbook();
    press(Qt::Key_F9);
    press(Qt::Key_Return);
    EXPECT_FALSE(bench.document.workbook() == before);
    bench.document.undoStack().undo();
    EXPECT_TRUE(bench.document.workbook() == before);
    EXPECT_EQ(suspicions(), 2U);
}

TEST_F(Stories, KeptReadingsAreNotAskedAboutAgain) {
    press(Qt::Key_F9);
    press(Qt::Key_K);
    EXPECT_EQ(suspicions(), 1U);
    EXPECT_EQ(sizeAt(2, "1.20", "A"), "3.4184") << "the reading stays as it was typed";
}

TEST_F(Stories, MeasuringAgainGoesToTheStation) {
    press(Qt::Key_F9);
    press(Qt::Key_M);
    auto* entry = page.findChild<QLineEdit*>("entry");
    EXPECT_TRUE(entry->hasFocus());
    ASSERT_TRUE(bench.selection.station());
    EXPECT_EQ(describe(*bench.selection.station(), bench.document.workbook().block),
              "bore 2, 1.20 in, A");
    for (const char key : std::string("1.6"))
        QTest::keyClick(entry, key, Qt::KeypadModifier);
    QTest::keyClick(entry, Qt::Key_Enter, Qt::KeypadModifier);
    EXPECT_EQ(sizeAt(2, "1.20", "A"), "3.4216");
    EXPECT_EQ(suspicions(), 1U);
}

TEST_F(Stories, EscapeChangesNothing) {
    const Workbook before = bench.document.workbook();
    press(Qt::Key_F9);
    press(Qt::Key_Escape);
    EXPECT_FALSE(bar->isOpen());
    EXPECT_TRUE(bench.document.workbook() == before);
}

TEST_F(Stories, GoingToAnAccusedReadingOpensItsStories) {
    bench.selection.setStation({6, readTyped("0.60", Unit::inch)->value(), "B"});
    EXPECT_TRUE(bar->isOpen());
    bench.selection.setStation({1, readTyped("0.60", Unit::inch)->value(), "B"});
    EXPECT_FALSE(bar->isOpen());
}

} // namespace
} // namespace borewright
