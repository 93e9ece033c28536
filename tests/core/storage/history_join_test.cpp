// SPDX-License-Identifier: GPL-3.0-or-later
// Two benches changed one file and one keeps his own: nothing that either noted is lost, and every
// sheet that either printed comes back as it was.
#include "core/storage/history_join.h"

#include "core/storage/history_log.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/random_workbook.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

Workbook recordOf(Workbook workbook) {
    workbook.history = {};
    return workbook;
}

// One bench's copy of the workbook, which notes what it does, and the sheets it printed.
struct OneBench {
    std::string person;
    Workbook workbook;
    std::int64_t clock = 1'774'000'000;
    std::vector<std::pair<std::string, Workbook>> sheets{}; // by code

    Timestamp now() { return {clock += 60, 60}; }
    void edit(const Edit& edit) {
        const Workbook before = workbook;
        const auto inverse = borewright::apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        const bool readings =
            std::holds_alternative<SetStrike>(edit) || std::holds_alternative<InsertReading>(edit);
        (void)noteChange(
            workbook, {now(), person, "a change",
                       readings ? oldReadings(workbook, *inverse) : oldValues(before, workbook)});
    }
    void rename(const std::string& customer) {
        Job job = workbook.job;
        job.customer = customer;
        edit(SetJob{job});
    }
    void strike(std::size_t reading) {
        edit(SetStrike{workbook.surveys[0].header.id, reading, Strike{"chip", now(), person}});
    }
    void append(const std::string& depth, const std::string& thou) {
        Reading reading;
        reading.station = {1, readTyped(depth, Unit::inch)->value(), "A"};
        reading.typed = *readTyped(thou, Unit::thou);
        reading.time = now();
        edit(InsertReading{workbook.surveys[0].header.id, workbook.surveys[0].readings.size(),
                           reading});
    }
    void print() {
        const std::string code = person + std::to_string(clock);
        sheets.emplace_back(code, recordOf(workbook));
        HistoryEntry entry{now(), person, {}};
        entry.sheet = PrintedSheet{code, SheetUnits::inch, {}, {}, {}};
        noteSheet(workbook, entry);
    }
    void keepOver(const OneBench& other) {
        workbook.history = joinedHistory(workbook, other.workbook, person, now());
    }
};

void expectSheets(const Workbook& workbook,
                  const std::vector<std::pair<std::string, Workbook>>& sheets) {
    const auto read = readWorkbook(writeWorkbook(workbook)); // as the file gives it back
    ASSERT_TRUE(read) << read.error().message();
    for (const auto& [code, then] : sheets) {
        int found = 0;
        for (std::size_t i = 0; i < read->history.entries.size(); ++i) {
            const auto& sheet = read->history.entries[i].sheet;
            if (!sheet || sheet->code != code) continue;
            ++found;
            const auto back = atSheet(*read, i);
            ASSERT_TRUE(back) << code << ": " << back.error().message();
            EXPECT_TRUE(*back == then) << code << " is another";
        }
        EXPECT_EQ(found, 1) << code;
    }
}

class TwoHistories : public testing::Test {
protected:
    TwoHistories() {
        Workbook begun = inchBlock(2);
        begun.history.id = "the workbook";
        const std::string id = addSurvey(begun, SurveyKind::asFound, "as found");
        type(begun, id, 1, "0.5", "A", "1.0");
        type(begun, id, 1, "1.25", "A", "1.5");
        mine.workbook = begun;
        mine.rename("Ash");
        mine.print();
        theirs.workbook = mine.workbook;
        theirs.clock += 7;
    }
    void expectAll(const Workbook& workbook) const {
        expectSheets(workbook, mine.sheets);
        expectSheets(workbook, theirs.sheets);
    }

    OneBench mine{"A. Example", {}};
    OneBench theirs{"B. Example", {}};
};

TEST_F(TwoHistories, BothStandAndEverySheetComesBack) {
    mine.strike(0);
    mine.append("2", "1.7");
    mine.print();
    mine.rename("Birch");
    theirs.append("2.75", "0.5");
    theirs.append("3.5", "0.6");
    theirs.print();
    theirs.strike(2);
    theirs.rename("Cedar");
    theirs.print();
    const auto his = theirs.workbook.history.entries;
    const Workbook before = mine.workbook;
    mine.keepOver(theirs);
    EXPECT_EQ(recordOf(mine.workbook), recordOf(before)) << "what is kept is kept as it is";
    const auto& joined = mine.workbook.history.entries;
    ASSERT_GT(joined.size(), his.size());
    EXPECT_TRUE(std::equal(his.begin(), his.end(), joined.begin()))
        << "the file's is never rewritten";
    EXPECT_EQ(joined.size(), his.size() + before.history.entries.size() - 2 + 2)
        << "what both began with stands once, and two lines say what happened";
    EXPECT_EQ(joined.back().who, "A. Example");
    EXPECT_EQ(joined.back().what.rfind("kept own over B. Example, 20 March 2026, ", 0), 0U)
        << joined.back().what;
    expectAll(mine.workbook);
    mine.rename("Dogwood");
    mine.print();
    expectAll(mine.workbook);
}

