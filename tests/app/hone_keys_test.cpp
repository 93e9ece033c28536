// SPDX-License-Identifier: GPL-3.0-or-later
// The Hone page by keys alone, its stop-watch, and that nothing on it goes without a name.
#include "tests/app/hone_support.h"

#include "app/fit/text_table.h"
#include "app/hone/stroke_watch.h"

#include <QCheckBox>
#include <QPushButton>
#include <QSignalSpy>

namespace borewright {
namespace {

using namespace test;

TEST_F(Honing, ArrowKeysChooseTheBoreForAllPages) {
    auto* list = named<QListWidget>(page, "Bores and what is next in each");
    bench.selection.setBore(1);
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Down);
    EXPECT_EQ(bench.selection.bore(), 2);
    bench.selection.setBore(1);
    EXPECT_EQ(list->currentRow(), 0);
}

TEST_F(Honing, APassOfHisOwnIsLoggedByKeysAlone) {
    bench.selection.setBore(2);
    press(Qt::Key_F4);
    choose(page, "Stone of this pass", 1);
    fillIn(page, "Lower end from of window 1", "3.3");
    fillIn(page, "Lower end to of window 1", "4.04");
    fillIn(page, "How long of window 1", "12");
    fillIn(page, "Held at the stop of window 1", "2");
    auto* field = named<QLineEdit>(page, "How long of window 1");
    field->setFocus();
    QTest::keyClick(field, Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(record().passes.size(), 1U) << says("What speaks against it");
    const Pass& pass = record().passes.front();
    EXPECT_EQ(pass.bore, 2);
    EXPECT_EQ(pass.stone, "k2");
    EXPECT_EQ(pass.windows.at(0).from.text(), "3.3");
    EXPECT_EQ(pass.windows.at(0).seconds, 12);
    EXPECT_EQ(pass.windows.at(0).holdSeconds, 2);
    EXPECT_EQ(steps(), 1);
}

TEST_F(Honing, WhatCannotBeDoneIsRefusedInWords) {
    openTab("Own pass");
    fillIn(page, "Lower end from of window 1", "3.3");
    fillIn(page, "Lower end to of window 1", "4.5");
    fillIn(page, "How long of window 1", "12");
    button(page, "Log what was done (Ctrl+Enter)")->click();
    EXPECT_TRUE(record().passes.empty());
    EXPECT_NE(says("What speaks against it").find("closed end"), std::string::npos)
        << says("What speaks against it");
    EXPECT_GT(bench.sounds.refusedCount, 0);
    fillIn(page, "Lower end to of window 1", "deep");
    EXPECT_NE(named<QLineEdit>(page, "Lower end to of window 1")->accessibleDescription(), "");
}

TEST_F(Honing, ARefusalToLogNamesTheWindowAndNothingInternal) {
    openTab("Own pass");
    fillIn(page, "Lower end from of window 1", "3.3");
    fillIn(page, "Lower end to of window 1", "4.0");
    fillIn(page, "How long of window 1", "12");
    fillIn(page, "Lower end from of window 2", "3.3");
    fillIn(page, "Lower end to of window 2", "4.5");
    fillIn(page, "How long of window 2", "12");
    button(page, "Log what was done (Ctrl+Enter)")->click();
    EXPECT_TRUE(says("What speaks against it").starts_with("window 2: 4.5 in is too low"))
        << says("What speaks against it");
}

TEST_F(Honing, AForecastGoesWithTheNumberThatItWasMadeFor) {
    openTab("Own pass");
    choose(page, "Stone of this pass", 1);
    fillIn(page, "Lower end from of window 1", "3.3");
    fillIn(page, "Lower end to of window 1", "4.0");
    fillIn(page, "How long of window 1", "12");
    const auto foretold = [&] {
        return says("What it would do").find("Expected afterwards") != std::string::npos;
    };
    ASSERT_TRUE(QTest::qWaitFor(foretold, 20'000)) << says("What it would do");
    auto* field = named<QLineEdit>(page, "How long of window 1");
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, "abc");
    EXPECT_FALSE(foretold()) << says("What it would do");
    EXPECT_NE(says("What it would do").find("'abc' is not a number"), std::string::npos)
        << says("What it would do");
    QTest::qWait(50);
    EXPECT_FALSE(foretold()) << "a late answer brought it back";
    field->selectAll();
    QTest::keyClicks(field, "12");
    EXPECT_TRUE(QTest::qWaitFor(foretold, 20'000)) << "typed anew";
}

TEST_F(Honing, AStoneTooLongForEveryBoreIsTakenAndToldAtOnce) {
    openTab("Stones");
    fillIn(page, "… and ends at", "6.00"); // of a bore 4.1 in deep: 3.00 was meant
    EXPECT_EQ(record().stones[0].ends.text(), "6.00");
    const auto* wrong = named<QLabel>(page, "What is wrong with this stone");
    EXPECT_TRUE(wrong->isVisible());
    const std::string said = says("What is wrong with this stone");
    EXPECT_NE(said.find("long, and the bore only"), std::string::npos) << said;
    EXPECT_NE(said.find("Is one of its lengths a slip?"), std::string::npos) << said;
    fillIn(page, "… and ends at", "3.00");
    EXPECT_FALSE(wrong->isVisible()) << says("What is wrong with this stone");
}

TEST_F(Honing, WhyAUsedStoneStaysAsItIsIsReadWhole) {
    Pass pass = passNow(bench.document.workbook(), 2, "k2", {}, bench.document.now());
    pass.windows.push_back(
        {*readTyped("3.3", Unit::inch), *readTyped("4.0", Unit::inch), 20, {}, 0});
    ASSERT_TRUE(
        changeHone(bench.document, "pass", [&](HoneRecord& made) { made.passes.push_back(pass); }));
    openTab("Stones");
    auto* table = named<TextTable>(page, "Stones");
    EXPECT_EQ(says("Why the stone stays"), "");
    table->selectRow(1);
    EXPECT_FALSE(button(page, "Take stone off")->isEnabled());
    EXPECT_EQ(says("Why the stone stays"), "It stays: the log needs it.");
    fillIn(page, "… and ends at", "6");
    EXPECT_EQ(named<QLineEdit>(page, "… and ends at")->text(), "6") << "to be mended";
    auto* wrong = named<QLabel>(page, "What is wrong with this stone");
    ASSERT_TRUE(wrong->isVisible());
    const std::string said = wrong->text().toStdString();
    EXPECT_NE(said.find("it cannot be stroked in it"), std::string::npos) << said;
    EXPECT_GT(wrong->width(), 300) << "wider than the field";
    EXPECT_GE(wrong->height(), wrong->heightForWidth(wrong->width())) << "cut off";
}

TEST_F(Honing, StonesAreChangedFieldByField) {
    openTab("Stones");
    fillIn(page, "Name", "long 80");
    EXPECT_EQ(record().stones[0].name, "long 80");
    EXPECT_EQ(steps(), 1);
    const auto before = record();
    fillIn(page, "… and ends at", "0.01");
    EXPECT_TRUE(record() == before) << "it would end above where it begins";
    EXPECT_NE(named<QLineEdit>(page, "… and ends at")->accessibleDescription(), "");
    fillIn(page, "… and ends at", "2.81");
    EXPECT_EQ(record().stones[0].ends.text(), "2.81");
    fillIn(page, "Out of the open end", "0.9");
    ASSERT_TRUE(record().stones[0].outOfOpenEnd);
    fillIn(page, "Out of the open end", "");
    EXPECT_FALSE(record().stones[0].outOfOpenEnd);
    button(page, "Turned end for end")->click();
    ASSERT_EQ(record().care.size(), 1U);
    EXPECT_EQ(record().care[0].stone, "k1");
    EXPECT_FALSE(button(page, "Take stone off")->isEnabled()) << "the log needs it";
    bench.document.undoStack().undo();
    button(page, "Take stone off")->click();
    EXPECT_EQ(record().stones.size(), 2U);
}

TEST_F(Honing, StonesGoToTheShopsListAndBack) {
    openTab("Stones");
    button(page, "Keep in the shop's list")->click();
    ASSERT_EQ(bench.preferences.value().stones.size(), 1U);
    EXPECT_EQ(bench.preferences.value().stones[0].name, "full rough");
    EXPECT_EQ(steps(), 0) << "the shop's list is no part of the workbook";
    button(page, "Take from the shop's list")->click();
    ASSERT_EQ(record().stones.size(), 4U);
    EXPECT_EQ(record().stones[3].name, "full rough 2") << "the name was taken";
    EXPECT_EQ(record().stones[3].ends, record().stones[0].ends);
}

TEST_F(Honing, HoneAndStagesAreTyped) {
    openTab("Hone");
    fillIn(page, "Speed of the spindle, 1/min", "200");
    fillIn(page, "Strokes a minute (the beat)", "45");
    EXPECT_EQ(record().hone.speedRpm, 200);
    EXPECT_EQ(record().hone.beatsPerMinute, 45);
    fillIn(page, "Strokes a minute (the beat)", "0");
    EXPECT_NE(named<QLineEdit>(page, "Strokes a minute (the beat)")->accessibleDescription(), "");
    choose(page, "Honed", 1);
    EXPECT_EQ(record().hone.oil, true);
    // Derived on the unrolled wall: 3.42 in bore, 2.5 in travel, 60 strokes, 200 a minute:
    // 2·atan(2·2.5·60/(π·3.42·200)) = 15.89°.
    fillIn(page, "Strokes a minute (the beat)", "60");
    fillIn(page, "Travel of the stone", "2.5");
    EXPECT_NE(says("Crosshatch").find("15.9°"), std::string::npos) << says("Crosshatch");
    openTab("Stages");
    fillIn(page, "Rough stones stop with to go", "5");
    EXPECT_EQ(record().stages.roughStopsAt->text(), "5");
    EXPECT_EQ(record().stages.roughStopsAt->unit(), Unit::thou);
    EXPECT_EQ(named<QLineEdit>(page, "Finish stones take the last")->placeholderText(),
              "usual: 1.0 thou");
}

TEST_F(Honing, EveryControlHasAName) {
    for (QWidget* widget : page.findChildren<QWidget*>()) {
        const bool control = qobject_cast<QLineEdit*>(widget) != nullptr ||
                             qobject_cast<QComboBox*>(widget) != nullptr ||
                             qobject_cast<QAbstractItemView*>(widget) != nullptr;
        const bool part = widget->focusPolicy() == Qt::NoFocus ||
                          widget->inherits("QComboBoxListView") || widget->inherits("QHeaderView");
        if (control && !part) {
            EXPECT_NE(widget->accessibleName(), "") << widget->metaObject()->className();
        }
        if (const auto* press = qobject_cast<QPushButton*>(widget)) {
            EXPECT_NE(press->text(), "");
        }
    }
}

PlannedWindow windowOf(double strokes, double hold = 0) {
    PlannedWindow window;
    window.strokes = strokes;
    window.holdSeconds = hold;
    return window;
}

TEST(StopWatch, CountsStrokesAndStandsStillAtTheEndOfAWindow) {
    StrokeWatch watch;
    QSignalSpy beats(&watch, &StrokeWatch::beat), enough(&watch, &StrokeWatch::enough);
    watch.setUp({windowOf(24), windowOf(8, 2)}, 60);
    watch.turn();
    for (int i = 0; i < 235; ++i)
        watch.pass(0.1);
    EXPECT_EQ(watch.strokes(), 23) << "23.5 s at sixty a minute";
    EXPECT_EQ(beats.count(), 24) << "one as each stroke begins";
    EXPECT_EQ(enough.count(), 0);
    watch.pass(0.6);
    EXPECT_EQ(enough.count(), 1);
    EXPECT_FALSE(watch.isRunning());
    EXPECT_EQ(watch.window(), 1U);
    EXPECT_DOUBLE_EQ(watch.counted()[0], 24);
    watch.turn();
    watch.pass(9.9);
    EXPECT_EQ(watch.window(), 1U) << "8 strokes and 2 s held";
    watch.pass(0.2);
    EXPECT_EQ(watch.window(), 2U);
    watch.turn();
    EXPECT_EQ(watch.window(), 0U) << "from the start again";
}

TEST(StopWatch, FollowsTheHonesBeat) {
    StrokeWatch watch;
    watch.setUp({windowOf(30)}, 90);
    watch.turn();
    watch.pass(10);
    EXPECT_EQ(watch.strokes(), 15);
    watch.turn();
    EXPECT_FALSE(watch.isRunning());
    watch.pass(10);
    EXPECT_EQ(watch.strokes(), 15) << "it stands";
}

} // namespace
} // namespace borewright
