// SPDX-License-Identifier: GPL-3.0-or-later
// Outlier tests: which value is named, how often a clean sample is accused, and refusals.
#include "core/statistics/outliers.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace borewright {
namespace {

using test::near;

TEST(Outliers, NameTheValueFarthestOut) {
    const std::vector<double> high{5, 5.1, 9, 4.9, 5.05};
    EXPECT_EQ(grubbs(high)->index, 2U);
    EXPECT_EQ(dixon(high)->index, 2U);
    EXPECT_TRUE(near(dixon(high)->statistic, 3.9 / 4.1, 1e-12));
    const std::vector<double> low{5, 5.1, 1, 4.9, 5.05};
    EXPECT_EQ(grubbs(low)->index, 2U);
    EXPECT_EQ(dixon(low)->index, 2U);
    EXPECT_EQ(dixon(std::vector<double>{1, 2, 2.5, 3, 4})->index, 0U) << "a tie: the lowest";
}

// Clean normal samples pass each limit as seldom as it says. ± 5 standard deviations of the count;
// Dixon's printed table is off by up to .005, worth two thousandths of chance.
TEST(Outliers, AccuseCleanSamplesAsSeldomAsTheySay) {
    Random random(41);
    constexpr int samples = 200'000;
    for (const int count : {4, 6, 10}) {
        int byGrubbs = 0;
        int byDixon = 0;
        std::vector<double> values(static_cast<std::size_t>(count));
        for (int i = 0; i < samples; ++i) {
            std::ranges::generate(values, [&] { return random.normal(); });
            byGrubbs += grubbs(values)->statistic > *grubbsCritical(count, 0.05, Sides::two);
            byDixon += dixon(values)->statistic > *dixonCritical(count, DixonRisk::fivePercent);
        }
        EXPECT_TRUE(near(byGrubbs / double(samples), 0.05, 0.0025)) << "n " << count;
        EXPECT_TRUE(near(byDixon / double(samples), 0.05, 0.0045)) << "n " << count;
    }
}

TEST(Outliers, DoNotTestThreeValues) {
    const std::vector<double> three{1, 1.01, 50};
    EXPECT_FALSE(grubbs(three));
    EXPECT_FALSE(dixon(three));
}

TEST(Outliers, SayNothingOfBadSamples) {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    for (const std::vector<double>& bad :
         {std::vector<double>{}, {0.1, 0.1, 0.1, 0.1}, {1, 2, nan, 4}, {-1e308, 1e308, 0, 0}}) {
        EXPECT_FALSE(grubbs(bad)) << bad.size();
        EXPECT_FALSE(dixon(bad)) << bad.size();
    }
    EXPECT_FALSE(grubbs(std::vector<double>{-1e200, 1e200, 0, 0})) << "no deviation can be told";
    std::vector<double> eleven(11, 1.0);
    eleven[4] = 2;
    EXPECT_TRUE(grubbs(eleven));
    EXPECT_FALSE(dixon(eleven)) << "past the end of the table";
}

TEST(Outliers, HaveNoLimitOutOfRange) {
    EXPECT_FALSE(grubbsCritical(2, 0.05, Sides::two));
    for (const double risk : {0.0, 1.0, -0.1, std::numeric_limits<double>::quiet_NaN()})
        EXPECT_FALSE(grubbsCritical(5, risk, Sides::one)) << risk;
    EXPECT_FALSE(dixonCritical(2, DixonRisk::fivePercent));
    EXPECT_FALSE(dixonCritical(11, DixonRisk::onePercent));
}

} // namespace
} // namespace borewright
