// SPDX-License-Identifier: GPL-3.0-or-later
// The commands that decide and fit: what they print and their exit status.
#include "app/cli/cli.h"
#include "core/storage/workbook_file.h"
#include "tests/support/demo_fit.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/lengths.h"
#include "tests/support/memory_file_system.h"
#include "tests/support/schema_validator.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

namespace borewright {
namespace {

using namespace test;

class Fixed final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

class SizingCommands : public testing::Test {
protected:
    SizingCommands() {
        files.makeFolder("/shop");
        put(saltmarsh());
    }
    static Workbook saltmarsh() {
        Workbook workbook = demo::correctedSaltmarsh();
        workbook.sizing = demo::saltmarshSizes();
        workbook.fit = demo::saltmarshFit();
        return workbook;
    }
    void put(const Workbook& workbook) { files.put("/shop/v6.borebook", writeWorkbook(workbook)); }
    int run(const std::vector<std::string>& arguments) {
        out.str({});
        err.str({});
        return runCommand(arguments, {files, clock, out, err}).value_or(-1);
    }
    int run(const std::string& command) { return run({command, "/shop/v6.borebook"}); }
    [[nodiscard]] bool says(const std::string& text) const {
        return out.str().find(text) != std::string::npos;
    }

    MemoryFileSystem files;
    Fixed clock;
    std::ostringstream out, err;
};

TEST_F(SizingCommands, SizesNamesTheBoreThatDecides) {
    EXPECT_EQ(run("sizes"), exitWithin) << out.str();
    EXPECT_TRUE(out.str().starts_with("Bore 4 decides: 0.020 in")) << out.str();
    EXPECT_TRUE(says("3.4355 in: score at 1.40, B")) << out.str();
    EXPECT_TRUE(says("Wall thickness is not seen")) << out.str();
    EXPECT_TRUE(says("invented") || says("Invented")) << out.str();
}

TEST_F(SizingCommands, SizesShowAMarginUnderEachSize) {
    run("sizes");
    std::istringstream lines(out.str());
    std::string line, four;
    while (std::getline(lines, line))
        if (line.starts_with("4 ")) four = line;
    for (const char* cell : {"3.4243", "3.4355", "3.4390", "-6.0", "4.0", "14.0"})
        EXPECT_NE(four.find(cell), std::string::npos) << cell << " is not in " << four;
    EXPECT_EQ(run({"sizes", "/shop/v6.borebook", "--units", "metric"}), exitWithin);
    EXPECT_TRUE(says("87.26")) << out.str(); // 3.4355 in = 87.2617 mm
}

TEST_F(SizingCommands, SizesAreUndecidedWhereNothingIsEntered) {
    Workbook workbook = saltmarsh();
    workbook.sizing = {};
    workbook.fit = {};
    put(workbook);
    EXPECT_EQ(run("sizes"), exitUndecided);
    EXPECT_TRUE(says("Enter the sizes")) << out.str();
    workbook = saltmarsh();
    workbook.surveys.clear();
    put(workbook);
    EXPECT_EQ(run("sizes"), exitUndecided);
    EXPECT_TRUE(says("No bore has been read as found")) << out.str();
}

TEST_F(SizingCommands, ABoreBeyondTheLastSizeIsOutside) {
    Workbook workbook = saltmarsh();
    workbook.fit = {};
    workbook.sizing.sizes.resize(2);
    put(workbook);
    EXPECT_EQ(run("sizes"), exitOutside);
    EXPECT_TRUE(says("Bore 4 is beyond the last size (0.010 in): a sleeve, or a new block."))
        << out.str();
}

TEST_F(SizingCommands, FitTellsPairsGapsAndDoubts) {
    EXPECT_EQ(run("fit"), exitOutside) << "two rings are too tight\n" << out.str();
    EXPECT_TRUE(out.str().starts_with("Best: bores 1–6 take pistons")) << out.str();
    EXPECT_TRUE(says("file 3.7 thou in steps of 2.0, 1.7, measuring after each")) << out.str();
    EXPECT_TRUE(says("a seizure at speed on the water can hurt")) << out.str();
    EXPECT_TRUE(says("3 ?")) << "proposed, not decided: " << out.str();
}

TEST_F(SizingCommands, FitIsWithinWhereAllIs) {
    Workbook workbook = demo::withoutDoubt(saltmarsh());
    workbook.fit.rings.clear();
    put(workbook);
    EXPECT_EQ(run("fit"), exitWithin) << out.str();
    EXPECT_TRUE(says("bores 1–6 take pistons 3 5 1 6 2 4")) << out.str();
    workbook.fit.pistons.pop_back();
    put(workbook);
    EXPECT_EQ(run("fit"), exitUndecided) << out.str();
    EXPECT_TRUE(says("5 pistons for 6 bores")) << out.str();
    workbook.fit.pistons.clear();
    put(workbook);
    EXPECT_EQ(run("fit"), exitUndecided);
    EXPECT_TRUE(says("Enter the pistons")) << out.str();
}

TEST_F(SizingCommands, APistonTooLargeIsOutside) {
    Workbook workbook = demo::withoutDoubt(saltmarsh());
    workbook.fit.rings.clear();
    workbook.fit.pistons[0].size = typedIn("3.4420");
    workbook.fit.pistons[0].bore = 1;
    put(workbook);
    EXPECT_EQ(run("fit"), exitOutside);
    EXPECT_TRUE(says("does not go in")) << out.str();
}

TEST_F(SizingCommands, JsonFollowsTheSchema) {
    const Json schema = loadSchema("results");
    for (const std::string command : {"sizes", "fit"}) {
        run({command, "/shop/v6.borebook", "--json"});
        const Json json = Json::parse(out.str());
        EXPECT_EQ(json["format"], "borewright " + command);
        const std::string part = command == "sizes" ? "sizing" : "fit";
        SchemaValidator validator(schema);
        validator.check(json[part], schema["$defs"][part], part);
        EXPECT_EQ(validator.problems, std::set<std::string>()) << command;
    }
    run({"sizes", "/shop/v6.borebook", "--json"});
    // 3.4355 in = 87.2617 mm, exactly.
    EXPECT_EQ(Json::parse(out.str())["sizing"]["bores"][3]["worn_bore"]["size_mm"].dump(),
              "87.2617");
}

TEST_F(SizingCommands, WrongFilesAndUsageAreThree) {
    files.put("/shop/bad.borebook", "{");
    for (const std::string command : {"sizes", "fit"}) {
        EXPECT_EQ(run({command, "/shop/bad.borebook"}), exitWrong);
        EXPECT_TRUE(out.str().empty()) << out.str();
        EXPECT_EQ(run({command, "/shop/none.borebook"}), exitWrong);
        EXPECT_EQ(run(std::vector<std::string>{command}), exitWrong);
        EXPECT_EQ(run({command, "/shop/v6.borebook", "--units", "cubits"}), exitWrong);
        EXPECT_EQ(run({command, "/shop/v6.borebook", "--survey", "final"}), exitWrong);
        EXPECT_EQ(run({command, "--help"}), 0);
    }
}

} // namespace
} // namespace borewright
