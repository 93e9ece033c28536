// SPDX-License-Identifier: GPL-3.0-or-later
// Coverage and conformance: how they behave between and beyond the published cases.
#include "core/statistics/coverage.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <limits>
#include <vector>

namespace borewright {
namespace {

using test::near;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

TEST(EffectiveFreedom, OfOneLineIsItsOwn) {
    EXPECT_TRUE(near(welchSatterthwaite(std::vector<Contribution>{{0.3, 7}}), 7, 1e-12));
    EXPECT_TRUE(near(welchSatterthwaite(std::vector<Contribution>{{0.3, 7}, {0, 2}}), 7, 1e-12))
        << "a line of nothing counts for nothing";
}

TEST(EffectiveFreedom, IsInfiniteWhereNothingIsInDoubt) {
    EXPECT_EQ(welchSatterthwaite({}), infinity);
    EXPECT_EQ(welchSatterthwaite(std::vector<Contribution>{{0, 2}}), infinity);
    EXPECT_EQ(welchSatterthwaite(std::vector<Contribution>{{1, infinity}, {2, infinity}}),
              infinity);
}

TEST(EffectiveFreedom, DoesNotDependOnTheUnit) {
    const auto at = [](double unit) {
        return welchSatterthwaite(
            std::vector<Contribution>{{3 * unit, 4}, {2 * unit, 9}, {unit, infinity}});
    };
    EXPECT_TRUE(near(at(1e-100), at(1), 1e-9)) << "no fourth power is lost";
    EXPECT_TRUE(near(at(1e100), at(1), 1e-9));
}

TEST(EffectiveFreedom, IsNotANumberOfBadLines) {
    for (const Contribution bad :
         {Contribution{-1, 3}, {1, 0}, {1, -2}, {nan, 3}, {1, nan}, Contribution{infinity, 3}})
        EXPECT_TRUE(std::isnan(welchSatterthwaite(std::vector<Contribution>{{1, 5}, bad})))
            << "u " << bad.u << ", freedom " << bad.freedom;
}

TEST(CoverageFactor, RunsFromNothingToEverything) {
    EXPECT_EQ(coverageFactor(0, 5), 0);
    EXPECT_EQ(coverageFactor(1, 5), infinity);
    EXPECT_GT(coverageFactor(0.95, 1), coverageFactor(0.95, 1.5)) << "freedom may be a fraction";
    EXPECT_GT(coverageFactor(0.95, 1.5), coverageFactor(0.95, 2));
    EXPECT_TRUE(near(oneSidedFactor(0.025, 9), coverageFactor(0.95, 9), 1e-12));
    EXPECT_TRUE(near(oneSidedFactor(0.5, 9), 0, 1e-12));
    EXPECT_EQ(oneSidedFactor(0, 9), infinity);
    for (const double bad : {-0.1, 1.1, nan}) {
        EXPECT_TRUE(std::isnan(coverageFactor(bad, 5))) << bad;
        EXPECT_TRUE(std::isnan(oneSidedFactor(bad, 5))) << bad;
    }
    EXPECT_TRUE(std::isnan(coverageFactor(0.95, 0)));
}

// The factor is drawn from the formula; draws of the sum itself must fall within as often.
TEST(RectangularPair, CoversWhatItSays) {
    Random random(7);
    constexpr int draws = 200'000;
    for (const auto& [a, b] :
         {std::pair{1.0, 1.0}, {3.0, 1.0}, {1.0, 7.0}, {1.0, 0.02}, {2.0, 0.0}})
        for (const double p : {0.5, 0.9, 0.95}) {
            const double u = std::sqrt((a * a + b * b) / 3);
            const double reach = rectangularPairFactor(a, b, p) * u;
            int within = 0;
            for (int i = 0; i < draws; ++i) {
                const double sum = a * (2 * random.uniform() - 1) + b * (2 * random.uniform() - 1);
                within += std::fabs(sum) <= reach ? 1 : 0;
            }
            EXPECT_TRUE(near(within / double(draws), p, 0.005)) << a << ", " << b << " at " << p;
        }
}

TEST(RectangularPair, IsNotANumberOfBadWidths) {
    for (const auto& [a, b] :
         {std::pair{0.0, 0.0}, {-1.0, 2.0}, {1.0, -2.0}, {nan, 1.0}, {infinity, 1.0}})
        EXPECT_TRUE(std::isnan(rectangularPairFactor(a, b, 0.95))) << a << ", " << b;
    EXPECT_TRUE(std::isnan(rectangularPairFactor(1, 1, 1.5)));
    EXPECT_EQ(rectangularPairFactor(1, 0.5, 0), 0);
}

TEST(Conformance, WithoutDoubtIsYesOrNo) {
    EXPECT_EQ(conformance(3, 0, 1, 3), 1) << "a value at its limit is within";
    EXPECT_EQ(conformance(1, 0, 1, 3), 1);
    EXPECT_EQ(conformance(3.0001, 0, 1, 3), 0);
    EXPECT_EQ(conformance(0.9999, 0, 1, 3), 0);
    EXPECT_EQ(conformance(0.9999, 0, std::nullopt, 3), 1);
}

TEST(Conformance, WithoutLimitsIsCertain) {
    EXPECT_EQ(conformance(3, 0.1, std::nullopt, std::nullopt), 1);
}

TEST(Conformance, OnALimitIsEven) {
    EXPECT_TRUE(near(conformance(3, 0.1, std::nullopt, 3), 0.5, 1e-15));
    EXPECT_TRUE(near(conformance(3, 0.1, 3, std::nullopt), 0.5, 1e-15));
}

// The chance of being wrong is a small number and must keep its digits on either side.
TEST(Conformance, FarOutsideKeepsItsDigits) {
    const double far = conformance(10, 1, std::nullopt, 0);
    EXPECT_TRUE(near(far / 7.61985302416e-24, 1, 1e-9)) << "P(Z < -10), value from memory";
    EXPECT_TRUE(near(conformance(10, 1, -50, 0) / far, 1, 1e-9));
    EXPECT_TRUE(near(conformance(-10, 1, 0, 50) / far, 1, 1e-9)) << "the other side alike";
}

TEST(Conformance, OfBadInput) {
    EXPECT_TRUE(std::isnan(conformance(nan, 1, 0, 1)));
    EXPECT_TRUE(std::isnan(conformance(1, -1, 0, 1)));
    EXPECT_TRUE(std::isnan(conformance(1, nan, 0, 1)));
    EXPECT_EQ(conformance(1, 1, 3, 2), 0) << "limits the wrong way round hold nothing";
}

} // namespace
} // namespace borewright
