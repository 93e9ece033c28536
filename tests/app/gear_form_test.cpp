// SPDX-License-Identifier: GPL-3.0-or-later
// What the gear is worth, the warmth and what they can decide, in the survey's form.
#include "app/fields/typed_field.h"
#include "app/measure/gear_form.h"
#include "app/measure/measure_page.h"
#include "app/measure/survey_form.h"
#include "tests/app/form_hands.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

namespace borewright {
namespace {

using namespace test;

const char* const worth = "What the gear is worth";

class GearInTheForm : public testing::Test {
protected:
    GearInTheForm()
        : bench(made())
        , page(bench.context()) {
        page.resize(1100, 700);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
        page.startSurvey();
    }
    static Workbook made() {
        Workbook workbook = inchBlock(2);
        addWornLimits(workbook, "3.504", "3", "2");
        return workbook;
    }
    void keep() { button(page, "Start measuring")->click(); }
    const SurveyHeader& kept() { return bench.document.workbook().surveys.back().header; }
    QString label(const char* name) { return named<QLabel>(page, name)->text(); }
    // What is refused at a field; empty where nothing is.
    QString refusal(const QString& name) {
        for (const TypedField* field : page.findChildren<TypedField*>())
            if (field->edit()->accessibleName() == name) return field->refusal();
        return "no such field";
    }

