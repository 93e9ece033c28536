// SPDX-License-Identifier: GPL-3.0-or-later
// Readings as a table: nothing is ever off by a factor, whatever unit, separator and locale; a
// wrong row is named by its line.
#include "core/storage/readings_csv.h"

#include "core/storage/workbook_file.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/random_workbook.h"

#include <algorithm>
#include <clocale>
#include <cstdio>
#include <gtest/gtest.h>
#include <locale>

namespace borewright {
namespace {

const Timestamp now{1'774'000'000, 60};

std::vector<std::string> messages(const CsvReadings& read) {
    std::vector<std::string> all;
    for (const Error& error : read.errors)
        all.push_back(error.message());
    return all;
}

// Fields the table has no column for.
std::vector<Reading> withoutUnknown(std::vector<Reading> readings) {
    for (Reading& reading : readings) {
        reading.unknown.clear();
        if (reading.struck) reading.struck->unknown.clear();
    }
    return readings;
}

void expectThroughTable(const Workbook& workbook, const Survey& survey) {
    if (survey.readings.empty()) return;
    for (const char separator : {',', ';', '\t'}) {
        const std::string table = writeReadingsCsv(workbook, survey, separator);
        const CsvReadings read = readReadingsCsv(table, workbook, now);
        ASSERT_EQ(messages(read), std::vector<std::string>{}) << table;
        EXPECT_TRUE(read.readings == withoutUnknown(survey.readings)) << table;
    }
}

TEST(ReadingsCsv, DemonstrationsComeBackEqual) {
    for (const Workbook& workbook : {demo::saltmarsh(), demo::rushmere()})
        for (const Survey& survey : workbook.surveys)
            expectThroughTable(workbook, survey);
}

TEST(ReadingsCsv, RandomReadingsComeBackEqual) {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Workbook workbook = test::randomWorkbook(seed);
        // Random depths may lie below a random bore, which a table may not say.
        for (Bore& bore : workbook.block.bores)
            bore.depth = test::typedMm("400");
        for (const Survey& survey : workbook.surveys)
            expectThroughTable(workbook, survey);
        if (testing::Test::HasFailure()) return;
    }
}

// How six countries write 1234567.5; as a facet, since a machine may have no locale but "C".
struct Punctuation {
    const char* locale;
    char point;
    char thousands;
    const char* grouping;
};
const Punctuation punctuations[] = {
    {"C", '.', ',', ""},
    {"en_GB.UTF-8", '.', ',', "\3"},
    {"de_DE.UTF-8", ',', '.', "\3"},
    {"de_CH.UTF-8", '.', '\'', "\3"},
    {"fr_FR.UTF-8", ',', ' ', "\3"},
    {"en_IN.UTF-8", '.', ',', "\3\2"},
};
class Numbers final : public std::numpunct<char> {
public:
    explicit Numbers(const Punctuation& own)
        : m_own(own) {}

private:
    char do_decimal_point() const override { return m_own.point; }
    char do_thousands_sep() const override { return m_own.thousands; }
    std::string do_grouping() const override { return m_own.grouping; }
    Punctuation m_own;
};

// The value of "12.5" in each unit, exactly: 1 in = 25.4 mm (international yard and pound
// agreement, 1959).
TEST(ReadingsCsv, NothingIsOffByAFactorInAnyLocaleUnitOrSeparator) {
    const Workbook workbook = test::inchBlock(1);
    int cases = 0, locales = 0;
    const std::locale before;
    for (const Punctuation& own : punctuations) {
        std::locale::global(std::locale(before, new Numbers(own)));
        std::setlocale(LC_ALL, own.locale); // where this machine has it
        ++locales;
        for (const Unit unit : allUnits) {
            const std::int64_t exact = picometresPer(unit) / 2 * 25;
            for (const char* typed : {"12.5", "12,5", "+12.50", "\"12,500\""})
                for (const char separator : {',', ';', '\t'}) {
                    std::string text = typed;
                    if (separator == ',' && text.find(',') != std::string::npos &&
                        text.front() != '"')
                        text = '"' + text + '"';
                    const std::string s(1, separator);
                    const std::string table = "Unit" + s + "Reading" + s + "Axis" + s + "Depth" +
                                              s + "Bore\r\n" + std::string(key(unit)) + s + text +
                                              s + "A" + s + "0.5" + s + "1\r\n";
                    const CsvReadings read = readReadingsCsv(table, workbook, now);
                    ASSERT_EQ(messages(read), std::vector<std::string>{}) << table;
                    ASSERT_EQ(read.readings.size(), 1U) << table;
                    EXPECT_EQ(read.readings[0].typed.value(), Length::fromPicometres(exact))
                        << table;
                    Workbook kept = workbook;
                    const std::string id = test::addSurvey(kept, SurveyKind::asFound, "found");
                    findSurvey(kept, id)->readings = read.readings;
                    const auto back = readWorkbook(writeWorkbook(kept));
                    ASSERT_TRUE(back) << back.error().message();
                    EXPECT_TRUE(*back == kept) << table;
                    ++cases;
                }
        }
    }
    std::locale::global(before);
    std::setlocale(LC_ALL, "C");
    std::printf("%d tables in %d locales\n", cases, locales);
    EXPECT_EQ(locales, 6);
}

TEST(ReadingsCsv, TakesWhatSpreadsheetsWrite) {
    const Workbook workbook = test::inchBlock(2);
    const std::string table = "\xEF\xBB\xBF"
                              "reading;bore; DEPTH ;axis;unit;remark\r\n"
                              "-1,5;2;\"0,5\";b;thou;\"a \"\"fine\"\" one;\r\nover two lines\"\r\n"
                              ";;;;;\r\n"
                              "3.5015 in;1;12.7 mm;A;;";
    const CsvReadings read = readReadingsCsv(table, workbook, now);
    ASSERT_EQ(messages(read), std::vector<std::string>{});
    ASSERT_EQ(read.readings.size(), 2U);
    EXPECT_EQ(read.readings[0].station, (Station{2, test::in("0.5"), "B"}));
    EXPECT_EQ(read.readings[0].typed, test::typedThou("-1,5"));
    EXPECT_EQ(read.readings[0].time, now);
    EXPECT_EQ(read.readings[1].station, (Station{1, test::in("0.5"), "A"}));
    EXPECT_EQ(read.readings[1].typed, test::typedIn("3.5015"));
}

struct WrongTable {
    const char* table;
    const char* message;
};

TEST(ReadingsCsv, NamesAWrongRowByItsLine) {
    const Workbook workbook = test::inchBlock(1);
    const std::string head = "bore,depth,axis,unit,reading\n";
    const WrongTable wrong[] = {
        {"9,0.5,A,thou,1", "line 2: bore: there is no bore 9"},
        {"one,0.5,A,thou,1", "line 2: bore: 'one' is not a number"},
        {"1,6o,A,thou,1", "line 2: depth: '6o' is not a number with a unit this program knows"},
        {"1,-0.5,A,thou,1", "line 2: depth: depths run from the open end and are never below zero"},
        {"1,9,A,thou,1", "line 2: depth: 9 in is deeper than bore 1, which is 4.00 in"},
        {"1,0.5,Q,thou,1", "line 2: axis: there is no axis 'Q'"},
        {"1,0.5,A,furlong,1", "line 2: unit: 'furlong' is no unit known here"},
        {"1,0.5,A,,1", "line 2: unit: no unit is given"},
        {"1,0.5,A,thou,", "line 2: reading: nothing was typed"},
        {"1,0.5,A,thou,1.2.3", "line 2: reading: '1.2.3' has two decimal points"},
        {"1,0.5,A,thou,1 mm", "line 2: reading: '1 mm' contradicts the unit beside it"},
        {"1,0.5,A,thou,1,5", "line 2: has 6 fields where the first line has 5: a decimal comma "
                             "needs quotes, or semicolons between the fields"},
        {"1,0.5,A,thou", "line 2: has 4 fields where the first line has 5"},
        {"1,0.5,A,thou,\"1", "line 2: the closing quote is missing"},
    };
    for (const WrongTable& one : wrong) {
        const CsvReadings read = readReadingsCsv(head + one.table + "\n", workbook, now);
        EXPECT_EQ(messages(read), std::vector<std::string>{one.message});
        EXPECT_TRUE(read.readings.empty()) << one.table;
    }
    // The rows around a wrong one are read, so that the user may say to take them.
    const CsvReadings mixed =
        readReadingsCsv(head + "1,0.5,A,thou,1\n\n1,0.5,Z,thou,2\n1,2,B,thou,3\n", workbook, now);
    EXPECT_EQ(messages(mixed), std::vector<std::string>{"line 4: axis: there is no axis 'Z'"});
    EXPECT_EQ(mixed.readings.size(), 2U);
}

TEST(ReadingsCsv, AFileThatIsNoTableIsRefusedWhole) {
    const Workbook workbook = test::inchBlock(1);
    const WrongTable wrong[] = {
        {"", "the file is empty"},
        {"bore,depth,axis,unit,reading\n", "there is no reading in the file"},
        {"hello\n", "line 1: no column is called 'bore': the first line names bore, depth, axis, "
                    "reading, unit"},
        {"bore,bore,depth,axis,unit,reading\n", "line 1: two columns are called 'bore'"},
        {"bore,depth\n\xE4,1\n", "line 2: what stands here is not UTF-8: keep the file as UTF-8 "
                                 "and try again"},
        {"\xFF\xFE", "line 1: the file is in UTF-16: keep it as UTF-8 and try again"},
    };
    for (const WrongTable& one : wrong) {
        const CsvReadings read = readReadingsCsv(one.table, workbook, now);
        EXPECT_EQ(messages(read), std::vector<std::string>{one.message});
    }
    std::string absurd = "bore,depth,axis,unit,reading\n";
    for (int i = 0; i < 10'000; ++i)
        absurd += "x,x,x,x,x\n";
    EXPECT_EQ(readReadingsCsv(absurd, workbook, now).errors.size(), mostCsvErrors + 1);
}

// OWASP's page on CSV injection, from memory: = + - @ tab and carriage return begin a formula.
TEST(ReadingsCsv, FreeTextIsNoFormulaAndNumbersStayNumbers) {
    Workbook workbook = test::inchBlock(1);
    const std::string id = test::addSurvey(workbook, SurveyKind::asFound, "found");
    for (const char* reason : {"=HYPERLINK(\"x\")", "+1", "-1", "@x", "\tx", "'=1", "''", "typo"}) {
        test::type(workbook, id, 1, "0.5", "A", "-1.5");
        findSurvey(workbook, id)->readings.back().struck = Strike{reason, now};
    }
    const Survey& survey = *findSurvey(workbook, id);
    const std::string table = writeReadingsCsv(workbook, survey);
    EXPECT_NE(table.find(",-1.5,thou,"), std::string::npos) << table;
    EXPECT_NE(table.find(",\"'=HYPERLINK(\"\"x\"\")\","), std::string::npos) << table;
    EXPECT_NE(table.find(",'@x,"), std::string::npos) << table;
    EXPECT_NE(table.find(",typo,"), std::string::npos) << table;
    expectThroughTable(workbook, survey);
}

} // namespace
} // namespace borewright
