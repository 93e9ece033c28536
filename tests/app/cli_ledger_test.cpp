// SPDX-License-Identifier: GPL-3.0-or-later
// borewright ledger: what it prints and its exit status, over workbooks in a folder of their own.
#include "app/cli/cli.h"
#include "core/storage/posix_file_system.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/honed_block.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <nlohmann/json.hpp>
#include <sstream>

namespace borewright {
namespace {

using namespace test;

class Standing final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {1'774'000'000, 60}; }
};

class LedgerCommands : public testing::Test {
protected:
    LedgerCommands() {
        EXPECT_TRUE(QDir().mkpath(folder.filePath("jobs")));
        Workbook first = inchBlock(1);
        first.job = {"=SUM(A1)", "Saltmarsh V6", "SM-0001", {}, {}, {}, {}};
        const std::string survey = addSurvey(first, SurveyKind::asFound, "as found");
        typeShape(first, survey, 1, [](double, const std::string&) { return 3.5; });
        first.surveys[0].header.gauge.gauge = "dial bore gauge no. 2";
        write("first.borebook", writeWorkbook(first));
        Workbook honed = measuredHonedBlock();
        honed.job = {"B. Example", "Rushmere 3", "RM-0002", {}, {}, {}, {}};
        write("honed.borebook", writeWorkbook(honed));
    }
    void write(const char* name, const std::string& bytes) const {
        QFile file(folder.filePath("jobs/") + name);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes.data(), static_cast<qint64>(bytes.size()));
    }
    [[nodiscard]] std::string path(const char* name) const {
        return folder.filePath(name).toStdString();
    }
    int run(std::vector<std::string> arguments) {
        out.str({});
        err.str({});
        arguments.insert(arguments.begin(), "ledger");
        for (const char* word : {"--ledger", "ledger.sqlite"})
            arguments.push_back(word[0] == '-' ? word : path(word));
        return runCommand(arguments, {files, clock, out, err}).value_or(-1);
    }
    int rebuild() { return run({"rebuild", path("jobs")}); }
    [[nodiscard]] bool says(const std::string& text) const {
        return out.str().find(text) != std::string::npos;
    }

    QTemporaryDir folder;
    PosixFileSystem files;
    Standing clock;
    std::ostringstream out, err;
};

TEST_F(LedgerCommands, RebuildTakesInAFolderAndSaysWhatItCouldNotRead) {
    EXPECT_EQ(rebuild(), exitWithin) << err.str();
    EXPECT_EQ(out.str(), "Took in 2 workbooks.\n");
    write("broken.borebook", "{");
    EXPECT_EQ(run({"rebuild"}), exitUndecided) << "the folder is known from last time";
    EXPECT_TRUE(says("Not read: " + path("jobs/broken.borebook"))) << out.str();
    EXPECT_TRUE(says("Took in 2 workbooks.")) << out.str();
}

TEST_F(LedgerCommands, ListAndFindPrintARowAJob) {
    rebuild();
    EXPECT_EQ(run({"list"}), exitWithin) << err.str();
    for (const char* text : {"Saltmarsh V6", "RM-0002", "3.5035 in", "2026-03-20"})
        EXPECT_TRUE(says(text)) << text << " is not in\n" << out.str();
    EXPECT_EQ(run({"find", "rush", "0002"}), exitWithin);
    EXPECT_TRUE(says("Rushmere 3") && !says("Saltmarsh")) << out.str();
    EXPECT_EQ(run({"find", "nobody"}), exitOutside);
    EXPECT_EQ(out.str(), "Nothing found.\n");
}

TEST_F(LedgerCommands, JsonHoldsExactMillimetres) {
    rebuild();
    EXPECT_EQ(run({"find", "saltmarsh", "--json"}), exitWithin);
    const auto json = nlohmann::json::parse(out.str());
    ASSERT_EQ(json["jobs"].size(), 1U);
    EXPECT_EQ(json["jobs"][0]["largest_before_mm"].get<double>(), 88.9889); // 3.5035 in
    EXPECT_TRUE(json["jobs"][0]["largest_after_mm"].is_null());
    EXPECT_EQ(json["jobs"][0]["customer"], "=SUM(A1)");
    run({"find", "nobody", "--json"});
    EXPECT_EQ(nlohmann::json::parse(out.str())["jobs"].size(), 0U);
}

TEST_F(LedgerCommands, CsvHoldsNoFormulas) {
    rebuild();
    EXPECT_EQ(run({"find", "saltmarsh", "--csv", "--units", "inch"}), exitWithin);
    EXPECT_TRUE(says(",'=SUM(A1),Saltmarsh V6,")) << out.str();
    EXPECT_TRUE(says("largest before (in)") && says(",3.50350,")) << out.str();
}

TEST_F(LedgerCommands, NeededRatesAndGaugeAnswerARebuilder) {
    rebuild();
    EXPECT_EQ(run({"needed", "--engine", "saltmarsh"}), exitWithin) << err.str();
    EXPECT_TRUE(says("3.5035 in")) << out.str();
    EXPECT_EQ(run({"needed", "--engine", "thornwick"}), exitOutside);
    // Pass h2: 1.6 thou in 24 strokes.
    EXPECT_EQ(run({"rates", "--json"}), exitWithin) << err.str();
    const auto stones = nlohmann::json::parse(out.str())["stones"];
    ASSERT_EQ(stones.size(), 1U);
    EXPECT_EQ(stones[0]["stone"], "Short 100");
    EXPECT_NEAR(stones[0]["um_per_stroke"].get<double>(), 1.6 * 25.4 / 24, 1e-9);
    EXPECT_EQ(run({"gauge", "no. 2"}), exitWithin);
    EXPECT_TRUE(says("SM-0001") && !says("RM-0002")) << out.str();
}

TEST_F(LedgerCommands, WrongUsageIsRefused) {
    EXPECT_EQ(run({"list", "--json", "--csv"}), exitWrong);
    EXPECT_EQ(run({"needed"}), exitWrong);
    EXPECT_EQ(run({}), exitWrong);
    EXPECT_EQ(runCommand({"ledger", "list", "--ledger", path("jobs/first.borebook")},
                         {files, clock, out, err}),
              exitWrong);
    EXPECT_NE(err.str().find("no ledger"), std::string::npos) << err.str();
}

TEST_F(LedgerCommands, ADamagedLedgerIsSaidAndMadeAnew) {
    rebuild();
    write("../ledger.sqlite", std::string(9000, 'x'));
    EXPECT_EQ(run({"rebuild", path("jobs")}), exitWithin) << err.str();
    EXPECT_NE(err.str().find("was damaged"), std::string::npos) << err.str();
    EXPECT_EQ(out.str(), "Took in 2 workbooks.\n");
}

} // namespace
} // namespace borewright
