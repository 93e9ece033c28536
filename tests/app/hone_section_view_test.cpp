// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing of a set-up on screen: the hand and the keys on its windows, what it tells, and that
// it writes nothing.
#include "app/pictures/hone_section_layout.h"
#include "app/pictures/hone_section_view.h"
#include "tests/support/bench_context.h"
#include "tests/support/hone_outlooks.h"

#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>

#include <gtest/gtest.h>

#include <cmath>

namespace borewright {
namespace {

using namespace test;

class HoneSectionHands : public testing::Test {
protected:
    HoneSectionHands()
        : bench(honeBlock())
        , view(bench.document, bench.selection)
        , dragged(&view, &HoneSectionView::windowDragged)
        , committed(&view, &HoneSectionView::windowCommitted) {
        bench.selection.setBore(1);
        view.resize(900, 700);
        view.setOutlook(shortStoneOutlook());
        view.show();
        view.setFocus();
    }
    [[nodiscard]] HoneSectionLayout layout() {
        const PictureStyle style = PictureStyle::forPalette(view.palette(), view.font());
        return layOutHoneSection(pictureArea(QSizeF(view.size()), style), view.data(), style);
    }
    [[nodiscard]] QPoint at(std::size_t window, double depth_in) {
        return QPointF(layout().barX(window), layout().y(depth_in * 25.4)).toPoint();
    }
    static double inches(const QVariant& length) { return length.value<Length>().in(Unit::inch); }

    test::Bench bench;
    HoneSectionView view;
    QSignalSpy dragged;
    QSignalSpy committed;
};

TEST_F(HoneSectionHands, DraggingAnEndSnapsAndTellsThenCommits) {
    const auto before = bench.document.workbook();
    QTest::mousePress(&view, Qt::LeftButton, {}, at(1, 3.30));
    QTest::mouseMove(&view, at(1, 3.107));
    ASSERT_FALSE(dragged.empty());
    EXPECT_TRUE(committed.empty());
    EXPECT_EQ(dragged.back()[0].toInt(), 1);
    // In steps of 0.02 in; a pixel is less than a hundredth of an inch here.
    const double from = inches(dragged.back()[1]);
    EXPECT_NEAR(from, 3.11, 0.021);
    EXPECT_NEAR(from / 0.02, std::round(from / 0.02), 1e-6);
    EXPECT_NEAR(inches(dragged.back()[2]), 4.04, 1e-9) << "the other end stays";
    EXPECT_NEAR(view.data().windows[1].from_mm, from * 25.4, 1e-6) << "it follows the hand";
    QTest::mouseRelease(&view, Qt::LeftButton, {}, at(1, 3.107));
    ASSERT_EQ(committed.count(), 1);
    EXPECT_NEAR(inches(committed[0][1]), from, 1e-9);
    EXPECT_EQ(bench.document.workbook(), before) << "a view writes nothing";
}

TEST_F(HoneSectionHands, NoEndGoesThroughTheClosedEndOrPastTheOther) {
    QTest::mousePress(&view, Qt::LeftButton, {}, at(1, 3.30));
    QTest::mouseMove(&view, at(1, 4.30));
    EXPECT_NEAR(inches(dragged.back()[1]), 4.04, 1e-9);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, at(1, 4.30));
    view.setOutlook(shortStoneOutlook());
    QTest::mousePress(&view, Qt::LeftButton, {}, at(0, 3.0));
    QTest::mouseMove(&view, at(0, 2.8));
    const double from = inches(dragged.back()[1]);
    EXPECT_NEAR(from, 1.90, 0.03) << "between the ends the whole moves";
    EXPECT_NEAR(inches(dragged.back()[2]) - from, 1.94, 1e-6) << "as long as it was";
    QTest::mouseMove(&view, at(0, 3.9));
    EXPECT_NEAR(inches(dragged.back()[2]), 4.04, 1e-6) << "no lower than the stone reaches";
}

TEST_F(HoneSectionHands, MetricSnapsToHalfAMillimetre) {
    bench.document.setUnits(DisplayUnits::metric());
    QTest::mousePress(&view, Qt::LeftButton, {}, at(0, 2.10));
    QTest::mouseMove(&view, at(0, 2.5));
    const double from_mm = dragged.back()[1].value<Length>().in(Unit::millimetre);
    EXPECT_NEAR(from_mm * 2, std::round(from_mm * 2), 1e-6);
}

TEST_F(HoneSectionHands, TabGoesThroughTheEndsAndArrowsMoveThem) {
    QTest::keyClick(&view, Qt::Key_Tab);
    EXPECT_EQ(view.chosen(), (HoneSectionView::Chosen{0, 0}));
    EXPECT_TRUE(view.accessibleDescription().contains("Window 1, upper end at 2.10 in"))
        << view.accessibleDescription().toStdString();
    for (int i = 0; i < 2; ++i)
        QTest::keyClick(&view, Qt::Key_Tab);
    EXPECT_EQ(view.chosen(), (HoneSectionView::Chosen{1, 0}));
    QTest::keyClick(&view, Qt::Key_Up);
    ASSERT_EQ(committed.count(), 1);
    EXPECT_EQ(committed[0][0].toInt(), 1);
    EXPECT_NEAR(inches(committed[0][1]), 3.28, 1e-9);
    QTest::keyPress(&view, Qt::Key_PageDown);
    QTest::keyClick(&view, Qt::Key_Escape);
    EXPECT_EQ(committed.count(), 1) << "Escape takes it back";
    EXPECT_NEAR(inches(dragged.back()[1]), 3.30, 1e-9);
}

TEST_F(HoneSectionHands, AfterTheLastEndTabLeaves) {
    QWidget page;
    auto* column = new QVBoxLayout(&page);
    auto* inside = new HoneSectionView(bench.document, bench.selection);
    auto* field = new QLineEdit;
    column->addWidget(inside);
    column->addWidget(field);
    inside->setOutlook(shortStoneOutlook());
    page.resize(700, 700);
    page.show();
    page.activateWindow();
    inside->setFocus();
    for (int i = 0; i < 7; ++i)
        QTest::keyClick(inside, Qt::Key_Tab);
    EXPECT_EQ(page.focusWidget(), field);
    EXPECT_FALSE(inside->chosen());
}

TEST_F(HoneSectionHands, AnotherBoreIsDrawnBareUntilItsOutlookComes) {
    view.setWaiting("Reckoning …");
    bench.selection.setBore(2);
    EXPECT_EQ(view.data().friendly.toStdString(), "Reckoning …");
    EXPECT_TRUE(view.data().windows.empty());
}

} // namespace
} // namespace borewright
