// SPDX-License-Identifier: GPL-3.0-or-later
// Files made to hurt, given to the real program: refused in a sentence or taken harmlessly, in
// under 2 s and 300 MB each. Time and memory are measured and printed.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <functional>
#include <gtest/gtest.h>
#include <iterator>
#include <thread>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace borewright {
namespace {

namespace fs = std::filesystem;
using Strings = std::vector<std::string>;

constexpr std::size_t mega = 1024UL * 1024;
constexpr std::size_t largest = 64 * mega;

// Sanitizers take several times as much of both.
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr int allowance = 8;
#else
constexpr int allowance = 1;
#endif
constexpr double mostSeconds = 2.0 * allowance;
constexpr std::size_t mostMemory = 300 * mega * allowance;

std::string contentOf(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

struct Outcome {
    int status = -1;
    double seconds = 0;
    std::size_t peak = 0; // bytes
    std::string said;     // to either stream
};

// The highest memory so far of a process that runs the program; 0 before it does.
std::size_t peakOf(pid_t child) {
    std::ifstream file("/proc/" + std::to_string(child) + "/status");
    bool isProgram = false;
    for (std::string line; std::getline(file, line);) {
        if (line == "Name:\tborewright") isProgram = true;
        if (isProgram && line.starts_with("VmHWM:"))
            return std::strtoull(line.c_str() + 6, nullptr, 10) * 1024;
    }
    return 0;
}

Outcome runProgram(const Strings& arguments, const fs::path& output) {
    std::vector<char*> words;
    Strings all{BOREWRIGHT_PROGRAM};
    all.insert(all.end(), arguments.begin(), arguments.end());
    for (std::string& word : all)
        words.push_back(word.data());
    words.push_back(nullptr);
    const auto start = std::chrono::steady_clock::now();
    const pid_t child = fork();
    if (child == 0) {
        const int out = open(output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
        dup2(out, STDOUT_FILENO);
        dup2(out, STDERR_FILENO);
        setenv("QT_QPA_PLATFORM", "offscreen", 1);
        execv(words.front(), words.data());
        _exit(126);
    }
    Outcome run;
    int status = 0;
    while (waitpid(child, &status, WNOHANG) == 0) {
        run.peak = std::max(run.peak, peakOf(child));
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    run.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    run.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    run.said = contentOf(output);
    return run;
}

std::string repeated(const std::string& text, std::size_t times) {
    std::string all;
    all.reserve(text.size() * times);
    for (std::size_t i = 0; i < times; ++i)
        all += text;
    return all;
}

class HostileFiles : public testing::Test {
protected:
    HostileFiles() {
        std::string pattern = (fs::temp_directory_path() / "borewright-hostile-XXXXXX").string();
        if (mkdtemp(pattern.data()) != nullptr) m_folder = pattern;
        m_good = contentOf(fs::path(BOREWRIGHT_SOURCE_DIR) / "demo/saltmarsh-v6.borebook");
    }
    ~HostileFiles() override {
        fmt::print("{} hostile files: at most {:.2f} s and {} MB\n", m_files, m_slowest,
                   m_largest / mega);
        fs::remove_all(m_folder);
    }
    // The demonstration with one more field in front.
    [[nodiscard]] std::string with(const std::string& field) const {
        return "{" + field + ", " + m_good.substr(1);
    }
    fs::path put(const std::string& name, const std::string& bytes) const {
        std::ofstream(m_folder / name, std::ios::binary) << bytes;
        return m_folder / name;
    }
    // Refused with these words; or taken where there are none.
    void check(const std::string& what, const std::string& bytes, const std::string& words) {
        const fs::path file = put("job.borebook", bytes);
        judge(what, runProgram({"check", file.string()}, m_folder / "out"), words, 2);
    }
    void import(const std::string& what, const std::string& bytes, const std::string& words) {
        const fs::path job = put("job.borebook", m_good);
        const fs::path table = put("readings.csv", bytes);
        judge(what,
              runProgram({"record", job.string(), table.string(), "--survey", "new"},
                         m_folder / "out"),
              words, 2);
        EXPECT_EQ(contentOf(job), m_good) << what << ": the workbook was changed";
    }
    fs::path m_folder;
    std::string m_good;

private:
    void judge(const std::string& what, const Outcome& run, const std::string& words, int harmless) {
        ++m_files;
        m_slowest = std::max(m_slowest, run.seconds);
        m_largest = std::max(m_largest, run.peak);
        EXPECT_LT(run.seconds, mostSeconds) << what;
        EXPECT_LT(run.peak, mostMemory) << what;
        if (words.empty()) {
            EXPECT_LE(run.status, harmless) << what << ": " << run.said.substr(0, 300);
            return;
        }
        EXPECT_EQ(run.status, 3) << what << " is not refused";
        EXPECT_NE(run.said.find(words), std::string::npos)
            << what << ": " << run.said.substr(0, 300);
        EXPECT_LT(run.said.size(), 4000U) << what << ": the refusal repeats the file";
    }
    int m_files = 0;
    double m_slowest = 0;
    std::size_t m_largest = 0;
};

TEST_F(HostileFiles, WorkbooksOfSixtyFourMegabytes) {
    check("blank", std::string(largest - 2, ' ') + "{}", "this is not a Borewright workbook");
    check("a byte too many", std::string(largest + 1, ' '), "over 64 MB");
    const std::size_t room = largest - m_good.size() - 40;
    check("zeros", with("\"later\": [" + repeated("0,", room / 2 - 1) + "0]"),
          "later: holds more than any workbook");
    check("brackets", with("\"later\": " + repeated("[", room)), "nested deeper");
    check("fields", with("\"later\": {" + repeated("\"a\":0,", room / 6 - 1) + "\"b\":0}"),
          "a: is given twice");
    const std::string text = '"' + std::string(60, 'x') + "\",";
    check("texts", with("\"later\": [" + repeated(text, 950'000) + "0]"),
          "holds more text than any workbook");
}

TEST_F(HostileFiles, WorkbooksAsLargeAsTheyMayBe) {
    constexpr std::size_t many = 950'000;
    check("a million zeros", with("\"later\": [" + repeated("0,", many) + "0]"), "");
    check("a million lists", with("\"later\": [" + repeated("[],", many) + "0]"), "");
    check("half a million objects",
          with("\"later\": [" + repeated("{\"aaaaaaaaaaaaaaaaaaaa\":0},", many / 2) + "0]"), "");
    const std::string text = '"' + std::string(33, 'x') + "\",";
    check("a million texts", with("\"later\": [" + repeated(text, many) + "0]"), "");
}

TEST_F(HostileFiles, WorkbooksThatAreNoJsonOfOurs) {
    const auto nested = [](const std::string& open, const std::string& close) {
        return "\"later\": " + repeated(open, 10'000) + "0" + repeated(close, 10'000);
    };
    check("lists 10 000 deep", with(nested("[", "]")), "nested deeper than any workbook");
    check("objects 10 000 deep", with(nested("{\"a\":", "}")), "nested deeper than any workbook");
    const std::string long10(10 * mega, 'x');
    check("a text of 10 MB", with("\"later\": \"" + long10 + "\""), "a text longer than 64 KB");
    check("a name of 10 MB", with("\"" + long10 + "\": 0"), "a text longer than 64 KB");
    check("a word of 10 MB", with("\"later\": " + long10), "is not a value");
    check("a number of 10 MB", with("\"later\": " + std::string(10 * mega, '1')),
          "is not a number");
    check("a key twice", with("\"format\": \"borewright workbook\""), "format: is given twice");
    for (const char* word : {"NaN", "Infinity", "-Infinity"})
        check(word, with(std::string("\"later\": ") + word), "is not a value");
    check("a number of 400 digits", with("\"later\": " + std::string(400, '7')), "is not a number");
    std::string typed = m_good;
    const std::size_t at = typed.find("\"typed\": \"") + 10;
    typed.replace(at, typed.find('"', at) - at, std::string(400, '1') + " thou");
    check("a reading of 400 digits", typed, "has more digits than any reading");
    std::string named = m_good;
    const std::size_t name = named.find("\"name\": \"") + 9;
    named.insert(name, "..\\/..\\/x\\u0007=1+1 ");
    check("names with ../ and control characters", named, "");
    EXPECT_EQ(std::distance(fs::directory_iterator(m_folder), {}), 2) << "a name became a file";
}

TEST_F(HostileFiles, TablesOfSixtyFourMegabytesDoNotFillTheMemory) {
    const std::string head = "bore,depth,axis,reading,unit\n";
    const std::size_t room = largest - head.size();
    const std::string tooMuch = "the table holds more than any survey";
    const std::string tooWide = "has more columns than any table of readings";
    import("commas", head + std::string(room, ','), tooWide);
    import("names", repeated("bore,", largest / 5), tooWide);
    import("rows", head + repeated("1,1,A,1,thou\n", room / 13), tooMuch);
    import("short rows", head + repeated("x\n", room / 2), tooMuch);
    import("empty lines", head + std::string(room, '\n'), "there is no reading in the file");
    import("empty rows", head + repeated(",,,,\n", room / 5), tooMuch);
    import("an open quote", head + '"' + std::string(room - 1, 'x'), "quote is missing");
    import("quotes", head + repeated("\"\"", room / 2), "fields where the first line has 5");
    import("over 64 MB", head + std::string(largest, ' '), "the file is larger than");
}

TEST_F(HostileFiles, TablesWithAbsurdCells) {
    const std::string head = "bore,depth,axis,reading,unit\n";
    const std::string long10(10 * mega, '1');
    import("a reading of 10 MB", head + "1,1,A," + long10 + ",thou\n", "more digits than any");
    import("an axis of 10 MB", head + "1,1," + long10 + ",1,thou\n", "there is no axis");
    import("a bore of 400 digits", head + std::string(400, '1') + ",1,A,1,thou\n", "bore:");
    for (const char* word : {"NaN", "inf", "-nan(0x1)", "0x1p3", "1e5", "=1+1", "=cmd|' /C x'!A0"})
        import(word, head + "1,1,A," + word + ",thou\n", "is not a number");
    import("a depth below zero", head + "1,-1,A,1,thou\n", "never below zero");
    import("an axis with ../", head + "1,1,../../x,1,thou\n", "there is no axis");
}

} // namespace
} // namespace borewright
