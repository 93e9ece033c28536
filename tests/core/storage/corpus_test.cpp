// SPDX-License-Identifier: GPL-3.0-or-later
// Replays every case that the fuzzers began from or once tripped over. The folder is listed at run
// time, so that none is passed over.
#include "tests/support/fuzz_properties.h"

#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>

namespace borewright {
namespace {

using Check = std::string (*)(std::string_view);

int replay(const std::string& reader, Check broken) {
    int cases = 0;
    const auto folder = std::filesystem::path(BOREWRIGHT_SOURCE_DIR) / "tests/fuzz/corpus" / reader;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        std::ifstream file(entry.path(), std::ios::binary);
        const std::string bytes{std::istreambuf_iterator<char>(file), {}};
        EXPECT_EQ(broken(bytes), "") << entry.path();
        ++cases;
    }
    return cases;
}

TEST(Corpus, WhatTheFuzzersKeptHoldsForWorkbooks) {
    EXPECT_GE(replay("workbook", test::brokenByWorkbook), 3);
}

TEST(Corpus, WhatTheFuzzersKeptHoldsForReadings) {
    EXPECT_GE(replay("readings", test::brokenByReadings), 5);
}

TEST(Corpus, WhatTheFuzzersKeptHoldsForNumbers) {
    EXPECT_GE(replay("number", test::brokenByNumber), 10);
}

TEST(Corpus, WhatTheFuzzersKeptHoldsForTheGauge) {
    EXPECT_GE(replay("gauge", test::brokenByGauge), 5);
}

TEST(Corpus, WhatTheFuzzersKeptHoldsForLocks) {
    EXPECT_GE(replay("lock", test::brokenByLock), 2);
}

} // namespace
} // namespace borewright
