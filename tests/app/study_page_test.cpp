// SPDX-License-Identifier: GPL-3.0-or-later
// The same spot ten times, by the number pad.
#include "app/measure/measure_page.h"
#include "app/measure/study_page.h"
#include "tests/app/form_hands.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <cmath>

namespace borewright {
namespace {

using namespace test;

class OneSpot : public testing::Test {
protected:
    OneSpot()
        : bench(made())
        , page(bench.context()) {
        page.resize(1100, 700);
        page.show();
        page.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
        study = page.findChild<StudyPage*>();
        entry = page.findChild<QLineEdit*>("studyEntry");
        begin();
    }
    static Workbook made() {
        Workbook workbook = inchBlock(2);
        addSurvey(workbook, SurveyKind::asFound, "found");
        workbook.surveys[0].header.gauge.gauge = "no. 2";
        workbook.surveys[0].header.gauge.gear = tenthDialAndRing();
        return workbook;
    }
    void begin() {
        button(page, "Repeatability…")->click();
        EXPECT_TRUE(study->isVisible());
    }
    void type(const char* keys) {
        for (const char* key = keys; *key != 0; ++key)
            *key == '\n' ? QTest::keyClick(entry, Qt::Key_Enter, Qt::KeypadModifier)
                         : QTest::keyClick(entry, *key, Qt::KeypadModifier);
    }
    const Workbook& workbook() { return bench.document.workbook(); }
    const Gear& gear() { return workbook().surveys[0].header.gauge.gear; }
    QString tells() { return named<QLabel>(page, "What the readings tell")->text(); }
    QString listed(int row) {
        auto* list = named<QListWidget>(page, "Readings so far");
        return row < list->count() ? list->item(row)->text() : QString("no such row");
    }
    int rows() { return named<QListWidget>(page, "Readings so far")->count(); }

