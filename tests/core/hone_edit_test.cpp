// SPDX-License-Identifier: GPL-3.0-or-later
// The edit of what is recorded of honing: undone by its inverse, refused without a trace, carried
// along when the bores are numbered anew, and not left behind by block or surveys.
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "tests/support/honed_block.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

class HoneEdits : public testing::Test {
protected:
    // Applies, checks that something changed, undoes, redoes, and compares.
    void roundTrip(const Edit& edit) {
        const Workbook before = workbook;
        const auto inverse = borewright::apply(workbook, edit);
        ASSERT_TRUE(inverse) << inverse.error().message();
        const Workbook after = workbook;
        EXPECT_FALSE(after == before) << "the edit changed nothing";
        const auto back = readWorkbook(writeWorkbook(workbook));
        ASSERT_TRUE(back) << "it could not be opened again: " << back.error().message();
        const auto again = borewright::apply(workbook, *inverse);
        ASSERT_TRUE(again) << again.error().message();
        EXPECT_TRUE(workbook == before) << "undo did not bring back what was there";
        ASSERT_TRUE(borewright::apply(workbook, *again));
        EXPECT_TRUE(workbook == after) << "redo did not come to the same";
    }
    std::string tried(const Edit& edit) {
        const Workbook before = workbook;
        const auto result = borewright::apply(workbook, edit);
        EXPECT_TRUE(result || workbook == before) << "a refusal left a trace";
        return result ? "taken" : result.error().message();
    }
    template<class Change>
    std::string hone(Change change) {
        HoneRecord hone = workbook.hone;
        change(hone);
        return tried(SetHone{hone});
    }
    // A shallower bore 2: pass h2 does not fit it any more.
    void makeShallow() {
        Block block = workbook.block;
        block.bores[1].depth = typedIn("4.2");
        ASSERT_TRUE(borewright::apply(workbook, SetBlock{block}));
    }

    Workbook workbook = honedBlock();
};

TEST_F(HoneEdits, AreUndoneByTheirInverses) {
    HoneRecord more = workbook.hone;
    more.passes.push_back(more.passes[1]);
    more.passes.back().id = freshPassId(more);
    roundTrip(SetHone{more});
    more.passes.back().struck = "dropped it";
    roundTrip(SetHone{more});
    roundTrip(SetHone{});
    roundTrip(EditGroup{{SetHone{honedBlock().hone}, SetStraightAim{}}});
}

TEST_F(HoneEdits, APassThatCannotBeIsRefused) {
    EXPECT_EQ(hone([](HoneRecord& it) { it.passes[1].after = "s9"; }),
              "pass h2: there is no survey 's9'");
    EXPECT_EQ(hone([](HoneRecord& it) { it.passes[1].bore = 8; }),
              "pass h2: bore: there is no bore 8");
    EXPECT_EQ(hone([](HoneRecord& it) { it.stones.pop_back(); }), "taken") << "k3 was never in";
    EXPECT_EQ(hone([](HoneRecord& it) { it.stones.pop_back(); }),
              "pass h2: stone: there is no stone 'k2'");
}

TEST_F(HoneEdits, AStoneThatTurnsOutLongerMustStillFitItsPasses) {
    EXPECT_EQ(hone([](HoneRecord& it) { it.stones[1].begins = typedIn("1"); }).substr(0, 40),
              "pass h2: window: to: 4.04 in is too low:");
}

TEST_F(HoneEdits, APassThatStoodStandsThoughItsBoreWasChanged) {
    makeShallow();
    EXPECT_EQ(hone([](HoneRecord& it) { it.passes[0].notes = "quiet"; }), "taken");
    EXPECT_EQ(hone([](HoneRecord& it) { it.passes[1].notes = "then"; }), "taken");
    EXPECT_EQ(hone([](HoneRecord& it) {
                  it.stones[1].experience = StoneExperience{0, 1, 1};
              }),
              "taken");
    EXPECT_NE(hone([](HoneRecord& it) { it.passes[1].windows[0].strokes = 30; }), "taken");
    EXPECT_NE(hone([](HoneRecord& it) {
                  it.passes.push_back(it.passes[1]);
                  it.passes.back().id = "h4";
              }),
              "taken");
    roundTrip(SetHone{});
    ASSERT_TRUE(readWorkbook(writeWorkbook(honedBlock())));
}

TEST_F(HoneEdits, UndoBringsBackAPassThatNoLongerFits) {
    makeShallow();
    HoneRecord struck = workbook.hone;
    struck.passes[1].struck = "wrong bore";
    roundTrip(SetHone{struck});
}

TEST_F(HoneEdits, WhatWasHonedStaysInTheBlock) {
    Block block = workbook.block;
    block.bores.pop_back();
    EXPECT_EQ(tried(SetBlock{block}), "taken") << "bore 3 was never honed";
    block.bores.pop_back();
    EXPECT_EQ(tried(SetBlock{block}), "bore 2 has been honed (at " +
                                          clockTime(workbook.hone.passes[1].time) +
                                          " on 20 March 2026), so it stays");
}

TEST_F(HoneEdits, ASurveyThatPassesFollowStays) {
    EXPECT_EQ(tried(EraseSurvey{"s2"}), "the hone was at work after this survey, so it stays");
    Survey later = workbook.surveys.back();
    later.header.id = "s3";
    roundTrip(InsertSurvey{2, later});
    EXPECT_EQ(tried(EraseSurvey{"s3"}), "taken");
}

TEST_F(HoneEdits, NewNumbersCarryPassesAndTicks) {
    roundTrip(Renumber{{{1, 2}, {2, 3}, {3, 1}}});
    EXPECT_EQ(workbook.hone.passes[0].bore, 2);
    EXPECT_EQ(workbook.hone.passes[1].bore, 3);
    EXPECT_EQ(workbook.hone.passes[2].bore, 3) << "struck out, but still of that bore";
    EXPECT_TRUE(workbook.hone.ticks.at(2).portsChamfered) << "ticked in what was bore 1";
    EXPECT_TRUE(workbook.hone.ticks.at(1).washed);
    EXPECT_EQ(workbook.hone.ticks.size(), 2U);
}

} // namespace
} // namespace borewright
