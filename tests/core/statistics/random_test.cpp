// SPDX-License-Identifier: GPL-3.0-or-later
// The random numbers: the same for ever, and as normal as a million of them can show. Every bound
// is five standard deviations of what is counted, for a seed that is fixed.
#include "core/statistics/distributions.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <algorithm>
#include <vector>

namespace borewright {
namespace {

using test::near;

constexpr int draws = 4'000'000;

std::vector<double> normals(std::uint64_t seed) {
    Random random(seed);
    std::vector<double> values(draws);
    for (double& value : values)
        value = random.normal();
    return values;
}

// splitmix64 from seed 0 begins with e220a839…, 6e789e6a… (values from memory); the first output of
// xoshiro256** is made of the second word of its state only.
TEST(Random, IsTheGeneratorThatItSaysItIs) {
    Random random(0);
    constexpr std::uint64_t s1 = 0x6e789e6aa1b965f4U;
    const std::uint64_t rotated = (s1 * 5 << 7) | (s1 * 5 >> 57);
    EXPECT_EQ(random.next(), rotated * 9);
}

// Results stand in workbooks and on sheets: these may never change, on any machine.
TEST(Random, GivesTheSameNumbersForEver) {
    Random bits(1);
    for (const std::uint64_t expected :
         {0xb3f2af6d0fc710c5U, 0x853b559647364ceaU, 0x92f89756082a4514U, 0x642e1c7bc266a3a7U})
        EXPECT_EQ(bits.next(), expected);
    Random random(1);
    for (const double expected :
         {-0x1.41f13ab340fd5p-1, -0x1.5e3d3deb13b75p-1, -0x1.1caa30e123b41p+1, 0x1.fe30ff7b8b817p-1,
          -0x1.f7c707b9dd8b4p-1, 0x1.5be0fe9bd5004p-1})
        EXPECT_EQ(random.normal(), expected);
    double sum = 0;
    for (int i = 0; i < 100'000; ++i) // passes through every level and the tail
        sum += random.normal();
    EXPECT_EQ(sum, -0x1.ece3795d97c34p+5)
        << "the sum of the next hundred thousand, to the last bit";
}

TEST(Random, UniformsFillTheirRangeEvenly) {
    Random random(11);
    constexpr int cells = 1000;
    std::vector<int> counts(cells);
    for (int i = 0; i < draws; ++i) {
        const double u = random.uniform();
        ASSERT_GE(u, 0);
        ASSERT_LT(u, 1);
        ++counts[static_cast<std::size_t>(u * cells)];
    }
    const double expected = double(draws) / cells;
    double chiSquare = 0;
    for (const int count : counts)
        chiSquare += (count - expected) * (count - expected) / expected;
    EXPECT_GT(chiSquareAbove(chiSquare, cells - 1), 1e-4) << "chi-square " << chiSquare;
    EXPECT_GT(1 - chiSquareAbove(chiSquare, cells - 1), 1e-4) << "too even: " << chiSquare;
}

// Moments of the normal 0, 1, 0, 3, 0, 15; the variance of the n-th is (2n − 1)!! less its square.
TEST(Normals, HaveTheMomentsOfTheNormal) {
    std::vector<double> sums(6);
    for (const double x : normals(2)) {
        double power = 1;
        for (double& sum : sums)
            sum += power *= x;
    }
    const std::vector<double> moments{0, 1, 0, 3, 0, 15};
    const std::vector<double> variances{1, 2, 15, 96, 945, 10170};
    for (std::size_t n = 0; n < sums.size(); ++n)
        EXPECT_TRUE(near(sums[n] / draws, moments[n], 5 * std::sqrt(variances[n] / draws)))
            << "moment " << n + 1;
}

// Each tail, the ends of levels and the tail beyond the last level (3.654) among them.
TEST(Normals, HaveTheTailsOfTheNormal) {
    const std::vector<double> values = normals(3);
    for (const double z : {0.1, 0.5, 1.0, 1.645, 1.96, 2.576, 3.0, 3.5, 3.654, 3.7, 4.0, 4.4}) {
        const double p = normalBelow(-z);
        const double doubt = 5 * std::sqrt(p * (1 - p) / draws);
        const auto above = std::ranges::count_if(values, [z](double x) { return x > z; });
        const auto below = std::ranges::count_if(values, [z](double x) { return x < -z; });
        EXPECT_TRUE(near(double(above) / draws, p, doubt)) << "above " << z;
        EXPECT_TRUE(near(double(below) / draws, p, doubt)) << "below " << -z;
    }
}

// 500 cells of equal chance.
TEST(Normals, FillTheCurve) {
    constexpr int cells = 500;
    std::vector<int> counts(cells);
    for (const double x : normals(4))
        ++counts[std::min<std::size_t>(cells - 1,
                                       static_cast<std::size_t>(normalBelow(x) * cells))];
    const double expected = double(draws) / cells;
    double chiSquare = 0;
    for (const int count : counts)
        chiSquare += (count - expected) * (count - expected) / expected;
    EXPECT_GT(chiSquareAbove(chiSquare, cells - 1), 1e-4) << "chi-square " << chiSquare;
    EXPECT_GT(1 - chiSquareAbove(chiSquare, cells - 1), 1e-4) << "too even: " << chiSquare;
}

TEST(Normals, DoNotKnowTheirNeighbours) {
    const std::vector<double> values = normals(5);
    for (const std::size_t lag : {1U, 2U, 3U, 7U, 64U}) {
        double products = 0;
        double squares = 0; // a wild draw may announce another though their signs do not
        for (std::size_t i = lag; i < values.size(); ++i) {
            products += values[i] * values[i - lag];
            squares += (values[i] * values[i] - 1) * (values[i - lag] * values[i - lag] - 1);
        }
        EXPECT_TRUE(near(products / draws, 0, 5 / std::sqrt(draws))) << "lag " << lag;
        EXPECT_TRUE(near(squares / draws, 0, 5 * 2 / std::sqrt(draws))) << "lag " << lag;
    }
}

TEST(Normals, OfTwoSeedsAreStrangers) {
    const std::vector<double> first = normals(6);
    const std::vector<double> second = normals(7);
    double products = 0;
    for (std::size_t i = 0; i < first.size(); ++i)
        products += first[i] * second[i];
    EXPECT_TRUE(near(products / draws, 0, 5 / std::sqrt(draws)));
}

} // namespace
} // namespace borewright
