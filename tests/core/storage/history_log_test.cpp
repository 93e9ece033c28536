// SPDX-License-Identifier: GPL-3.0-or-later
// The way back through a workbook's history is exact, whatever was changed, or it is refused.
#include "core/storage/history_log.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/honed_block.h"
#include "tests/support/random_workbook.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

constexpr Timestamp noon{1'774'000'000, 60};

Workbook withoutHistory(Workbook workbook) {
    workbook.history = {};
    return workbook;
}

// A workbook whose every change is noted, and what it was at each sheet.
struct Noted {
    explicit Noted(Workbook begun)
        : workbook(std::move(begun)) {}

    void edit(const Edit& edit) {
        const Workbook before = workbook;
        const auto inverse = borewright::apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        HistoryEntry entry{noon, "A. Example", "a change"};
        entry.was = oldValues(before, workbook);
        (void)noteChange(workbook, entry);
    }
    // As the window notes what is typed: by the inverse alone.
    void editReadings(const Edit& edit) {
        const auto inverse = borewright::apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        HistoryEntry entry{noon, "A. Example", "a reading"};
        entry.was = oldReadings(workbook, *inverse);
        (void)noteChange(workbook, entry);
    }
    void print() {
        sheets.emplace_back(workbook.history.entries.size(), withoutHistory(workbook));
        HistoryEntry entry{noon, "A. Example", {}};
        entry.sheet = PrintedSheet{"CODE", SheetUnits::inch, {}, {}, {}};
        noteSheet(workbook, entry);
    }
    void expectAllSheets() const {
        // As the file gives it back, not only as it stands in memory.
        const auto read = readWorkbook(writeWorkbook(workbook));
        ASSERT_TRUE(read) << read.error().message();
        ASSERT_EQ(*read, workbook);
        for (const auto& [entry, then] : sheets) {
            const auto back = atSheet(*read, entry);
            ASSERT_TRUE(back) << back.error().message();
            EXPECT_TRUE(*back == then) << "the sheet at entry " << entry << " is another";
        }
    }

    Workbook workbook;
    std::vector<std::pair<std::size_t, Workbook>> sheets;
};

TEST(HistoryLog, ComesBackFromAnyWorkbookToAnyOther) {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE(seed);
        Noted noted(withoutHistory(randomWorkbook(seed)));
        noted.print();
        const Workbook before = noted.workbook;
        for (const unsigned other : {seed + 100, seed + 200}) {
            const Workbook earlier = noted.workbook;
            History history = earlier.history;
            noted.workbook = randomWorkbook(other);
            noted.workbook.history = history;
            HistoryEntry entry{noon, {}, "everything"};
            entry.was = oldValues(earlier, noted.workbook);
            ASSERT_TRUE(noteChange(noted.workbook, entry));
            noted.print();
        }
        noted.expectAllSheets();
    }
}

LimitSet namedSet(const std::string& id, const std::string& name) {
    LimitSet set;
    set.id = id;
    set.name = name;
    return set;
}

Reading readingAt(const std::string& depth, const std::string& thou) {
    Reading reading;
    reading.station = {1, readTyped(depth, Unit::inch)->value(), "A"};
    reading.typed = *readTyped(thou, Unit::thou);
    reading.time = noon;
    return reading;
}

TEST(HistoryLog, KnowsReadingsTypedStruckKeptAndTakenAway) {
    Workbook begun = inchBlock(2);
    const std::string id = addSurvey(begun, SurveyKind::asFound, "as found");
    type(begun, id, 1, "0.5", "A", "1.0");
    Noted noted(begun);
    noted.print();
    noted.editReadings(InsertReading{id, 1, readingAt("1.25", "1.5")});
    EXPECT_EQ(noted.workbook.history.entries.size(), 1U) << "an appended reading needs no entry";
    noted.print();
    noted.editReadings(SetStrike{id, 0, Strike{"digits \"swapped\"", noon, "B. Example"}});
    noted.print();
    noted.editReadings(EditGroup{{SetStrike{id, 1, Strike{"read again", noon}},
                                  InsertReading{id, 2, readingAt("1.25", "1.4")},
                                  InsertReading{id, 3, readingAt("2", "1.3")}}});
    noted.print();
    noted.editReadings(SetKept{id, 2, true});
    noted.print();
    noted.editReadings(EraseReading{id, 3});
    noted.editReadings(InsertReading{id, 0, readingAt("2.75", "0.9")});
    noted.print();
    noted.editReadings(SetStrike{id, 1, std::nullopt});
    noted.editReadings(InsertReading{id, 4, readingAt("3.5", "0.8")});
    noted.expectAllSheets();
}

TEST(HistoryLog, KnowsLimitsSettingsBlockAndHone) {
    Workbook begun = honedBlock();
    Noted noted(begun);
    noted.print();
    Job job = begun.job;
    job.customer = "C. Example";
    noted.edit(SetJob{job});
    noted.print();
    std::vector<LimitSet> sets = noted.workbook.limitSets;
    sets.push_back(namedSet("l9", "another/with~signs"));
    sets.front().limits.taper = *readTyped("1.25", Unit::thou);
    noted.edit(SetLimitSets{sets});
    noted.edit(SetStraightAim{std::nullopt});
    noted.print();
    SurveyHeader header = noted.workbook.surveys.front().header;
    header.gauge.setOn = "another ring";
    noted.edit(SetSurveyHeader{header.id, header});
    noted.edit(Renumber{{{1, 2}, {2, 1}}});
    noted.print();
    HoneRecord hone = noted.workbook.hone;
    hone.passes.back().struck = "wrong stone";
    hone.hone.beatsPerMinute = 55;
    noted.edit(SetHone{hone});
    noted.print();
    noted.edit(SetHone{HoneRecord(), true});
    noted.edit(SetTargets{FinishTargets()});
    noted.expectAllSheets();
}

