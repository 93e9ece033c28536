// SPDX-License-Identifier: GPL-3.0-or-later
// The Hone page with its real widgets: what it says where nothing can be planned, what its verbs
// write, each as one undo step, and the demonstration honed by itself.
#include "tests/app/hone_support.h"

#include "app/hone/bore_list.h"
#include "app/hone/played_round.h"
#include "app/measure/survey_proposal.h"
#include "core/honing/played_bore.h"
#include "core/workbook/hone_since.h"

#include <QCheckBox>
#include <QSignalSpy>
#include <QTableView>

namespace borewright {
namespace {

using namespace test;

class HoningUnprepared : public Honing {
protected:
    HoningUnprepared()
        : Honing(roughBlock(2, false)) {}
};

TEST_F(HoningUnprepared, TheUsualSetIsOneClickAndOneStep) {
    EXPECT_NE(headline().find("With which stones?"), std::string::npos) << headline();
    button(page, "Take the usual set of stones")->click();
    ASSERT_EQ(record().stones.size(), 3U);
    // A bore of 4.10 in: three quarters are 3.075, a quarter is 1.025: rounded down to quarters.
    const auto length = [&](std::size_t i) {
        return (record().stones[i].ends.value() - record().stones[i].begins.value()).in(Unit::inch);
    };
    EXPECT_DOUBLE_EQ(length(0), 3.0);
    EXPECT_DOUBLE_EQ(length(1), 1.0);
    EXPECT_DOUBLE_EQ(length(2), 3.0);
    EXPECT_EQ(record().stones[2].kind, StoneKind::finish);
    EXPECT_FALSE(record().stones[0].experience) << "no cutting rate is shipped";
    EXPECT_EQ(steps(), 1);
    EXPECT_FALSE(button(page, "Take the usual set of stones")->isVisible());
    bench.document.undoStack().undo();
    EXPECT_TRUE(record().stones.empty());
}

TEST_F(Honing, APlatedBoreIsRefusedToOrdinaryStones) {
    Block block = bench.document.workbook().block;
    block.bores.front().surface = Surface::plated;
    ASSERT_TRUE(bench.document.edit(SetBlock{block}, "plated"));
    EXPECT_NE(headline().find("plated"), std::string::npos) << headline();
    press(Qt::Key_F9);
    EXPECT_TRUE(record().passes.empty());
    EXPECT_FALSE(button(page, "Done as planned (F9)")->isEnabled());
    openTab("Own pass");
    fillIn(page, "Lower end from of window 1", "3.2");
    fillIn(page, "Lower end to of window 1", "4.0");
    fillIn(page, "How long of window 1", "10");
    button(page, "Log what was done (Ctrl+Enter)")->click();
    EXPECT_TRUE(record().passes.empty());
    EXPECT_NE(says("What speaks against it"), "");
}

TEST_F(Honing, WithoutAFinishSizeItSaysWhereToChooseOne) {
    auto sets = bench.document.workbook().limitSets;
    std::erase_if(sets, [](const LimitSet& set) { return set.purpose == LimitPurpose::finish; });
    ASSERT_TRUE(bench.document.edit(SetLimitSets{sets}, "no finish limits"));
    EXPECT_NE(headline().find("F10"), std::string::npos) << headline();
    EXPECT_NE(headline().find("Size page"), std::string::npos) << headline();
}

TEST_F(Honing, OpeningAndLeavingChangesNothing) {
    const auto revision = bench.document.revision();
    for (QLineEdit* edit : page.findChildren<QLineEdit*>()) {
        edit->setFocus();
        emit edit->editingFinished();
    }
    EXPECT_EQ(bench.document.revision(), revision);
    EXPECT_EQ(bench.document.undoStack().count(), 0);
}

TEST_F(Honing, ARefusalStandsClearOfTheSentence) {
    bench.selection.setBore(1);
    page.settle();
    press(Qt::Key_F12);
    press(Qt::Key_F12); // while the next set-up is still worked out
    QApplication::processEvents();
    const auto* refusal = named<QLabel>(page, "Why it was not done");
    const auto* sentence = named<QLabel>(page, "The next set-up of this bore");
    ASSERT_FALSE(refusal->text().isEmpty()) << "the second press is refused";
    EXPECT_TRUE(refusal->isVisible());
    EXPECT_FALSE(refusal->geometry().intersects(sentence->geometry()));
    EXPECT_GT(refusal->width(), sentence->width() / 2) << "not at the size it had when hidden";
    EXPECT_TRUE(refusal->text().contains("still being worked out"))
        << refusal->text().toStdString();
    page.settle();
    ASSERT_TRUE(outlook(1)->next) << outlook(1)->headline;
    EXPECT_TRUE(refusal->text().isEmpty()) << "it goes when the set-up comes";
}

TEST_F(Honing, DoneAsPlannedLogsThePlanAndThenMeasuresItsStations) {
    bench.selection.setBore(1);
    page.settle();
    ASSERT_NE(outlook(1), nullptr);
    ASSERT_TRUE(outlook(1)->next) << outlook(1)->headline;
    const PlannedSetUp planned = *outlook(1)->next;
    ASSERT_FALSE(planned.measure.empty());
    press(Qt::Key_F9);
    ASSERT_EQ(record().passes.size(), 1U) << says("Why it was not done");
    const Pass& pass = record().passes.front();
    EXPECT_EQ(pass.bore, 1);
    EXPECT_EQ(pass.stone, planned.stone);
    EXPECT_EQ(pass.after, "s2");
    EXPECT_FALSE(pass.simulated);
    ASSERT_EQ(pass.windows.size(), planned.windows.size());
    EXPECT_EQ(pass.windows[0].strokes, planned.windows[0].strokes);
    EXPECT_EQ(steps(), 1);
    const QSignalSpy asked(&page, &HonePage::measureAsked);
    press(Qt::Key_F8);
    const Survey& check = bench.document.workbook().surveys.back();
    EXPECT_EQ(check.header.kind, SurveyKind::check);
    EXPECT_EQ(check.header.asked, planned.measure);
    EXPECT_EQ(check.header.gauge.setSize,
              bench.document.workbook().surveys[1].header.gauge.setSize);
    EXPECT_EQ(bench.selection.survey(), check.header.id);
    EXPECT_EQ(asked.count(), 1);
    EXPECT_EQ(steps(), 2);
    press(Qt::Key_F8);
    EXPECT_EQ(steps(), 2) << "the check that waits is gone on with";
    bench.document.undoStack().undo();
    bench.document.undoStack().undo();
    EXPECT_TRUE(record().passes.empty());
    EXPECT_EQ(bench.document.workbook().surveys.size(), 2U);
}

TEST_F(Honing, SecondsThatWereOthersAreLoggedAsSuch) {
    bench.selection.setBore(1);
    page.settle();
    ASSERT_NE(outlook(1), nullptr);
    ASSERT_TRUE(outlook(1)->next) << outlook(1)->headline;
    fillIn(page, "Seconds really done in window 1", "3.5");
    press(Qt::Key_F9);
    ASSERT_EQ(record().passes.size(), 1U);
    EXPECT_EQ(record().passes[0].windows[0].seconds, 3.5);
    EXPECT_FALSE(record().passes[0].windows[0].strokes);
}

TEST_F(Honing, APassIsStruckOutWithItsReason) {
    bench.selection.setBore(1);
    HoneRecord with = record();
    StrokeWindow window;
    window.from = *readTyped("3.2", Unit::inch);
    window.to = *readTyped("4.0", Unit::inch);
    window.strokes = 10;
    with.passes.push_back(
        passNow(bench.document.workbook(), 1, "k1", {window}, bench.document.now()));
    ASSERT_TRUE(bench.document.edit(SetHone{with}, "pass"));
    openTab("Log");
    auto* table = named<QTableView>(page, "Log of this bore");
    table->selectRow(table->model()->rowCount() - 1);
    auto* strike = button(page, "Strike this pass out");
    ASSERT_TRUE(strike->isEnabled());
    strike->click();
    EXPECT_FALSE(record().passes[0].struck) << "no reason was given";
    fillIn(page, "Why the pass is struck out", "wrong bore");
    strike->click();
    EXPECT_EQ(record().passes[0].struck, "wrong bore");
    bench.document.undoStack().undo();
    EXPECT_FALSE(record().passes[0].struck);
}

TEST_F(Honing, TicksAreAStepEach) {
    openTab("Ticks");
    auto* washed = named<QCheckBox>(page, "Bore 2, washed");
    washed->click();
    EXPECT_TRUE(record().ticks.at(2).washed);
    EXPECT_FALSE(record().ticks.at(2).portsChamfered);
    EXPECT_EQ(steps(), 1);
    bench.document.undoStack().undo();
    EXPECT_FALSE(washed->isChecked());
}

TEST(PlayedRounds, OnlyInAnInventedWorkbook) {
    Workbook workbook = roughBlock(1);
    PlannedSetUp planned;
    planned.stone = "k1";
    planned.windows = {{*readTyped("2.0", Unit::inch), *readTyped("4.0", Unit::inch), 10, 10, 0}};
    const SurveyHeader header = proposeSurvey(workbook, {}, Unit::thou).header;
    EXPECT_TRUE(playRound(workbook, header, 1, planned, {}));
    workbook.invented = false;
    EXPECT_FALSE(playRound(workbook, header, 1, planned, {}));
}

TEST(PlayedRounds, AreOverWhenTheyAreShownAndKeepTheirOrder) {
    Workbook workbook = roughBlock(1);
    PlannedSetUp planned;
    planned.stone = "k1";
    planned.windows = {{*readTyped("2.0", Unit::inch), *readTyped("4.0", Unit::inch), 10, 10, 0}};
    for (const Bore& bore : workbook.block.bores)
        for (const Level& level : bore.levels)
            planned.measure.push_back({bore.number, level.depth.value(), "A"});
    Timestamp last = workbook.surveys.back().readings.back().time;
    Timestamp now = last;
    now.secondsSinceEpoch += 86'400;
    for (int round = 0; round < 3; ++round) {
        const SurveyHeader header = proposeSurvey(workbook, {}, Unit::thou).header;
        const auto played = playRound(workbook, header, 1, planned, now);
        ASSERT_TRUE(played) << played.error().message();
        const auto done = borewright::apply(workbook, played->edit);
        ASSERT_TRUE(done) << done.error().message();
        const Survey& survey = workbook.surveys.back();
        const Pass& pass = workbook.hone.passes.back();
        EXPECT_GE(pass.time, last);
        EXPECT_GE(survey.header.time, pass.time);
        EXPECT_GE(survey.readings.front().time, pass.time);
        EXPECT_TRUE(std::ranges::is_sorted(survey.readings, {}, &Reading::time));
        EXPECT_EQ(survey.readings.back().time, now) << "a sheet printed at once is not older";
        last = survey.readings.back().time;
        now.secondsSinceEpoch += 2; // pressed again at once
    }
}

TEST_F(HoningUnprepared, ThePlanAsksForStonesBeforeAKeyThatIsGrey) {
    for (const QLabel* label : page.findChildren<QLabel*>())
        EXPECT_FALSE(label->text().contains("F5 works it out")) << label->text().toStdString();
}

TEST(HonedSince, IsToldFromNeverMeasured) {
    Workbook workbook = roughBlock(1);
    EXPECT_FALSE(honedSinceMeasured(workbook, 1));
    BoreOutlook outlook;
    outlook.bore = 1;
    EXPECT_EQ(nextWord(workbook, outlook), "not measured");
    Pass pass = passNow(workbook, 1, "k1", {}, {});
    pass.after = workbook.surveys.front().header.id;
    workbook.hone.passes.push_back(pass);
    EXPECT_FALSE(honedSinceMeasured(workbook, 1)) << "the second survey read it afterwards";
    workbook.hone.passes.back().after = workbook.surveys.back().header.id;
    EXPECT_TRUE(honedSinceMeasured(workbook, 1));
    EXPECT_FALSE(honedSinceMeasured(workbook, 2));
    EXPECT_EQ(nextWord(workbook, outlook), "honed since measured");
    workbook.hone.passes.back().struck = "not done";
    EXPECT_FALSE(honedSinceMeasured(workbook, 1));
}

TEST(PlayedBores, AreWhatWasReadUntilTheyAreHonedAndOnlyGrow) {
    Workbook workbook = roughBlock(1);
    const auto before = PlayedBore::replay(workbook, 1);
    ASSERT_TRUE(before) << before.error().message();
    const Length depth = readTyped("3.05", Unit::inch)->value();
    // "rough 100" reads −5.7 and −5.6 thou from 3.4400 there; a thou of its own at the most.
    EXPECT_NEAR(before->sizeAt(depth, "A").in(Unit::inch), 3.4343, 0.0001);
    EXPECT_NEAR(before->sizeAt(depth, "B").in(Unit::inch), 3.4344, 0.0001);
    StrokeWindow window;
    window.from = *readTyped("2.0", Unit::inch);
    window.to = *readTyped("4.04", Unit::inch);
    window.strokes = 20;
    workbook.hone.passes.push_back(passNow(workbook, 1, "k1", {window}, {}));
    const auto behind = PlayedBore::replay(workbook, 1);
    ASSERT_TRUE(behind) << behind.error().message();
    EXPECT_GT(behind->sizeAt(depth, "A"), before->sizeAt(depth, "A"));
    const auto again = PlayedBore::replay(workbook, 1);
    ASSERT_TRUE(again);
    EXPECT_EQ(again->sizeAt(depth, "A"), behind->sizeAt(depth, "A")) << "the same each time";
}

} // namespace
} // namespace borewright
