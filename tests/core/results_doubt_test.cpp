// SPDX-License-Identifier: GPL-3.0-or-later
// How the doubt is said: in words, in the customer's sentences, in the files for other programs.
#include "core/results/doubt_words.h"
#include "core/results/results_file.h"
#include "tests/support/blocks.h"
#include "tests/support/demo_scenarios.h"
#include "tests/support/doubted_blocks.h"
#include "tests/support/honed_block.h"
#include "tests/support/schema_validator.h"

#include <algorithm>
#include <array>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;
const DisplayUnits inch = DisplayUnits::inch();

TEST(DoubtWords, ADoubtIsNeverRoundedDown) {
    EXPECT_EQ(upward(thou("0.26"), inch), "0.3");
    EXPECT_EQ(upward(thou("0.3"), inch), "0.3") << "what is exact stays";
    EXPECT_EQ(upward(thou("0.2601"), inch, 1), "0.27");
    EXPECT_EQ(upward(thou("0.26"), DisplayUnits::metric()), "7") << "0.26 thou is 6.604 µm";
}

TEST(DoubtWords, BothSidesAreSaidOnlyWhereTheyDiffer) {
    EXPECT_EQ(aroundText({thou("0.26"), thou("0.29")}, inch), "±0.3") << "alike as shown";
    EXPECT_EQ(aroundText({thou("0.6"), thou("0.3")}, inch), "+0.3 −0.6");
    EXPECT_EQ(aroundText({Length(), thou("0.3")}, inch), "+0.3 −0.0");
    EXPECT_EQ(aroundWords({thou("0.26"), thou("0.26")}, inch), "± 0.26 thou");
}

TEST(DoubtWords, ChancesAreSaidAsPeopleCount) {
    const std::pair<double, const char*> cases[] = {{0.025, "1 chance in 40"},
                                                    {0.05, "1 chance in 20"},
                                                    {0.1, "1 chance in 10"},
                                                    {0.31, "1 chance in 3"},
                                                    {0.5, "5 chances in 10"},
                                                    {0.72, "7 chances in 10"},
                                                    {0.97, "97 chances in 100"},
                                                    {0.0074, "1 chance in 140"},
                                                    {0.0002, "less than 1 chance in 1000"},
                                                    {0.9999, "more than 999 chances in 1000"}};
    for (const auto& [chance, words] : cases)
        EXPECT_EQ(chanceWords(chance), words) << chance;
}

TEST(DoubtWords, TheRuleIsNamedWithItsRisk) {
    EXPECT_EQ(ruleWords({DecisionRule::Kind::plain}), "plain comparison");
    EXPECT_EQ(ruleWords({DecisionRule::Kind::fivePercent}), "5 % risk");
    EXPECT_EQ(ruleWords({DecisionRule::Kind::twoAndHalfPercent}), "2.5 % risk");
    EXPECT_EQ(ruleWords({DecisionRule::Kind::own, 0.5}), "0.5 % risk");
}

TEST(DoubtWords, AHeadSaysWhatIsKeptFromALimitOrThatNothingIs) {
    Workbook workbook = wellKnownBlock();
    const SurveyResult known = compute(workbook, inch).surveys[0];
    const std::string called = calledWords(known, inch);
    EXPECT_EQ(called.substr(0, 25), "Called with 5 % risk: 0.2") << called;
    EXPECT_NE(called.find("thou kept from a size limit, 0.2"), std::string::npos) << called;
    EXPECT_EQ(trustWords(known.doubts.budget, inch).substr(0, 19), "One diameter ± 0.2")
        << trustWords(known.doubts.budget, inch);
    workbook.limitSets[0].decision.kind = DecisionRule::Kind::plain;
    EXPECT_EQ(calledWords(compute(workbook, inch).surveys[0], inch).substr(0, 16),
              "Plain comparison");
    workbook.surveys[0].header.gauge.gear = {};
    const SurveyResult unknown = compute(workbook, inch).surveys[0];
    EXPECT_EQ(calledWords(unknown, inch), "Doubt not known: values compared as they stand.");
    EXPECT_EQ(trustWords(unknown.doubts.budget, inch),
              "How far a figure may be off is not known: not entered is the gauge's repeatability "
              "and the doubt of the master.");
}

TEST(DoubtWords, FiguresHaveTheirDoubtOnlyWhereItIsKnown) {
    Workbook workbook = wellKnownBlock();
    const SurveyResult known = compute(workbook, inch).surveys[0];
    const BoreResult& bore = known.bores[0];
    ASSERT_TRUE(around(bore, Quality::largestSize));
    EXPECT_GT(around(bore, Quality::largestSize)->above, thou("0.2"));
    ASSERT_TRUE(aroundStraightness(bore));
    EXPECT_LE(aroundStraightness(bore)->below, *bore.straightness) << "a difference begins at 0";
    ASSERT_TRUE(aroundMean(bore, known.doubts.budget));
    EXPECT_LT(aroundMean(bore, known.doubts.budget)->above, wholeOfOne(known.doubts.budget))
        << "a mean of ten is known better than one reading";
    ASSERT_TRUE(aroundLead(bore, known.doubts.budget));
    workbook.surveys[0].header.gauge.gear = {};
    const SurveyResult unknown = compute(workbook, inch).surveys[0];
    EXPECT_FALSE(around(unknown.bores[0], Quality::largestSize));
    EXPECT_FALSE(aroundStraightness(unknown.bores[0]));
    EXPECT_FALSE(aroundMean(unknown.bores[0], unknown.doubts.budget));
    EXPECT_FALSE(aroundLead(unknown.bores[0], unknown.doubts.budget));
}

