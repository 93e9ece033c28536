// SPDX-License-Identifier: GPL-3.0-or-later
// A text too long for any file is refused where it is typed: what is accepted can be saved.
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "core/workbook/edit_checks.h"
#include "tests/support/blocks.h"

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

} // namespace
} // namespace borewright
