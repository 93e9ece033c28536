// SPDX-License-Identifier: GPL-3.0-or-later
// His own set-up beside the plan: what is in the drawing is what is logged, timed and measured.
#include "tests/app/hone_support.h"

#include "app/pictures/hone_section_view.h"
#include "core/workbook/stations.h"

namespace borewright {
namespace {

using namespace test;

class OwnBesidePlan : public Honing {
protected:
    OwnBesidePlan() {
        bench.selection.setBore(1);
        page.settle();
    }
    void typeOwn() {
        press(Qt::Key_F4);
        choose(page, "Stone of this pass", 1);
        fillIn(page, "Lower end from of window 1", "2.5");
        fillIn(page, "Lower end to of window 1", "3.5");
        fillIn(page, "How long of window 1", "7");
    }
};

TEST_F(OwnBesidePlan, TheKeyOfThePlanLogsNothingWhileItIsInTheDrawing) {
    ASSERT_TRUE(outlook(1) != nullptr && outlook(1)->next);
    typeOwn();
    EXPECT_FALSE(button(page, "Done as planned (F9)")->isEnabled());
    press(Qt::Key_F9);
    EXPECT_TRUE(record().passes.empty()) << "the plan was never done";
    EXPECT_NE(says("Why it was not done").find("Your own set-up"), std::string::npos)
        << says("Why it was not done");
    openTab("Plan");
    EXPECT_TRUE(button(page, "Done as planned (F9)")->isEnabled());
    press(Qt::Key_F9);
    EXPECT_EQ(record().passes.size(), 1U) << says("Why it was not done");
}

TEST_F(OwnBesidePlan, TheBeatCountsWhatTheDrawingShows) {
    ASSERT_TRUE(outlook(1) != nullptr && outlook(1)->next);
    const auto words = [this] { return says("The window being timed"); };
    const std::string planned = words();
    typeOwn();
    EXPECT_NE(words().find("from 2.50 to 3.50 in, 7 strokes"), std::string::npos) << words();
    openTab("Plan");
    EXPECT_EQ(words(), planned);
}

TEST_F(OwnBesidePlan, TheCheckAfterItAsksForWhatThePageNames) {
    typeOwn();
    auto* field = named<QLineEdit>(page, "How long of window 1");
    QTest::keyClick(field, Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(record().passes.size(), 1U) << says("What speaks against it");
    EXPECT_NE(says("What was done"), "");
    page.settle();
    const std::vector<Station> wanted = outlook(1)->toRead;
    ASSERT_FALSE(wanted.empty()) << outlook(1)->headline;
    press(Qt::Key_F8);
    const Survey& check = bench.document.workbook().surveys.back();
    EXPECT_EQ(check.header.asked, wanted);
    EXPECT_EQ(bench.selection.station(),
              inOrder(bench.document.workbook().block, wanted, Order::downAndUp).front())
        << "the walk begins at its beginning";
}

TEST_F(OwnBesidePlan, WhatWasSaidOfAPassGoesWithIt) {
    press(Qt::Key_F9);
    ASSERT_NE(says("What was done").find("Logged"), std::string::npos);
    bench.document.undoStack().undo();
    EXPECT_EQ(says("What was done"), "") << "nothing waits for a check any more";
    press(Qt::Key_F9);
    page.settle();
    bench.selection.setBore(2);
    EXPECT_EQ(says("What was done"), "") << "it was of bore 1";
}

TEST_F(OwnBesidePlan, AHeadlineOfBeforeTheChangeIsNotToBeFollowed) {
    const auto* headline = named<QLabel>(page, "What next with the hone");
    EXPECT_TRUE(headline->isEnabled());
    press(Qt::Key_F9);
    EXPECT_FALSE(headline->isEnabled()) << headline->text().toStdString();
    page.settle();
    EXPECT_TRUE(headline->isEnabled());
}

TEST_F(OwnBesidePlan, PlacesAreNumberedAsTheyWillBeAskedFor) {
    ASSERT_TRUE(outlook(1) != nullptr && outlook(1)->next);
    const Block& block = bench.document.workbook().block;
    const auto walk = inOrder(block, outlook(1)->next->measure, Order::downAndUp);
    const auto& drawn = page.findChild<HoneSectionView*>()->data().measure;
    ASSERT_EQ(drawn.size(), walk.size());
    for (std::size_t i = 0; i < walk.size(); ++i) {
        EXPECT_EQ(drawn[i].order, static_cast<int>(i) + 1);
        EXPECT_EQ(drawn[i].axis.toStdString(), walk[i].axis);
        EXPECT_NEAR(drawn[i].depth_mm, walk[i].depth.in(Unit::millimetre), 1e-9);
    }
}

} // namespace
} // namespace borewright
