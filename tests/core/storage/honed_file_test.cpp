// SPDX-License-Identifier: GPL-3.0-or-later
// What is recorded of honing in the file: there and back as typed, absent where there is none,
// refused with line and field where it cannot stand, and files from before it still read.
#include "core/storage/workbook_file.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/honed_block.h"
#include "tests/support/lengths.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace borewright {
namespace {

using namespace test;

std::string goodFile() {
    return writeWorkbook(honedBlock());
}

TEST(HonedFile, AllOfItComesBackAsTyped) {
    const Workbook workbook = honedBlock();
    const std::string bytes = writeWorkbook(workbook);
    const auto back = readWorkbook(bytes);
    ASSERT_TRUE(back) << back.error().message();
    EXPECT_TRUE(back->hone == workbook.hone);
    EXPECT_TRUE(*back == workbook);
    EXPECT_EQ(writeWorkbook(*back), bytes);
}

TEST(HonedFile, AStoneAPassACareAndATickAreALineEach) {
    const std::string bytes = goodFile();
    for (
        const char* line :
        {R"(    "drive": {"speedRpm": 350, "beatsPerMinute": 72, "feed": "spring at the third mark", )"
         R"("oil": true},)",
         R"(      {"id": "k1", "name": "full 100", "grit": "100", "kind": "rough", )"
         R"("begins": "0 in", "ends": "3 in", "outOfOpenEnd": "1 in", "outOfClosedEnd": "0.5 in", )"
         R"("experience": {"logRate": -0.25, "logRateDoubt": 0.4, "passes": 12}},)",
         R"(      {"id": "k3", "name": "full 280", "grit": "280", "kind": "finish", )"
         R"("begins": "0 in", "ends": "3.00 in"})",
         R"(      {"id": "h1", "bore": 1, "stone": "k1", "time": "2026-03-20T10:56:40+01:00", )"
         R"("after": "s1", "windows": [{"from": "2.00 in", "to": "5.00 in", "seconds": 24}, )"
         R"({"from": "4.5 in", "to": "5.0 in", "strokes": 8, "holdSeconds": 2.5}], )"
         R"("speedRpm": 320, "simulated": true, "notes": "loud"},)",
         R"(      {"id": "c2", "stone": "k1", "kind": "dressed", )"
         R"("time": "2026-03-20T10:58:40+01:00", "afterPass": "h1", "struck": "it was not"})",
         R"(      {"bore": 3, "portsChamfered": false, "washed": true})"})
        EXPECT_NE(bytes.find("\n" + std::string(line) + "\n"), std::string::npos)
            << line << "\nis not a line of\n"
            << bytes;
}

TEST(HonedFile, WhatIsEmptyIsNotWrittenAndFilesFromBeforeItAreRead) {
    for (const Workbook& workbook : {emptyWorkbook(), demo::saltmarsh(), demo::rushmere()}) {
        const std::string bytes = writeWorkbook(workbook);
        EXPECT_EQ(bytes.find("\"hone\""), std::string::npos);
        const auto read = readWorkbook(bytes);
        ASSERT_TRUE(read) << read.error().message();
        EXPECT_TRUE(read->hone == HoneRecord());
    }
    std::string bytes = writeWorkbook(emptyWorkbook());
    bytes.insert(bytes.find("\"sheet\""), "\"hone\": {}, ");
    EXPECT_TRUE(*readWorkbook(bytes) == emptyWorkbook());
    Workbook some = emptyWorkbook();
    some.hone.unknown = {{"later", "1"}};
    EXPECT_TRUE(*readWorkbook(writeWorkbook(some)) == some) << "a later version's log was lost";
}

TEST(HonedFile, KeepsFieldsItDoesNotKnowInEveryObject) {
    std::string bytes = goodFile();
    const std::string extra = R"("later": [1, 2.50, {"x": null}], )";
    std::size_t stop = bytes.find("  \"sheet\"");
    int objects = 0;
    for (std::size_t at = bytes.find("\"hone\""); (at = bytes.find('{', at)) < stop; ++at) {
        bytes.insert(at + 1, extra);
        at += extra.size();
        stop += extra.size();
        ++objects;
    }
    // The whole, drive, 3 stones and an experience, stages, 3 passes with 4 windows, 2 cares, 2
    // bores ticked.
    EXPECT_EQ(objects, 1 + 1 + 3 + 1 + 1 + 3 + 4 + 2 + 2);
    const auto read = readWorkbook(bytes);
    ASSERT_TRUE(read) << read.error().message();
    const std::string again = writeWorkbook(*read);
    int kept = 0;
    for (std::size_t at = 0;
         (at = again.find(R"("later": [1, 2.50, {"x": null}])", at)) != std::string::npos; ++at)
        ++kept;
    EXPECT_EQ(kept, objects) << "a field of a later version was lost";
    EXPECT_EQ(writeWorkbook(*readWorkbook(again)), again);
}

struct Wrong {
    const char* from; // on the line that is to be named
    const char* to;
    const char* sentence;
};

void expectRefused(const std::vector<Wrong>& cases) {
    const std::string good = goodFile();
    for (const Wrong& wrong : cases) {
        std::string bad = good;
        const std::size_t at = good.find(wrong.from, good.find("\"hone\""));
        ASSERT_NE(at, std::string::npos) << wrong.from;
        const auto line =
            1 + std::count(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(at), '\n');
        bad.replace(at, std::string(wrong.from).size(), wrong.to);
        const auto read = readWorkbook(bad);
        EXPECT_EQ(read ? "was taken" : read.error().message(),
                  "line " + std::to_string(line) + ": " + wrong.sentence)
            << wrong.from << " -> " << wrong.to;
    }
}

TEST(HonedRefusals, StonesThatCannotStandAreRefusedWithLineAndField) {
    expectRefused({
        {"\"id\": \"k2\", ", "", "id: is missing"},
        {"\"id\": \"k2\"", "\"id\": \"k1\"", "stones: 'k1' is no id of its own"},
        {"\"name\": \"full 280\"", "\"name\": \"FULL 100\"",
         "stone 'FULL 100': another stone is called so already; capitals and spaces do not tell "
         "them apart"},
        {"\"kind\": \"finish\"", "\"kind\": \"polish\"",
         "kind: 'polish' is none of 'rough', 'finish'"},
        {"\"begins\": \"0.25 in\"", "\"begins\": \"0.25\"", "begins: '0.25' has no unit"},
        {"\"begins\": \"0.25 in\"", "\"begins\": \"1.25 in\"",
         "stone 'Short 100': ends: the abrasive ends where it begins or below: both are measured "
         "from the carrier's lower end up"},
        {"\"logRateDoubt\": 0.4", "\"logRateDoubt\": -0.4",
         "stone 'full 100': doubt of its rate: is more than nothing and at most a factor of e^5"},
        {"\"logRateDoubt\": 0.4", "\"logRateDoubt\": 1e999",
         "logRateDoubt: 1e999 is not a number that can be"},
        {"\"beatsPerMinute\": 72", "\"beatsPerMinute\": 0",
         "hone: beat: lies between 1 and 600 a minute"},
        {"\"oil\": true", "\"oil\": \"a little\"",
         "oil: a text stands where true or false must be"},
        {"\"roughStopsAt\": \"4 thou\"", "\"roughStopsAt\": \"4 in\"",
         "stages: rough stones stop at: 4 in to go: is the unit right?"},
    });
}

TEST(HonedRefusals, PassesThatCannotStandAreRefusedWithLineAndField) {
    expectRefused({
        {"\"id\": \"h2\"", "\"id\": \"h1\"", "passes: 'h1' is no id of its own"},
        {"\"bore\": 2, \"stone\": \"k2\"", "\"bore\": 9, \"stone\": \"k2\"",
         "bore: there is no bore 9"},
        {"\"bore\": 2, \"stone\": \"k2\"", "\"bore\": 0, \"stone\": \"k2\"",
         "pass h2: bore: bores are numbered from 1 to 999"},
        {"\"stone\": \"k2\", \"time\": \"2026-03-20T11:16",
         "\"stone\": \"k9\", \"time\": \"2026-03-20T11:16",
         "pass h2: stone: there is no stone 'k9'"},
        {"\"after\": \"s1\"", "\"after\": \"s9\"", "after: there is no survey 's9'"},
        {"\"strokes\": 24", "\"strokes\": 0",
         "pass h2: window: no strokes at all: nothing was honed"},
        {"\"strokes\": 24", "\"strokes\": 1e9",
         "pass h2: window: strokes: lie between 0 and 10 000, a stroke being down and back"},
        {"\"strokes\": 24", "\"strokes\": NaN", "strokes: 'NaN' is not a value"},
        {"\"from\": \"3,3 in\"", "\"from\": \"4.3 in\"",
         "pass h2: window: the window is upside down: it goes from 4.3 in, the upper end of the "
         "stroke, to 4.04 in, which is above it"},
        {"\"from\": \"3,3 in\", ", "", "from: is missing"},
        {"\"struck\": \"that was bore 3\"", "\"struck\": true",
         "struck: true or false stands where a text must be"},
        {"\"kind\": \"dressed\"", "\"kind\": \"thrown away\"",
         "kind: 'thrown away' is none of 'turned end for end', 'run in reverse', 'dressed'"},
        {"\"afterPass\": \"h1\"", "\"afterPass\": \"h9\"", "care c2: there is no pass 'h9'"},
        {"{\"bore\": 3, \"ports", "{\"bore\": 1, \"ports", "bore: 1 is given twice"},
        {"{\"bore\": 3, \"ports", "{\"bore\": 0, \"ports",
         "ticks of bore 0: is no number of a bore"},
    });
}

// In a long log the line is found too, and soon.
TEST(HonedRefusals, OnePassAmongThousandsIsNamed) {
    Workbook workbook = honedBlock();
    Pass pass = workbook.hone.passes[1];
    for (int i = 4; i < 4000; ++i) {
        pass.id = "h" + std::to_string(i);
        workbook.hone.passes.push_back(pass);
    }
    workbook.hone.passes[3456].windows[0].strokes = -1;
    const auto read = readWorkbook(writeWorkbook(workbook));
    ASSERT_FALSE(read);
    EXPECT_NE(read.error().message().find("pass h3457: window: strokes: lie"), std::string::npos)
        << read.error().message();
}

// Whatever the program has taken it can open again, and what it would not open it does not take.
TEST(HonedFile, WhatAnEditRefusesAFileCannotBring) {
    Workbook workbook = honedBlock();
    for (const double nonsense : {std::nan(""), std::numeric_limits<double>::infinity(), -1.0}) {
        workbook.hone.passes[0].windows[0].seconds = nonsense;
        EXPECT_FALSE(checkHone(workbook.hone)) << nonsense;
        EXPECT_FALSE(readWorkbook(writeWorkbook(workbook))) << nonsense;
    }
    // A pass that its bore no longer fits is read: what was honed was honed.
    workbook = honedBlock();
    workbook.block.bores[1].depth = typedIn("3");
    const auto back = readWorkbook(writeWorkbook(workbook));
    ASSERT_TRUE(back) << back.error().message();
    EXPECT_TRUE(*back == workbook);
}

TEST(HonedFile, EveryCutIsRefusedAndEveryFlippedByteReadOrRefused) {
    const std::string good = goodFile();
    const std::size_t begin = good.find("\"hone\"");
    for (std::size_t length = begin; length + 1 < good.size(); ++length)
        EXPECT_FALSE(readWorkbook(good.substr(0, length))) << "cut at byte " << length;
    for (std::size_t at = begin; at < good.size(); ++at)
        for (const int bit : {0, 1, 4, 7}) {
            std::string bad = good;
            bad[at] = static_cast<char>(bad[at] ^ (1 << bit));
            const auto read = readWorkbook(bad);
            if (!read) {
                EXPECT_FALSE(read.error().what.empty());
                continue;
            }
            EXPECT_TRUE(checkHone(read->hone)) << "byte " << at;
            const auto again = readWorkbook(writeWorkbook(*read));
            ASSERT_TRUE(again) << again.error().message();
            EXPECT_TRUE(*again == *read) << "byte " << at;
        }
}

} // namespace
} // namespace borewright
