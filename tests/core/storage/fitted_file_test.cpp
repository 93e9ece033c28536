// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes, targets, pistons and rings in the file: there and back as typed, absent where there are
// none, and never written so that they could not be opened again.
#include "core/storage/workbook_file.h"
#include "tests/support/fitted_block.h"
#include "tests/support/lengths.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace borewright {
namespace {

using namespace test;

std::string goodFile() {
    return writeWorkbook(fittedBlock());
}

TEST(FittedFile, AllOfItComesBackAsTyped) {
    const Workbook workbook = fittedBlock();
    const std::string bytes = writeWorkbook(workbook);
    const auto back = readWorkbook(bytes);
    ASSERT_TRUE(back) << back.error().message();
    EXPECT_TRUE(back->sizing == workbook.sizing);
    EXPECT_TRUE(back->targets == workbook.targets);
    EXPECT_TRUE(back->fit == workbook.fit);
    EXPECT_TRUE(*back == workbook);
    EXPECT_EQ(writeWorkbook(*back), bytes);
}

TEST(FittedFile, ASizeADamageATargetAPistonAndARingAreALineEach) {
    const std::string bytes = goodFile();
    for (const char* line :
         {R"(      {"oversize": ".010 in", "lower": "3.5095 in", "upper": "3.5105 in"},)",
          R"(      {"oversize": "0,50 mm"})",
          R"(          {"depth": "1.40 in", "axis": "B", "deep": "6 thou", "felt": true, )"
          R"("what": "score, exhaust side"},)",
          R"(    {"bore": 2, "size": "3.5104 in", "from": "piston 2 and 4.2 thou"})",
          R"(      {"id": "p1", "label": "1", "size": "3.5058 in", "height": "0.75 in", )"
          R"("measuredWith": "micrometer, 3 to 4 in", "temperature": "72 F", )"
          R"("doubt": "0.1 thou", "expansion": 19.5, "skirt": [{"height": "0.25 in", )"
          R"("size": "3.4990 in"}, {"height": "1.5 in", "size": "3.4950 in"}], "bore": 1, )"
          R"("notes": "new"},)",
          R"(      {"id": "g2", "label": "second", "groove": 2, "measuredIn": 2, )"
          R"("measuredAt": "0.60 in", "gap": "15 thou", "bore": 3})",
          R"(    "clearance": {"lower": "3.8 thou", "upper": "4.8 thou", "aim": "4.2 thou", )"
          R"("decision": {"rule": "plain", "ownPercent": 1}},)"})
        EXPECT_NE(bytes.find("\n" + std::string(line) + "\n"), std::string::npos)
            << line << "\nis not a line of\n"
            << bytes;
}

TEST(FittedFile, WhatIsEmptyIsNotWritten) {
    const auto expectNone = [](const Workbook& workbook) {
        const std::string bytes = writeWorkbook(workbook);
        for (const char* key : {"\"sizing\"", "\"targets\"", "\"fit\""})
            EXPECT_EQ(bytes.find(key), std::string::npos) << key << " in a file that had none";
    };
    expectNone(emptyWorkbook());
    // An empty object is as good as none, and goes when the file is written again.
    std::string bytes = writeWorkbook(emptyWorkbook());
    bytes.insert(bytes.find("\"sheet\""), "\"sizing\": {}, \"targets\": [], \"fit\": {}, ");
    const auto read = readWorkbook(bytes);
    ASSERT_TRUE(read) << read.error().message();
    EXPECT_TRUE(*read == emptyWorkbook());
    expectNone(*read);
    Workbook some = emptyWorkbook();
    some.fit.fileStep = typedThou("2");
    EXPECT_NE(writeWorkbook(some).find("\"fit\""), std::string::npos);
    some.fit = {};
    some.sizing.unknown = {{"later", "1"}};
    EXPECT_TRUE(*readWorkbook(writeWorkbook(some)) == some) << "a later version's plan was lost";
}

TEST(FittedFile, KeepsFieldsItDoesNotKnowInEveryObject) {
    std::string bytes = goodFile();
    const std::string extra = R"("later": [1, 2.50, {"x": null}], )";
    const std::size_t end = bytes.find("  \"sheet\"");
    std::size_t stop = end;
    int objects = 0;
    for (std::size_t at = bytes.find("\"sizing\""); (at = bytes.find('{', at)) < stop; ++at) {
        bytes.insert(at + 1, extra);
        at += extra.size();
        stop += extra.size();
        ++objects;
    }
    // Plan, 3 sizes, 2 bores, 2 damages, 2 targets, fit, 3 pistons with 2 skirt points each,
    // 2 rings, 2 pairs of limits, a decision.
    EXPECT_EQ(objects, 1 + 3 + 2 + 2 + 2 + 1 + 3 + 6 + 2 + 2 + 1);
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

// Whatever the program has taken it can open again, and what it would not open it does not take.
TEST(FittedFile, WhatAnEditRefusesAFileCannotBring) {
    Workbook workbook = fittedBlock();
    for (const double expansion : {std::nan(""), std::numeric_limits<double>::infinity(), 0.0}) {
        workbook.fit.pistons[0].expansion = expansion;
        EXPECT_FALSE(checkFit(workbook.fit)) << expansion;
        EXPECT_FALSE(readWorkbook(writeWorkbook(workbook))) << expansion;
    }
    workbook = fittedBlock();
    workbook.sizing.sizes.assign(mostSizesOnOffer + 1, {});
    for (std::size_t i = 0; i < workbook.sizing.sizes.size(); ++i)
        workbook.sizing.sizes[i].oversize = typedThou(std::to_string(i));
    EXPECT_FALSE(readWorkbook(writeWorkbook(workbook)));
    workbook.sizing.sizes.pop_back();
    EXPECT_TRUE(readWorkbook(writeWorkbook(workbook)));
    // A bore that left the block takes nothing of what was said of it along.
    workbook.block.bores.pop_back();
    const auto back = readWorkbook(writeWorkbook(workbook));
    ASSERT_TRUE(back) << back.error().message();
    EXPECT_TRUE(*back == workbook);
}

TEST(FittedFile, EveryCutIsRefusedAndEveryFlippedByteReadOrRefused) {
    const std::string good = goodFile();
    const std::size_t begin = good.find("\"sizing\"");
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
            EXPECT_TRUE(checkSizing(read->sizing) && checkTargets(read->targets) &&
                        checkFit(read->fit))
                << "byte " << at;
            const std::string written = writeWorkbook(*read);
            const auto again = readWorkbook(written);
            ASSERT_TRUE(again) << again.error().message();
            EXPECT_TRUE(*again == *read) << "byte " << at;
        }
}

} // namespace
} // namespace borewright
