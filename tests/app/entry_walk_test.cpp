// SPDX-License-Identifier: GPL-3.0-or-later
// The walk round the stations, as the number pad drives it.
#include "app/measure/entry_walk.h"
#include "core/gauging/gauging.h"
#include "tests/support/bench_context.h"
#include "tests/support/blocks.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class Walk : public testing::Test {
protected:
    Walk()
        : bench(made())
        , walk(bench.context()) {}

    static Workbook made() {
        Workbook workbook = inchBlock(2, {"1", "2", "3"});
        addSurvey(workbook, SurveyKind::asFound, "found");
        return workbook;
    }
    std::string here() const {
        const auto station = walk.current();
        if (!station) return "none";
        return std::to_string(station->bore) + station->axis +
               formatDepth(station->depth, DisplayUnits::inch());
    }
    const std::vector<Reading>& readings() const {
        return bench.document.workbook().surveys[0].readings;
    }

    Bench bench;
    EntryWalk walk;
};

TEST_F(Walk, GoesDownAAndUpBOfEachBore) {
    const char* places[] = {"1A1.00", "1A2.00", "1A3.00", "1B3.00", "1B2.00", "1B1.00",
                            "2A1.00", "2A2.00", "2A3.00", "2B3.00", "2B2.00", "2B1.00"};
    for (const char* place : places) {
        EXPECT_EQ(here(), place);
        EXPECT_TRUE(walk.keep("1.5").kept);
    }
    EXPECT_EQ(walk.read(), 12U);
    EXPECT_EQ(bench.document.undoStack().count(), 12);
    EXPECT_EQ(bench.sounds.keptCount, 12);
    EXPECT_EQ(walk.lastBecame(), "1.5 → 3.5015 in");
}

TEST_F(Walk, SaysWhatTheEntryBecomesWhileItIsTyped) {
    EXPECT_EQ(walk.wouldBecome("-1,5"), "−1,5 → 3.4985 in");
    EXPECT_EQ(walk.wouldBecome("-"), "");
}

TEST_F(Walk, BackReplacesWithTheOldOneStruckOut) {
    walk.keep("1.5");
    walk.back();
    EXPECT_EQ(here(), "1A1.00");
    EXPECT_TRUE(walk.keep("1.6").kept);
    ASSERT_EQ(readings().size(), 2U);
    EXPECT_EQ(readings()[0].struck->reason, "typed again");
    EXPECT_EQ(here(), "1A2.00");
    bench.document.undoStack().undo();
    EXPECT_EQ(readings().size(), 1U);
    EXPECT_FALSE(readings()[0].struck) << "one step brings both back";
}

TEST_F(Walk, RepeatsJoinAndAreAveraged) {
    walk.keep("1.0");
    EXPECT_TRUE(walk.repeat().refusal.isEmpty());
    EXPECT_EQ(walk.mode(), EntryWalk::Mode::repeat);
    EXPECT_EQ(here(), "1A1.00");
    walk.keep("1.2");
    EXPECT_EQ(here(), "1A2.00");
    const StationResult* station = findStation(bench.document.results().surveys[0].bores[0], in("1"), "A");
    EXPECT_EQ(station->repeats, 2);
    EXPECT_EQ(station->diameter, in("3.5011"));
}

TEST_F(Walk, SkipLeavesAHoleAndComesBackToIt) {
    walk.skip();
    EXPECT_EQ(here(), "1A2.00");
    for (int i = 0; i < 11; ++i) EXPECT_TRUE(walk.keep("1.5").kept);
    EXPECT_EQ(here(), "1A1.00") << "the one that was skipped";
}

TEST_F(Walk, NoWallIsMarkedOnTheBoreAndNeverMissing) {
    walk.keep("1.5");
    EXPECT_TRUE(walk.noWall().kept);
    EXPECT_EQ(here(), "1A3.00");
    EXPECT_FALSE(hasWall(bench.document.workbook().block.bores[0], in("2"), "A"));
    EXPECT_EQ(bench.document.results().surveys[0].bores[0].asked, 5);
    walk.back();
    EXPECT_EQ(walk.noWall().refusal, "a reading was kept here; strike it out first");
}

