// SPDX-License-Identifier: GPL-3.0-or-later
// The reference distributions: against an outside referee over a grid (GNU Scientific Library), at
// their ends, and beyond them.
#include "core/statistics/distributions.h"
#include "tests/support/printed.h"

#include <gsl/gsl_cdf.h>

#include <initializer_list>
#include <limits>
#include <numbers>

namespace borewright {
namespace {

using test::certified;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr std::initializer_list<double> chances{1e-12, 1e-6, 0.001, 0.025, 0.2,     0.5,
                                                0.63,  0.9,  0.975, 0.999, 0.999999};
constexpr std::initializer_list<double> freedoms{1, 2, 3.5, 5, 16.7, 40, 189, 5000};

TEST(Normal, AgreesWithTheReferee) {
    for (double z = -8; z <= 8; z += 0.37)
        EXPECT_TRUE(certified(normalBelow(z), gsl_cdf_ugaussian_P(z), 13)) << "z " << z;
    for (const double p : chances)
        EXPECT_TRUE(certified(normalQuantile(p), gsl_cdf_ugaussian_Pinv(p), 13)) << "p " << p;
}

// Farther out the referee's own series loses digits; the next two tests go there.
TEST(Student, AgreesWithTheReferee) {
    for (const double freedom : freedoms) {
        for (double t = -8; t <= 8; t += 0.7)
            EXPECT_TRUE(certified(studentBelow(t, freedom), gsl_cdf_tdist_P(t, freedom), 10))
                << "t " << t << ", freedom " << freedom;
        for (const double p : chances) {
            if (p < 1e-6) continue;
            EXPECT_TRUE(certified(studentQuantile(p, freedom), gsl_cdf_tdist_Pinv(p, freedom), 8))
                << "p " << p << ", freedom " << freedom;
        }
    }
}

// One degree of freedom has t = −cot πp, two have t = −(1 − 2p)/√(2p(1 − p)) (derived).
TEST(Student, HasItsClosedFormsFarOut) {
    for (const double p : {1e-12, 1e-9, 1e-6, 0.001, 0.3}) {
        const double one = -1 / std::tan(std::numbers::pi * p);
        const double two = -(1 - 2 * p) / std::sqrt(2 * p * (1 - p));
        EXPECT_TRUE(certified(studentQuantile(p, 1), one, 12)) << "p " << p;
        EXPECT_TRUE(certified(studentQuantile(p, 2), two, 12)) << "p " << p;
        EXPECT_TRUE(certified(studentBelow(one, 1), p, 12)) << "p " << p;
        EXPECT_TRUE(certified(studentBelow(two, 2), p, 12)) << "p " << p;
    }
}

// I_x(a, ½)/2 with x = ν/(ν + t²), a = ν/2, by its power series (derived).
TEST(Student, HasItsSeriesFarOut) {
    EXPECT_TRUE(certified(studentBelow(-18.3, 40), 2.41859239018371e-21, 10));
}

TEST(ChiSquare, AgreesWithTheReferee) {
    for (const double freedom : freedoms) {
        for (double x = 0.1; x < 3 * freedom + 20; x *= 1.9)
            EXPECT_TRUE(certified(chiSquareAbove(x, freedom), gsl_cdf_chisq_Q(x, freedom), 10))
                << "x " << x << ", freedom " << freedom;
        for (const double p : chances)
            EXPECT_TRUE(certified(chiSquareQuantile(p, freedom), gsl_cdf_chisq_Pinv(p, freedom), 9))
                << "p " << p << ", freedom " << freedom;
    }
}

TEST(FisherF, AgreesWithTheReferee) {
    for (const double freedom1 : freedoms)
        for (const double freedom2 : freedoms) {
            for (double f = 0.05; f < 60; f *= 2.3)
                EXPECT_TRUE(certified(fAbove(f, freedom1, freedom2),
                                      gsl_cdf_fdist_Q(f, freedom1, freedom2), 9))
                    << "F " << f << ", freedoms " << freedom1 << ", " << freedom2;
            // The referee's own inverse is poor in the tails; ours is turned back by its forward.
            for (const double p : {0.001, 0.025, 0.2, 0.5, 0.9, 0.975, 0.999})
                EXPECT_TRUE(certified(
                    gsl_cdf_fdist_P(fQuantile(p, freedom1, freedom2), freedom1, freedom2), p, 9))
                    << "p " << p << ", freedoms " << freedom1 << ", " << freedom2;
        }
}

TEST(Student, OfInfiniteFreedomIsNormal) {
    for (const double z : {-3.0, -0.5, 0.0, 1.96, 6.0})
        EXPECT_EQ(studentBelow(z, infinity), normalBelow(z));
    EXPECT_EQ(studentQuantile(0.975, infinity), normalQuantile(0.975));
    EXPECT_TRUE(certified(studentQuantile(0.975, 1e12), normalQuantile(0.975), 10));
}

TEST(Distributions, KeepTheirEnds) {
    EXPECT_EQ(normalBelow(-infinity), 0);
    EXPECT_EQ(normalBelow(infinity), 1);
    EXPECT_EQ(normalQuantile(0), -infinity);
    EXPECT_EQ(normalQuantile(1), infinity);
    EXPECT_EQ(studentBelow(-infinity, 3), 0);
    EXPECT_EQ(studentBelow(infinity, 3), 1);
    EXPECT_EQ(studentQuantile(0, 3), -infinity);
    EXPECT_EQ(studentQuantile(1, 3), infinity);
    EXPECT_EQ(chiSquareAbove(0, 3), 1);
    EXPECT_EQ(chiSquareAbove(infinity, 3), 0);
    EXPECT_EQ(chiSquareQuantile(0, 3), 0);
    EXPECT_EQ(chiSquareQuantile(1, 3), infinity);
    EXPECT_EQ(fAbove(0, 3, 4), 1);
    EXPECT_EQ(fAbove(infinity, 3, 4), 0);
    EXPECT_EQ(fQuantile(0, 3, 4), 0);
    EXPECT_EQ(fQuantile(1, 3, 4), infinity);
}

TEST(Distributions, AreNotANumberOutOfRange) {
    for (const double p : {-0.01, 1.01, nan, infinity}) {
        EXPECT_TRUE(std::isnan(normalQuantile(p))) << "p " << p;
        EXPECT_TRUE(std::isnan(studentQuantile(p, 3))) << "p " << p;
        EXPECT_TRUE(std::isnan(chiSquareQuantile(p, 3))) << "p " << p;
        EXPECT_TRUE(std::isnan(fQuantile(p, 3, 4))) << "p " << p;
    }
    for (const double freedom : {0.0, -1.0, nan}) {
        EXPECT_TRUE(std::isnan(studentBelow(1, freedom))) << "freedom " << freedom;
        EXPECT_TRUE(std::isnan(studentQuantile(0.5, freedom))) << "freedom " << freedom;
    }
    for (const double freedom : {0.0, -1.0, nan, infinity}) {
        EXPECT_TRUE(std::isnan(chiSquareAbove(1, freedom))) << "freedom " << freedom;
        EXPECT_TRUE(std::isnan(chiSquareQuantile(0.5, freedom))) << "freedom " << freedom;
        EXPECT_TRUE(std::isnan(fAbove(1, freedom, 3))) << "freedom " << freedom;
        EXPECT_TRUE(std::isnan(fAbove(1, 3, freedom))) << "freedom " << freedom;
        EXPECT_TRUE(std::isnan(fQuantile(0.5, freedom, 3))) << "freedom " << freedom;
        EXPECT_TRUE(std::isnan(fQuantile(0.5, 3, freedom))) << "freedom " << freedom;
    }
    EXPECT_TRUE(std::isnan(normalBelow(nan)));
    EXPECT_TRUE(std::isnan(studentBelow(nan, 3)));
    for (const double x : {-1.0, -infinity, nan}) {
        EXPECT_TRUE(std::isnan(chiSquareAbove(x, 3)));
        EXPECT_TRUE(std::isnan(fAbove(x, 3, 4)));
    }
}

} // namespace
} // namespace borewright
