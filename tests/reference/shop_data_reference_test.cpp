// SPDX-License-Identifier: GPL-3.0-or-later
// Real bores, rings and bore gauges out of the literature. The source stands beside each; what the
// source does not print is derived from its data.
#include "core/statistics/anova.h"
#include "core/statistics/coverage.h"
#include "core/statistics/outliers.h"
#include "tests/support/printed.h"

#include <algorithm>
#include <vector>

namespace borewright {
namespace {

using namespace test;
using Groups = std::vector<std::vector<double>>;

// Factors of control charts for groups of five (seen): limits of the mean and of the range.
constexpr double a2 = 0.577;
constexpr double d4 = 2.114;

struct Chart {
    double mean = 0;      // of all
    double meanRange = 0; // of the groups
    [[nodiscard]] double upper() const { return mean + a2 * meanRange; }
    [[nodiscard]] double lower() const { return mean - a2 * meanRange; }
    [[nodiscard]] double rangeLimit() const { return d4 * meanRange; }
};

double rangeOf(const std::vector<double>& group) {
    const auto [low, high] = std::ranges::minmax(group);
    return high - low;
}

// The chart in mm, of groups in µm over a nominal size in mm.
Chart chartOf(const Groups& groups, double nominal_mm) {
    std::vector<double> means;
    std::vector<double> ranges;
    for (const std::vector<double>& group : groups) {
        means.push_back(spreadOf(group)->mean);
        ranges.push_back(rangeOf(group));
    }
    return {nominal_mm + spreadOf(means)->mean / 1000, spreadOf(ranges)->mean / 1000};
}

// Montgomery, Introduction to Statistical Quality Control: inside diameter of piston rings, µm over
// 74.000 mm (seen).
TEST(PistonRings, AsPublished) {
    const Groups rings{
        {30, 2, 19, -8, 8},    {-5, -8, 1, 11, 4},   {-12, 24, 21, 5, 2},   {2, -4, -7, 15, 9},
        {-8, 7, 15, -11, 14},  {9, -6, -3, -15, -7}, {-5, 6, -6, 0, 5},     {-15, 3, -7, 15, -12},
        {8, -5, 9, 5, 4},      {-2, 0, -10, 7, -5},  {-6, -2, -6, -5, -10}, {4, 0, 7, 0, -4},
        {-17, 2, -2, -3, 12},  {6, -33, -6, 0, -16}, {12, 14, -2, -1, 7},   {0, -16, 5, -2, -4},
        {-6, 12, -14, 5, 7},   {6, 10, 18, 3, 0},    {-16, 2, 3, 5, -3},    {0, 10, 13, 20, 3},
        {-12, 1, 9, 5, -4},    {4, -1, -10, 6, 9},   {10, -11, -10, 9, 14}, {15, 8, -7, 0, 10},
        {-18, -16, -5, 17, 13}};
    const Chart chart = chartOf(rings, 74);
    EXPECT_TRUE(printed(chart.mean, "74.001176", "mm"));
    EXPECT_TRUE(printed(chart.meanRange, "0.02276", "mm"));
    EXPECT_TRUE(printed(chart.upper(), "74.0143", "mm"));
    EXPECT_TRUE(printed(chart.lower(), "73.9880", "mm"));
    EXPECT_TRUE(printed(chart.rangeLimit(), "0.0481", "mm"));
    // Mean range over d2 = 2.326 and the analysis of variance tell the same spread within a ring
    // group (derived; two estimators, 25 groups).
    const double byRange_um = 1000 * chart.meanRange / 2.326;
    EXPECT_TRUE(near(std::sqrt(oneWay(rings)->withinVariance), byRange_um, 0.5, "µm"));
}

// Wooluru, Swamy & Nagesh, Int. J. Quality Research 8(3) (2014) 399, R data
// PH1XBAR::bore_diameter_data (GPL-3, seen): bores of 205 mm, µm over nominal. Figures derived.
TEST(RealBores, BoringOfDriverGears) {
    const Groups bores{
        {30, 20, 10, 45, 10}, {10, 20, 25, 30, 10}, {10, 30, 50, 30, 20}, {30, 20, 30, 40, 35},
        {40, 35, 30, 30, 35}, {30, 30, 25, 30, 35}, {25, 25, 25, 25, 25}, {15, 20, 25, 10, 20},
        {25, 30, 40, 10, 10}, {25, 25, 20, 10, 20}, {10, 5, 30, 40, 40},  {30, 20, 30, 30, 30},
        {30, 40, 30, 40, 30}, {30, 40, 30, 30, 25}, {10, 10, 20, 40, 50}, {35, 40, 37, 42, 40},
        {45, 38, 45, 33, 30}, {40, 30, 25, 25, 20}, {30, 25, 30, 30, 35}, {40, 35, 30, 30, 20}};
    const Chart chart = chartOf(bores, 205);
    EXPECT_TRUE(printed(chart.mean, "205.02805", "mm"));
    EXPECT_TRUE(printed(chart.meanRange, ".01885", "mm"));
    EXPECT_TRUE(printed(chart.upper(), "205.03893", "mm"));
    EXPECT_TRUE(printed(chart.lower(), "205.01717", "mm"));
    EXPECT_TRUE(printed(chart.rangeLimit(), ".03985", "mm"));
    for (std::size_t row = 0; row < bores.size(); ++row)
        EXPECT_EQ(rangeOf(bores[row]) / 1000 > chart.rangeLimit(), row == 2 || row == 14)
            << "row " << row + 1;
    std::vector<double> all;
    for (const std::vector<double>& group : bores)
        all.insert(all.end(), group.begin(), group.end());
    EXPECT_TRUE(printed(spreadOf(all)->deviation / 1000, ".0100809", "mm"));
    const auto result = oneWay(bores);
    ASSERT_TRUE(result) << result.error().message();
    EXPECT_TRUE(printed(result->betweenSquares / result->betweenFreedom * 1e-6, ".000169639"));
    EXPECT_TRUE(printed(result->withinVariance * 1e-6, ".00008547"));
    EXPECT_TRUE(printed(result->f, "1.98478"));
}

// Vardeman & Jobe 2023, ch. 3 ex. 19, R data BEDCA (CC BY 4.0, seen; its help says "outside",
// doubtful): ten valve sleeves by a dial bore gauge and by an air gauge, 1e-5 in over nominal.
const std::vector<double> dialNotched{130, 160, 170, 310, 200, 130, 200, 150, 200, 140};
const std::vector<double> dialOther{150, 150, 210, 160, 160, 140, 220, 150, 220, 160};
const std::vector<double> airNotched{40, 60, 45, 0, 30, 0, 25, 25, -40, 65};

// Mean difference of pairs, its standard deviation and 95 % interval (derived).
void expectDifference(const std::vector<double>& first, const std::vector<double>& second,
                      const std::vector<const char*>& figures) {
    std::vector<double> differences(first.size());
    std::ranges::transform(first, second, differences.begin(), std::minus<>());
    const auto spread = spreadOf(differences);
    ASSERT_TRUE(spread);
    const double reach = coverageFactor(0.95, spread->count - 1) * spread->deviation /
                         std::sqrt(static_cast<double>(spread->count));
    EXPECT_TRUE(printed(spread->mean, figures[0], "1e-5 in"));
    EXPECT_TRUE(printed(spread->deviation, figures[1], "1e-5 in"));
    EXPECT_TRUE(printed(spread->mean - reach, figures[2], "1e-5 in"));
    EXPECT_TRUE(printed(spread->mean + reach, figures[3], "1e-5 in"));
}

TEST(BoreGauges, DialAgainstAir) {
    expectDifference(dialNotched, airNotched, {"154", "72.984", "101.8", "206.2"});
}

TEST(BoreGauges, NotchedSideAgainstTheOther) {
    expectDifference(dialNotched, dialOther, {"7", "54.782", "-32.2", "46.2"});
}

// Sleeve 4 read 310: one test calls it past 5 % only, the other past 1 % (derived).
TEST(BoreGauges, TheOutlierTestsDisagree) {
    const auto byGrubbs = grubbs(dialNotched);
    const auto byDixon = dixon(dialNotched);
    ASSERT_TRUE(byGrubbs && byDixon);
    EXPECT_EQ(byGrubbs->index, 3U);
    EXPECT_EQ(byDixon->index, 3U);
    EXPECT_TRUE(printed(byGrubbs->statistic, "2.433"));
    EXPECT_GT(byGrubbs->statistic, *grubbsCritical(10, 0.05, Sides::two));
    EXPECT_LT(byGrubbs->statistic, *grubbsCritical(10, 0.01, Sides::two));
    EXPECT_TRUE(printed(byDixon->statistic, ".611"));
    EXPECT_GT(byDixon->statistic, *dixonCritical(10, DixonRisk::onePercent));
}

} // namespace
} // namespace borewright
