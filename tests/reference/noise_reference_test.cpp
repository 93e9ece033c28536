// SPDX-License-Identifier: GPL-3.0-or-later
// What noise alone makes of a perfectly straight bore: largest less smallest of normal readings,
// integrated from the normal distribution, and found again with our random numbers.
#include "core/statistics/anova.h"
#include "core/statistics/distributions.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <algorithm>
#include <numbers>
#include <vector>

namespace borewright {
namespace {

using namespace test;

template<class F>
double integral(const F& f) {
    return boost::math::quadrature::gauss_kronrod<double, 61>::integrate(f, -12.0, 12.0, 10, 1e-12);
}

// Mean of largest less smallest of `count` standard normals: ∫ 1 − Φⁿ − (1 − Φ)ⁿ (Tippett 1925).
double meanRange(int count) {
    return integral([count](double z) {
        return 1 - std::pow(normalBelow(z), count) - std::pow(normalBelow(-z), count);
    });
}

// P(largest less smallest > w): 1 − n ∫ φ(z)·(Φ(z + w) − Φ(z))ⁿ⁻¹.
double chanceOfRange(int count, double w) {
    return 1 - count * integral([=](double z) {
                   const double density = std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
                   return density * std::pow(normalBelow(z + w) - normalBelow(z), count - 1);
               });
}

double drawnRange(Random& random, int count) {
    double low = random.normal();
    double high = low;
    for (int i = 1; i < count; ++i) {
        const double z = random.normal();
        low = std::min(low, z);
        high = std::max(high, z);
    }
    return high - low;
}

// The factor d2 of control charts (groups of five seen: Montgomery, Introduction to Statistical
// Quality Control; six readings derived).
TEST(LargestLessSmallest, IsNeverZeroOnAverage) {
    EXPECT_TRUE(printed(meanRange(5), "2.326"));
    EXPECT_TRUE(printed(meanRange(6), "2.534"));
    Random random(6);
    std::vector<double> ranges(1'000'000);
    std::ranges::generate(ranges, [&] { return drawnRange(random, 6); });
    EXPECT_TRUE(near(spreadOf(ranges)->mean, meanRange(6), 0.003));
}

// AIAG's K1 is 1/d2; K2 and K3 are 1/√(d2² + d3²), d3 the standard deviation of the range
// (derived): for one range the root of its mean square.
TEST(LargestLessSmallest, GivesTheFactorsOfAGaugeStudy) {
    EXPECT_TRUE(printed(1 / meanRange(2), ".8862"));
    EXPECT_TRUE(printed(1 / meanRange(3), ".5908"));
    const auto k = [](int count) {
        // E[W²] = ∫ 2w·P(W > w) dw by steps of 1/500 from the middle of each
        double meanSquare = 0;
        for (double w = 0.001; w < 10; w += 0.002)
            meanSquare += 2 * w * chanceOfRange(count, w) * 0.002;
        return 1 / std::sqrt(meanSquare);
    };
    const std::vector<const char*> factors{".7071", ".5231", ".4467", ".4030", ".3742",
                                           ".3534", ".3375", ".3249", ".3146"};
    for (std::size_t i = 0; i < factors.size(); ++i)
        EXPECT_TRUE(printed(k(static_cast<int>(i) + 2), factors[i])) << "of " << i + 2;
}

// Five levels, chance in percent that noise alone shows more than 0.25 thou along one axis, and
// along the worse of two (derived); s is the standard deviation of a reading, in thou.
TEST(StraightBore, LooksTaperedToAPoorGauge) {
    struct Row {
        double s_thou;
        const char* one;
        const char* worse;
    };
    Random random(25);
    for (const Row& row :
         {Row{0.05, "0.4", "0.7"}, Row{0.06, "2.7", "5.3"}, Row{0.08, "17.6", "32.1"},
          Row{0.0898, "28.1", "48.4"}, Row{0.10, "39.3", "63.1"}, Row{0.15, "76.4", "94.4"}}) {
        const double one = chanceOfRange(5, 0.25 / row.s_thou);
        EXPECT_TRUE(printed(100 * one, row.one, "%")) << row.s_thou << " thou";
        EXPECT_TRUE(printed(100 * (1 - (1 - one) * (1 - one)), row.worse, "%"))
            << row.s_thou << " thou";
        int beyond = 0;
        constexpr int bores = 200'000;
        for (int i = 0; i < bores; ++i)
            beyond += row.s_thou * drawnRange(random, 5) > 0.25 ? 1 : 0;
        EXPECT_TRUE(near(beyond / double(bores), one, 0.006)) << row.s_thou << " thou";
    }
}

} // namespace
} // namespace borewright
