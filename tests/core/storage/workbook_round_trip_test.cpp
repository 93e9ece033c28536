// SPDX-License-Identifier: GPL-3.0-or-later
// What is written is read back equal, whatever was recorded; and reading is quick enough for a
// benchful of old files.
#include "core/results/results.h"
#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/random_workbook.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <gtest/gtest.h>
#include <sstream>

namespace borewright {
namespace {

// The first line that differs, for a message.
std::string firstDifference(const std::string& a, const std::string& b) {
    std::istringstream left(a), right(b);
    std::string one, other;
    for (int line = 1;; ++line) {
        const bool more = static_cast<bool>(std::getline(left, one));
        const bool moreOther = static_cast<bool>(std::getline(right, other));
        if (!more && !moreOther) return "none";
        if (one != other || more != moreOther)
            return "line " + std::to_string(line) + ":\n  " + one + "\n  " + other;
    }
}

void expectRoundTrip(const Workbook& workbook) {
    const std::string bytes = writeWorkbook(workbook);
    const auto back = readWorkbook(bytes);
    ASSERT_TRUE(back) << back.error().message() << "\n" << bytes;
    EXPECT_TRUE(*back == workbook)
        << "first difference at " << firstDifference(bytes, writeWorkbook(*back));
    EXPECT_EQ(firstDifference(writeWorkbook(*back), bytes), "none");
}

TEST(WorkbookRoundTrip, RandomWorkbooksComeBackEqual) {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        expectRoundTrip(test::randomWorkbook(seed));
        if (testing::Test::HasFailure()) return;
    }
}

TEST(WorkbookRoundTrip, ANewReadingIsOneNewLine) {
    Workbook workbook = test::inchBlock(2);
    const std::string survey = test::addSurvey(workbook, SurveyKind::asFound, "as found");
    test::type(workbook, survey, 1, "0.5", "A", "1.5");
    const std::string before = writeWorkbook(workbook);
    test::type(workbook, survey, 1, "1.25", "A", "1.0");
    const std::string after = writeWorkbook(workbook);
    EXPECT_EQ(std::ranges::count(after, '\n') - std::ranges::count(before, '\n'), 1);
}

TEST(WorkbookRoundTrip, NumbersStandAsTyped) {
    Workbook workbook = test::inchBlock(1);
    const std::string survey = test::addSurvey(workbook, SurveyKind::asFound, "as found");
    const std::vector<std::string> texts{"-1.50", "-1,5", "+.5", "\u22122.0", "007", "3."};
    for (const std::string& text : texts)
        test::type(workbook, survey, 1, "0.5", "A", text);
    const std::string bytes = writeWorkbook(workbook);
    for (const std::string& text : texts)
        EXPECT_NE(bytes.find("\"" + text + " thou\""), std::string::npos) << text;
    expectRoundTrip(workbook);
}

// Printed, not asserted: 20,000 bores in half a second are 0.4 ms for a file of sixteen.
TEST(WorkbookRoundTrip, ReadingAndComputingIsQuick) {
    Workbook workbook = test::inchBlock(16);
    const std::string survey = test::addSurvey(workbook, SurveyKind::asFound, "as found");
    for (int bore = 1; bore <= 16; ++bore)
        test::typeShape(workbook, survey, bore, [](double, const std::string&) { return 1.5; });
    test::addWornLimits(workbook, "3.505", "3", "3");
    const std::string bytes = writeWorkbook(workbook);
    using Clock = std::chrono::steady_clock;
    const auto best = [](const auto& work) {
        double least = 1e9;
        for (int i = 0; i < 30; ++i) {
            const auto start = Clock::now();
            work();
            least = std::min(
                least, std::chrono::duration<double, std::milli>(Clock::now() - start).count());
        }
        return least;
    };
    std::size_t seen = 0;
    const double reading = best([&] { seen += readWorkbook(bytes)->surveys.size(); });
    const double computing = best([&] { seen += compute(workbook, {}).surveys.size(); });
    const double writing = best([&] { seen += writeWorkbook(workbook).size(); });
    std::printf("16 bores, %zu readings, %zu bytes: read %.3f ms, compute %.3f ms, write %.3f ms\n",
                workbook.surveys[0].readings.size(), bytes.size(), reading, computing, writing);
    EXPECT_GT(seen, 0U);
    EXPECT_EQ(workbook.surveys[0].readings.size(), 160U);
}

} // namespace
} // namespace borewright
