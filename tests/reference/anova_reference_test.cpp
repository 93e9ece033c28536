// SPDX-License-Identifier: GPL-3.0-or-later
// Spread and analysis of variance against published data sets. The source stands beside each.
#include "core/statistics/anova.h"
#include "core/statistics/distributions.h"
#include "tests/support/printed.h"

#include <algorithm>
#include <map>
#include <vector>

namespace borewright {
namespace {

using namespace test;
using Groups = std::vector<std::vector<double>>;

// JCGM 100:2008 (GUM), H.5 (seen): ten days × five values, of which the mean over 10 V and the
// standard deviation are printed, µV. Each day is made anew with just these two.
TEST(GumH5, VoltageStandardOverTenDays) {
    const std::vector<double> means{172, 116, 13, 144, 106, 31, 60, 125, 163, 41};
    const std::vector<double> deviations{60, 77, 111, 101, 67, 93, 80, 73, 88, 86};
    Groups days;
    for (std::size_t day = 0; day < means.size(); ++day) {
        std::vector<double>& values = days.emplace_back();
        for (const double step : {-2, -1, 0, 1, 2}) // whose standard deviation is √2.5
            values.push_back(means[day] + deviations[day] * step / std::sqrt(2.5));
    }
    const auto spread = spreadOf(means);
    EXPECT_TRUE(printed(spread->mean, "97", "µV"));
    EXPECT_TRUE(printed(spread->deviation, "57", "µV"));
    const auto result = oneWay(days);
    ASSERT_TRUE(result) << result.error().message();
    EXPECT_TRUE(printed(std::sqrt(result->withinVariance), "85", "µV"));
    EXPECT_TRUE(printed(result->f, "2.2615"));
    EXPECT_TRUE(printed(5.0 * 57 * 57 / (85 * 85), "2.25")) << "as printed, from rounded figures";
    EXPECT_EQ(result->betweenFreedom, 9);
    EXPECT_EQ(result->withinFreedom, 40);
    // Derived.
    EXPECT_TRUE(printed(fQuantile(0.95, 9, 40), "2.124"));
    EXPECT_TRUE(printed(fQuantile(0.975, 9, 40), "2.452"));
    EXPECT_LT(result->chance, 0.05);
    EXPECT_GT(result->chance, 0.025);
    EXPECT_TRUE(printed(std::sqrt(result->betweenVariance), "42.6", "µV"));
    EXPECT_TRUE(printed(spread->deviation / std::sqrt(10.0), "18.05", "µV"));
}

// NIST StRD NumAcc3 (seen): standard deviation exactly 0.1. The data as doubles hold ten digits of
// it; Σx² − n·mean² would give about 0.0987.
TEST(NistStRD, NumAcc3) {
    std::vector<double> values{1000000.2};
    for (int i = 0; i < 500; ++i)
        values.insert(values.end(), {1000000.1, 1000000.3});
    const auto spread = spreadOf(values);
    EXPECT_TRUE(certified(spread->mean, 1000000.2, 15));
    EXPECT_TRUE(certified(spread->deviation, 0.1, 9));
}

// NIST StRD SiRstv (data seen; certified values from memory, recomputed): resistivity of a wafer on
// five instruments.
TEST(NistStRD, SiRstv) {
    Groups instruments{{3052, 1240, 1890, 2569, 3403},
                       {3042, 3825, 1669, 3257, 422},
                       {1303, 2005, 2889, 343, 1811},
                       {2795, 1748, 1494, 1485, -115},
                       {2119, 1051, 1850, 52, 2090}};
    for (std::vector<double>& instrument : instruments)
        for (double& value : instrument)
            value = 196 + value * 1e-4;
    const auto result = oneWay(instruments);
    ASSERT_TRUE(result) << result.error().message();
    EXPECT_TRUE(certified(result->betweenSquares, 0.0511462616, 9));
    EXPECT_TRUE(certified(result->withinSquares, 0.216636560, 9));
    EXPECT_TRUE(certified(result->f, 1.18046237440255, 11));
    EXPECT_TRUE(certified(std::sqrt(result->withinVariance), 0.104076068334656, 11));
}

// NIST StRD SmLs01 and SmLs04 (certified values from memory, recomputed): nine groups of 21.
Groups smLs(double origin) {
    Groups groups;
    for (const double m : {1.4, 1.3, 1.5, 1.3, 1.5, 1.3, 1.5, 1.3, 1.5}) {
        std::vector<double>& values = groups.emplace_back();
        values.push_back(origin + m);
        for (int i = 0; i < 10; ++i)
            values.insert(values.end(), {origin + m - 0.1, origin + m + 0.1});
    }
    return groups;
}

TEST(NistStRD, SmLs) {
    // A million in front leaves nine or ten digits of the data's own differences.
    for (const auto& [origin, digits] : {std::pair{0.0, 14}, {1e6, 9}}) {
        const auto result = oneWay(smLs(origin));
        ASSERT_TRUE(result) << result.error().message();
        EXPECT_TRUE(certified(result->betweenSquares, 1.68, digits)) << "over " << origin;
        EXPECT_TRUE(certified(result->withinSquares, 1.80, digits)) << "over " << origin;
        EXPECT_TRUE(certified(result->f, 21, digits)) << "over " << origin;
    }
}

// Dyestuff2, Debian package r-cran-lme4 (GPL ≥ 2, seen): six groups of five whose variance between
// groups comes out below zero.
TEST(Dyestuff2, ANegativeVarianceIsNone) {
    const auto result = oneWay(Groups{{7.298, 3.846, 2.434, 9.566, 7.990},
                                      {5.220, 6.556, .608, 11.788, -.892},
                                      {.110, 10.386, 13.434, 5.510, 8.166},
                                      {2.212, 4.852, 7.092, 9.288, 4.980},
                                      {.282, 9.014, 4.458, 9.446, 7.198},
                                      {1.722, 4.782, 8.106, .758, 3.758}});
    ASSERT_TRUE(result) << result.error().message();
    const double between = result->betweenSquares / result->betweenFreedom;
    EXPECT_TRUE(printed(between, "8.33632576"));
    EXPECT_TRUE(printed(result->withinVariance, "14.9458896"));
    EXPECT_TRUE(printed((between - result->withinVariance) / 5, "-1.3219"));
    EXPECT_EQ(result->betweenVariance, 0);
    EXPECT_TRUE(result->betweenWasNegative);
}

// AIAG, Measurement Systems Analysis, 4th ed., worked example (seen): appraisers A, B, C, three
// trials each, ten parts. Here [appraiser][trial][part].
const std::vector<Groups> trials{{{.29, -.56, 1.34, .47, -.80, .02, .59, -.31, 2.26, -1.36},
                                  {.41, -.68, 1.17, .50, -.92, -.11, .75, -.20, 1.99, -1.25},
                                  {.64, -.58, 1.27, .64, -.84, -.21, .66, -.17, 2.01, -1.31}},
                                 {{.08, -.47, 1.19, .01, -.56, -.20, .47, -.63, 1.80, -1.68},
                                  {.25, -1.22, .94, 1.03, -1.20, .22, .55, .08, 2.12, -1.62},
                                  {.07, -.68, 1.34, .20, -1.28, .06, .83, -.34, 2.19, -1.50}},
                                 {{.04, -1.38, .88, .14, -1.46, -.29, .02, -.46, 1.77, -1.49},
                                  {-.11, -1.13, 1.09, .20, -1.07, -.67, .01, -.56, 1.45, -1.77},
                                  {-.15, -.96, .67, .11, -1.45, -.49, .21, -.49, 1.87, -2.16}}};

// The same as [appraiser][part][trial].
std::vector<Groups> study() {
    std::vector<Groups> cells;
    for (const Groups& appraiser : trials) {
        Groups& parts = cells.emplace_back();
        for (std::size_t part = 0; part < appraiser.front().size(); ++part)
            parts.push_back({appraiser[0][part], appraiser[1][part], appraiser[2][part]});
    }
    return cells;
}

// Analysis of variance of the example (derived).
TEST(Aiag, SquaresOfTheExample) {
    const auto t = twoWay(study(), Interaction::pooled);
    ASSERT_TRUE(t) << t.error().message();
    EXPECT_TRUE(printed(t->spotSquares, "88.36193"));
    EXPECT_TRUE(printed(t->personSquares, "3.16726"));
    EXPECT_TRUE(printed(t->interactionSquares, ".35898"));
    EXPECT_TRUE(printed(t->errorSquares, "2.75893"));
    EXPECT_TRUE(printed(t->totalSquares, "94.64711"));
    EXPECT_EQ(t->spotFreedom, 9);
    EXPECT_EQ(t->personFreedom, 2);
    EXPECT_EQ(t->interactionFreedom, 18);
    EXPECT_EQ(t->errorFreedom, 60);
    EXPECT_EQ(t->totalFreedom, 89);
    EXPECT_TRUE(printed(t->interactionF, ".434"));
}

TEST(Aiag, PooledSharesOfTheExample) {
    const auto t = twoWay(study(), Interaction::pooled);
    ASSERT_TRUE(t->interactionPooled);
    EXPECT_EQ(t->repeatabilityFreedom, 78);
    const double both = t->repeatabilityVariance + t->personVariance;
    EXPECT_TRUE(printed(std::sqrt(t->repeatabilityVariance), ".19993"));
    EXPECT_TRUE(printed(std::sqrt(t->personVariance), ".22684"));
    EXPECT_TRUE(printed(std::sqrt(both), ".30237"));
    EXPECT_TRUE(printed(std::sqrt(t->spotVariance), "1.04233"));
    EXPECT_TRUE(printed(std::sqrt(both + t->spotVariance), "1.08530"));
    EXPECT_TRUE(printed(1.41 * std::sqrt(t->spotVariance / both), "4.86")) << "categories";
}

TEST(Aiag, SharesOfTheExampleWithItsInteraction) {
    const auto t = twoWay(study(), Interaction::kept);
    EXPECT_TRUE(printed(std::sqrt(t->repeatabilityVariance), ".21443"));
    EXPECT_TRUE(printed(std::sqrt(t->personVariance), ".22830"));
    EXPECT_TRUE(printed(std::sqrt(t->spotVariance), "1.04339"));
    EXPECT_EQ(t->interactionVariance, 0) << "its estimate is below zero";
    EXPECT_TRUE(printed((t->interactionSquares / 18 - t->errorSquares / 60) / 3, "-.00868"));
}

double rangeOf(const std::vector<double>& values) {
    const auto [low, high] = std::ranges::minmax(values);
    return high - low;
}

// The example's own way, by averages and ranges; from the data unrounded (seen). K1 .5908,
// K2 .5231, K3 .3146. Another road to the same shares, within a tenth of the analysis of variance.
TEST(Aiag, AveragesAndRangesOfTheExample) {
    double meanRange = 0;
    std::vector<double> appraisers;
    std::vector<double> parts(10);
    for (const Groups& cells : study()) {
        double mean = 0;
        for (std::size_t part = 0; part < cells.size(); ++part) {
            meanRange += rangeOf(cells[part]) / 30;
            mean += spreadOf(cells[part])->mean / 10;
            parts[part] += spreadOf(cells[part])->mean / 3;
        }
        appraisers.push_back(mean);
    }
    const double repeatability = meanRange * .5908;
    const double difference = rangeOf(appraisers) * .5231;
    const double reproducibility =
        std::sqrt(difference * difference - repeatability * repeatability / 30);
    const double part = rangeOf(parts) * .3146;
    const double both = std::hypot(repeatability, reproducibility);
    EXPECT_TRUE(printed(repeatability, ".20186"));
    EXPECT_TRUE(printed(reproducibility, ".22967"));
    EXPECT_TRUE(printed(both, ".30577"));
    EXPECT_TRUE(printed(part, "1.10460"));
    EXPECT_TRUE(printed(std::hypot(both, part), "1.14613"));
    EXPECT_TRUE(printed(1.41 * part / both, "5.09")) << "categories";
    const auto t = twoWay(study(), Interaction::pooled);
    EXPECT_TRUE(near(std::sqrt(t->repeatabilityVariance) / repeatability, 1, 0.1));
    EXPECT_TRUE(near(std::sqrt(t->personVariance) / reproducibility, 1, 0.1));
    EXPECT_TRUE(near(std::sqrt(t->spotVariance) / part, 1, 0.1));
}

} // namespace
} // namespace borewright
