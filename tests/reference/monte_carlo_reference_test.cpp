// SPDX-License-Identifier: GPL-3.0-or-later
// Monte Carlo with our own random numbers and intervals against JCGM 101:2008.
#include "core/statistics/anova.h"
#include "core/statistics/interval.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <numbers>
#include <vector>

namespace borewright {
namespace {

using test::printed;

template<class Draw>
std::vector<double> drawn(int trials, const Draw& draw) {
    std::vector<double> values(static_cast<std::size_t>(trials));
    for (double& value : values)
        value = draw();
    return values;
}

double halfWidth(const Interval& interval) {
    return (interval.high - interval.low) / 2;
}

// The additive model of 9.2: four inputs of mean 0 and u = 1 (seen). Five million trials leave
// 0.002 in a half-width.
constexpr int trials = 5'000'000;

TEST(Jcgm101, FourNormals) { // 9.2.2
    Random random(101);
    auto sums = drawn(trials, [&] {
        return random.normal() + random.normal() + random.normal() + random.normal();
    });
    EXPECT_TRUE(printed(spreadOf(sums)->deviation, "2.00"));
    EXPECT_TRUE(printed(halfWidth(symmetricInterval(sums, 0.95)), "3.92"));
}

TEST(Jcgm101, FourRectangulars) { // 9.2.3; exactly 2√3(2 − 0.6^¼) = 3.8794
    Random random(102);
    const auto rectangular = [&] { return std::numbers::sqrt3 * (2 * random.uniform() - 1); };
    auto sums = drawn(
        trials, [&] { return rectangular() + rectangular() + rectangular() + rectangular(); });
    EXPECT_TRUE(printed(spreadOf(sums)->deviation, "2.00"));
    EXPECT_TRUE(printed(halfWidth(symmetricInterval(sums, 0.95)), "3.88"));
}

// The inputs of 9.5, gauge block of 50 mm (values from memory), lengths in nm.
class GaugeBlock {
public:
    explicit GaugeBlock(std::uint64_t seed)
        : m_random(seed) {}

    double draw() {
        const double standard = student(50'000'623, 25, 18);
        const double difference = student(215, 6, 24) + student(0, 4, 5) + student(0, 7, 8);
        const double expansion = between(9.5e-6, 13.5e-6);
        const double offReference = -0.1 + 0.2 * m_random.normal() +
                                    0.5 * std::sin(2 * std::numbers::pi * m_random.uniform());
        const double expansionDifference = curvedTrapezoid(1e-6, 0.1e-6);
        const double temperatureDifference = curvedTrapezoid(0.05, 0.025);
        return (standard * (1 + expansion * (offReference - temperatureDifference)) + difference) /
                   (1 + (expansion + expansionDifference) * offReference) -
               50'000'000;
    }

private:
    double student(double centre, double scale, int freedom) {
        double chiSquare = 0;
        for (int i = 0; i < freedom; ++i) {
            const double z = m_random.normal();
            chiSquare += z * z;
        }
        return centre + scale * m_random.normal() / std::sqrt(chiSquare / freedom);
    }
    double between(double low, double high) { return low + (high - low) * m_random.uniform(); }
    // Rectangular ± a whose half-width is itself known to ± d only: JCGM 101, 6.4.3.4.
    double curvedTrapezoid(double a, double d) {
        const double reach = between(a - d, a + d);
        return between(-reach, reach);
    }

    Random m_random;
};

// 9.5: u = 36 nm by Monte Carlo, where the first-order budget says 32 (seen).
TEST(Jcgm101, GaugeBlockHasMoreDoubtThanItsBudgetSays) {
    GaugeBlock block(95);
    const auto lengths = drawn(400'000, [&] { return block.draw(); });
    EXPECT_TRUE(printed(spreadOf(lengths)->deviation, "36", "nm"));
}

} // namespace
} // namespace borewright
