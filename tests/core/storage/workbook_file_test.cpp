// SPDX-License-Identifier: GPL-3.0-or-later
// Workbook files: there and back without loss, and refused in a sentence when they are not whole.
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/memory_file_system.h"
#include "tests/support/random_workbook.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

Workbook oneReading() {
    Workbook workbook = emptyWorkbook();
    Bore bore;
    bore.number = 1;
    bore.standardSize = readTyped("3.42", Unit::inch).value();
    bore.depth = readTyped("4.10", Unit::inch).value();
    bore.levels = {{readTyped("0.60", Unit::inch).value(), Judging::byMap}};
    workbook.block.bores = {bore};
    Survey survey;
    survey.header.id = "s1";
    survey.header.name = "found";
    survey.header.time = {1'774'000'000, 60};
    Reading reading;
    reading.station = {1, Length::whole(6, Unit::inch), "A"};
    reading.station.depth = bore.levels[0].depth.value();
    reading.typed = readTyped("-1,50", Unit::thou).value();
    reading.time = {1'774'000'060, 60};
    survey.readings = {reading};
    workbook.surveys = {survey};
    return workbook;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << "'" << from << "' is not in the file";
    return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

void expectThereAndBack(const Workbook& workbook, const std::string& what) {
    const std::string bytes = writeWorkbook(workbook);
    const auto back = readWorkbook(bytes);
    ASSERT_TRUE(back) << what << ": " << back.error().message();
    EXPECT_TRUE(*back == workbook) << what << " came back different";
    EXPECT_EQ(writeWorkbook(*back), bytes) << what << " was written differently the second time";
}

TEST(WorkbookFile, EveryFieldComesBack) {
    for (unsigned seed = 0; seed < 300; ++seed)
        expectThereAndBack(test::randomWorkbook(seed), "workbook " + std::to_string(seed));
    expectThereAndBack(emptyWorkbook(), "an empty workbook");
    expectThereAndBack(oneReading(), "one reading");
}

// Whatever can be pasted into a field can be saved: nothing typed may keep the workbook from disk.
TEST(WorkbookFile, APastedCharacterOfNoughtOrAnyOtherControlComesBack) {
    Workbook workbook = oneReading();
    for (char control = 0; control < 0x20; ++control)
        workbook.job.notes += control;
    workbook.job.notes += "\x7f\xc2\x80\xc2\x9f";
    workbook.job.customer = std::string("a\0b", 3);
    expectThereAndBack(workbook, "control characters");
}

TEST(WorkbookFile, AReadingIsALineWithTheNumberAsTyped) {
    const std::string bytes = writeWorkbook(oneReading());
    EXPECT_NE(
        bytes.find("\n        {\"bore\": 1, \"depth\": \"0.6 in\", \"axis\": \"A\", \"typed\": "
                   "\"-1,50 thou\", \"time\": \"2026-03-20T10:47:40+01:00\"}\n"),
        std::string::npos)
        << bytes;
    EXPECT_EQ(bytes.find('\r'), std::string::npos);
    EXPECT_TRUE(bytes.ends_with("}\n"));
}

TEST(WorkbookFile, KeepsFieldsItDoesNotKnowInEveryObject) {
    std::string bytes = writeWorkbook(oneReading());
    const std::string extra = R"("later": {"a": [1, 2.50, "x\n"], "b": null}, )";
    int objects = 0;
    // Behind every brace that opens an object of ours.
    for (std::size_t at = 0; (at = bytes.find('{', at)) != std::string::npos; ++at) {
        const std::size_t next = bytes.find_first_not_of(" \n", at + 1);
        if (bytes[next] != '"') continue; // an empty object
        bytes.insert(at + 1, extra);
        at += extra.size();
        ++objects;
    }
    EXPECT_GE(objects, 12);
    const auto read = readWorkbook(bytes);
    ASSERT_TRUE(read) << read.error().message();
    const std::string again = writeWorkbook(*read);
    int kept = 0;
    for (std::size_t at = 0;
         (at = again.find("\"later\": {\"a\": [1, 2.50, \"x\\n\"], \"b\": null}", at)) !=
         std::string::npos;
         ++at)
        ++kept;
    EXPECT_EQ(kept, objects) << "a field of a later version was lost";
    EXPECT_EQ(writeWorkbook(*readWorkbook(again)), again);
}

struct BadFile {
    const char* what;
    std::string bytes;
    const char* sentence;
};

std::vector<BadFile> badFiles() {
    const std::string good = writeWorkbook(oneReading());
    const auto with = [&](const std::string& from, const std::string& to) {
        return replaced(good, from, to);
    };
    const std::string reading = good.substr(good.find("        {\"bore\": 1"));
    return {
        {"empty", "", "the file is empty"},
        {"only spaces", " \n ", "the file is empty"},
        {"a picture", "\x89PNG\r\n", "this is not a Borewright workbook"},
        {"foreign JSON", "{\"a\": 1}", "this is not a Borewright workbook"},
        {"a list", "[1]", "this is not a Borewright workbook"},
        {"newer", with("\"version\": 1", "\"version\": 3"),
         "this workbook was made by a newer Borewright (version 3 of the file; this one reads "
         "version 1)"},
        {"version 0", with("\"version\": 1", "\"version\": 0"),
         "line 3: version: there was never such a version"},
        {"byte order mark", "\xEF\xBB\xBF" + good,
         "line 1: a byte order mark stands before the text"},
        {"Latin-1", with("\"customer\": \"", "\"customer\": \"M\xFCller"),
         "line 6: byte 0xFC is not UTF-8: the file is damaged or was kept in another encoding"},
        {"cut off", good.substr(0, good.find("\"surveys\"")),
         "line 39: the file ends where a field's name in quotes must be"},
        {"two files in one", good + "{}", "something stands behind the end"},
        {"equal keys", with("\"serial\": \"\"", "\"engine\": \"\""),
         "line 8: engine: is given twice"},
        {"NaN", with("\"angle\": 90", "\"angle\": NaN"), "angle: 'NaN' is not a value"},
        {"minus infinity", with("\"angle\": 90", "\"angle\": -Infinity"),
         "angle: '-Infinity' is not a value"},
        {"a double beyond doubles", with("\"angle\": 90", "\"angle\": 1e999"),
         "angle: 1e999 is not a number that can be"},
        {"leading zero", with("\"angle\": 90", "\"angle\": 090"), "angle: '090' is not a number"},
        {"letter for digit", with("\"depth\": \"4.10 in\"", "\"depth\": \"4.1o in\""),
         "depth: '4.1o in' is not a number"},
        {"no unit", with("4.10 in", "4.10"), "depth: '4.10' has no unit"},
        {"unknown unit", with("4.10 in", "4.10 ell"),
         "depth: '4.10 ell' is not a number with a unit this program knows"},
        {"absurd size", with("3.42 in", "1e99 mm"), "standardSize: '1e99' is not a number"},
        {"a long absurd size", with("3.42 in", "1" + std::string(99, '0') + " mm"),
         "has more digits than any reading"},
        {"size over three metres", with("3.42 in", "3001 mm"),
         "standard size: is over three metres"},
        {"negative level", with("{\"depth\": \"0.60 in\"", "{\"depth\": \"-0.60 in\""),
         "levels: must not be below zero"},
        {"a number where a text must be", with("\"depth\": \"4.10 in\"", "\"depth\": 4.10"),
         "depth: a bare number stands where a text must be"},
        {"null", with("\"surface\": \"iron\"", "\"surface\": null"),
         "surface: nothing (null) stands where a text must be"},
        {"unknown word", with("\"kind\": \"as found\"", "\"kind\": \"as lost\""),
         "kind: 'as lost' is none of 'as found', 'before boring', 'check', 'final'"},
        {"unknown axis", with("\"axis\": \"A\"", "\"axis\": \"Q\""), "axis: there is no axis 'Q'"},
        {"unknown bore", with("{\"bore\": 1", "{\"bore\": 7"), "bore: there is no bore 7"},
        {"half a reading", with(", \"typed\": \"-1,50 thou\"", ""), "typed: is missing"},
        {"no such day", with("2026-03-20T10:47:40", "2026-02-30T10:47:40"),
         "is not a time like 2026-03-14T09:26:53+01:00"},
        {"crossed limits",
         with("\"limitSets\": []",
              "\"limitSets\": [{\"id\": \"l1\", \"purpose\": \"worn\", "
              "\"limits\": {\"sizeLower\": \"4 in\", \"sizeUpper\": \"3 in\"}}]"),
         "size to: the largest size allowed is below the smallest"},
        {"comment", with("{", "{ // mine"), "line 1: '/' stands where a field's name"},
        {"trailing comma", with("\"invented\": false,", "\"invented\": false,,"),
         "line 4: ',' stands where a field's name in quotes must be"},
        {"nested too deep",
         with("\"invented\"",
              "\"x\": " + std::string(100, '[') + std::string(100, ']') + ", \"invented\""),
         "line 4: x: is nested deeper than any workbook"},
        {"half a character", with("\"serial\": \"\"", "\"serial\": \"\\ud800\""),
         "serial: half a character stands in a text"},
        {"a long text",
         with("\"serial\": \"\"", "\"serial\": \"" + std::string(70'000, 'x') + "\""),
         "line 8: serial: is a text longer than 64 KB"},
    };
}

TEST(WorkbookFile, ADamagedFileIsRefusedInASentenceWithLineAndField) {
    for (const BadFile& file : badFiles()) {
        const auto read = readWorkbook(file.bytes);
        ASSERT_FALSE(read) << file.what << " was taken";
        EXPECT_NE(read.error().message().find(file.sentence), std::string::npos)
            << file.what << ": " << read.error().message() << "\nexpected: " << file.sentence;
    }
}

TEST(WorkbookFile, AMillionBoresAreRefusedAtOnce) {
    std::string bores = "{\"number\": 1}";
    for (int i = 1; i < 100'000; ++i)
        bores += ",{\"number\": 1}";
    const std::string start = "{\"format\": \"borewright workbook\", \"version\": 1, \"block\": "
                              "{\"axes\": [], \"bores\": [";
    EXPECT_EQ(readWorkbook(start + bores + "]}}").error().message(),
              "line 1: bores: more than 64 bores");
}

TEST(WorkbookFile, EveryCutAndEveryFlippedByteIsReadOrRefusedButNeverHurts) {
    const std::string good = writeWorkbook(oneReading());
    for (std::size_t length = 0; length + 1 < good.size(); ++length)
        EXPECT_FALSE(readWorkbook(good.substr(0, length))) << "cut at byte " << length;
    for (std::size_t at = 0; at < good.size(); ++at)
        for (const int bit : {0, 5, 7}) {
            std::string bad = good;
            bad[at] = static_cast<char>(bad[at] ^ (1 << bit));
            const auto read = readWorkbook(bad);
            if (!read) {
                EXPECT_FALSE(read.error().message().empty());
            }
        }
}

TEST(WorkbookFile, APlaceThatIsNoWorkbookIsSaidSo) {
    MemoryFileSystem files;
    files.put("/shop/a.borebook", writeWorkbook(oneReading()));
    ASSERT_TRUE(loadWorkbook(files, "/shop/a.borebook"));
    EXPECT_EQ(loadWorkbook(files, "/shop").error().message(), "that is a folder, not a workbook");
    EXPECT_EQ(loadWorkbook(files, "/shop/b").error().message(), "there is no such file");
    files.put("/shop/big.borebook", std::string(largestWorkbookFile + 1, ' '));
    EXPECT_EQ(loadWorkbook(files, "/shop/big.borebook").error().message(),
              "the file is over 64 MB, which no workbook is");
    for (std::size_t call = 0; call < 2; ++call) {
        files.inject(MemoryFileSystem::Fault{call, true, FileFault::noRight, false});
        EXPECT_EQ(loadWorkbook(files, "/shop/a.borebook").error().message(), "no right to read it");
    }
}

TEST(WorkbookFile, BothDemonstrationsComeBackWithTheirMistakes) {
    expectThereAndBack(demo::saltmarsh(), "the inch demonstration");
    expectThereAndBack(demo::rushmere(), "the metric demonstration");
}

} // namespace
} // namespace borewright
