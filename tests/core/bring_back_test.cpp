// SPDX-License-Identifier: GPL-3.0-or-later
// An earlier state comes back whole or by one survey, and undo brings back what was there.
#include "core/workbook/bring_back.h"
#include "tests/support/blocks.h"
#include "tests/support/random_workbook.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

TEST(BringBack, TheWholeComesBackFromAnythingAndUndoTakesItBack) {
    int changed = 0;
    for (unsigned seed = 0; seed < 200; ++seed) {
        const Workbook before = randomWorkbook(seed + 1);
        Workbook earlier = randomWorkbook(seed + 5000);
        earlier.invented = before.invented; // no part of the record
        earlier.unknown = before.unknown;
        earlier.history = before.history; // only grows
        Workbook workbook = before;
        const auto inverse = borewright::apply(workbook, bringBack(workbook, earlier));
        ASSERT_TRUE(inverse) << "seed " << seed << ": " << inverse.error().message();
        EXPECT_TRUE(workbook == earlier) << "seed " << seed;
        const auto undone = borewright::apply(workbook, *inverse);
        ASSERT_TRUE(undone) << "seed " << seed << ": " << undone.error().message();
        EXPECT_TRUE(workbook == before) << "seed " << seed << ": undo came to something else";
        changed += before == earlier ? 0 : 1;
    }
    EXPECT_GT(changed, 190);
}

class BringBackSurvey : public testing::Test {
protected:
    BringBackSurvey() {
        earlier = inchBlock(2);
        found = addSurvey(earlier, SurveyKind::asFound, "as found");
        type(earlier, found, 1, "0.5", "A", "1.5");
        type(earlier, found, 2, "0.5", "A", "2.5");
        now = earlier;
        now.surveys[0].readings[0].struck = Strike{"by mistake", {}, {}};
        now.surveys[0].readings.erase(now.surveys[0].readings.begin() + 1);
        now.surveys[0].header.notes = "muddled";
        check = addSurvey(now, SurveyKind::check, "check");
        type(now, check, 1, "0.5", "A", "1.0");
    }
    std::string refused(const std::string& id) const {
        const auto edit = bringBackSurvey(now, earlier, id);
        return edit ? "accepted" : edit.error().message();
    }
    Workbook earlier, now;
    std::string found, check;
};

TEST_F(BringBackSurvey, OnlyThatOneIsAsItWas) {
    Workbook workbook = now;
    const auto edit = bringBackSurvey(workbook, earlier, found);
    ASSERT_TRUE(edit) << edit.error().message();
    const auto inverse = borewright::apply(workbook, *edit);
    ASSERT_TRUE(inverse) << inverse.error().message();
    EXPECT_EQ(workbook.surveys[0], earlier.surveys[0]);
    EXPECT_EQ(workbook.surveys[1], now.surveys[1]) << "the later survey stays";
    ASSERT_TRUE(borewright::apply(workbook, *inverse));
    EXPECT_TRUE(workbook == now);
}

TEST_F(BringBackSurvey, OneThatIsGoneIsPutBack) {
    Workbook workbook = now;
    workbook.surveys.erase(workbook.surveys.begin());
    const auto edit = bringBackSurvey(workbook, earlier, found);
    ASSERT_TRUE(edit) << edit.error().message();
    ASSERT_TRUE(borewright::apply(workbook, *edit));
    EXPECT_EQ(workbook.surveys[0], earlier.surveys[0]);
    EXPECT_EQ(workbook.surveys[1], now.surveys[1]);
}

TEST_F(BringBackSurvey, WhatDoesNotFitTheBlockAnyMoreIsRefused) {
    EXPECT_EQ(refused("s9"), "there was no such survey");
    now.block.bores.pop_back();
    EXPECT_EQ(refused(found), "it reads bore 2, which the block has no more");
    earlier.surveys[0].readings.pop_back();
    EXPECT_EQ(refused(found), "accepted");
    earlier.surveys[0].header.limitSet = "l7";
    EXPECT_EQ(refused(found), "the limits that it was judged by are gone");
    earlier.surveys[0].header.limitSet.reset();
    now.block.axes.erase(now.block.axes.begin());
    EXPECT_EQ(refused(found), "it reads axis A, which the block has no more");
}

} // namespace
} // namespace borewright