TEST_F(TwoHistories, KeptTurnAboutNothingStandsTwice) {
    mine.rename("Birch");
    theirs.rename("Cedar");
    theirs.print();
    const auto once = theirs.workbook.history.entries;
    mine.keepOver(theirs); // and it lies in the file
    mine.print();
    theirs.strike(0);
    theirs.print();
    const Workbook kept = recordOf(theirs.workbook);
    theirs.keepOver(mine);
    EXPECT_EQ(recordOf(theirs.workbook), kept);
    const auto& joined = theirs.workbook.history.entries;
    for (const HistoryEntry& entry : once)
        EXPECT_EQ(std::count(joined.begin(), joined.end(), entry), 1) << entry.what;
    expectAll(theirs.workbook);
}

// As a window does that stood open since before his own was kept elsewhere.
TEST_F(TwoHistories, WhatTheFileHasOfMineAlreadyIsNotAddedAgain) {
    mine.rename("Birch");
    mine.print();
    OneBench old = mine;
    theirs.rename("Cedar");
    theirs.print();
    mine.keepOver(theirs);
    old.rename("Dogwood");
    old.sheets.clear();
    old.print();
    const auto before = old.workbook.history.entries;
    old.keepOver(mine);
    const auto& joined = old.workbook.history.entries;
    for (const HistoryEntry& entry : before)
        EXPECT_EQ(std::count(joined.begin(), joined.end(), entry), 1) << entry.what;
    expectAll(old.workbook);
    expectSheets(old.workbook, old.sheets);
}

TEST_F(TwoHistories, WhatHeOnlyAppendedIsInTheWayBackToo) {
    theirs.append("2.75", "0.5");
    const Workbook his = recordOf(theirs.workbook);
    mine.keepOver(theirs);
    ASSERT_EQ(mine.workbook.history.entries.size(), 3U);
    EXPECT_EQ(mine.workbook.history.entries.back().what, "kept own over another's changes");
    const auto back = behind(mine.workbook, 2);
    ASSERT_TRUE(back) << back.error().message();
    EXPECT_EQ(*back, his);
    expectAll(mine.workbook);
}

TEST_F(TwoHistories, WithNothingNewOrOfAnotherWorkbookMineStaysAsItIs) {
    const History before = mine.workbook.history;
    mine.keepOver(theirs);
    EXPECT_EQ(mine.workbook.history, before);
    theirs.workbook.history.id = "another workbook";
    theirs.rename("Cedar");
    mine.keepOver(theirs);
    EXPECT_EQ(mine.workbook.history, before);
}

TEST_F(TwoHistories, WhereTheWayOfMineIsBrokenItIsRefusedAndNotMadeUp) {
    HistoryEntry lost{mine.now(), "A. Example", "everything"};
    lost.dropped = true;
    mine.workbook.history.entries.push_back(lost);
    mine.workbook.job.customer = "Birch";
    mine.print();
    theirs.rename("Cedar");
    theirs.print();
    mine.keepOver(theirs);
    const auto& entries = mine.workbook.history.entries;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (!entries[i].sheet) continue;
        const auto back = atSheet(mine.workbook, i);
        if (entries[i].sheet->code == mine.sheets.back().first) {
            ASSERT_TRUE(back) << back.error().message();
            EXPECT_EQ(*back, mine.sheets.back().second);
        } else {
            EXPECT_FALSE(back);
        }
    }
}

// From any workbook to any two others.
TEST_F(TwoHistories, AnyTwoWorkbooksComeBack) {
    for (unsigned seed = 1; seed <= 30; ++seed) {
        SCOPED_TRACE(seed);
        OneBench one{"A. Example", recordOf(randomWorkbook(seed))};
        one.print();
        OneBench two{"B. Example", one.workbook, one.clock + 7};
        const auto become = [](OneBench& bench, unsigned other) {
            const Workbook before = bench.workbook;
            bench.workbook = randomWorkbook(other);
            bench.workbook.history = before.history;
            (void)noteChange(bench.workbook, {bench.now(), bench.person, "everything",
                                              oldValues(before, bench.workbook)});
            bench.print();
        };
        become(one, seed + 1000);
        become(two, seed + 2000);
        become(two, seed + 3000);
        one.keepOver(two);
        expectSheets(one.workbook, one.sheets);
        expectSheets(one.workbook, two.sheets);
    }
}

} // namespace
} // namespace borewright