TEST_F(Walk, RefusesInWordsAndKeepsNothing) {
    const auto refusal = [&](const char* text) {
        const auto outcome = walk.keep(text);
        EXPECT_FALSE(outcome.kept) << text;
        return outcome.refusal.toStdString();
    };
    EXPECT_EQ(refusal("1.5.2"), "'1.5.2' has two decimal points");
    EXPECT_EQ(refusal("6o"), "'6o' is not a number with a unit this program knows");
    EXPECT_EQ(refusal("3.5015"),
              "3.5015 thou looks like a diameter; this survey takes deviations from 3.5000 in");
    EXPECT_EQ(refusal("60"), "60 thou is beyond the dial, which moves 50 thou either way");
    EXPECT_EQ(here(), "1A1.00");
    EXPECT_TRUE(readings().empty());
    EXPECT_EQ(bench.document.undoStack().count(), 0);
    EXPECT_EQ(bench.sounds.refusedCount, 4);
}

TEST_F(Walk, AnOddReadingIsKeptAndMarked) {
    for (const char* reading : {"1.7", "1.5", "1.4", "1.5"})
        EXPECT_EQ(walk.keep(reading).odd, "") << reading;
    const auto outcome = walk.keep("-1.6");
    EXPECT_TRUE(outcome.kept);
    EXPECT_EQ(outcome.odd, QString::fromUtf8("sign turned: 1.6 for −1.6"));
    EXPECT_EQ(bench.sounds.oddCount, 1);
}

TEST_F(Walk, AZeroCheckIsNotAReading) {
    walk.startZeroCheck();
    EXPECT_TRUE(walk.keep("0.2").kept);
    EXPECT_TRUE(readings().empty());
    ASSERT_EQ(bench.document.workbook().surveys[0].header.zeroChecks.size(), 1U);
    EXPECT_EQ(walk.mode(), EntryWalk::Mode::reading);
    EXPECT_EQ(here(), "1A1.00");
}

TEST_F(Walk, TheEntryUnitMayChangeAtAnyTime) {
    walk.setUnit(Unit::micrometre);
    walk.keep("25,4");
    walk.setUnit(Unit::tenth);
    walk.keep("10");
    for (const Reading& reading : readings())
        EXPECT_EQ(diameterAt20(reading.typed, bench.document.workbook().surveys[0].header.gauge),
                  in("3.501"));
    bench.document.setUnits(DisplayUnits::metric());
    EXPECT_EQ(readings()[0].typed.withUnit(), "25,4 um") << "showing touches no data";
}

TEST_F(Walk, AnAngleOffTheAxisIsForOneReading) {
    walk.setAngle(15);
    walk.keep("1");
    walk.keep("1");
    EXPECT_EQ(readings()[0].angleOffAxis, 15);
    EXPECT_FALSE(readings()[1].angleOffAxis);
}

TEST_F(Walk, UndoToTheStartGivesTheStart) {
    const Workbook start = bench.document.workbook();
    walk.keep("1.5");
    walk.noWall();
    walk.keep("1.4");
    walk.repeat();
    walk.keep("1.3");
    walk.back();
    walk.keep("1.2");
    const Workbook end = bench.document.workbook();
    while (bench.document.undoStack().canUndo()) bench.document.undoStack().undo();
    EXPECT_TRUE(bench.document.workbook() == start);
    while (bench.document.undoStack().canRedo()) bench.document.undoStack().redo();
    EXPECT_TRUE(bench.document.workbook() == end);
}

TEST_F(Walk, UndoIsNamed) {
    walk.keep("1.5");
    EXPECT_EQ(bench.document.undoStack().undoText(), "reading bore 1, 1.00 in, A");
}

} // namespace
} // namespace borewright
