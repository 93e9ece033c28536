// SPDX-License-Identifier: GPL-3.0-or-later
// The Size page with its real widgets, by keys.
#include "tests/app/size_support.h"

#include <QDir>

namespace borewright {
namespace {

using namespace test;

TEST_F(Sizing, OpeningAndLeavingChangesNothing) {
    const auto revision = bench.document.revision();
    for (QLineEdit* edit : page.findChildren<QLineEdit*>()) {
        edit->setFocus();
        emit edit->editingFinished();
    }
    EXPECT_EQ(bench.document.revision(), revision);
    EXPECT_EQ(bench.document.undoStack().count(), 0);
}

TEST_F(Sizing, TheHeadlineFollowsWhatIsTyped) {
    offer({"0", "0.010", "0.020", "0.030"});
    damageBoreFour();
    EXPECT_TRUE(headline().startsWith("Bore 4 decides: 0.020 in cleans all six, margin 4.0"))
        << headline().toStdString();
    choose(page, "Cut centred on", 2);
    EXPECT_EQ(plan().centring, Centring::originalAxis);
    // About the original axis 3.4390 is needed: 3.4400 − 3.4390 − 0.0005 = 0.5 thou.
    EXPECT_TRUE(headline().contains("margin 0.5")) << headline().toStdString();
    choose(page, "Cut centred on", 0);
    EXPECT_FALSE(plan().centring) << "usual for the method";
    choose(page, "Method", 1);
    EXPECT_EQ(plan().method, CutMethod::boreAndHone);
    EXPECT_TRUE(headline().contains("margin 0.5")) << "a bar is set on the original axis";
    EXPECT_EQ(bench.document.undoStack().count(), 5) << "two edits, three choices";
}

TEST_F(Sizing, AllowancesShowTheUsualAndTakeHisOwn) {
    auto* allowance = named<QLineEdit>(page, "Off below the deepest mark");
    auto* stock = named<QLineEdit>(page, "Left for the hone");
    EXPECT_EQ(allowance->placeholderText().toStdString(), "usual: 0.5 thou");
    EXPECT_EQ(stock->placeholderText().toStdString(), "usual: 3.0 thou");
    EXPECT_FALSE(stock->isEnabled()) << "the hone alone leaves nothing for itself";
    choose(page, "Method", 1);
    EXPECT_TRUE(stock->isEnabled());
    fillIn(page, "Off below the deepest mark", "1 thou");
    fillIn(page, "Left for the hone", "0.0025");
    EXPECT_EQ(plan().finishAllowance, typedThou("1"));
    EXPECT_EQ(plan().honeStock, typedIn("0.0025"));
    for (const char* bad : {"-0.0005", "500", "little"}) {
        fillIn(page, "Off below the deepest mark", bad);
        EXPECT_NE(refusalAt("Off below the deepest mark"), "") << bad;
        EXPECT_EQ(plan().finishAllowance, typedThou("1")) << bad;
        fillIn(page, "Left for the hone", bad);
        EXPECT_NE(refusalAt("Left for the hone"), "") << bad;
    }
    fillIn(page, "Off below the deepest mark", "");
    EXPECT_FALSE(plan().finishAllowance);
}

TEST_F(Sizing, GreatestOversizeIsTypedAndRefused) {
    const char* name = "Engine maker's greatest oversize";
    for (const char* bad : {"-0.010", "30", "none"}) {
        fillIn(page, name, bad);
        EXPECT_NE(refusalAt(name), "") << bad;
        EXPECT_FALSE(plan().greatest) << bad;
    }
    fillIn(page, name, "0.030");
    EXPECT_EQ(plan().greatest, typedIn("0.030"));
    bench.document.undoStack().undo();
    EXPECT_FALSE(plan().greatest);
    EXPECT_EQ(named<QLineEdit>(page, name)->text(), "");
}

TEST_F(Sizing, WearIsSaidOfTheChosenBore) {
    bench.selection.setBore(3);
    EXPECT_EQ(named<QComboBox>(page, "Bore")->currentText(), "3");
    choose(page, "Worn on", static_cast<int>(WearSide::bothSides));
    fillIn(page, "Made to", "3.430");
    EXPECT_EQ(plan().bores.at(3).side, WearSide::bothSides);
    EXPECT_EQ(plan().bores.at(3).madeTo, typedIn("3.430"));
    choose(page, "Bore", 0);
    EXPECT_EQ(bench.selection.bore(), 1);
    EXPECT_EQ(named<QLineEdit>(page, "Made to")->text(), "");
    for (const char* bad : {"0", "-3.43", "34.3", "?"}) {
        fillIn(page, "Made to", bad);
        EXPECT_NE(refusalAt("Made to"), "") << bad;
        EXPECT_EQ(plan().bores.count(1), 0U) << bad;
    }
    choose(page, "Bore", 2);
    EXPECT_EQ(named<QLineEdit>(page, "Made to")->text(), "3.430 in");
    fillIn(page, "Made to", "");
    choose(page, "Worn on", static_cast<int>(WearSide::notSaid));
    EXPECT_TRUE(plan().bores.empty());
}

TEST_F(Sizing, OneKeyHandsTheSizeToTheHone) {
    offer({"0", "0.010", "0.020", "0.030"});
    SizingPlan limited = plan();
    limited.sizes[2].lower = typedIn("3.4395");
    limited.sizes[2].upper = typedIn("3.4410");
    EXPECT_TRUE(bench.document.edit(SetSizing{limited}, "limits"));
    damageBoreFour();
    const Workbook before = bench.document.workbook();
    const int steps = bench.document.undoStack().count();
    EXPECT_TRUE(button(page, "Hone to this size (F10)")->isEnabled());
    QTest::keyClick(&page, Qt::Key_F10);
    const Workbook& after = bench.document.workbook();
    ASSERT_EQ(after.targets.size(), 6U);
    for (const auto& [bore, target] : after.targets) {
        EXPECT_EQ(target.size.value(), in("3.4400")) << "bore " << bore;
        EXPECT_EQ(target.from, "0.020 in over") << "bore " << bore;
    }
    ASSERT_EQ(after.limitSets.size(), before.limitSets.size() + 1);
    const LimitSet& set = after.limitSets.back();
    EXPECT_EQ(set.purpose, LimitPurpose::finish);
    EXPECT_EQ(set.oversize, typedIn("0.020"));
    EXPECT_EQ(set.limits.sizeLower->value(), in("3.4395"));
    EXPECT_EQ(set.limits.sizeUpper->value(), in("3.4410"));
    EXPECT_TRUE(set.perBore.empty());
    EXPECT_EQ(bench.document.undoStack().count(), steps + 1) << "one step";
    EXPECT_TRUE(headline().endsWith("The hone aims at it now.")) << headline().toStdString();
    EXPECT_FALSE(button(page, "Hone to this size (F10)")->isEnabled());
    bench.document.undoStack().undo();
    EXPECT_TRUE(bench.document.workbook() == before);
    EXPECT_TRUE(button(page, "Hone to this size (F10)")->isEnabled());
}

TEST_F(Sizing, TheHoneAimsAtTheSameInWhicheverUnit) {
    offer({"0", "0.010", "0.020", "0.030"});
    damageBoreFour();
    QTest::keyClick(&page, Qt::Key_F10);
    const auto revision = bench.document.revision();
    bench.document.setUnits(DisplayUnits::metric());
    EXPECT_TRUE(headline().endsWith("The hone aims at it now.")) << headline().toStdString();
    EXPECT_FALSE(button(page, "Hone to this size (F10)")->isEnabled());
    QTest::keyClick(&page, Qt::Key_F10);
    EXPECT_EQ(bench.document.revision(), revision) << "nothing to hand over anew";
    FinishTargets other = bench.document.workbook().targets;
    other.at(3).size = typedIn("3.4401");
    EXPECT_TRUE(bench.document.edit(SetTargets{other}, "targets"));
    EXPECT_TRUE(button(page, "Hone to this size (F10)")->isEnabled());
}

TEST_F(Sizing, EachBoreItsOwnSizeIsHandedOnAlike) {
    offer({"0", "0.010", "0.020", "0.030"});
    damageBoreFour();
    button(page, "Each bore may have its own size")->click();
    EXPECT_TRUE(plan().ownSizes);
    QTest::keyClick(&page, Qt::Key_F10);
    const FinishTargets& targets = bench.document.workbook().targets;
    ASSERT_EQ(targets.size(), 6U);
    EXPECT_EQ(targets.at(1).size.value(), in("3.4300"));
    EXPECT_EQ(targets.at(4).size.value(), in("3.4400"));
}

TEST_F(Sizing, FinishLimitsThatAreThereAreLeftAlone) {
    offer({"0.020"});
    auto sets = bench.document.workbook().limitSets;
    LimitSet finish;
    finish.id = freshLimitSetId(bench.document.workbook());
    finish.name = "mine";
    finish.purpose = LimitPurpose::finish;
    finish.oversize = typedIn("0.020");
    finish.limits.sizeLower = typedIn("3.4398");
    sets.push_back(finish);
    EXPECT_TRUE(bench.document.edit(SetLimitSets{sets}, "limits"));
    QTest::keyClick(&page, Qt::Key_F10);
    EXPECT_EQ(bench.document.workbook().targets.size(), 6U);
    EXPECT_EQ(bench.document.workbook().limitSets.size(), sets.size());
}

TEST_F(Sizing, WithNoSizeChosenTheKeyChangesNothing) {
    const auto revision = bench.document.revision();
    QTest::keyClick(&page, Qt::Key_F10);
    EXPECT_EQ(bench.document.revision(), revision);
    EXPECT_FALSE(button(page, "Hone to this size (F10)")->isEnabled());
}

TEST_F(Sizing, ItServesAnEmptyWorkbookToo) {
    bench.document.open(emptyWorkbook());
    EXPECT_FALSE(headline().isEmpty());
    choose(page, "Worn on", 1);
    fillIn(page, "Made to", "3.42");
    typeCell(damages(), 0, DamagesModel::depth, "1");
    EXPECT_TRUE(plan().bores.empty());
}

TEST_F(Sizing, HeadlineAndBarsAreSeenWithoutScrolling) {
    Workbook sixteen = inchBlock(16);
    const std::string survey = addSurvey(sixteen, SurveyKind::asFound, "as found");
    for (int bore = 1; bore <= 16; ++bore)
        typeShape(sixteen, survey, bore, [bore](double, const std::string&) { return 0.5 * bore; });
    bench.document.open(sixteen);
    offer({"0", "0.005", "0.010", "0.015", "0.020", "0.025", "0.030", "0.040"});
    ASSERT_TRUE(QDir().mkpath(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures")));
    page.resize(1790, 990);
    QTest::qWait(20);
    EXPECT_TRUE(page.grab().save(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures/size-large.png")));
    page.resize(1150, 710); // what a window of 1280 × 800 leaves
    QTest::qWait(20);
    auto* bars = named<QWidget>(page, "Sizes of the bores and sizes on offer");
    EXPECT_GE(bars->height(), bars->minimumSizeHint().height());
    EXPECT_LE(bars->mapTo(&page, QPoint(0, bars->height())).y(), page.height() - 150);
    EXPECT_LE(page.minimumSizeHint().height(), 710);
    EXPECT_TRUE(
        page.grab().save(QStringLiteral(BOREWRIGHT_BUILD_DIR "/pictures/size-sixteen.png")));
}

} // namespace
} // namespace borewright
