// SPDX-License-Identifier: GPL-3.0-or-later
// What is repeated back in a refusal is cut between characters, wherever the cut falls.
#include "core/length/number_text.h"
#include "core/utf8.h"
#include "core/workbook/hone_names.h"
#include "core/workbook/timestamp.h"

#include <gtest/gtest.h>
#include <string>

namespace borewright {
namespace {

bool isUtf8(const std::string& text) {
    return firstBadUtf8(text) == text.size();
}

// Characters of one to four bytes, moved by `shift` bytes, far longer than any refusal repeats.
std::string longText(std::size_t shift) {
    std::string text(shift, 'x');
    for (int i = 0; i < 20; ++i)
        text += "é€𝄞";
    return text;
}

TEST(Utf8, CutsBetweenCharacters) {
    EXPECT_EQ(shortened("short"), "short");
    EXPECT_EQ(shortened("aé", 2), "a…");
    EXPECT_EQ(shortened("aé", 3), "aé");
    EXPECT_EQ(shortened("𝄞", 3), "…");
    for (std::size_t most = 0; most < 200; ++most) {
        const std::string cut = shortened(longText(0), most);
        EXPECT_TRUE(isUtf8(cut)) << most << ": " << cut;
        EXPECT_LE(cut.size(), most + std::string("…").size());
    }
}

TEST(Utf8, RefusalsRepeatWholeCharacters) {
    for (std::size_t shift = 0; shift < 12; ++shift) {
        const std::string text = longText(shift);
        const auto time = readIso(text);
        ASSERT_FALSE(time);
        EXPECT_TRUE(isUtf8(time.error().message())) << time.error().message();
        const auto length = readTyped(text, Unit::inch);
        ASSERT_FALSE(length);
        EXPECT_TRUE(isUtf8(length.error().message())) << length.error().message();
        Stone stone;
        stone.name = text;
        EXPECT_TRUE(isUtf8(called(stone))) << called(stone);
    }
}

} // namespace
} // namespace borewright
