// SPDX-License-Identifier: GPL-3.0-or-later
// Chances that a verdict is wrong, against the published ones: of one value (JCGM 106 clause 7,
// guard bands) and of a whole production (global risks), integrated over the true value.
#include "core/statistics/coverage.h"
#include "core/statistics/distributions.h"
#include "tests/support/printed.h"

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <limits>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

constexpr double infinity = std::numeric_limits<double>::infinity();

template<class F>
double integral(const F& f, double from, double to) {
    return boost::math::quadrature::gauss_kronrod<double, 61>::integrate(f, from, to, 12, 1e-12);
}

// JCGM 106:2012, clause 7 (printed values from memory; the longer figures derived).
TEST(Jcgm106, ConformanceProbability) {
    const double upper = conformance(-5.47, 0.05, std::nullopt, -5.40);
    EXPECT_TRUE(printed(upper, "0.92"));
    EXPECT_TRUE(printed(upper, "0.919243"));
    const double lower = conformance(509.7, 8.6, 490, std::nullopt);
    EXPECT_TRUE(printed(lower, "0.99"));
    EXPECT_TRUE(printed(lower, "0.989010"));
    const double both = conformance(13.6, 1.8, 12.5, 16.3);
    EXPECT_TRUE(printed(both, "0.66"));
    EXPECT_TRUE(printed(both, "0.662630"));
}

// The same clause's table of z (value from memory).
TEST(Jcgm106, OneSidedFactors) {
    EXPECT_TRUE(printed(normalQuantile(0.80), "0.84"));
    EXPECT_TRUE(printed(normalQuantile(0.90), "1.28"));
    EXPECT_TRUE(printed(normalQuantile(0.95), "1.64"));
    EXPECT_TRUE(printed(normalQuantile(0.99), "2.33"));
    EXPECT_TRUE(printed(normalQuantile(0.999), "3.09"));
    EXPECT_TRUE(printed(oneSidedFactor(0.05, infinity), "1.64"));
}

// With four degrees of freedom a one-sided risk of 1 % needs 3.75 u and not 2.33 u (seen).
TEST(LimitedEvidence, NeedsAWiderBand) {
    EXPECT_TRUE(printed(oneSidedFactor(0.01, 4), "3.75"));
    EXPECT_TRUE(printed(oneSidedFactor(0.01, infinity), "2.33"));
}

// The risk of a reading that lies just on the acceptance limit, w inside the upper limit.
double riskAt(double w_u) {
    return conformance(-w_u, 1, 0, std::nullopt);
}

// ILAC-G8:09/2019, table of guard bands (its risks are upper bounds, seen); the exact figures, in
// percent for k = 2 and k = 1.96, are derived.
TEST(GuardBands, IlacG8) {
    EXPECT_TRUE(near(riskAt(0), 0.50, 1e-12));
    EXPECT_TRUE(printed(100 * riskAt(0.83 * 2), "4.846", "%"));
    EXPECT_TRUE(printed(100 * riskAt(0.83 * 1.96), "5.19", "%"));
    EXPECT_TRUE(printed(100 * riskAt(2), "2.275", "%"));
    EXPECT_TRUE(printed(100 * riskAt(1.96), "2.50", "%"));
    EXPECT_TRUE(printed(100 * riskAt(1.5 * 2), "0.1350", "%"));
    EXPECT_TRUE(printed(100 * riskAt(1.5 * 1.96), "0.164", "%"));
    EXPECT_TRUE(printed(riskAt(3 * 2), "1e-9"));
    EXPECT_LT(riskAt(0.83 * 2), 0.05);
    EXPECT_LT(riskAt(2), 0.025);
    EXPECT_LT(riskAt(1.5 * 2), 0.0016);
    EXPECT_LT(riskAt(3 * 2), 1e-6);
}

// ISO 14253-1:2017, its default of 1.65 u (seen; percent derived).
TEST(GuardBands, Iso14253) {
    EXPECT_TRUE(printed(100 * riskAt(1.65), "4.947", "%"));
}