TEST(HistoryLog, ChangingTheUnitOfABoresDepthIsNoChangeOfItsReadings) {
    Workbook begun = inchBlock(1);
    const std::string id = addSurvey(begun, SurveyKind::asFound, "as found");
    typeShape(begun, id, 1, [](double, const std::string&) { return 1.0; });
    Noted noted(begun);
    noted.print();
    Block block = begun.block;
    block.bores[0].depth = *readTyped("101.6", Unit::millimetre);
    noted.edit(SetBlock{block});
    EXPECT_EQ(noted.workbook.history.entries.back().was.size(), 1U);
    noted.expectAllSheets();
}

TEST(HistoryLog, NothingChangedNeedsNoEntry) {
    Workbook workbook = demo::saltmarsh();
    EXPECT_TRUE(oldValues(workbook, workbook).empty());
    HistoryEntry entry{noon, "A. Example", "nothing"};
    EXPECT_FALSE(noteChange(workbook, entry));
    EXPECT_TRUE(workbook.history.entries.empty());
}

TEST(HistoryLog, AFileThatWasChangedWithoutANoteIsRefused) {
    Workbook begun = inchBlock(2);
    const std::string id = addSurvey(begun, SurveyKind::asFound, "as found");
    type(begun, id, 1, "0.5", "A", "1.0");
    Noted noted(begun);
    noted.print();
    noted.edit(SetLimitSets{{namedSet("l1", "worn")}});
    Workbook tampered = noted.workbook;
    tampered.limitSets.clear();
    EXPECT_FALSE(atSheet(tampered, 0)) << "what is put back has no place any more";
    tampered = noted.workbook;
    tampered.surveys[0].readings.clear();
    EXPECT_FALSE(atSheet(tampered, 0)) << "readings that the sheet had are gone";
    EXPECT_FALSE(atSheet(noted.workbook, 1)) << "no sheet was printed then";
    EXPECT_FALSE(atSheet(noted.workbook, 7));
}

TEST(HistoryLog, HostilePlacesAreRefusedAndNeverReached) {
    Noted noted(inchBlock(1));
    noted.print();
    for (const OldValue& old :
         {OldValue{"", "1"}, OldValue{"job", "1"}, OldValue{"/job/customer/deeper", "\"x\""},
          OldValue{"/block/bores/99999999999999999999/number", "1"},
          OldValue{"/block/bores/-1", "{}"}, OldValue{"/block/bores/7", "{}"},
          OldValue{"/surveys", "[]", Splice{-5, -7}}, OldValue{"/surveys", "[]", Splice{5, 1}},
          OldValue{"/surveys", "{}", Splice{0, 0}}, OldValue{"/nothing/here", std::nullopt},
          OldValue{"/job", "not JSON"}, OldValue{"/block", std::nullopt}}) {
        Workbook hostile = noted.workbook;
        hostile.history.entries.push_back({noon, {}, {}, {old}});
        const auto back = atSheet(hostile, 0);
        EXPECT_TRUE(!back || old.at == "/surveys") << old.at;
    }
}

TEST(HistoryLog, AChangeTooLargeToKeepIsSaidAndTheFileStaysReadable) {
    Workbook workbook = inchBlock(1);
    workbook.job.notes = std::string(60'000, 'x');
    HistoryEntry large{noon, {}, "notes"};
    for (int i = 0; i < 40; ++i)
        large.was.push_back({"/job/notes", '"' + std::string(60'000, 'y') + '"'});
    Noted noted(workbook);
    noted.print();
    ASSERT_TRUE(noteChange(noted.workbook, large));
    EXPECT_TRUE(noted.workbook.history.entries.back().dropped);
    EXPECT_TRUE(noted.workbook.history.entries.back().was.empty());
    const auto back = atSheet(noted.workbook, 0);
    ASSERT_FALSE(back);
    EXPECT_NE(back.error().message().find("too large"), std::string::npos);
    // Nested as deep as a file may be, it stands deeper still in an entry.
    std::string deep(40, '[');
    deep += std::string(40, ']');
    HistoryEntry nested{noon, {}, "later"};
    nested.was.push_back({"/later", deep});
    ASSERT_TRUE(noteChange(noted.workbook, nested));
    EXPECT_TRUE(noted.workbook.history.entries.back().dropped);
    // Many small ones until the whole history is full: what was dropped goes on being said.
    HistoryEntry small{noon, {}, "notes"};
    small.was.push_back({"/job/notes", '"' + std::string(60'000, 'z') + '"'});
    std::size_t dropped = 0;
    for (int i = 0; i < 200; ++i) {
        ASSERT_TRUE(noteChange(noted.workbook, small));
        dropped += noted.workbook.history.entries.back().dropped ? 1 : 0;
    }
    EXPECT_GT(dropped, 0U);
    const std::string bytes = writeWorkbook(noted.workbook);
    EXPECT_LT(bytes.size(), largestHistory + 1'000'000);
    EXPECT_TRUE(readWorkbook(bytes));
}

} // namespace
} // namespace borewright
