// SPDX-License-Identifier: GPL-3.0-or-later
// Coverage intervals from draws.
#include "core/statistics/interval.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <limits>

namespace borewright {
namespace {

using test::near;

// 1 … 10 with p = 0.5: q = 5, six draws within.
TEST(Interval, TakesItsDrawsByTheStandardsCount) {
    std::vector<double> draws{10, 2, 1, 4, 3, 5, 9, 8, 7, 6};
    const Interval symmetric = symmetricInterval(draws, 0.5);
    EXPECT_EQ(symmetric.low, 3); // r = (10 − 5 + 1)/2 = 3
    EXPECT_EQ(symmetric.high, 8);
    const Interval shortest = shortestInterval(draws, 0.5);
    EXPECT_EQ(shortest.low, 1) << "all are equally short: the lowest";
    EXPECT_EQ(shortest.high, 6);
}

// p·M = 2.6 is rounded to q = 3.
TEST(Interval, RoundsItsCount) {
    std::vector<double> draws{1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
    const Interval shortest = shortestInterval(draws, 0.26);
    EXPECT_EQ(shortest.high - shortest.low, 3);
}

TEST(Interval, TheShortestLiesWhereTheDrawsCrowd) {
    std::vector<double> draws{0, 1, 2, 8, 8.1, 8.2, 8.3, 20, 30, 40};
    const Interval shortest = shortestInterval(draws, 0.3);
    EXPECT_EQ(shortest.low, 8);
    EXPECT_EQ(shortest.high, 8.3);
}

// An exponential: the shortest 95 % begins at 0, the symmetric one at −ln 0.975 (derived).
TEST(Interval, OfALopsidedQuantity) {
    Random random(3);
    std::vector<double> draws;
    for (int i = 0; i < 400'000; ++i)
        draws.push_back(-std::log(1 - random.uniform()));
    const Interval shortest = shortestInterval(draws, 0.95);
    EXPECT_TRUE(near(shortest.low, 0, 0.002));
    EXPECT_TRUE(near(shortest.high, -std::log(0.05), 0.03));
    const Interval symmetric = symmetricInterval(draws, 0.95);
    EXPECT_TRUE(near(symmetric.low, -std::log(0.975), 0.001));
    EXPECT_TRUE(near(symmetric.high, -std::log(0.025), 0.04));
}

TEST(Interval, OfEverythingIsTheWholeRange) {
    std::vector<double> draws{3, 1, 2};
    for (const Interval& whole : {shortestInterval(draws, 1), symmetricInterval(draws, 1)}) {
        EXPECT_EQ(whole.low, 1);
        EXPECT_EQ(whole.high, 3);
    }
}

TEST(Interval, OfBadInputIsNotANumber) {
    std::vector<double> none;
    std::vector<double> one{1};
    std::vector<double> broken{1, std::numeric_limits<double>::quiet_NaN(), 2};
    for (std::vector<double>* draws : {&none, &one, &broken}) {
        EXPECT_TRUE(std::isnan(shortestInterval(*draws, 0.95).low)) << draws->size();
        EXPECT_TRUE(std::isnan(symmetricInterval(*draws, 0.95).high)) << draws->size();
    }
    std::vector<double> good{1, 2, 3};
    for (const double p : {-0.1, 1.1, std::numeric_limits<double>::quiet_NaN()})
        EXPECT_TRUE(std::isnan(shortestInterval(good, p).low)) << p;
}

} // namespace
} // namespace borewright