    Bench bench;
    MeasurePage page;
    StudyPage* study = nullptr;
    QLineEdit* entry = nullptr;
};

// Of 1.0 … with the deviations ±0.1, ±0.2, ±0.3, ±0.4, 0, 0: Σd² = 0.60, s = √(0.60/9).
const char* const ten = "1.1\n.9\n1.2\n.8\n1.3\n.7\n1.4\n.6\n1\n1\n";

TEST_F(OneSpot, TenReadingsBecomeTheGaugesRepeatabilityInOneStep) {
    type(ten);
    EXPECT_TRUE(tells().contains("10 readings")) << tells().toStdString();
    EXPECT_TRUE(workbook().studies.empty()) << "not before it is used or left";
    type("\n"); // Enter alone
    ASSERT_EQ(workbook().studies.size(), 1U);
    EXPECT_EQ(workbook().studies[0].gauge, "no. 2");
    ASSERT_EQ(workbook().studies[0].runs.size(), 1U);
    EXPECT_EQ(workbook().studies[0].runs[0].typed.size(), 10U);
    ASSERT_TRUE(gear().repeatability && gear().repeatabilityFreedom);
    EXPECT_EQ(*gear().repeatabilityFreedom, 9);
    EXPECT_NEAR(gear().repeatability->value().in(Unit::thou), std::sqrt(0.60 / 9), 0.0005)
        << "thou";
    EXPECT_EQ(gear().master, tenthDialAndRing().master) << "the rest stays";
    ASSERT_EQ(bench.preferences.value().gauges.size(), 1U);
    EXPECT_EQ(bench.preferences.value().gauges[0].gear, gear());
    EXPECT_FALSE(study->isVisible());
    EXPECT_EQ(bench.document.undoStack().count(), 1);
    bench.document.undoStack().undo();
    EXPECT_TRUE(workbook() == made());
}

TEST_F(OneSpot, EscapeLosesNothingAndItGoesOnLater) {
    type("1.1\n.9\n1.2\n");
    QTest::keyClick(entry, Qt::Key_Escape);
    EXPECT_FALSE(study->isVisible());
    ASSERT_EQ(workbook().studies.size(), 1U);
    EXPECT_EQ(workbook().studies[0].runs[0].typed.size(), 3U);
    EXPECT_EQ(gear(), tenthDialAndRing());
    begin();
    EXPECT_EQ(rows(), 3);
    type(".8\n");
    QTest::keyClick(entry, Qt::Key_Escape);
    ASSERT_EQ(workbook().studies.size(), 1U) << "the same study, not a second";
    EXPECT_EQ(workbook().studies[0].runs[0].typed.size(), 4U);
}

TEST_F(OneSpot, LeavingWithoutAReadingChangesNothing) {
    QTest::keyClick(entry, Qt::Key_Escape);
    EXPECT_EQ(bench.document.undoStack().count(), 0);
}

TEST_F(OneSpot, AnotherWorkbookGetsNothingOfThis) {
    type("1.1\n.9\n1.2\n");
    bench.document.open(inchBlock(1));
    QCoreApplication::processEvents();
    EXPECT_TRUE(workbook().studies.empty());
    EXPECT_FALSE(study->isVisible());
}

TEST_F(OneSpot, TheScatterStandsFromTheThirdReadingOn) {
    type("1.1\n.9\n");
    EXPECT_TRUE(tells().startsWith("From the third")) << tells().toStdString();
    EXPECT_FALSE(button(page, "Use for this gauge")->isEnabled());
    type("1.3\n"); // 0.9, 1.1, 1.3: s = 0.2
    EXPECT_TRUE(tells().startsWith("Repeatability 0.200 thou (between ")) << tells().toStdString();
    EXPECT_TRUE(button(page, "Use for this gauge")->isEnabled());
}

TEST_F(OneSpot, WhatLiesFarOutIsMarkedAndStaysUntilHeStrikesIt) {
    type("1.1\n.9\n1.0\n5.0\n1.1\n.9\n1.0\n1.1\n");
    EXPECT_EQ(rows(), 8);
    EXPECT_TRUE(listed(3).contains("far from the others")) << listed(3).toStdString();
    EXPECT_TRUE(tells().contains("Grubbs")) << tells().toStdString();
    auto* list = named<QListWidget>(page, "Readings so far");
    list->setCurrentRow(3);
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Delete);
    EXPECT_EQ(rows(), 7);
    EXPECT_FALSE(tells().contains("Grubbs")) << tells().toStdString();
    type("/");
    EXPECT_EQ(rows(), 6) << "the last was taken back";
}

TEST_F(OneSpot, WhatIsNoReadingIsRefusedAndStaysToBeMended) {
    type("1.x\n");
    EXPECT_EQ(entry->text(), "1.x");
    EXPECT_TRUE(entry->accessibleDescription().contains("not a number"));
    type("60\n"); // travel: 50 thou either way
    EXPECT_EQ(entry->accessibleDescription(), "the dial does not move that far");
    type("1\n");
    EXPECT_EQ(entry->accessibleDescription(), "");
    entry->setText("2 µm");
    type("\n");
    EXPECT_EQ(entry->accessibleDescription(), "inches and millimetres are mixed");
    EXPECT_EQ(rows(), 1);
}

TEST_F(OneSpot, SeveralPeopleAreToldApart) {
    fillIn(page, "Who reads", "Ann");
    type("1.0\n1.1\n.9\n1.0\n");
    button(page, "Another person or spot")->click();
    fillIn(page, "Who reads", "Ben");
    type("2.0\n2.1\n1.9\n2.0\n");
    EXPECT_EQ(listed(0), "Ann");
    EXPECT_EQ(listed(5), "Ben");
    EXPECT_TRUE(tells().contains("Between people another 0.7")) << tells().toStdString();
    button(page, "Use for this gauge")->click();
    ASSERT_EQ(workbook().studies.size(), 1U);
    EXPECT_EQ(workbook().studies[0].runs.size(), 2U);
    EXPECT_EQ(workbook().studies[0].runs[1].person, "Ben");
    EXPECT_EQ(gear().repeatabilityFreedom, 6) << "within people: twice three";
}

TEST_F(OneSpot, TheBarSaysWhatOneReadingIsWorth) {
    type(ten);
    type("\n");
    const QString line = named<QLabel>(page, "Gauge setting and limits")->text();
    EXPECT_TRUE(line.contains("one reading ± 0.")) << line.toStdString();
    bench.document.undoStack().undo();
    Workbook plain = made();
    plain.surveys[0].header.gauge.gear = Gear();
    bench.document.open(plain);
    const QString now = named<QLabel>(page, "Gauge setting and limits")->text();
    EXPECT_TRUE(now.contains("doubt not known")) << now.toStdString();
}

} // namespace
} // namespace borewright
