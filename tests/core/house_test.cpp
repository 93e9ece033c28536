// SPDX-License-Identifier: GPL-3.0-or-later
// The rules of the house, read off the source itself: which folder may look at which, what stands
// at the top level, what every file begins with, and which calls have no place here.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path root = BOREWRIGHT_SOURCE_DIR;

std::vector<std::string> linesOf(const fs::path& file) {
    std::ifstream in(file);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

bool isSource(const fs::path& file) {
    return file.extension() == ".cpp" || file.extension() == ".h";
}

std::vector<fs::path> sourcesIn(const std::vector<std::string>& folders) {
    std::vector<fs::path> files;
    for (const std::string& folder : folders)
        for (const auto& entry : fs::recursive_directory_iterator(root / folder))
            if (entry.is_regular_file() && isSource(entry.path())) files.push_back(entry.path());
    std::ranges::sort(files);
    return files;
}

std::string shown(const fs::path& file) {
    return fs::relative(file, root).generic_string();
}

// What a line includes, without its quotes or brackets; empty where it includes nothing.
std::string included(const std::string& line) {
    static const std::regex pattern(R"re(^\s*#\s*include\s*[<"]([^>"]+)[>"])re");
    std::smatch match;
    return std::regex_search(line, match, pattern) ? match[1].str() : std::string();
}

// Which rooms of core/ each room may look at: only to the left, as a number travels.
const std::map<std::string, std::set<std::string>> maySee{
    {"length", {}},
    {"workbook", {"length"}},
    {"statistics", {}},
    {"gauging", {"length", "workbook", "statistics"}},
    {"form", {"length", "workbook", "statistics", "gauging"}},
    {"verdict", {"length", "workbook", "statistics", "gauging", "form"}},
    {"sizing", {"length", "workbook", "statistics", "gauging", "form", "verdict"}},
    {"honing", {"length", "workbook", "statistics", "gauging", "form"}},
    {"results",
     {"length", "workbook", "statistics", "gauging", "form", "verdict", "sizing", "honing"}},
    {"storage", {"length", "workbook"}},
};

// The first folder below core/, or empty for what lies in core/ itself.
std::string roomOf(const std::string& path) {
    const std::string core = "core/";
    if (!path.starts_with(core)) return {};
    const std::size_t slash = path.find('/', core.size());
    return slash == std::string::npos ? "" : path.substr(core.size(), slash - core.size());
}

TEST(House, SourcesAreFound) {
    EXPECT_GT(sourcesIn({"core"}).size(), 20U) << "the tests below would pass on nothing";
    EXPECT_GT(sourcesIn({"app"}).size(), 10U);
    EXPECT_GT(sourcesIn({"tests"}).size(), 3U);
}

TEST(House, TheCoreKnowsNoQt) {
    const std::regex qt(R"(^(Q[A-Za-z]|Qt|qt|qcustomplot))");
    for (const fs::path& file : sourcesIn({"core"}))
        for (const std::string& line : linesOf(file))
            EXPECT_FALSE(std::regex_search(included(line), qt)) << shown(file) << ": " << line;
}

TEST(House, TheCoreNeverLooksOutOfItself) {
    for (const fs::path& file : sourcesIn({"core"}))
        for (const std::string& line : linesOf(file)) {
            const std::string header = included(line);
            EXPECT_FALSE(header.starts_with("app/") || header.starts_with("tests/"))
                << shown(file) << ": " << line;
        }
}

TEST(House, RoomsOfTheCoreLookOnlyToTheLeft) {
    for (const fs::path& file : sourcesIn({"core"})) {
        const std::string room = roomOf(shown(file));
        if (room.empty()) continue; // core/result.h, core/utf8.h and their like serve every room
        const auto rule = maySee.find(room);
        ASSERT_NE(rule, maySee.end()) << "core/" << room << " has no place in the house yet";
        for (const std::string& line : linesOf(file)) {
            const std::string seen = roomOf(included(line));
            EXPECT_TRUE(seen.empty() || seen == room || rule->second.contains(seen))
                << shown(file) << " looks to the right: " << line;
        }
    }
}

TEST(House, WhatEveryRoomSharesSeesNoRoom) {
    for (const fs::path& file : sourcesIn({"core"})) {
        if (!roomOf(shown(file)).empty()) continue;
        for (const std::string& line : linesOf(file))
            EXPECT_EQ(roomOf(included(line)), "") << shown(file) << ": " << line;
    }
}

TEST(House, IncludesNameTheirPlaceFromTheRoot) {
    const std::regex quoted(R"re(^\s*#\s*include\s*"([^"]+)")re");
    for (const fs::path& file : sourcesIn({"core", "app", "tests"}))
        for (const std::string& line : linesOf(file)) {
            std::smatch match;
            if (!std::regex_search(line, match, quoted)) continue;
            const std::string header = match[1];
            const bool generated = header.ends_with(".moc");
            EXPECT_TRUE(generated || fs::exists(root / header)) << shown(file) << ": " << line;
        }
}

TEST(House, EveryFileCarriesTheLicence) {
    for (const fs::path& file : sourcesIn({"core", "app", "tests"})) {
        const std::vector<std::string> lines = linesOf(file);
        ASSERT_FALSE(lines.empty()) << shown(file) << " is empty";
        EXPECT_EQ(lines.front(), "// SPDX-License-Identifier: GPL-3.0-or-later") << shown(file);
    }
}

TEST(House, TheTopLevelHoldsJustWhatItMay) {
    const std::set<std::string> may{
        "CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "app",
        "core",           "resources", "tests",         "demo",    "build"}; // what git ignores
    for (const auto& entry : fs::directory_iterator(root)) {
        const std::string name = entry.path().filename().string();
        EXPECT_TRUE(name.starts_with('.') || name.starts_with("build") || may.contains(name))
            << name << " has no place at the top level";
    }
    for (const std::string& name : may)
        EXPECT_TRUE(name == "build" || fs::exists(root / name)) << name << " is missing";
}

// What each of these does wrong on Debian 12 stands in DEVELOPERS.md.
TEST(House, NothingThatLosesDataIsCalled) {
    const std::regex banned(R"(\b(QSaveFile|QJsonDocument)\b)");
    const std::regex comment(R"(//.*$)");
    for (const fs::path& file : sourcesIn({"core", "app"}))
        for (const std::string& line : linesOf(file))
            EXPECT_FALSE(std::regex_search(std::regex_replace(line, comment, ""), banned))
                << shown(file) << ": " << line;
}

// QCOMPARE and QVERIFY leave a GoogleTest green when they fail.
TEST(House, TestsUseExpectationsThatFail) {
    const std::regex banned(R"(\b(QCOMPARE|QVERIFY)\s*\()");
    for (const fs::path& file : sourcesIn({"tests"}))
        for (const std::string& line : linesOf(file))
            EXPECT_FALSE(std::regex_search(line, banned)) << shown(file) << ": " << line;
}

TEST(House, FilesStayReadable) {
    constexpr std::size_t longest = 350;
    for (const fs::path& file : sourcesIn({"core", "app", "tests"}))
        EXPECT_LE(linesOf(file).size(), longest) << shown(file) << " wants to be two files";
}

TEST(House, ScriptsCanBeStarted) {
    for (const char* script : {"demo/run", "tests/run", ".ci/run", "resources/prepare"}) {
        const fs::path file = root / script;
        ASSERT_TRUE(fs::exists(file)) << script;
        EXPECT_NE(fs::status(file).permissions() & fs::perms::owner_exec, fs::perms::none)
            << script << " is not executable";
    }
}

// Two types of one name are one to the linker: what it keeps of the one works on the other, and the
// program ends somewhere else. Those of a source file alone stand in an unnamed namespace.
TEST(House, NoTwoTypesHaveOneName) {
    static const std::regex type(R"re(^(?:struct|class) (\w+)(?: final)?(?: : [^;]*)? \{)re");
    static const std::regex room(R"re(^namespace ([\w:]+)? ?\{)re");
    std::map<std::string, std::set<std::string>> places;
    for (const fs::path& file : sourcesIn({"core", "app"})) {
        if (file.extension() != ".h") continue;
        std::vector<std::string> rooms;
        for (const std::string& line : linesOf(file)) {
            std::smatch match;
            if (std::regex_search(line, match, room)) rooms.push_back(match[1].str());
            if (line.starts_with("} // namespace") && !rooms.empty()) rooms.pop_back();
            if (!std::regex_search(line, match, type)) continue;
            std::string name;
            for (const std::string& one : rooms)
                name += one + "::";
            places[name + match[1].str()].insert(shown(file));
        }
    }
    EXPECT_GT(places.size(), 150U) << "hardly any type was found: this proves nothing";
    for (const auto& [name, files] : places)
        EXPECT_EQ(files.size(), 1U)
            << name << " stands in " << *files.begin() << " and " << *files.rbegin();
}

} // namespace
