// SPDX-License-Identifier: GPL-3.0-or-later
// The command line on files in memory: what it prints, what it writes, and its exit status.
#include "app/cli/cli.h"
#include "core/storage/dated_copies.h"
#include "core/storage/workbook_file.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/memory_file_system.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

namespace borewright {
namespace {

class Fixed final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

class CommandLine : public testing::Test {
protected:
    CommandLine() {
        files.makeFolder("/shop");
        files.put("/shop/v6.borebook", writeWorkbook(demo::saltmarsh()));
        files.put("/shop/three.borebook", writeWorkbook(demo::rushmere()));
    }
    int run(const std::vector<std::string>& arguments) {
        out.str({});
        err.str({});
        const auto status = runCommand(arguments, {files, clock, out, err});
        return status.value_or(-1);
    }
    Workbook begun() {
        EXPECT_EQ(run({"new", "/shop/new.borebook", "--bores", "2", "--size", "3.5in", "--depth",
                       "4in", "--levels", "1,2", "--worn-taper", "2thou"}),
                  exitWithin)
            << err.str();
        return *loadWorkbook(files, "/shop/new.borebook");
    }
    int record(const std::string& csv, const std::vector<std::string>& more = {}) {
        files.put("/shop/readings.csv", csv);
        std::vector<std::string> arguments{"record", "/shop/new.borebook", "/shop/readings.csv"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return run(arguments);
    }

    MemoryFileSystem files;
    Fixed clock;
    std::ostringstream out, err;
};

TEST_F(CommandLine, CopiesAreListedThoughTheWorkbookIsGone) {
    CopyRules rules;
    rules.folder = "/copies";
    ASSERT_EQ(run({"copies", "/shop/gone.borebook", "--folder", "/copies"}), exitWithin);
    EXPECT_EQ(out.str(), "There is no earlier copy of /shop/gone.borebook in /copies.\n");
    for (const char* time : {"2026-03-14T09:26:53+01:00", "2026-03-15T16:00:00Z"})
        ASSERT_TRUE(keepCopy(files, rules, "/shop/gone.borebook", "a workbook", *readIso(time)));
    const std::string folder = copiesOf(rules, "/shop/gone.borebook");
    ASSERT_EQ(run({"copies", "/shop/gone.borebook", "--folder", "/copies"}), exitWithin);
    EXPECT_EQ(out.str(), "2026-03-15T16:00:00Z  " + folder +
                             "/gone 2026-03-15T160000+0000.borebook\n"
                             "2026-03-14T09:26:53+01:00  " +
                             folder + "/gone 2026-03-14T092653+0100.borebook\n");
    ASSERT_EQ(run({"copies", "/shop/gone.borebook", "--folder", "/copies", "--json"}), exitWithin);
    const auto json = nlohmann::json::parse(out.str());
    ASSERT_EQ(json["copies"].size(), 2U);
    EXPECT_EQ(json["copies"][1]["time"], "2026-03-14T09:26:53+01:00");
}

TEST_F(CommandLine, NoCommandMeansTheWindow) {
    EXPECT_EQ(runCommand({}, {files, clock, out, err}), std::nullopt);
    EXPECT_EQ(runCommand({"/shop/v6.borebook"}, {files, clock, out, err}), std::nullopt);
}

TEST_F(CommandLine, HelpAndVersionAreNoErrors) {
    EXPECT_EQ(run({"--help"}), 0);
    EXPECT_NE(out.str().find("check"), std::string::npos);
    EXPECT_EQ(run({"--version"}), 0);
    EXPECT_NE(out.str().find("borewright"), std::string::npos);
}

TEST_F(CommandLine, CheckTellsWithinFromOutside) {
    EXPECT_EQ(run({"check", "/shop/v6.borebook"}), exitWithin) << out.str();
    EXPECT_EQ(run({"check", "/shop/v6.borebook", "--survey", "as found"}), exitOutside);
    EXPECT_NE(out.str().find("outside: largest size, taper"), std::string::npos) << out.str();
    EXPECT_EQ(run({"check", "/shop/v6.borebook", "--survey", "s1"}), exitOutside) << "by its id";
}

TEST_F(CommandLine, CheckCallsAnUnfinishedHoneOutside) {
    EXPECT_EQ(run({"check", "/shop/three.borebook", "--survey", "rough 120"}), exitOutside);
    EXPECT_NE(out.str().find("not yet"), std::string::npos) << out.str();
}

TEST_F(CommandLine, CheckIsUndecidedWhereSomethingIsMissing) {
    Workbook workbook = demo::saltmarsh();
    workbook.surveys.back().readings.pop_back();
    files.put("/shop/v6.borebook", writeWorkbook(workbook));
    EXPECT_EQ(run({"check", "/shop/v6.borebook"}), exitUndecided) << out.str();
    workbook.surveys.clear();
    files.put("/shop/v6.borebook", writeWorkbook(workbook));
    EXPECT_EQ(run({"check", "/shop/v6.borebook"}), exitUndecided) << "nothing was measured";
}

TEST_F(CommandLine, CheckIsUndecidedWithoutLimits) {
    Workbook workbook = demo::saltmarsh();
    workbook.limitSets.clear();
    files.put("/shop/v6.borebook", writeWorkbook(workbook));
    EXPECT_EQ(run({"check", "/shop/v6.borebook"}), exitUndecided);
    EXPECT_NE(out.str().find("no finish limits"), std::string::npos) << out.str();
}

TEST_F(CommandLine, WrongFilesAndUsageAreThree) {
    files.put("/shop/bad.borebook", "{");
    EXPECT_EQ(run({"check", "/shop/bad.borebook"}), exitWrong);
    EXPECT_EQ(run({"check", "/shop/none.borebook"}), exitWrong);
    EXPECT_EQ(run({"check"}), exitWrong);
    EXPECT_EQ(run({"check", "/shop/v6.borebook", "--units", "cubits"}), exitWrong);
    EXPECT_EQ(run({"check", "/shop/v6.borebook", "--survey", "tomorrow"}), exitWrong);
    EXPECT_NE(err.str().find("'as found' (s1)"), std::string::npos) << err.str();
}

TEST_F(CommandLine, ResultsHoldExactMillimetres) {
    ASSERT_EQ(run({"results", "/shop/v6.borebook", "/shop/out.json", "--survey", "s1"}), 0);
    const auto json = nlohmann::json::parse(*files.content("/shop/out.json"));
    const auto& bore = json["surveys"][0]["bores"][3];
    // 3.4200 in + 0.0043 in = 3.4243 in = 86.97722 mm, exactly.
    EXPECT_EQ(bore["largest"]["diameter_mm"].dump(), "86.97722");
    EXPECT_EQ(bore["verdict"], "outside");
}

TEST_F(CommandLine, ResultsAsCsvNameTheirUnits) {
    ASSERT_EQ(run({"results", "/shop/three.borebook", "/shop/out.csv"}), 0);
    const std::string csv = *files.content("/shop/out.csv");
    EXPECT_NE(csv.find("largest (mm)"), std::string::npos);
    EXPECT_NE(csv.find("final,final,2026-04-09T09:00:00+01:00,1,"), std::string::npos) << csv;
    EXPECT_EQ(run({"results", "/shop/three.borebook", "/shop/out.doc"}), exitWrong);
}

TEST_F(CommandLine, NewBeginsAWorkbookAndOverwritesNone) {
    const Workbook workbook = begun();
    ASSERT_EQ(workbook.block.bores.size(), 2U);
    EXPECT_EQ(workbook.block.bores[1].standardSize->withUnit(), "3.5 in");
    EXPECT_EQ(workbook.limitSets.front().limits.taper->withUnit(), "2 thou");
    const auto before = files.content("/shop/v6.borebook");
    EXPECT_EQ(
        run({"new", "/shop/v6.borebook", "--bores", "2", "--size", "3.5in", "--depth", "4in"}),
        exitWrong);
    EXPECT_EQ(files.content("/shop/v6.borebook"), before);
}

TEST_F(CommandLine, NewWantsTheUnitOfALength) {
    EXPECT_EQ(run({"new", "/shop/n.borebook", "--bores", "2", "--size", "88", "--depth", "4in"}),
              exitWrong);
    EXPECT_NE(err.str().find("say the unit"), std::string::npos) << err.str();
    EXPECT_FALSE(files.content("/shop/n.borebook"));
}

TEST_F(CommandLine, RecordMakesASurveyOfDeviations) {
    begun();
    ASSERT_EQ(record("bore,depth,axis,reading,unit\n1,1,A,0.5,thou\n1,2,A,1.0,thou\n",
                     {"--set", "3.5in", "--survey", "first", "--kind", "as-found"}),
              exitWithin)
        << err.str();
    const Workbook workbook = *loadWorkbook(files, "/shop/new.borebook");
    ASSERT_EQ(workbook.surveys.size(), 1U);
    EXPECT_EQ(workbook.surveys[0].header.name, "first");
    EXPECT_EQ(workbook.surveys[0].readings[1].typed.text(), "1.0") << "kept as typed";
    ASSERT_EQ(record("bore,depth,axis,reading,unit\n1,1,B,0.5,thou\n", {"--survey", "first"}), 0);
    EXPECT_EQ(loadWorkbook(files, "/shop/new.borebook")->surveys[0].readings.size(), 3U);
}

TEST_F(CommandLine, RecordGoesOnWithTheGaugeOfTheSurveyBefore) {
    begun();
    const std::string csv = "bore,depth,axis,reading,unit\n1,1,A,3.5012,in\n";
    ASSERT_EQ(record(csv, {"--survey", "first", "--larger", "minus"}), exitWithin) << err.str();
    Workbook workbook = *loadWorkbook(files, "/shop/new.borebook");
    GaugeSetting& gauge = workbook.surveys[0].header.gauge;
    gauge.gauge = "gauge no. 2";
    gauge.gear = tenthDialAndRing();
    gauge.blockTemperature = TypedTemperature{};
    files.put("/shop/new.borebook", writeWorkbook(workbook));
    ASSERT_EQ(record(csv), exitWithin) << err.str();
    const GaugeSetting after = loadWorkbook(files, "/shop/new.borebook")->surveys[1].header.gauge;
    EXPECT_EQ(after.gauge, "gauge no. 2");
    EXPECT_EQ(after.gear, gauge.gear) << "what its readings are worth";
    EXPECT_EQ(after.dial.larger, Dial::Larger::minus);
    EXPECT_EQ(after.blockTemperature, std::nullopt) << "each survey has its own warmth";
    ASSERT_EQ(record(csv, {"--survey", "third", "--larger", "plus"}), exitWithin) << err.str();
    EXPECT_EQ(loadWorkbook(files, "/shop/new.borebook")->surveys[2].header.gauge.dial.larger,
              Dial::Larger::plus);
}

TEST_F(CommandLine, RecordTakesNothingFromAFileWithAnError) {
    begun();
    const auto before = files.content("/shop/new.borebook");
    const std::string csv =
        "bore,depth,axis,reading,unit\n1,1,A,0.5,thou\n1,2,A,6o,thou\n9,1,A,0.5,thou\n";
    EXPECT_EQ(record(csv, {"--set", "3.5in"}), exitWrong);
    EXPECT_NE(err.str().find("line 3"), std::string::npos) << err.str();
    EXPECT_NE(err.str().find("line 4"), std::string::npos) << err.str();
    EXPECT_EQ(files.content("/shop/new.borebook"), before);
    EXPECT_EQ(record(csv, {"--set", "3.5in", "--take-good-rows"}), exitWithin);
    EXPECT_EQ(loadWorkbook(files, "/shop/new.borebook")->surveys[0].readings.size(), 1U);
}

TEST_F(CommandLine, RecordRefusesADiameterWhereADeviationIsMeant) {
    begun();
    EXPECT_EQ(record("bore,depth,axis,reading,unit\n1,1,A,3.5012,in\n", {"--set", "3.5in"}),
              exitWrong);
    EXPECT_NE(err.str().find("looks like a diameter"), std::string::npos) << err.str();
}

TEST_F(CommandLine, RecordAddsDepthsOnlyWhenTold) {
    begun();
    const std::string csv = "bore,depth,axis,reading,unit\n1,1.5,A,3.5012,in\n";
    EXPECT_EQ(record(csv), exitWrong);
    EXPECT_EQ(record(csv, {"--add-levels"}), exitWithin) << err.str();
    EXPECT_EQ(loadWorkbook(files, "/shop/new.borebook")->block.bores[0].levels.size(), 3U);
}

TEST_F(CommandLine, SheetIsAWholePdf) {
    ASSERT_EQ(run({"sheet", "/shop/v6.borebook", "/shop/out.pdf"}), exitWithin) << err.str();
    const std::string pdf = *files.content("/shop/out.pdf");
    EXPECT_TRUE(pdf.starts_with("%PDF-"));
    EXPECT_NE(pdf.substr(pdf.size() - 16).find("%%EOF"), std::string::npos);
}

TEST_F(CommandLine, AFullDiskIsNoSuccess) {
    files.limitBytes(0);
    EXPECT_EQ(run({"results", "/shop/v6.borebook", "/shop/out.json"}), exitWrong);
    EXPECT_NE(err.str().find("full"), std::string::npos) << err.str();
    EXPECT_FALSE(files.content("/shop/out.json"));
}

} // namespace
} // namespace borewright
