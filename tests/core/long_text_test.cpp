// SPDX-License-Identifier: GPL-3.0-or-later
// A text too long for any file is refused where it is typed: what is accepted can be saved.
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "core/workbook/edit_checks.h"
#include "tests/support/blocks.h"
#include "tests/support/honed_block.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

Edit notesOf(const Workbook& workbook, std::size_t bytes) {
    Job job = workbook.job;
    job.notes = std::string(bytes, 'x');
    return SetJob{job};
}

Edit summaryOf(std::size_t bytes) {
    return SetSheetText{{std::string(bytes, 'x'), {}}};
}

TEST(LongText, TheLongestAcceptedCanBeSavedAndRead) {
    Workbook workbook = inchBlock(1);
    ASSERT_TRUE(borewright::apply(workbook, notesOf(workbook, longestText)));
    ASSERT_TRUE(borewright::apply(workbook, summaryOf(longestText)));
    const auto back = readWorkbook(writeWorkbook(workbook));
    ASSERT_TRUE(back) << back.error().message();
    EXPECT_EQ(*back, workbook);
}

TEST(LongText, ALongerOneIsRefusedAndNothingIsChanged) {
    Workbook workbook = inchBlock(1);
    const Workbook before = workbook;
    for (const Edit& edit : {notesOf(workbook, longestText + 1), summaryOf(longestText + 1)}) {
        const auto done = borewright::apply(workbook, edit);
        ASSERT_FALSE(done);
        EXPECT_NE(done.error().message().find("longer than 64 KB"), std::string::npos)
            << done.error().message();
        EXPECT_EQ(workbook, before);
    }
}

// One edit for each text of the record, of this length.
std::vector<std::pair<std::string, Edit>> everyText(const Workbook& workbook, std::size_t bytes) {
    const std::string text(bytes, 'x');
    std::vector<std::pair<std::string, Edit>> edits;
    const auto add = [&](const std::string& name, Edit edit) {
        edits.emplace_back(name, std::move(edit));
    };
    const auto header = [&](const std::string& name, auto change) {
        SurveyHeader made = workbook.surveys.front().header;
        change(made);
        add(name, SetSurveyHeader{made.id, made});
    };
    header("name of a survey", [&](SurveyHeader& h) { h.name = text; });
    header("notes of a survey", [&](SurveyHeader& h) { h.notes = text; });
    header("gauge", [&](SurveyHeader& h) { h.gauge.gauge = text; });
    header("set on", [&](SurveyHeader& h) { h.gauge.setOn = text; });
    header("last checked", [&](SurveyHeader& h) { h.gauge.gear.lastChecked = text; });
    Survey survey{workbook.surveys.front().header, {}};
    survey.header.id = "s9";
    survey.header.notes = text;
    add("notes of a new survey", InsertSurvey{0, survey});
    add("reason of a strike", SetStrike{workbook.surveys.front().header.id, 0, Strike{text, {}}});
    Reading reading = workbook.surveys.front().readings.front();
    reading.accepted = text;
    add("story of a reading", InsertReading{workbook.surveys.front().header.id, 0, reading});
    const auto block = [&](const std::string& name, auto change) {
        Block made = workbook.block;
        change(made);
        add(name, SetBlock{made});
    };
    block("open end", [&](Block& b) { b.bores[0].openEnd = text; });
    block("label of an axis", [&](Block& b) { b.axes[0].label = text; });
    LimitSet set;
    set.id = "l1";
    set.name = text;
    add("name of limits", SetLimitSets{{set}});
    add("gauge of a study", SetStudies{{{"r1", text, "", {}}}});
    add("person of a study", SetStudies{{{"r1", "", "", {{text, "", {}}}}}});
    SizingPlan sizing;
    sizing.bores[1].damages.push_back(
        {*readTyped("1", Unit::inch), "A", *readTyped("1", Unit::thou), false, text});
    add("damage", SetSizing{sizing});
    add("target", SetTargets{{{1, {*readTyped("3.5", Unit::inch), {}, {}, text}}}});
    FitRecord fit;
    fit.pistons.emplace_back().id = "p1";
    fit.pistons.back().label = text;
    add("label of a piston", SetFit{fit});
    fit = {};
    fit.rings.emplace_back().id = "g1";
    fit.rings.back().label = text;
    add("label of a ring", SetFit{fit});
    const auto hone = [&](const std::string& name, auto change) {
        HoneRecord made = workbook.hone;
        change(made);
        add(name, SetHone{made});
    };
    hone("feed", [&](HoneRecord& h) { h.hone.feed = text; });
    hone("grit", [&](HoneRecord& h) { h.stones.front().grit = text; });
    hone("notes of a pass", [&](HoneRecord& h) { h.passes.front().notes = text; });
    hone("why a pass was struck", [&](HoneRecord& h) { h.passes.front().struck = text; });
    return edits;
}

Workbook withEverything() {
    Workbook workbook = honedBlock();
    const std::string id = workbook.surveys.front().header.id;
    if (workbook.surveys.front().readings.empty()) type(workbook, id, 1, "0.5", "A", "1.0");
    return workbook;
}

TEST(LongText, EveryTextOfTheRecordIsRefusedBeyondAndTakenUpToIt) {
    const Workbook before = withEverything();
    for (const auto& [name, edit] : everyText(before, longestText + 1)) {
        Workbook workbook = before;
        const auto done = borewright::apply(workbook, edit);
        ASSERT_FALSE(done) << name;
        EXPECT_NE(done.error().message().find("longer than 64 KB"), std::string::npos)
            << name << ": " << done.error().message();
        EXPECT_EQ(workbook, before) << name;
        EXPECT_FALSE(borewright::apply(workbook, EditGroup{{edit}})) << name << ", in a group";
    }
    for (const auto& [name, edit] : everyText(before, longestText)) {
        Workbook workbook = before;
        const auto done = borewright::apply(workbook, edit);
        ASSERT_TRUE(done) << name << ": " << done.error().message();
        const auto back = readWorkbook(writeWorkbook(workbook));
        ASSERT_TRUE(back) << name << ": " << back.error().message();
        EXPECT_EQ(*back, workbook) << name;
    }
}

} // namespace
} // namespace borewright
