// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes filled in by steps and limits about all of them, by keys and without a window.
#include "app/size/size_steps.h"
#include "tests/app/size_support.h"

#include <QApplication>
#include <QDir>

namespace borewright {
namespace {

using namespace test;

TEST_F(Sizing, StepsFillTheListInInchAndMetric) {
    fillIn(page, "Steps to", "0.030");
    fillIn(page, "Step", "0.010");
    button(page, "Fill in")->click();
    EXPECT_EQ(offered(),
              (std::vector<std::string>{"0.000 in", "0.010 in", "0.020 in", "0.030 in"}));
    EXPECT_EQ(bench.document.undoStack().count(), 1) << "one step";
    fillIn(page, "Steps from", "0.25 mm");
    fillIn(page, "Steps to", "0.75 mm");
    fillIn(page, "Step", "0.25 mm");
    button(page, "Fill in")->click();
    EXPECT_EQ(offered(), (std::vector<std::string>{"0.000 in", "0.25 mm", "0.010 in", "0.50 mm",
                                                   "0.020 in", "0.75 mm", "0.030 in"}));
}

TEST_F(Sizing, StepsThatLeadNowhereAreRefusedAtTheirField) {
    struct Bad {
        const char *from, *to, *step;
        const char* field;
        const char* words;
    };
    for (const Bad& bad : {
             Bad{"0", "0.030", "", "Step", "missing"},
             {"0", "", "0.010", "Steps to", "missing"},
             {"0", "0.030", "0", "Step", "more than zero"},
             {"0", "0.030", "-0.010", "Step", "more than zero"},
             {"0.040", "0.030", "0.010", "Steps to", "below where the steps begin"},
             {"0", "30", "0.010", "Steps to", "30 thou"},
             {"0", "0.300", "0.001", "Step", "301 sizes"},
             {"0", "all", "0.010", "Steps to", "not a number"},
             {"0", "0.030", "10", "Step", "10 thou"},
             {"0", "0.030", "0.040", "Step", "passes the end at once"},
         }) {
        fillIn(page, "Steps from", bad.from);
        fillIn(page, "Steps to", bad.to);
        fillIn(page, "Step", bad.step);
        button(page, "Fill in")->click();
        EXPECT_TRUE(refusalAt(bad.field).contains(bad.words))
            << bad.field << ": " << refusalAt(bad.field).toStdString();
        EXPECT_TRUE(plan().sizes.empty()) << bad.words;
    }
}

TEST_F(Sizing, EnterGoesThroughTheBoxesAndFillsIn) {
    const auto enter = [](const char* text) {
        QTest::keyClicks(QApplication::focusWidget(), text);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    };
    named<QLineEdit>(page, "Steps from")->setFocus();
    for (const char* text : {"0.010", "0.03O"})
        enter(text);
    EXPECT_TRUE(named<QLineEdit>(page, "Steps to")->hasFocus()) << "a letter O is to be mended";
    EXPECT_TRUE(refusalAt("Steps to").contains("not a number"));
    for (const char* text : {"0.030", "0.010"})
        enter(text);
    EXPECT_EQ(offered(), (std::vector<std::string>{"0.010 in", "0.020 in", "0.030 in"}));
    auto* said = named<QLabel>(page, "Why it was not filled in");
    EXPECT_FALSE(said->isVisible());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(said->text().contains("on offer already")) << said->text().toStdString();
    named<QLineEdit>(page, "Limit below each size")->setFocus();
    enter("0");
    enter("0.001");
    EXPECT_EQ(plan().sizes[0].upper->value(), in("3.4310"));
}

TEST_F(Sizing, WhatIsRefusedOfStepsStandsAcrossTheWholeForm) {
    fillIn(page, "Steps to", "0.030");
    fillIn(page, "Step", "10");
    button(page, "Fill in")->click();
    QTest::qWait(20);
    auto* said = named<QLabel>(page, "Why it was not filled in");
    ASSERT_TRUE(said->isVisible());
    EXPECT_TRUE(said->text().startsWith("Step: ")) << said->text().toStdString();
    EXPECT_EQ(said->width(), said->parentWidget()->width());
    EXPECT_GE(said->height(), said->heightForWidth(said->width())) << "not cut off";
    EXPECT_TRUE(QDir().mkpath(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures")));
    EXPECT_TRUE(said->parentWidget()->grab().save(
        QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures/size-steps-refused.png")));
    EXPECT_EQ(named<QLineEdit>(page, "Step")->selectedText(), "10") << "to be typed over";
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_FALSE(said->isVisible());
    EXPECT_EQ(named<QLineEdit>(page, "Step")->text(), "");
}

TEST_F(Sizing, StepsKeepTheirMeaningAndEndWithTheirWorkbook) {
    fillIn(page, "Steps to", "0.030");
    bench.document.setUnits(DisplayUnits::metric());
    EXPECT_EQ(named<QLineEdit>(page, "Steps to")->text(), "0.030 in");
    fillIn(page, "Limit above each size", "low");
    bench.document.open(sixBores());
    for (const char* name : {"Steps from", "Steps to", "Step", "Limit above each size"}) {
        EXPECT_EQ(named<QLineEdit>(page, name)->text(), "") << name;
        EXPECT_EQ(refusalAt(name), "") << name;
    }
}

TEST_F(Sizing, LimitsAreSetAboutAllSizesAtOnce) {
    offer({"0", "0.010", "0.020"});
    fillIn(page, "Limit below each size", "0.0005");
    fillIn(page, "Limit above each size", "0.0010");
    button(page, "Set for all")->click();
    EXPECT_EQ(plan().sizes[0].lower->value(), in("3.4195"));
    EXPECT_EQ(plan().sizes[2].lower->value(), in("3.4395"));
    EXPECT_EQ(plan().sizes[2].upper->value(), in("3.4410"));
    EXPECT_EQ(bench.document.undoStack().count(), 2);
    fillIn(page, "Limit below each size", "-0.0005");
    EXPECT_TRUE(refusalAt("Limit below each size").contains("without a sign"));
}

TEST(SizeSteps, SizesThatAreThereKeepTheirLimits) {
    SizingPlan plan;
    SizeOnOffer size;
    size.oversize = typedIn(".010");
    size.lower = typedIn("3.4295");
    plan.sizes.push_back(size);
    const auto filled = withSteps(plan, {typedIn("0"), typedIn("0.025"), typedIn("0.010")});
    ASSERT_TRUE(filled);
    ASSERT_EQ(filled->sizes.size(), 3U) << "0.025 is not reached by steps of 0.010";
    EXPECT_EQ(filled->sizes[1], size);
    EXPECT_EQ(filled->sizes[2].oversize.text(), "0.020");
}

TEST(SizeSteps, LimitsNeedOneStandardSize) {
    Workbook workbook = inchBlock(2);
    SizingPlan plan;
    EXPECT_FALSE(withLimitsAbout(plan, typedIn("0"), typedIn("0.001"), workbook.block));
    SizeOnOffer size;
    size.oversize = typedIn("0.010");
    plan.sizes.push_back(size);
    EXPECT_TRUE(withLimitsAbout(plan, typedIn("0"), typedIn("0.001"), workbook.block));
    workbook.block.bores[1].standardSize = typedIn("3.4");
    const auto refused = withLimitsAbout(plan, typedIn("0"), typedIn("0.001"), workbook.block);
    ASSERT_FALSE(refused);
    EXPECT_NE(refused.error().message().find("different standard sizes"), std::string::npos);
    workbook.block.bores[0].standardSize.reset();
    EXPECT_FALSE(withLimitsAbout(plan, typedIn("0"), typedIn("0.001"), workbook.block));
}

} // namespace
} // namespace borewright
