// SPDX-License-Identifier: GPL-3.0-or-later
// The Block page driven by keys: fields, refusals, numbering, limits.
#include "app/block/block_page.h"
#include "app/block/block_verbs.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class BlockPageTest : public testing::Test {
protected:
    BlockPageTest()
        : bench(made())
        , page(bench.context()) {
        page.resize(1100, 800);
        page.show();
    }
    static Workbook made() {
        Workbook workbook = inchBlock(3);
        addWornLimits(workbook, "3.504", "3", "2");
        return workbook;
    }
    QLineEdit* field(const char* name) const {
        for (QLineEdit* edit : page.findChildren<QLineEdit*>())
            if (edit->accessibleName() == QLatin1String(name)) return edit;
        ADD_FAILURE() << "no field called " << name;
        return nullptr;
    }
    void type(const char* name, const char* text) {
        QLineEdit* edit = field(name);
        if (edit == nullptr) return;
        edit->setFocus();
        edit->selectAll();
        QTest::keyClick(edit, Qt::Key_Delete);
        QTest::keyClicks(edit, text);
        QTest::keyClick(edit, Qt::Key_Return);
    }
    QPushButton* button(const char* name) const {
        for (QPushButton* found : page.findChildren<QPushButton*>())
            if (found->accessibleName() == QLatin1String(name)) return found;
        ADD_FAILURE() << "no button called " << name;
        return nullptr;
    }
    // Types nonsense; the workbook must stay as it was, and something must be said.
    void expectRefused(const char* name, const char* text) {
        const Workbook before = bench.document.workbook();
        type(name, text);
        EXPECT_TRUE(bench.document.workbook() == before) << name << " took " << text;
        if (const QLineEdit* edit = field(name)) {
            EXPECT_EQ(edit->text(), text) << "what was typed stays to be mended";
            EXPECT_FALSE(edit->accessibleDescription().isEmpty())
                << name << " said nothing to " << text;
            QTest::keyClick(const_cast<QLineEdit*>(edit), Qt::Key_Escape);
        }
    }
    const Workbook& workbook() const { return bench.document.workbook(); }

    Bench bench;
    BlockPage page;
};

TEST_F(BlockPageTest, EachFieldIsOneUndoStepWithItsName) {
    type("Customer", "A. Customer");
    type("Size to", "3.5050");
    type("Taper up to", "1.5 thou");
    EXPECT_EQ(workbook().job.customer, "A. Customer");
    EXPECT_EQ(workbook().limitSets[0].limits.sizeUpper->value(), in("3.5050"));
    EXPECT_EQ(workbook().limitSets[0].limits.taper->value(), thou("1.5"));
    EXPECT_EQ(bench.document.undoStack().count(), 3);
    EXPECT_EQ(bench.document.undoStack().undoText(), "taper up to, worn limits");
}

TEST_F(BlockPageTest, OpeningAndLeavingEveryFieldChangesNothing) {
    const auto revision = bench.document.revision();
    for (QLineEdit* edit : page.findChildren<QLineEdit*>()) {
        if (!edit->isVisible()) continue;
        edit->setFocus();
        QTest::keyClick(edit, Qt::Key_Return);
        QTest::keyClick(edit, Qt::Key_Tab);
    }
    EXPECT_EQ(bench.document.revision(), revision);
}

TEST_F(BlockPageTest, RefusesNonsenseAtTheField) {
    expectRefused("Number of bores", "none");
    expectRefused("Number of bores", "1000000");
    expectRefused("Standard size", "3.5.1");
    expectRefused("Standard size", "-3");
    expectRefused("Depth", "6o");
    expectRefused("Size to", "3.4.2");
    expectRefused("Size to", "34.24");
    expectRefused("Size from", "3.5060");
    expectRefused("Taper up to", "-1");
    expectRefused("Out-of-round up to", "200 thou");
}

TEST_F(BlockPageTest, WhatWasRefusedStaysWhileOtherFieldsAreFilledIn) {
    button("Add finish")->click();
    type("Out-of-round up to", "0.5");
    type("Taper up to", "0.5");
    type("Size to", "3.5305");
    type("Customer", "A. Customer");
    ASSERT_EQ(workbook().limitSets[1].limits.sizeUpper->value(), in("3.5305"));
    for (const char* name : {"Out-of-round up to", "Taper up to"}) {
        EXPECT_EQ(field(name)->text(), "0.5") << name;
        EXPECT_TRUE(field(name)->accessibleDescription().contains("0.5 thou")) << name;
    }
    type("Taper up to", "0.5 thou");
    EXPECT_EQ(workbook().limitSets[1].limits.taper->value(), thou("0.5"));
    EXPECT_EQ(field("Taper up to")->accessibleDescription(), "");
    EXPECT_EQ(field("Out-of-round up to")->text(), "0.5");
}

