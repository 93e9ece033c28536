// SPDX-License-Identifier: GPL-3.0-or-later
// The straight line against published fits. The source stands beside each.
#include "core/statistics/distributions.h"
#include "core/statistics/line.h"
#include "tests/support/printed.h"

#include <vector>

namespace borewright {
namespace {

using namespace test;

std::vector<LinePoint> paired(const std::vector<double>& x, const std::vector<double>& y) {
    EXPECT_EQ(x.size(), y.size());
    std::vector<LinePoint> points;
    for (std::size_t i = 0; i < x.size(); ++i)
        points.push_back({x[i], y[i]});
    return points;
}

// JCGM 100:2008 (GUM), H.3 (seen): correction of a thermometer against its reading, about 20 °C;
// the longer figures derived.
TEST(GumH3, CalibrationOfAThermometer) {
    std::vector<LinePoint> points = paired(
        {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511},
        {-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160});
    for (LinePoint& point : points)
        point.x -= 20;
    const auto line = fitLine(points, LineDoubt::fromScatter);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(printed(line->intercept, "-.1712", "°C"));
    EXPECT_TRUE(printed(line->uIntercept, ".0029", "°C"));
    EXPECT_TRUE(printed(line->slope, ".00218"));
    EXPECT_TRUE(printed(line->uSlope, ".00067"));
    EXPECT_TRUE(printed(line->correlation(), "-.930"));
    EXPECT_TRUE(printed(line->residualDeviation, ".0035", "°C"));
    EXPECT_EQ(line->freedom, 9);
    const Prediction at30 = predict(*line, 10);
    EXPECT_TRUE(printed(at30.y, "-.1494", "°C"));
    EXPECT_TRUE(printed(at30.u, ".0041", "°C"));
    EXPECT_TRUE(printed(line->intercept, "-.171204"));
    EXPECT_TRUE(printed(line->slope, ".00218270"));
    EXPECT_TRUE(printed(line->correlation(), "-.93043"));
    EXPECT_TRUE(printed(line->residualDeviation, ".00349756"));
    EXPECT_TRUE(printed(at30.y, "-.149377"));
    EXPECT_TRUE(printed(at30.u, ".0041386"));
}

// NIST StRD NoInt1 and NoInt2 (seen), through the origin.
TEST(NistStRD, NoInt1) {
    std::vector<LinePoint> points;
    for (int i = 0; i <= 10; ++i)
        points.push_back({60.0 + i, 130.0 + i});
    const auto line = fitLineThroughOrigin(points, LineDoubt::fromScatter);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(certified(line->slope, 2.07438016528926, 14));
    EXPECT_TRUE(certified(line->uSlope, 0.0165289256198347, 14));
    EXPECT_TRUE(certified(line->residualDeviation, 3.56753034006338, 14));
}

TEST(NistStRD, NoInt2) {
    const auto line = fitLineThroughOrigin(paired({4, 5, 6}, {3, 4, 4}), LineDoubt::fromScatter);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(certified(line->slope, 0.727272727272727, 14));
    EXPECT_TRUE(certified(line->uSlope, 0.0420827318078433, 14));
    EXPECT_TRUE(certified(line->residualDeviation, 0.369274472937998, 14));
}

// NIST StRD Norris (seen): ozone monitors, 36 pairs.
TEST(NistStRD, Norris) {
    const auto line = fitLine(
        paired({0.2, 337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
                0.6, 775.5, 666.9, 338.0, 447.5, 11.6,  556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
                0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5},
               {0.1, 338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
                0.1, 778.1, 668.8, 339.3, 448.9, 10.8,  557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
                0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2}),
        LineDoubt::fromScatter);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(certified(line->intercept, -0.262323073774029, 12));
    EXPECT_TRUE(certified(line->uIntercept, 0.232818234301152, 13));
    EXPECT_TRUE(certified(line->slope, 1.00211681802045, 14));
    EXPECT_TRUE(certified(line->uSlope, 0.429796848199937e-3, 13));
    EXPECT_TRUE(certified(line->chiSquare, 26.6173985294224, 13));
}

// ISO/TS 28037:2010, clause 6 (values from memory, recomputed).
TEST(Iso28037, EqualUncertainties) {
    const auto line = fitLine(
        std::vector<LinePoint>{
            {1, 3.3, .5}, {2, 5.6, .5}, {3, 7.1, .5}, {4, 9.3, .5}, {5, 10.7, .5}, {6, 12.1, .5}},
        LineDoubt::known);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(printed(line->intercept, "1.867"));
    EXPECT_TRUE(printed(line->uIntercept, ".465"));
    EXPECT_TRUE(printed(line->slope, "1.757"));
    EXPECT_TRUE(printed(line->uSlope, ".120"));
    EXPECT_TRUE(printed(line->covariance, "-.050"));
    EXPECT_TRUE(printed(line->chiSquare, "1.665"));
}

TEST(Iso28037, UnequalUncertainties) {
    const auto line = fitLine(
        std::vector<LinePoint>{
            {1, 3.2, .5}, {2, 4.3, .5}, {3, 7.6, .5}, {4, 8.6, 1}, {5, 11.7, 1}, {6, 12.8, 1}},
        LineDoubt::known);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(printed(line->intercept, ".885"));
    EXPECT_TRUE(printed(line->uIntercept, ".530"));
    EXPECT_TRUE(printed(line->slope, "2.057"));
    EXPECT_TRUE(printed(line->uSlope, ".178"));
    EXPECT_TRUE(printed(line->covariance, "-.082"));
    EXPECT_TRUE(printed(line->chiSquare, "4.131"));
    EXPECT_EQ(line->freedom, 4);
    EXPECT_TRUE(printed(chiSquareQuantile(0.95, line->freedom), "9.488"));
    EXPECT_GT(chiSquareAbove(line->chiSquare, line->freedom), 0.05) << "the line fits";
}

} // namespace
} // namespace borewright