// JCGM 106:2012, 9.5.4 (seen): true value gamma with shape 4 and scale ¼ µm, upper limit 2 µm,
// u = 0.25 µm.
class GammaProduction {
public:
    // Outside the limit and accepted.
    static double consumers(double acceptance) {
        return integral([&](double x) { return density(x) * accepted(x, acceptance); }, limit, 15);
    }
    // Within the limit and rejected (derived).
    static double producers(double acceptance) {
        return integral([&](double x) { return density(x) * (1 - accepted(x, acceptance)); }, 0,
                        limit);
    }

private:
    static constexpr double limit = 2;
    static double density(double x) { return 256 * x * x * x * std::exp(-4 * x) / 6; }
    static double accepted(double x, double acceptance) {
        return conformance(x, 0.25, std::nullopt, acceptance);
    }
};

TEST(Jcgm106, GlobalRisksOfAGammaProduction) {
    // 8 times the value over 1 µm is chi-square with eight degrees of freedom.
    EXPECT_TRUE(printed(chiSquareAbove(8 * 2, 8), "0.04238"));
    EXPECT_TRUE(printed(GammaProduction::consumers(2), "0.00802"));
    EXPECT_TRUE(printed(GammaProduction::producers(2), "0.01744"));
    double acceptance = 1.5; // whose consumer's risk is 0.001, by halving
    for (double step = 0.25; step > 1e-9; step /= 2)
        if (GammaProduction::consumers(acceptance + step) < 0.001) acceptance += step;
    EXPECT_TRUE(printed(acceptance, "1.6718", "µm"));
    EXPECT_TRUE(printed(GammaProduction::producers(acceptance), "0.07549"));
}

// A normal production, centred, judged by a normal measurement.
struct NormalProduction {
    double deviation;
    double u;
    double limit;
    double acceptance;

    [[nodiscard]] double density(double x) const {
        const double z = x / deviation;
        return std::exp(-z * z / 2) / (deviation * std::sqrt(2 * std::numbers::pi));
    }
    [[nodiscard]] double accepted(double x) const {
        return conformance(x, u, -acceptance, acceptance);
    }
    [[nodiscard]] double falseAccept() const {
        return 2 *
               integral([&](double x) { return density(x) * accepted(x); }, limit, limit + 10 * u);
    }
    [[nodiscard]] double falseReject() const {
        return 2 * integral([&](double x) { return density(x) * (1 - accepted(x)); }, 0, limit);
    }
};

// Limits ± 1, u = σ/4, no guard band. False accepts: draft NCSLI RP-19 (seen); false rejects
// derived. Percent.
TEST(GlobalRisk, OfANormalProduction) {
    struct Row {
        double within;
        const char* accept;
        const char* reject;
    };
    for (const Row& row : {Row{0.60, "4.83860", "6.26045"}, Row{0.70, "3.92234", "5.38853"},
                           Row{0.80, "2.85583", "4.23202"}, Row{0.90, "1.59995", "2.65459"},
                           Row{0.95, "0.87101", "1.59539"}, Row{0.99, "0.19992", "0.44564"}}) {
        const double deviation = 1 / normalQuantile((1 + row.within) / 2);
        const NormalProduction production{deviation, deviation / 4, 1, 1};
        EXPECT_TRUE(printed(100 * production.falseAccept(), row.accept, "%")) << row.within;
        EXPECT_TRUE(printed(100 * production.falseReject(), row.reject, "%")) << row.within;
    }
}

// Deaver: limits ± 2σ, u = σ/2, accepted to ± 1.82σ (seen).
TEST(GlobalRisk, Deaver) {
    const NormalProduction production{1, 0.5, 2, 1.82};
    EXPECT_TRUE(printed(production.falseAccept(), "0.008"));
    EXPECT_TRUE(printed(production.falseReject(), "0.066"));
}

} // namespace
} // namespace borewright