TEST(SummarySentences, NameWhatIsTooCloseAndIncludeTheDoubt) {
    const Results results = compute(wellKnownBlock(), inch);
    ASSERT_EQ(results.summary.size(), 2U);
    EXPECT_EQ(results.summary[0],
              "Cylinder 1 was worn past its limit; cylinder 2 was too close to call on taper.");
    const std::string& last = results.summary[1];
    EXPECT_EQ(last.substr(0, 66),
              "All six cylinders were taken 0.020 in over and are straight within")
        << last;
    EXPECT_NE(last.find(" thou, the gauge's doubt included."), std::string::npos) << last;
    EXPECT_NE(last.find("Cylinder 5 is too close to call on largest size."), std::string::npos)
        << last;
    // The claim is the upper end, not what was read.
    Length most;
    for (const BoreResult& bore : results.surveys[1].bores)
        most = std::max(most, *bore.straightness + aroundStraightness(bore)->above);
    EXPECT_GT(most, thou("0.25"));
}

// One of a kind for every property of the schema: known and unknown doubts, honing, slips.
std::vector<Workbook> manyWorkbooks() {
    std::vector<Workbook> all{
        demo::saltmarsh(),   demo::rushmere(), demo::withoutDoubt(demo::saltmarsh()),
        emptyWorkbook(),     wellKnownBlock(), warmBlock(),
        measuredHonedBlock()};
    Workbook slip = wellKnownBlock();
    for (Reading& reading : slip.surveys[0].readings)
        if (reading.station == Station{6, in("2"), "A"}) reading.typed = typedThou("-7.2");
    slip.surveys[0].header.gauge.gear.repeatabilityFreedom = 9;
    slip.surveys[0].header.plate = true;
    all.push_back(slip);
    Workbook finished = measuredHonedBlock();
    finished.hone.passes.push_back(finished.hone.passes[0]);
    finished.hone.passes.back().id = "h4";
    finished.hone.passes.back().stone = "k3";
    all.push_back(finished);
    // Sizes and fits that cannot be had: a bore never read, a piston without its height, one too
    // large, too few of them.
    Workbook lacking = demo::saltmarsh();
    for (Survey& survey : lacking.surveys)
        std::erase_if(survey.readings,
                      [](const Reading& reading) { return reading.station.bore == 1; });
    lacking.fit.pistons[0].bore = 1;
    lacking.fit.pistons[1].bore = 2;
    lacking.fit.pistons[1].size = typedIn("3.4500");
    lacking.fit.pistons[2].height.reset();
    all.push_back(lacking);
    lacking.surveys.resize(1);
    lacking.fit.clearance = {};
    all.push_back(lacking);
    return all;
}

// Parts of the schema that 'borewright plan' writes: tests/core/results_honing_test.cpp.
bool isOfThePlan(const std::string& property) {
    return std::ranges::any_of(
        std::array{"honePlan/", "honedBore/", "honeWindow/", "honeProfile/", "learnedStone/"},
        [&](const char* part) { return property.starts_with(part); });
}

TEST(ResultsSchema, DescribesAllThatIsWrittenAndNothingElse) {
    const Json schema = loadSchema("results");
    SchemaValidator validator(schema);
    for (const Workbook& workbook : manyWorkbooks()) {
        const DisplayUnits units = naturalUnits(workbook);
        validator.check(Json::parse(resultsJson(workbook, compute(workbook, units), {})), schema,
                        "results");
    }
    EXPECT_EQ(validator.problems, std::set<std::string>());
    std::set<std::string> unseen;
    for (const std::string& property : propertiesOf(schema, "results"))
        if (!validator.seen.contains(property) && !isOfThePlan(property)) unseen.insert(property);
    EXPECT_EQ(unseen, std::set<std::string>{"station/refused"}) << "written by no workbook here";
}

TEST(ResultsFiles, TheCsvHasTheDoubtInItsColumns) {
    const Workbook workbook = wellKnownBlock();
    const std::string csv = resultsCsv(workbook, compute(workbook, inch), {"s1"}, inch);
    const auto lineAt = [&](int number) {
        std::size_t from = 0;
        for (int i = 0; i < number; ++i)
            from = csv.find("\r\n", from) + 2;
        return csv.substr(from, csv.find("\r\n", from) - from);
    };
    const std::string head = lineAt(0);
    for (const char* column : {"largest below (thou)", "taper above (thou)", "taper chance wrong",
                               "taper by the gauge alone (thou)", "shape", "rule", "settles"})
        EXPECT_NE(head.find(column), std::string::npos) << column << " is not in " << head;
    EXPECT_NE(lineAt(3).find(",V,"), std::string::npos) << lineAt(3);
    EXPECT_NE(lineAt(2).find("5 % risk"), std::string::npos) << lineAt(2);
    EXPECT_NE(lineAt(2).find("would settle it"), std::string::npos) << lineAt(2);
}

TEST(ResultsFiles, ANameIsNoFormulaForASpreadsheetAndAMinusStaysANumber) {
    Workbook workbook = wellKnownBlock();
    workbook.surveys[0].header.name = "=HYPERLINK(\"x\")";
    const std::string csv = resultsCsv(workbook, compute(workbook, inch), {"s1"}, inch);
    EXPECT_NE(csv.find("\r\n\"'=HYPERLINK(\"\"x\"\")\","), std::string::npos) << csv;
    EXPECT_EQ(csv.find("\"=HYPERLINK"), std::string::npos) << "a spreadsheet would run it";
    EXPECT_EQ(csv.find("'-"), std::string::npos) << "a negative number became a text";
}

} // namespace
} // namespace borewright