TEST_F(BlockPageTest, WhatWasRefusedIsNotCarriedToAnotherBoreSetOrWorkbook) {
    QComboBox* whose = nullptr;
    for (QComboBox* box : page.findChildren<QComboBox*>())
        if (box->accessibleName() == "For") whose = box;
    ASSERT_NE(whose, nullptr);
    type("Size from", "34");
    ASSERT_EQ(field("Size from")->text(), "34");
    whose->setCurrentIndex(2);
    emit whose->activated(2);
    EXPECT_EQ(field("Size from")->text(), "") << "of bore 2";
    EXPECT_EQ(field("Size from")->accessibleDescription(), "");
    type("Size from", "34");
    button("Add finish")->click();
    EXPECT_EQ(field("Size from")->text(), "") << "of the new set";
    type("Size from", "34");
    type("Customer", "x");
    type("Number of bores", "none");
    bench.document.open(made());
    EXPECT_EQ(field("Size from")->text(), "") << "of the next workbook";
    EXPECT_EQ(field("Number of bores")->text(), "3");
    EXPECT_EQ(field("Number of bores")->accessibleDescription(), "");
}

TEST_F(BlockPageTest, AnOversizeThatCanOnlyBeASlipOfUnitIsRefusedWithWhatWasMeant) {
    button("Add finish")->click();
    type("Oversize", "30");
    EXPECT_FALSE(workbook().limitSets[1].oversize);
    EXPECT_EQ(field("Oversize")->text(), "30");
    const QString said = field("Oversize")->accessibleDescription();
    EXPECT_TRUE(said.contains("30 in over a standard size of 3.5")) << said.toStdString();
    EXPECT_TRUE(said.contains("is the unit right? 30 thou is 0.030 in.")) << said.toStdString();
    expectRefused("Oversize", "-0.01");
    type("Oversize", "0.030");
    EXPECT_EQ(workbook().limitSets[1].oversize->value(), in("0.030"));
    EXPECT_EQ(field("Oversize")->accessibleDescription(), "");
}

TEST_F(BlockPageTest, SizesOfASetThatContradictEachOtherAreSaid) {
    const auto said = [&]() -> QString {
        for (QLabel* label : page.findChildren<QLabel*>())
            if (label->accessibleName() == "What does not agree in this set")
                return label->isVisible() ? label->text() : QString();
        ADD_FAILURE() << "nothing says it";
        return {};
    };
    button("Add finish")->click();
    type("Size from", "3.5295");
    type("Size to", "3.5305");
    EXPECT_EQ(said(), "");
    type("Oversize", "0.020"); // 3.5 + 0.020 = 3.520
    EXPECT_TRUE(said().contains("with an oversize of 0.020 in, is below the smallest size "
                                "allowed, 3.5295 in"))
        << said().toStdString();
    type("Oversize", "0.030");
    EXPECT_EQ(said(), "");
    type("Finish size", "3.54");
    EXPECT_TRUE(said().contains("The finish size, 3.54 in, is over the largest size allowed, "
                                "3.5305 in"))
        << said().toStdString();
    EXPECT_EQ(workbook().limitSets[1].finishSize->value(), in("3.54")) << "told, not refused";
    type("Finish size", "3.5302"); // a manual's own, near standard size and oversize
    EXPECT_EQ(said(), "");
    type("Oversize", "0.020");
    EXPECT_TRUE(said().contains("The finish size, 3.5302 in, is not")) << said().toStdString();
    bench.document.undoStack().undo();
    EXPECT_EQ(said(), "");
}

