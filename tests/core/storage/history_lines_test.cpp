// SPDX-License-Identifier: GPL-3.0-or-later
// The history in words: made from known changes, each is told with its place, what stood before and
// what stood there then; a broken way back never makes up what nobody knows.
#include "core/storage/history_lines.h"

#include "core/storage/history_log.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/random_workbook.h"
#include "tests/support/schema_validator.h"

#include <gmock/gmock.h>

namespace borewright {
namespace {

using namespace test;
using testing::ElementsAre;

constexpr Timestamp noon{1'774'000'000, 60};

// Who is told by place, before and after.
std::string inWords(const HistoryLine& line) {
    return line.who + " | " + line.what + " | " + line.where + " | " + line.before.value_or("-") +
           " | " + line.after.value_or("-") + (line.code.empty() ? "" : " | " + line.code);
}

class HistoryInWords : public testing::Test {
protected:
    HistoryInWords() {
        workbook = inchBlock(3);
        survey = addSurvey(workbook, SurveyKind::asFound, "as found");
        type(workbook, survey, 1, "0.5", "A", "1.0");
        type(workbook, survey, 3, "1.25", "B", "-1.5");
    }
    // As the window notes it.
    void edit(const Edit& edit, const std::string& who, const std::string& what) {
        const Workbook before = workbook;
        const auto inverse = borewright::apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        const bool readings = std::holds_alternative<SetStrike>(edit) ||
                              std::holds_alternative<SetKept>(edit) ||
                              std::holds_alternative<InsertReading>(edit);
        (void)noteChange(
            workbook, {noon, who, what,
                       readings ? oldReadings(workbook, *inverse) : oldValues(before, workbook)});
    }
    void rename(const std::string& customer, const std::string& who) {
        Job job = workbook.job;
        job.customer = customer;
        edit(SetJob{job}, who, "customer");
    }
    void print(const std::string& code) {
        HistoryEntry entry{noon, "B. Example", {}};
        entry.sheet = PrintedSheet{code, SheetUnits::inch, {}, {}, {}};
        noteSheet(workbook, entry);
    }
    std::vector<std::string> lines() const {
        std::vector<std::string> told;
        for (const HistoryLine& line : historyLines(workbook))
            told.push_back(inWords(line));
        return told;
    }

    Workbook workbook;
    std::string survey;
};

TEST_F(HistoryInWords, IsEmptyWhereNothingWasChanged) {
    EXPECT_TRUE(historyLines(workbook).empty());
    EXPECT_EQ(historyCsv({}), "when,who,what,where,bore,before,after,check code\n");
}

TEST_F(HistoryInWords, TellsEachChangeWithWhatStoodBeforeAndThenNewestFirst) {
    rename("Ash", "A. Example");
    edit(SetStrike{survey, 1, Strike{"a chip under the foot", noon, "A. Example"}}, "A. Example",
         "strike out");
    print("9KWW-4Y4T-7RYG");
    rename("Birch", "B. Example");
    edit(SetStrike{survey, 1, {}}, "B. Example", "taken back: strike out");
    edit(SetKept{survey, 0, true}, "B. Example", "keep as read");
    EXPECT_THAT(
        lines(),
        ElementsAre("B. Example | keep as read | as found, bore 1, 0.5 in, A: reading | 1.0 thou | "
                    "1.0 thou, kept as it is",
                    "B. Example | taken back: strike out | as found, bore 3, 1.25 in, B: reading | "
                    "-1.5 thou, struck out (a chip under the foot) | -1.5 thou",
                    "B. Example | customer | job: customer | Ash | Birch",
                    "B. Example | sheet printed |  | - | - | 9KWW-4Y4T-7RYG",
                    "A. Example | strike out | as found, bore 3, 1.25 in, B: reading | -1.5 thou | "
                    "-1.5 thou, struck out (a chip under the foot)",
                    "A. Example | customer | job: customer | empty | Ash"));
    const auto told = historyLines(workbook);
    EXPECT_EQ(told[1].bore, 3);
    EXPECT_EQ(told[2].bore, std::nullopt);
    EXPECT_EQ(told[0].entry, 5U);
}

// As where one bench keeps his own over the other's: the other's reading went, and what was only
// added since stands in its place in the list. Field by field that would be told as three changes
// of one reading that never was.
TEST_F(HistoryInWords, AReadingThatAnotherTookThePlaceOfIsToldAsGone) {
    const Workbook mine = workbook;
    type(workbook, survey, 2, "0.5", "A", "0.9");
    (void)noteChange(workbook, {noon, "A. Example", "went on", oldValues(workbook, mine)});
    workbook.surveys[0].readings.pop_back();
    type(workbook, survey, 1, "1.25", "B", "0.4");
    // The way back is exact; it says so by fields of the place where both stood.
    auto& was = workbook.history.entries.back().was;
    was = {{"/surveys/0/readings/2/bore", "2"},
           {"/surveys/0/readings/2/depth", "\"0.5 in\""},
           {"/surveys/0/readings/2/axis", "\"A\""},
           {"/surveys/0/readings/2/typed", "\"0.9 thou\""}};
    EXPECT_THAT(lines(),
                ElementsAre("A. Example | went on | as found, bore 2, 0.5 in, A: reading | "
                            "0.9 thou | not there"));
}

TEST_F(HistoryInWords, TellsLimitsAndSettingsByTheirNames) {
    addWornLimits(workbook, "3.5040", "1.5", "2");
    LimitSet set = workbook.limitSets.front();
    const std::string name = set.name;
    set.name = "worn, by the owner";
    edit(SetLimitSets{{set}}, "A. Example", "limits");
    const auto told = historyLines(workbook);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_EQ(told[0].before, name);
    EXPECT_EQ(told[0].after, "worn, by the owner");
    EXPECT_NE(told[0].where.find("name"), std::string::npos) << told[0].where;
}

TEST_F(HistoryInWords, WhatNobodyKnowsAnyMoreIsNotMadeUp) {
    rename("Ash", "A. Example");
    rename("Birch", "A. Example");
    HistoryEntry lost{noon, "B. Example", "everything"};
    lost.dropped = true;
    workbook.history.entries.push_back(lost);
    workbook.job.customer = "Cedar"; // by what was not kept
    rename("Dogwood", "B. Example");
    EXPECT_THAT(lines(),
                ElementsAre("B. Example | customer | job: customer | Cedar | Dogwood",
                            "B. Example | everything | what stood before was too large to be kept "
                            "| - | -",
                            "A. Example | customer | customer | Ash | -",
                            "A. Example | customer | customer | empty | -"));
}

TEST_F(HistoryInWords, AnEntryThatChangedMuchIsBounded) {
    const Workbook before = workbook;
    workbook.surveys[0].readings.clear();
    for (int i = 0; i < 500; ++i)
        type(workbook, survey, 1, "0.5", "A", "2.0");
    (void)noteChange(workbook, {noon, {}, "pasted", oldValues(before, workbook)});
    const auto told = historyLines(workbook);
    ASSERT_EQ(told.size(), mostLinesOfEntry);
    EXPECT_EQ(told.back().where, "and 401 more");
}

// Whatever lies in a history, also one that somebody made up: every line is told, nothing ends it.
TEST_F(HistoryInWords, AnyHistoryIsTold) {
    for (unsigned seed = 1; seed <= 40; ++seed) {
        Workbook any = randomWorkbook(seed);
        const History history = any.history;
        Workbook other = randomWorkbook(seed + 500);
        other.history = history;
        (void)noteChange(other, {noon, {}, "everything", oldValues(any, other)});
        EXPECT_GE(historyLines(other).size(), history.entries.size());
    }
    for (const char* at : {"", "/", "surveys", "/surveys/9/readings/0/struck",
                           "/surveys/0/readings", "/surveys/x/readings/0", "/job/customer/0",
                           "/nothing/here", "/surveys/0/readings/0", "/surveys/0/readings/0/a/b/c"})
        for (const char* was : {"1", "[]", "{\"a\": [1]}", "\"text\"", "not json"})
            for (const bool splice : {false, true}) {
                Workbook odd = workbook;
                OldValue old{at, was};
                if (splice) old.splice = Splice{-3, 7};
                odd.history.entries.push_back({noon, {}, "odd", {old, {at, {}}}});
                EXPECT_FALSE(historyLines(odd).empty()) << at << ' ' << was;
            }
}

TEST_F(HistoryInWords, GoesOutAsCsvThatASpreadsheetDoesNotRunAndAsJsonOfItsSchema) {
    rename("=1+1, \"Ash\"", "A. Example");
    edit(SetStrike{survey, 1, Strike{"chip", noon, "A. Example"}}, "A. Example", "strike out");
    print("9KWW-4Y4T-7RYG");
    const auto told = historyLines(workbook);
    EXPECT_EQ(historyCsv({told[2]}), "when,who,what,where,bore,before,after,check code\n"
                                     "2026-03-20T10:46:40+01:00,A. Example,customer,job: customer,,"
                                     "empty,\"'=1+1, \"\"Ash\"\"\",\n");
    const Json schema = loadSchema("history");
    const Json json = Json::parse(historyJson(workbook, told));
    SchemaValidator validator(schema);
    validator.check(json, schema, "history");
    EXPECT_TRUE(validator.problems.empty()) << *validator.problems.begin();
    ASSERT_EQ(json["lines"].size(), 3U);
    EXPECT_EQ(json["lines"][0]["code"], "9KWW-4Y4T-7RYG");
    EXPECT_EQ(json["lines"][1]["bore"], 3);
    EXPECT_FALSE(json["lines"][0].contains("before"));
    const std::set<std::string> all = propertiesOf(schema, "history");
    EXPECT_EQ(validator.seen, all) << "a property of the schema was never written";
}

} // namespace
} // namespace borewright
