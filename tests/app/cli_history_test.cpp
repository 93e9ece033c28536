// SPDX-License-Identifier: GPL-3.0-or-later
// The command line beside other benches, on paper and on a terminal: check codes, sheets printed
// again, locks, who changed what, and names that hold control characters.
#include "app/cli/cli.h"
#include "app/cli/harmless_stream.h"
#include "core/storage/workbook_file.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/memory_file_system.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

namespace borewright {
namespace {

class Ticking final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {m_seconds += 60, 60}; }

private:
    mutable std::int64_t m_seconds = 1'774'000'000;
};

class RunningProcesses final : public Processes {
public:
    bool running = true;
    Found find(std::int64_t) override { return {true, running, "at noon"}; }
};

class CommandLineHistory : public testing::Test {
protected:
    CommandLineHistory() {
        files.makeFolder("/shop");
        Workbook workbook = demo::saltmarsh();
        workbook.invented = false;
        files.put("/shop/v6.borebook", writeWorkbook(workbook));
    }
    int run(const std::vector<std::string>& arguments) {
        out.str({});
        err.str({});
        const LockHolder me{"B. Example", "shop", "id", {}, 2, "at noon"};
        return runCommand(arguments, {files, clock, out, err, me, &processes}).value_or(-1);
    }
    // Prints the sheet and returns its code.
    std::string print(const std::vector<std::string>& more = {}) {
        std::vector<std::string> arguments{"sheet", "/shop/v6.borebook", "/shop/out.pdf"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        EXPECT_EQ(run(arguments), exitWithin) << err.str();
        const std::string said = out.str();
        const std::size_t at = said.find("check code ");
        EXPECT_NE(at, std::string::npos) << said;
        return said.substr(at + 11, 14);
    }
    int check(const std::string& code, bool json = false) {
        std::vector<std::string> arguments{"check", "/shop/v6.borebook", "--code", code};
        if (json) arguments.emplace_back("--json");
        return run(arguments);
    }
    void lockIt() {
        const LockHolder other{"A. Example", "bench-1", "id 1", {1'774'000'000, 60}, 1, "at noon"};
        files.put("/shop/.v6.borebook.lock", writeLock(other));
    }
    std::string onDisk() { return files.content("/shop/v6.borebook").value_or(""); }

    MemoryFileSystem files;
    Ticking clock;
    RunningProcesses processes;
    std::ostringstream out, err;
};

const std::vector<std::string> oneReading{"record",      "/shop/v6.borebook", "--bore",   "1",
                                          "--reading",   "1.75in,A,3.4405",   "--survey", "late",
                                          "--add-levels"};

TEST_F(CommandLineHistory, ACodeIsTheSheetAsItStandsOrOneOfThenOrNone) {
    const std::string before = onDisk();
    const std::string plain = print();
    EXPECT_EQ(onDisk(), before) << "a sheet printed from a script writes nothing unasked";
    EXPECT_EQ(check(plain), 0);
    EXPECT_NE(out.str().find(plain +
                             " is the sheet as /shop/v6.borebook stands now, in inches and thou."),
              std::string::npos)
        << out.str();
    const std::string noted = print({"--note"});
    EXPECT_EQ(noted, plain);
    EXPECT_NE(onDisk(), before);
    EXPECT_EQ(check(noted), 0);
    EXPECT_NE(out.str().find("Printed 20 March 2026, "), std::string::npos) << out.str();
    EXPECT_NE(out.str().find("B. Example"), std::string::npos) << out.str();
    ASSERT_EQ(run(oneReading), exitWithin) << err.str();
    EXPECT_EQ(check(noted), 1);
    EXPECT_NE(out.str().find("the workbook was changed since"), std::string::npos) << out.str();
    EXPECT_NE(out.str().find("B. Example: readings taken in"), std::string::npos) << out.str();
    EXPECT_NE(out.str().find("late: survey was not there"), std::string::npos) << out.str();
    const std::string metric = print({"--units", "metric"});
    EXPECT_EQ(check(metric), 0);
    EXPECT_NE(out.str().find("in millimetres and "), std::string::npos) << out.str();
    EXPECT_EQ(check("9KWW-4Y4T-7RYG"), 2);
    EXPECT_NE(out.str().find("No sheet of /shop/v6.borebook has the code"), std::string::npos);
}

TEST_F(CommandLineHistory, ListsWhoChangedWhatAndWhichSheetsWerePrinted) {
    ASSERT_EQ(run({"history", "/shop/v6.borebook"}), exitWithin) << err.str();
    EXPECT_EQ(out.str(),
              "Nothing has been changed in /shop/v6.borebook and no sheet was printed.\n");
    const std::string code = print({"--note"});
    ASSERT_EQ(run(oneReading), exitWithin) << err.str();
    const std::string before = onDisk();
    ASSERT_EQ(run({"history", "/shop/v6.borebook"}), exitWithin) << err.str();
    EXPECT_NE(out.str().find("check code " + code), std::string::npos) << out.str();
    EXPECT_LT(out.str().find("readings taken in"), out.str().find(code)) << "newest first";
    ASSERT_EQ(run({"history", "/shop/v6.borebook", "--json"}), exitWithin) << err.str();
    const auto json = nlohmann::json::parse(out.str());
    EXPECT_EQ(json["lines"].back()["code"], code);
    EXPECT_EQ(json["lines"].front()["who"], "B. Example");
    ASSERT_EQ(run({"history", "/shop/v6.borebook", "--csv"}), exitWithin) << err.str();
    EXPECT_TRUE(out.str().starts_with("when,who,what,where,")) << out.str();
    EXPECT_EQ(run({"history", "/shop/v6.borebook", "--csv", "--json"}), exitWrong);
    EXPECT_EQ(run({"history", "/shop/gone.borebook"}), exitWrong);
    EXPECT_EQ(onDisk(), before) << "it only reads";
}

TEST_F(CommandLineHistory, ACodeMistypedIsExplained) {
    std::string code = print({"--note"});
    code[2] = code[2] == '3' ? '4' : '3';
    EXPECT_EQ(check(code), 3);
    EXPECT_NE(err.str().find("is mistyped: its last letter does not agree"), std::string::npos)
        << err.str();
    EXPECT_NE(err.str().find(": perhaps "), std::string::npos) << err.str();
    EXPECT_EQ(check("O0O0-O0O0-O0O0"), 3);
    EXPECT_EQ(check("K7"), 3);
    EXPECT_EQ(check(""), 3) << "judged instead, as if none had been asked for";
    EXPECT_NE(err.str().find("there is no code in it"), std::string::npos) << err.str();
    EXPECT_EQ(check(" "), 3);
    EXPECT_EQ(run({"sheet", "/shop/v6.borebook", "/shop/out.pdf", "--code", ""}), 3);
    EXPECT_EQ(run({"check", "/shop/v6.borebook", "--json"}), 3) << "goes with --code";
    EXPECT_EQ(run({"check", "/shop/nothing.borebook", "--code", code}), 3);
}

TEST_F(CommandLineHistory, TheAnswerIsToBeHadAsJson) {
    const std::string code = print({"--note"});
    ASSERT_EQ(check(code, true), 0);
    auto json = nlohmann::json::parse(out.str());
    EXPECT_EQ(json["is"], "as it stands now");
    EXPECT_EQ(json["sizeUnit"], "in");
    EXPECT_EQ(json["printed"]["who"], "B. Example");
    ASSERT_EQ(run(oneReading), exitWithin) << err.str();
    ASSERT_EQ(check(code, true), 1);
    json = nlohmann::json::parse(out.str());
    EXPECT_EQ(json["is"], "printed earlier");
    EXPECT_EQ(json["changes"].size(), 1U);
    EXPECT_FALSE(json["differences"].empty());
    ASSERT_EQ(check("9KWW-4Y4T-7RYG", true), 2);
    EXPECT_EQ(nlohmann::json::parse(out.str())["is"], "no sheet");
}

TEST_F(CommandLineHistory, ASheetOfThenIsPrintedAgainWithItsCode) {
    const std::string code = print({"--note", "--units", "metric"});
    ASSERT_EQ(run(oneReading), exitWithin) << err.str();
    EXPECT_NE(print(), code);
    EXPECT_EQ(print({"--code", code}), code);
    EXPECT_EQ(run({"sheet", "/shop/v6.borebook", "/shop/out.pdf", "--code", "9KWW-4Y4T-7RYG"}),
              exitWrong);
    EXPECT_NE(err.str().find("no sheet with this code was noted"), std::string::npos) << err.str();
}

TEST_F(CommandLineHistory, EveryWritingCommandLooksAtTheLock) {
    ASSERT_EQ(run({"stone", "/shop/v6.borebook", "--name", "short 100", "--rough", "--begins",
                   "0in", "--ends", "1in"}),
              exitWithin)
        << err.str();
    lockIt();
    const std::vector<std::vector<std::string>> writing{
        oneReading,
        {"stone", "/shop/v6.borebook", "--name", "short 100", "--grit", "100"},
        {"hone", "/shop/v6.borebook", "--beat", "55"},
        {"pass", "/shop/v6.borebook", "--bore", "1", "--stone", "short 100", "--from", "1.2in",
         "--to", "3in", "--strokes", "20"},
        {"sheet", "/shop/v6.borebook", "/shop/out.pdf", "--note"},
    };
    for (const auto& arguments : writing) {
        const std::string before = onDisk();
        EXPECT_EQ(run(arguments), exitWrong) << arguments.front();
        EXPECT_NE(err.str().find("A. Example at bench-1 has had it open since 20 March 2026, "),
                  std::string::npos)
            << arguments.front() << ": " << err.str();
        EXPECT_NE(err.str().find("--anyway"), std::string::npos) << err.str();
        EXPECT_EQ(onDisk(), before) << arguments.front();
        std::vector<std::string> anyway = arguments;
        anyway.emplace_back("--anyway");
        EXPECT_EQ(run(anyway), exitWithin) << arguments.front() << ": " << err.str();
        EXPECT_NE(onDisk(), before) << arguments.front();
    }
    EXPECT_EQ(run({"stone", "/shop/v6.borebook"}), exitWithin) << "listing writes nothing";
    EXPECT_EQ(run({"hone", "/shop/v6.borebook"}), exitWithin);
}

TEST_F(CommandLineHistory, AChangeFromAScriptStandsInTheHistory) {
    ASSERT_EQ(run({"hone", "/shop/v6.borebook", "--beat", "55"}), exitWithin) << err.str();
    const auto workbook = loadWorkbook(files, "/shop/v6.borebook");
    ASSERT_TRUE(workbook);
    ASSERT_EQ(workbook->history.entries.size(), 1U);
    EXPECT_EQ(workbook->history.entries[0].who, "B. Example");
    EXPECT_FALSE(workbook->history.entries[0].was.empty());
}

TEST_F(CommandLineHistory, ATextThatNoFileCouldHoldIsNotWritten) {
    const std::string before = onDisk();
    std::vector<std::string> arguments = oneReading;
    arguments[7] = std::string(70'000, 'x'); // the survey's name
    EXPECT_EQ(run(arguments), exitWrong);
    EXPECT_EQ(onDisk(), before);
}

TEST_F(CommandLineHistory, ControlCharactersOfAWorkbookNeverReachTheTerminal) {
    Workbook workbook = demo::saltmarsh();
    workbook.surveys.back().header.name = "final\x1b]0;taken\x07\x1b[2J\r\x7f \xC2\x9B"
                                          "31m \xE2\x80\xAE";
    workbook.hone.stones.emplace_back().id = "k1";
    workbook.hone.stones.back().name = "stone\x1b[31m";
    workbook.hone.stones.back().ends = *readTyped("1", Unit::inch);
    files.put("/shop/v6.borebook", writeWorkbook(workbook));
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"check", "/shop/v6.borebook"},
          {"check", "/shop/v6.borebook", "--survey", "no\x1b[2Jsuch"},
          {"stone", "/shop/v6.borebook"},
          {"stone", "/shop/v6.borebook", "--json"},
          {"no\x1b[2J", "such"}}) {
        (void)run(arguments);
        const std::string said = out.str() + err.str();
        EXPECT_FALSE(said.empty());
        for (const char* control : {"\x1b", "\x07", "\r", "\x7f", "\xC2\x9B", "\xE2\x80\xAE"})
            EXPECT_EQ(said.find(control), std::string::npos) << arguments.front();
    }
    EXPECT_EQ(run({"stone", "/shop/v6.borebook", "--json"}), exitWithin);
    EXPECT_EQ(nlohmann::json::parse(out.str())["stones"][0]["name"], "stone\x1b[31m")
        << "escaped as JSON has it, it is the same name";
}

TEST(HarmlessStream, PassesTextAndLineEndsAndWritesOutTheRest) {
    const auto through = [](std::initializer_list<std::string> pieces) {
        std::ostringstream out;
        {
            HarmlessStream stream(out);
            for (const std::string& piece : pieces)
                stream << piece;
        }
        return out.str();
    };
    EXPECT_EQ(through({"bore 3, µ Ø 漢 😀\tx\r\n"}), "bore 3, µ Ø 漢 😀\tx\r\n");
    EXPECT_EQ(through({"a\x1b[2Jb"}), "a\\u001b[2Jb");
    EXPECT_EQ(through({"a\rb"}), "a\\u000db");
    EXPECT_EQ(through({"a\r"}), "a\\u000d");
    EXPECT_EQ(through({"\xC2", "\x9B"}), "\\u009b") << "in two pieces";
    EXPECT_EQ(through({"\xE2\x80", "\xAE", "x"}), "\\u202ex");
    EXPECT_EQ(through({"\x9B", "31m"}), "\\u009b31m") << "alone, for a terminal of eight bits";
    EXPECT_EQ(through({"\xC3x"}), "\\u00c3x") << "cut off";
    EXPECT_EQ(through({std::string("\0\x7f", 2)}), "\\u0000\\u007f");
}

} // namespace
} // namespace borewright