TEST_F(BlockPageTest, EnterGoesOnToTheNextFieldUnlessItRefuses) {
    button("Add finish")->click();
    const auto here = [&] { return static_cast<QLineEdit*>(page.focusWidget()); };
    QTest::keyClicks(here(), "finish\r");
    for (const char* name : {"Size from", "Size to", "Out-of-round up to", "Taper up to"}) {
        EXPECT_EQ(here()->accessibleName(), name);
        QTest::keyClicks(here(), name[0] == 'S' ? "3.53" : "0.0005");
        QTest::keyClick(here(), Qt::Key_Enter, Qt::KeypadModifier);
    }
    EXPECT_EQ(here()->accessibleName(), "Oversize");
    EXPECT_EQ(workbook().limitSets[1].limits.sizeUpper->value(), in("3.53"));
    EXPECT_EQ(workbook().limitSets[1].limits.taper->value(), in("0.0005"));
    QTest::keyClicks(here(), "30\r");
    EXPECT_EQ(here()->accessibleName(), "Oversize") << "to be mended";
    QTest::keyClicks(here(), "0.030\r");
    EXPECT_EQ(here()->accessibleName(), "Finish size");
    EXPECT_EQ(workbook().limitSets[1].oversize->value(), in("0.030"));
    QTest::keyClick(here(), Qt::Key_Return);
    EXPECT_EQ(here()->accessibleName(), "Aim: straight within");
    QLineEdit* last = field("Measured by");
    last->setFocus();
    QTest::keyClick(last, Qt::Key_Return);
    EXPECT_EQ(page.focusWidget(), last) << "not back to the top";
}

TEST_F(BlockPageTest, LimitsOfOneBoreReplaceThoseOfAllAndBack) {
    QComboBox* whose = nullptr;
    for (QComboBox* box : page.findChildren<QComboBox*>())
        if (box->accessibleName() == "For") whose = box;
    ASSERT_NE(whose, nullptr);
    whose->setCurrentIndex(2);
    emit whose->activated(2);
    type("Size to", "3.5060");
    ASSERT_TRUE(workbook().limitSets[0].perBore.contains(2));
    EXPECT_EQ(limitsFor(workbook().limitSets[0], 2).sizeUpper->value(), in("3.5060"));
    EXPECT_EQ(limitsFor(workbook().limitSets[0], 2).taper->value(), thou("2"))
        << "begun as those of all";
    EXPECT_EQ(limitsFor(workbook().limitSets[0], 1).sizeUpper->value(), in("3.504"));
    button("As all bores")->click();
    EXPECT_FALSE(workbook().limitSets[0].perBore.contains(2));
}

TEST_F(BlockPageTest, ASetInUseIsNotRemovedSilently) {
    Survey survey;
    survey.header.id = "s1";
    survey.header.name = "found";
    survey.header.limitSet = workbook().limitSets[0].id;
    ASSERT_TRUE(bench.document.edit(InsertSurvey{0, survey}, "survey"));
    button("Remove set")->click();
    EXPECT_EQ(workbook().limitSets.size(), 1U);
    bench.document.undoStack().undo();
    button("Remove set")->click();
    EXPECT_TRUE(workbook().limitSets.empty());
}

TEST_F(BlockPageTest, AFinishSetTakesOversizeAndFinishSize) {
    button("Add finish")->click();
    type("Name", "0.020 over");
    type("Oversize", "0.020");
    ASSERT_EQ(workbook().limitSets.size(), 2U);
    EXPECT_EQ(workbook().limitSets[1].name, "0.020 over");
    EXPECT_EQ(finishSizeFor(workbook().limitSets[1], workbook().block.bores[0]), in("3.52"));
}

TEST_F(BlockPageTest, MoreAndFewerBoresButNoneWithReadings) {
    type("Number of bores", "6");
    EXPECT_EQ(workbook().block.bores.size(), 6U);
    EXPECT_EQ(workbook().block.bores[5].standardSize, workbook().block.bores[0].standardSize);
    Survey survey;
    survey.header.id = "s1";
    survey.readings.push_back({{6, in("0.5"), "A"}, typedThou("1"), {}, {}, {}, {}});
    ASSERT_TRUE(bench.document.edit(InsertSurvey{0, survey}, "survey"));
    expectRefused("Number of bores", "5");
}

TEST(BlockVerbs, TappedHolesAreNumberedInOrderAndTheRestFollows) {
    Workbook workbook = inchBlock(4);
    const Renumber edit = numbered(workbook.block, {3, 1});
    ASSERT_TRUE(apply(workbook, edit));
    EXPECT_EQ(workbook.block.bores[2].number, 1);
    EXPECT_EQ(workbook.block.bores[0].number, 2);
    EXPECT_EQ(workbook.block.bores[1].number, 3);
    EXPECT_EQ(workbook.block.bores[3].number, 4);
}

} // namespace
} // namespace borewright
