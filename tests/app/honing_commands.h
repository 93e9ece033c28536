// SPDX-License-Identifier: GPL-3.0-or-later
// What the tests of the commands for honing share: a block under the hone as a file in memory.
#pragma once

#include "app/cli/cli.h"
#include "core/storage/workbook_file.h"
#include "tests/support/honed_block.h"
#include "tests/support/lengths.h"
#include "tests/support/memory_file_system.h"

#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

namespace borewright::test {

class Watch final : public Clock {
public:
    [[nodiscard]] Timestamp now() const override { return {seconds, 60}; }
    std::int64_t seconds = 1'774'010'000;
};

using Words = std::vector<std::string>;
inline const std::string file = "/shop/job.borebook";

class HoningCommands : public testing::Test {
public:
    HoningCommands() {
        files.makeFolder("/shop");
        files.put(file, writeWorkbook(honedBlock()));
    }
    int run(const Words& arguments) {
        out.str({});
        err.str({});
        return runCommand(arguments, {files, watch, out, err}).value_or(-1);
    }
    int with(Words arguments, const Words& more) {
        arguments.insert(arguments.end(), more.begin(), more.end());
        return run(arguments);
    }
    int stone(const Words& more) { return with({"stone", file}, more); }
    int hone(const Words& more) { return with({"hone", file}, more); }
    int pass(const Words& more) { return with({"pass", file, "--bore", "2"}, more); }
    int record(const Words& more) { return with({"record", file, "--bore", "2"}, more); }
    // What is said of a command that is to write nothing.
    std::string refused(int (HoningCommands::*command)(const Words&), const Words& more) {
        const auto before = files.content(file);
        EXPECT_EQ((this->*command)(more), exitWrong) << out.str();
        EXPECT_EQ(files.content(file), before) << "a refusal left a trace";
        return err.str();
    }
    Workbook now() { return *loadWorkbook(files, file); }
    [[nodiscard]] bool warns(const std::string& text) const {
        return err.str().find(text) != std::string::npos;
    }

    MemoryFileSystem files;
    Watch watch;
    std::ostringstream out, err;
};

inline void expectSays(const std::string& said, const std::string& text) {
    EXPECT_NE(said.find(text), std::string::npos) << "'" << text << "' is not in: " << said;
}

} // namespace borewright::test