    Bench bench;
    MeasurePage page;
};

TEST_F(GearInTheForm, AFirstSurveyProposesUsualFiguresAndSaysSo) {
    EXPECT_EQ(named<QComboBox>(page, worth)->currentIndex(), static_cast<int>(GearChoice::fine));
    const QString says = label("What the gear comes to");
    EXPECT_TRUE(says.startsWith("One reading ± 0.")) << says.toStdString();
    EXPECT_TRUE(says.contains("; a difference ± 0.")) << says.toStdString();
    EXPECT_TRUE(says.endsWith("usual figures, not yours")) << says.toStdString();
    keep();
    ASSERT_EQ(bench.document.workbook().surveys.size(), 1U);
    EXPECT_EQ(kept().gauge.gear, tenthDialAndRing());
    EXPECT_EQ(bench.preferences.value().gauge.gear, tenthDialAndRing());
}

TEST_F(GearInTheForm, AProposalFollowsTheDialUntilHeTouchesIt) {
    choose(page, "Dial", 1);
    EXPECT_EQ(named<QComboBox>(page, worth)->currentIndex(), static_cast<int>(GearChoice::coarse));
    fillIn(page, "Repeatability of one reading", "0.3");
    choose(page, "Dial", 0);
    EXPECT_EQ(named<QComboBox>(page, worth)->currentIndex(), static_cast<int>(GearChoice::own));
    keep();
    EXPECT_EQ(kept().gauge.gear.repeatability->text(), "0.3");
    EXPECT_EQ(kept().gauge.gear.step, halfThouDialAndMicrometer().step);
}

TEST_F(GearInTheForm, NotKnownIsAChoiceThatIsRemembered) {
    choose(page, worth, static_cast<int>(GearChoice::unknown));
    EXPECT_TRUE(label("What this gear can decide").startsWith("While nothing is known"));
    keep();
    EXPECT_EQ(kept().gauge.gear, Gear());
    bench.document.open(made());
    page.startSurvey();
    EXPECT_EQ(named<QComboBox>(page, worth)->currentIndex(), static_cast<int>(GearChoice::unknown));
}

TEST_F(GearInTheForm, EachFigureComesBackAsItWasTyped) {
    fillIn(page, "Repeatability of one reading", "0,06");
    fillIn(page, "Known from how many readings", "10");
    fillIn(page, "The finest you read off", "0.05");
    fillIn(page, "Dial ±, between near readings", "0.04");
    fillIn(page, "Dial ±, over its range", "2 µm");
    fillIn(page, "Master ±", "0.03");
    choose(page, "How the master's ± is meant", 1);
    fillIn(page, "Scatter of setting", "0.02");
    fillIn(page, "Drift of zero ±", "0.01");
    fillIn(page, "Set again beyond a drift of", "0.15");
    fillIn(page, "Left after rocking", "0.07");
    fillIn(page, "Gauge last checked", "March 2026");
    keep();
    const auto thou = [](const char* text) { return *readTyped(text, Unit::thou); };
    Gear wanted;
    wanted.repeatability = thou("0,06");
    wanted.repeatabilityFreedom = 9;
    wanted.step = thou("0.05");
    wanted.dialLocalError = thou("0.04");
    wanted.dialError = *readTyped("2", Unit::micrometre);
    wanted.master = thou("0.03");
    wanted.masterMeant = Meant::expanded;
    wanted.settingScatter = thou("0.02");
    wanted.drift = thou("0.01");
    wanted.driftLimit = thou("0.15");
    wanted.rocking = thou("0.07");
    wanted.lastChecked = "March 2026";
    EXPECT_EQ(kept().gauge.gear, wanted);
    const auto revision = bench.document.revision();
    auto* form = page.findChild<SurveyForm*>();
    form->openFor(kept().id);
    button(page, "Keep")->click();
    EXPECT_EQ(bench.document.revision(), revision) << "opening and keeping changes nothing";
}

TEST_F(GearInTheForm, WhatNoGearHasIsRefusedAtItsField) {
    struct Bad {
        const char* field;
        const char* text;
        const char* words;
    };
    for (const Bad& bad : {
             Bad{"Repeatability of one reading", "0", "more than zero"},
             {"Repeatability of one reading", "-0.1", "more than zero"},
             {"Repeatability of one reading", "o.1", "not a number"},
             {"Known from how many readings", "1", "two readings are the fewest"},
             {"Known from how many readings", "4.5", "a whole number"},
             {"The finest you read off", "0", "more than zero"},
             {"Master ±", "-1", "never below zero"},
             {"Drift of zero ±", "-1", "never below zero"},
             {"Left after rocking", "a bit", "not a number"},
             {"Temperature of the block at its open end", "900", "no temperature of a block"},
             {"Temperature of the master", "warm", "not a number"},
             {"Gauge warmed since it was set, °C", "80", "between"},
             {"Minutes since the last pass or wash", "-5", "between 0 and a month"},
             {"Minutes since the last pass or wash", "ten", "not a number"},
             {"Block against master ± °C", "-1", "between 0 and 50"},
             {"Minutes between the two", "0", "more than zero"},
         }) {
        fillIn(page, bad.field, bad.text);
        keep();
        EXPECT_TRUE(refusal(bad.field).contains(bad.words))
            << bad.field << " = " << bad.text << ": " << refusal(bad.field).toStdString();
        EXPECT_TRUE(bench.document.workbook().surveys.empty()) << bad.field << " = " << bad.text;
        fillIn(page, bad.field, "");
        EXPECT_EQ(refusal(bad.field), "");
    }
    keep();
    EXPECT_EQ(bench.document.workbook().surveys.size(), 1U);
}

TEST_F(GearInTheForm, HalfACoolingIsRefusedWhereItIsMissing) {
    fillIn(page, "Temperature of the room", "20");
    fillIn(page, "Block, first temperature", "40");
    keep();
    EXPECT_EQ(refusal("Block, second temperature"), "this one is missing");
    fillIn(page, "Block, second temperature", "30");
    fillIn(page, "Minutes between the two", "10");
    // Newton: half of the 20 °C went in 10 minutes, so 10·log2(10/1) = 33.2 minutes are left.
    EXPECT_TRUE(label("How long to wait").startsWith("Wait about 34 minutes (± "))
        << label("How long to wait").toStdString();
    keep();
    ASSERT_TRUE(kept().cooling);
    EXPECT_EQ(kept().cooling->minutesApart, 10);
}

TEST_F(GearInTheForm, ItAsksWhereTheBlockMayStillBeWarm) {
    auto* asked = named<QLabel>(page, "Is the block still warm?");
    EXPECT_FALSE(asked->isVisible());
    fillIn(page, "Minutes since the last pass or wash", "12");
    EXPECT_TRUE(asked->isVisible());
    // 3.5 in · 11.4e-6 · 5 °C = 0.1995 thou.
    EXPECT_TRUE(asked->text().contains("0.20 thou large")) << asked->text().toStdString();
    EXPECT_TRUE(asked->text().contains("Wait 8 minutes more")) << asked->text().toStdString();
    fillIn(page, "Temperature of the block at its open end", "29");
    fillIn(page, "Temperature of the master", "20");
    EXPECT_FALSE(asked->isVisible()) << "temperatures were taken";
    fillIn(page, "Temperature of the master", "");
    EXPECT_TRUE(asked->isVisible());
    fillIn(page, "Minutes since the last pass or wash", "20");
    EXPECT_FALSE(asked->isVisible());
}

TEST_F(GearInTheForm, StoodTogetherLetsTheThermometersRest) {
    fillIn(page, "Temperature of the block at its open end", "29");
    fillIn(page, "Temperature of the master", "20");
    button(page, "Block, master and gauge stood together overnight")->click();
    EXPECT_FALSE(named<QLineEdit>(page, "Temperature of the master")->isEnabled());
    keep();
    EXPECT_TRUE(kept().gauge.stoodTogether);
    EXPECT_FALSE(kept().gauge.blockTemperature || kept().gauge.masterTemperature);
}

TEST_F(GearInTheForm, WhatItCanDecideIsSaidWhileFiguresAreTyped) {
    const QString before = label("What this gear can decide");
    EXPECT_TRUE(before.contains("Out-of-round up to 2.")) << before.toStdString();
    auto* edit = named<QLineEdit>(page, "Repeatability of one reading");
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, "2"); // not yet left
    const QString after = label("What this gear can decide");
    EXPECT_TRUE(
        after.contains("The limit for out-of-round is 3.00 thou, and this gear cannot tell"))
        << after.toStdString();
    EXPECT_TRUE(after.contains("What helps most: ")) << after.toStdString();
}

TEST_F(GearInTheForm, AKeptGaugeBringsItsDialAndItsGear) {
    GaugeSetting gauge;
    gauge.gauge = "no. 2";
    gauge.dial = halfThouDial();
    gauge.dial.larger = Dial::Larger::minus;
    gauge.gear = halfThouDialAndMicrometer();
    gauge.gear.repeatabilityFreedom = 9;
    GaugeSetting last;
    last.gauge = "no. 1";
    bench.preferences.set(withGauge(withGauge({}, gauge), last));
    page.findChild<SurveyForm*>()->openNew();
    EXPECT_EQ(named<QComboBox>(page, "Which gauge")->currentText(), "no. 1");
    choose(page, "Which gauge", 1);
    keep();
    EXPECT_EQ(kept().gauge.gauge, "no. 2");
    EXPECT_EQ(kept().gauge.dial, gauge.dial);
    EXPECT_EQ(kept().gauge.gear, gauge.gear);
}

TEST_F(GearInTheForm, KeepingASurveyKeepsItsGaugeByName) {
    named<QComboBox>(page, "Which gauge")->setEditText("no. 3");
    keep();
    ASSERT_EQ(bench.preferences.value().gauges.size(), 1U);
    EXPECT_EQ(bench.preferences.value().gauges[0].gauge, "no. 3");
    EXPECT_EQ(bench.preferences.value().gauges[0].gear, tenthDialAndRing());
    EXPECT_FALSE(bench.preferences.value().gauges[0].setSize);
}

TEST_F(GearInTheForm, ALaterSurveyTakesTheGearButNotTheWarmth) {
    fillIn(page, "Repeatability of one reading", "0.07");
    fillIn(page, "Temperature of the block at its open end", "29");
    fillIn(page, "Temperature of the master", "20");
    fillIn(page, "Minutes since the last pass or wash", "5");
    keep();
    const Gear gear = kept().gauge.gear;
    page.startSurvey();
    fillIn(page, "Gauge set to", "3.52");
    keep();
    ASSERT_EQ(bench.document.workbook().surveys.size(), 2U);
    EXPECT_EQ(kept().gauge.gear, gear);
    EXPECT_FALSE(kept().gauge.blockTemperature || kept().minutesSinceWarm);
}

TEST(GearChoices, MetricFiguresAreTheSameToATenthOfAMicrometre) {
    for (const GearChoice choice : {GearChoice::fine, GearChoice::coarse}) {
        const Gear inch = gearFor(choice, Unit::thou);
        const Gear metric = gearFor(choice, Unit::micrometre);
        EXPECT_EQ(choiceOf(metric, Unit::micrometre), choice);
        for (const auto& [a, b] :
             {std::pair(inch.repeatability, metric.repeatability),
              std::pair(inch.master, metric.master), std::pair(inch.drift, metric.drift),
              std::pair(inch.settingScatter, metric.settingScatter),
              std::pair(inch.dialLocalError, metric.dialLocalError)}) {
            EXPECT_EQ(b->unit(), Unit::micrometre);
            EXPECT_NEAR(a->value().in(Unit::micrometre), b->value().in(Unit::micrometre), 0.05);
        }
    }
    EXPECT_EQ(fittingChoice(micrometreDial()), GearChoice::fine);
    EXPECT_EQ(fittingChoice(tenthDial()), GearChoice::fine);
    EXPECT_EQ(fittingChoice(halfThouDial()), GearChoice::coarse);
    EXPECT_EQ(fittingChoice(hundredthDial()), GearChoice::coarse);
}

} // namespace
} // namespace borewright
