// SPDX-License-Identifier: GPL-3.0-or-later
// The weighted line: made points, its doubt against simulation, ends, and refusals.
#include "core/statistics/line.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <limits>
#include <vector>

namespace borewright {
namespace {

using test::certified;
using test::near;
using Points = std::vector<LinePoint>;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

TEST(Line, RunsThroughPointsThatLieOnIt) {
    const auto line = fitLine(Points{{1, 5, 1}, {2, 7, 3}, {4, 11, 0.5}}, LineDoubt::known);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(near(line->intercept, 3, 1e-12));
    EXPECT_TRUE(near(line->slope, 2, 1e-12));
    EXPECT_TRUE(near(line->chiSquare, 0, 1e-12));
    EXPECT_EQ(line->freedom, 1);
}

TEST(Line, OfTwoPointsHasItsDoubtButNoScatter) {
    const auto line = fitLine(Points{{0, 1, 0.3}, {2, 5, 0.4}}, LineDoubt::known);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(near(line->slope, 2, 1e-12));
    EXPECT_TRUE(near(line->uSlope, 0.25, 1e-12)); // √(0.3² + 0.4²)/2
    EXPECT_TRUE(near(line->uIntercept, 0.3, 1e-12));
    EXPECT_EQ(line->freedom, 0);
    EXPECT_EQ(line->residualDeviation, 0);
    EXPECT_TRUE(near(predict(*line, 2).u, 0.4, 1e-12)) << "as good as the point there";
}

// Far from zero and finely spaced, as depths in picometres would be.
TEST(Line, KeepsItsDigitsFarFromZero) {
    Points points;
    for (int i = 0; i < 9; ++i)
        points.push_back({1e9 + i, 1e9 + 3.0 * i + (i % 2 == 0 ? 0.25 : -0.25)});
    const auto far = fitLine(points, LineDoubt::fromScatter);
    for (LinePoint& point : points) {
        point.x -= 1e9;
        point.y -= 1e9;
    }
    const auto close = fitLine(points, LineDoubt::fromScatter);
    EXPECT_TRUE(certified(far->slope, close->slope, 12));
    EXPECT_TRUE(certified(far->residualDeviation, close->residualDeviation, 12));
    EXPECT_TRUE(certified(predict(*far, 1e9 + 4).u, predict(*close, 4).u, 12));
}

// The doubt stated is the doubt met: 20 000 made lines with unequal known uncertainties.
TEST(Line, StatesTheDoubtThatItMeets) {
    Random random(31);
    Points points{{-1, 0, 0.1}, {0, 0, 0.3}, {2, 0, 0.2}, {3, 0, 0.5}, {7, 0, 0.1}};
    constexpr int lines = 20'000;
    double slopes = 0;
    double intercepts = 0;
    double products = 0;
    double predictions = 0;
    double chiSquares = 0;
    Line last{};
    for (int i = 0; i < lines; ++i) {
        for (LinePoint& point : points)
            point.y = 4 - 2 * point.x + point.u * random.normal();
        last = *fitLine(points, LineDoubt::known);
        slopes += (last.slope + 2) * (last.slope + 2) / lines;
        intercepts += (last.intercept - 4) * (last.intercept - 4) / lines;
        products += (last.slope + 2) * (last.intercept - 4) / lines;
        const double error = predict(last, 5).y - (4 - 2 * 5);
        predictions += error * error / lines;
        chiSquares += last.chiSquare / lines;
    }
    EXPECT_TRUE(near(std::sqrt(slopes) / last.uSlope, 1, 0.025));
    EXPECT_TRUE(near(std::sqrt(intercepts) / last.uIntercept, 1, 0.025));
    EXPECT_TRUE(near(products / last.covariance, 1, 0.06));
    EXPECT_TRUE(near(std::sqrt(predictions) / predict(last, 5).u, 1, 0.025));
    EXPECT_TRUE(near(chiSquares, last.freedom, 0.1));
}

TEST(Line, FromItsScatterDoesNotDependOnTheScaleOfU) {
    const Points points{{1, 2.1, 1}, {2, 3.9, 1}, {3, 6.2, 2}, {4, 7.7, 2}};
    Points finer = points;
    for (LinePoint& point : finer)
        point.u *= 1e-100;
    const auto line = fitLine(points, LineDoubt::fromScatter);
    const auto same = fitLine(finer, LineDoubt::known);
    EXPECT_TRUE(certified(same->slope, line->slope, 12));
    EXPECT_TRUE(near(line->uSlope / same->uSlope / 1e100, line->residualDeviation, 1e-12));
}

TEST(Line, TellsItsCorrelation) {
    const auto line = fitLine(Points{{1, 1, 1}, {2, 2, 1}, {3, 4, 1}}, LineDoubt::known);
    EXPECT_TRUE(near(line->correlation(), -2 / std::sqrt(14.0 / 3), 1e-12)); // −x̄/√mean x²
    EXPECT_EQ(fitLineThroughOrigin(Points{{1, 1, 1}}, LineDoubt::known)->correlation(), 0);
}

TEST(Line, ThroughTheOriginIsCertainThere) {
    const auto line = fitLineThroughOrigin(Points{{2, 6, 0.2}, {-1, -3, 0.1}}, LineDoubt::known);
    ASSERT_TRUE(line) << line.error().message();
    EXPECT_TRUE(near(line->slope, 3, 1e-12));
    EXPECT_EQ(predict(*line, 0).y, 0);
    EXPECT_EQ(predict(*line, 0).u, 0);
    EXPECT_TRUE(near(predict(*line, -10).u, 10 * line->uSlope, 1e-12));
}

TEST(Line, RefusesWhatGivesNoLine) {
    for (const Points& bad :
         {Points{}, Points{{1, 2, 1}}, Points{{0.1, 2, 1}, {0.1, 3, 1}, {0.1, 4, 1}},
          Points{{1, 2, 0}, {2, 3, 1}}, Points{{1, 2, -1}, {2, 3, 1}},
          Points{{1, 2, nan}, {2, 3, 1}}, Points{{1, 2, infinity}, {2, 3, 1}},
          Points{{nan, 2, 1}, {2, 3, 1}}, Points{{1, infinity, 1}, {2, 3, 1}},
          Points{{-1e300, 2, 1}, {1e300, 3, 1}}, Points{{1, 2, 1e200}, {2, 3, 1e200}},
          Points{{1, 2, 1e-200}, {2, 3, 1e-200}}}) {
        const auto line = fitLine(bad, LineDoubt::known);
        ASSERT_FALSE(line) << bad.size() << " points";
        EXPECT_FALSE(line.error().what.empty());
    }
    EXPECT_EQ(fitLine(Points{{0.1, 2, 1}, {0.1, 3, 1}}, LineDoubt::known).error().what,
              "a line needs points at two places at least");
    EXPECT_EQ(fitLineThroughOrigin(Points{{0, 1, 1}}, LineDoubt::known).error().what,
              "a line through zero needs a point away from zero");
    EXPECT_FALSE(fitLine(Points{{1, 2, 1}, {2, 3, 1}}, LineDoubt::fromScatter));
    EXPECT_FALSE(fitLineThroughOrigin(Points{}, LineDoubt::known));
    EXPECT_FALSE(fitLineThroughOrigin(Points{{0, 1, 1}, {0, 2, 1}}, LineDoubt::known));
    EXPECT_FALSE(fitLineThroughOrigin(Points{{1, 1, 0}}, LineDoubt::known));
    EXPECT_FALSE(fitLineThroughOrigin(Points{{1e200, 1, 1}}, LineDoubt::known));
    EXPECT_FALSE(fitLineThroughOrigin(Points{{1, 1, 1}}, LineDoubt::fromScatter));
}

} // namespace
} // namespace borewright
