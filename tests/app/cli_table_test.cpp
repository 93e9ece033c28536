// SPDX-License-Identifier: GPL-3.0-or-later
// The command line's tables: figures stand under each other by their last digit, words by their
// first letter.
#include "app/cli/common.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

TEST(AlignedTable, SetsFiguresRightAndWordsLeft) {
    EXPECT_EQ(alignedTable({{"opened", "customer", "size, in", "lead", "verdict"},
                            {"2026-03-11", "Ann", "3.4405", "-0.1 ±0.2", "within"},
                            {"2026-03-12", "Bartholomew", "-", "0.0", "not yet"}}),
              "opened      customer     size, in       lead  verdict\n"
              "2026-03-11  Ann            3.4405  -0.1 ±0.2  within\n"
              "2026-03-12  Bartholomew         -        0.0  not yet\n");
}

// A head is always words, and says nothing of its column.
TEST(AlignedTable, TakesNothingFromTheHead) {
    EXPECT_EQ(alignedTable({{"bore", "read", "verdict"}, {"1", "12", "within"}}),
              "bore  read  verdict\n"
              "1       12  within\n");
}

} // namespace
} // namespace borewright
