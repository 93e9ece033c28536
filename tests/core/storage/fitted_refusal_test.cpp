// SPDX-License-Identifier: GPL-3.0-or-later
// Sizes, targets, pistons and rings that cannot stand: refused with line and field.
#include "core/storage/workbook_file.h"
#include "tests/support/fitted_block.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

std::string goodFile() {
    return writeWorkbook(test::fittedBlock());
}

// The number of the line on which `text` begins, in the file that was written.
int lineOf(const std::string& bytes, const std::string& text) {
    const auto at = bytes.find(text);
    EXPECT_NE(at, std::string::npos) << "'" << text << "' is not in the file";
    return 1 + static_cast<int>(std::count(bytes.begin(),
                                           bytes.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

struct Wrong {
    const char* from; // begins on the line that is to be named
    const char* to;
    const char* sentence;
};

void expectRefused(const std::vector<Wrong>& cases) {
    const std::string good = goodFile();
    for (const Wrong& wrong : cases) {
        std::string bad = good;
        const std::string line = "line " + std::to_string(lineOf(good, wrong.from)) + ": ";
        bad.replace(bad.find(wrong.from), std::string(wrong.from).size(), wrong.to);
        const auto read = readWorkbook(bad);
        EXPECT_EQ(read ? "was taken" : read.error().message(), line + wrong.sentence)
            << wrong.from << " -> " << wrong.to;
    }
}

TEST(FittedRefusals, APlanThatCannotStandIsRefusedWithLineAndField) {
    const char* const size = "{\"oversize\": \"0,50 mm\"";
    expectRefused({
        {size, "{\"oversize\": \"5 thou\"",
         "size 5 thou: sizes go from the smallest to the largest, and this one is below the one "
         "before it"},
        {size, "{\"oversize\": \"10 thou\"", "size 10 thou: is given twice"},
        {size, "{\"over\": \"10 thou\"", "oversize: is missing"},
        {size, "{\"oversize\": 0.5", "oversize: a bare number stands where a text must be"},
        {"{\"oversize\": \"0 in\"", "{\"oversize\": \"-1 in\"",
         "size -1 in: an oversize is nothing or more than the standard size"},
        {"{\"oversize\": \".010 in\", \"lower\": \"3.5095 in\"",
         "{\"oversize\": \".010 in\", \"lower\": \"3.5106 in\"",
         "size .010 in: largest: the largest size allowed is below the smallest"},
        {"\"greatest\": \"0.040 in\"", "\"greatest\": \"-0.040 in\"",
         "greatest oversize: is nothing or more"},
        {"\"greatest\": \"0.040 in\"", "\"greatest\": \"0.040\"", "greatest: '0.040' has no unit"},
        {"\"finishAllowance\": \"0.5", "\"finishAllowance\": \"-0.5",
         "finish allowance: is nothing or more"},
        {"\"honeStock\": \"3", "\"honeStock\": \"-3", "left for the hone: is nothing or more"},
        {"\"method\": \"bore and hone\"", "\"method\": \"file\"",
         "method: 'file' is none of 'hone only', 'bore and hone'"},
        {"\"centring\": \"worn bore\"", "\"centring\": \"\"",
         "centring: '' is none of 'worn bore', 'original axis'"},
        {"\"ownSizes\": true", "\"ownSizes\": \"yes\"",
         "ownSizes: a text stands where true or false must be"},
        {"\"sizes\": [", "\"sizes\": [[], ", "a list stands where an object must be"},
    });
}

TEST(FittedRefusals, WearThatCannotStandIsRefusedWithLineAndField) {
    const char* const pit = "{\"depth\": \"2.10 in\", \"axis\": \"\", \"deep\": \"2 thou\"";
    expectRefused({
        {"\"side\": \"one side\"", "\"side\": \"left\"",
         "side: 'left' is none of 'not said', 'one side', 'both sides'"},
        {"\"felt\": true", "\"felt\": 1", "felt: a bare number stands where true or false must be"},
        {"\"felt\": true", "\"felt\": null",
         "felt: nothing (null) stands where true or false must be"},
        {pit, "{\"axis\": \"\", \"deep\": \"2 thou\"", "depth: is missing"},
        {pit, "{\"depth\": \"2.10 in\", \"axis\": \"\"", "deep: is missing"},
        {pit, "{\"depth\": \"2.10 in\", \"deep\": \"0 thou\"",
         "bore 2: damage: deep: how far it goes into the wall is more than zero"},
        {pit, "{\"depth\": \"-0.1 in\", \"deep\": \"2 thou\"",
         "bore 2: damage: depth: lies between the open end (0) and the closed end"},
    });
    std::string bytes = goodFile();
    const std::string bores = "\"bores\": [\n      {\n        \"bore\": 2";
    const auto changed = [&](const std::string& to) {
        std::string bad = bytes;
        const auto at = bad.find(bores);
        EXPECT_NE(at, std::string::npos);
        return readWorkbook(bad.replace(at, bores.size(), to)).error().message();
    };
    const std::string line = "line " + std::to_string(1 + lineOf(bytes, bores)) + ": ";
    EXPECT_EQ(changed("\"bores\": [\n      {\n        \"hole\": 2"), line + "bore: is missing");
    EXPECT_EQ(changed("\"bores\": [\n      {\n        \"bore\": 0"),
              line + "bore 0: is no number of a bore");
    const std::string twice =
        "line " + std::to_string(lineOf(bytes, "      {\n        \"bore\": 3")) + ": ";
    EXPECT_EQ(changed("\"bores\": [\n      {\n        \"bore\": 3"),
              twice + "bore: 3 is given twice");
}

TEST(FittedRefusals, ATargetThatCannotStandIsRefusedWithLineAndField) {
    const char* const second = "{\"bore\": 2, \"size\": \"3.5104 in\"";
    expectRefused({
        {second, "{\"bore\": 1, \"size\": \"3.5104 in\"", "bore: 1 is given twice"},
        {second, "{\"size\": \"3.5104 in\"", "bore: is missing"},
        {second, "{\"bore\": 2", "size: is missing"},
        {second, "{\"bore\": 2.5, \"size\": \"3.5104 in\"",
         "bore: 2.5 is not a whole number that can be"},
        {second, "{\"bore\": 1000, \"size\": \"3.5104 in\"",
         "target of bore 1000: is no number of a bore"},
        {second, "{\"bore\": 2, \"size\": \"0 in\"",
         "target of bore 2: a size is more than zero and at most three metres"},
        {second, "{\"bore\": 2, \"size\": \"3.5104 in\", \"upper\": \"35.1 in\"",
         "target of bore 2: its limits are more than a tenth away from it"},
        {second, "{\"bore\": 2, \"size\": \"3.5 in\", \"lower\": \"3.6 in\", \"upper\": \"3.5 in\"",
         "target of bore 2: largest: the largest size allowed is below the smallest"},
    });
    std::string bytes = goodFile();
    bytes.insert(bytes.find("\"targets\": ") + 11, "{\"1\": ");
    EXPECT_FALSE(readWorkbook(bytes)) << "a bore is a field of its entry, never a key";
}

TEST(FittedRefusals, APistonThatCannotStandIsRefusedWithLineAndField) {
    const char* const second = "{\"id\": \"p2\", \"label\": \"2\", \"size\": \"3,5062 in\"";
    expectRefused({
        {second, "{\"id\": \"p1\", \"label\": \"2\"", "piston 2: needs an id of its own"},
        {second, "{\"id\": \"\", \"label\": \"2\"", "piston 2: needs an id of its own"},
        {second, "{\"label\": \"2\"", "id: is missing"},
        {second, "{\"id\": \"p2\", \"size\": \"0 in\"",
         "piston p2: size: must be more than zero and at most three metres"},
        {second, "{\"id\": \"p2\", \"size\": 3.5",
         "size: a bare number stands where a text must be"},
        {"{\"id\": \"p3\"", "{\"bore\": 3, \"id\": \"p3\"",
         "piston 3: another piston is to go in bore 3 already"},
        {"{\"id\": \"p3\"", "{\"bore\": \"3\", \"id\": \"p3\"",
         "bore: a text stands where a bare number must be"},
    });
    const std::string good = goodFile();
    const std::string line = "line " + std::to_string(lineOf(good, "{\"id\": \"p1\"")) + ": ";
    for (const auto& [from, to, sentence] : std::vector<Wrong>{
             {"\"expansion\": 19.5", "\"expansion\": NaN", "expansion: 'NaN' is not a value"},
             {"\"expansion\": 19.5", "\"expansion\": 1e999",
              "expansion: 1e999 is not a number that can be"},
             {"\"expansion\": 19.5", "\"expansion\": 1950",
              "piston 1: expansion: lies between 1 and 40 millionths per °C"},
             {"\"doubt\": \"0.1 thou\"", "\"doubt\": \"-0.1 thou\"",
              "piston 1: ±: must not be below zero, nor over three metres"},
             {"\"temperature\": \"72 F\"", "\"temperature\": \"72\"",
              "temperature: '72' has no C or F behind it"},
             {"{\"height\": \"1.5 in\"", "{\"height\": \"0.25 in\"",
              "piston 1: skirt: height: 0.25 in is given twice"},
             {"\"skirt\": [{\"height\": \"0.25 in\", ", "\"skirt\": [{", "height: is missing"}}) {
        std::string bad = good;
        bad.replace(bad.find(from), std::string(from).size(), to);
        const auto read = readWorkbook(bad);
        EXPECT_EQ(read ? "was taken" : read.error().message(), line + sentence) << to;
    }
}

TEST(FittedRefusals, RingsAndFiguresThatCannotStandAreRefusedWithLineAndField) {
    const char* const second = "{\"id\": \"g2\", \"label\": \"second\", \"groove\": 2";
    expectRefused({
        {second, "{\"id\": \"g1\", \"label\": \"second\"", "ring second: needs an id of its own"},
        {second, "{\"id\": \"g2\", \"label\": \"second\", \"groove\": 1",
         "ring second: another ring of groove 1 is to go in bore 3 already"},
        {second, "{\"id\": \"g2\", \"groove\": 0", "ring g2: groove: lies between 1 and 9"},
        {second, "{\"id\": \"g2\", \"groove\": 2.5",
         "groove: 2.5 is not a whole number that can be"},
        {"\"clearance\": {\"lower\": \"3.8 thou\"", "\"clearance\": {\"lower\": \"5.8 thou\"",
         "clearance: most: the most allowed is less than the least"},
        {"\"ringGap\": {\"lower\": \"12 thou\"",
         "\"ringGap\": {\"aim\": \"11 thou\", \"lower\": \"12 thou\"",
         "ring gap: aim: is below the least allowed"},
        {"\"fileStep\": \"2 thou\"", "\"fileStep\": \"0 thou\"",
         "file in steps of: must be more than zero"},
    });
}

} // namespace
} // namespace borewright
