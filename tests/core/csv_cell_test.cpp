// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/csv_cell.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

TEST(CsvCell, PlainTextStaysAsItIs) {
    EXPECT_EQ(csvCell("A. Example"), "A. Example");
    EXPECT_EQ(csvCell(""), "");
    EXPECT_EQ(csvCell("SM-4711 = spare"), "SM-4711 = spare");
}

TEST(CsvCell, WhatHasACommaQuoteOrBreakIsQuoted) {
    EXPECT_EQ(csvCell("a, b"), "\"a, b\"");
    EXPECT_EQ(csvCell("3.5\" bore"), "\"3.5\"\" bore\"");
    EXPECT_EQ(csvCell("two\nlines"), "\"two\nlines\"");
}

TEST(CsvCell, WhatASpreadsheetWouldRunIsMadeText) {
    EXPECT_EQ(csvCell("=1+1"), "'=1+1");
    EXPECT_EQ(csvCell("+49 1"), "'+49 1");
    EXPECT_EQ(csvCell("-2"), "'-2");
    EXPECT_EQ(csvCell("@SUM(A1)"), "'@SUM(A1)");
    EXPECT_EQ(csvCell("  =1"), "'  =1");
    EXPECT_EQ(csvCell("\t=1"), "\"'\t=1\"");
    EXPECT_EQ(csvCell("=HYPERLINK(\"x\")"), "\"'=HYPERLINK(\"\"x\"\")\"");
}

} // namespace
} // namespace borewright
