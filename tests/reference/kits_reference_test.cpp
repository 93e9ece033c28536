// SPDX-License-Identifier: GPL-3.0-or-later
// Two usual sets of measuring gear: what they are worth on a 3.44 in bore in a sleeve in aluminium,
// and what can be told with them. The gear's figures are values from memory (common practice, no
// source); the sums are derived and check the formulas, not a publication.
#include "core/gauging/budget.h"
#include "core/gauging/gauging.h"
#include "core/gauging/warmth.h"
#include "core/statistics/range.h"
#include "tests/support/lengths.h"
#include "tests/support/printed.h"

#include <cmath>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

constexpr double w = 1.65; // guard band of ISO 14253-1:2017 (seen), times u

// Nothing but gear, ± 1 °C between block and master and ± 3 °C of the room counts.
SurveyHeader surveyWith(const Gear& gear, Dial dial) {
    SurveyHeader survey;
    survey.gauge.gear = gear;
    survey.gauge.dial = dial;
    survey.gauge.setSize = typedIn("3.44");
    survey.gauge.blockExpansion = Expansion::sleeveInAluminium;
    survey.gauge.stoodTogether = true;
    survey.gauge.gaugeWarmedBy = 0;
    return survey;
}
Budget kitA(int repeats = 1) {
    return budgetOf(surveyWith(tenthDialAndRing(), tenthDial()), in("3.44"), repeats);
}
Budget kitB(int repeats = 1) {
    return budgetOf(surveyWith(halfThouDialAndMicrometer(), halfThouDial()), in("3.44"), repeats);
}
double thouOf(double value_um) {
    return value_um / 25.4;
}

TEST(Kits, TenthDialAndRing) {
    const Budget budget = kitA();
    EXPECT_TRUE(budget.known());
    EXPECT_TRUE(printed(thouOf(budget.own_um), "0.0898", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.shared_um), "0.0905", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.single_um), "0.1275", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.coverage * budget.single_um), "0.255", "thou"));
    EXPECT_TRUE(printed(thouOf(w * budget.single_um), "0.210", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.difference_um), "0.127", "thou"));
}

TEST(Kits, HalfThouDialAndMicrometer) {
    const Budget budget = kitB();
    EXPECT_TRUE(budget.known());
    EXPECT_TRUE(printed(thouOf(budget.own_um), "0.2026", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.shared_um), "0.1959", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.single_um), "0.2818", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.coverage * budget.single_um), "0.564", "thou"));
    EXPECT_TRUE(printed(thouOf(w * budget.single_um), "0.465", "thou"));
    EXPECT_TRUE(printed(thouOf(budget.difference_um), "0.287", "thou"));
}

// A piston known to u 0.10 thou takes its own share of a clearance band.
TEST(Kits, WhatAClearanceBandLeavesToAcceptIn) {
    const auto left = [](double band_thou, const Budget& budget) {
        return band_thou - 2 * w * std::hypot(thouOf(budget.single_um), 0.10);
    };
    EXPECT_TRUE(printed(std::hypot(thouOf(kitA().single_um), 0.10), "0.162", "thou"));
    EXPECT_TRUE(printed(w * std::hypot(thouOf(kitA().single_um), 0.10), "0.267", "thou"));
    EXPECT_TRUE(printed(left(1.0, kitA()), "0.465", "thou"));
    EXPECT_TRUE(printed(left(0.5, kitA()), "-0.035", "thou")) << "nothing can be called within";
    EXPECT_TRUE(printed(std::hypot(thouOf(kitB().single_um), 0.10), "0.299", "thou"));
    EXPECT_TRUE(printed(w * std::hypot(thouOf(kitB().single_um), 0.10), "0.493", "thou"));
    EXPECT_TRUE(printed(left(1.0, kitB()), "0.013", "thou"));
}

// "Three repeats at each station: ± 0.21 → ± 0.13 thou."
TEST(Kits, WhatThreeRepeatsHelp) {
    EXPECT_TRUE(printed(w * thouOf(kitA().difference_um), "0.21", "thou"));
    EXPECT_TRUE(printed(w * thouOf(kitA(3).difference_um), "0.13", "thou"));
    EXPECT_TRUE(near(kitA(3).shared_um, kitA().shared_um, 1e-12, "µm")) << "they share the master";
}

// Five levels of a truly straight bore, noise s a reading: chance in percent that largest less
// smallest is over a quarter thou, on one axis and on the worse of two.
TEST(StraightBore, ChanceToShowAQuarterThou) {
    const struct {
        double s_thou;
        const char* oneAxis;
        const char* twoAxes;
    } rows[] = {{0.05, "0.4", "0.7"},     {0.06, "2.7", "5.3"},   {0.08, "17.6", "32.1"},
                {0.0898, "28.1", "48.4"}, {0.10, "39.3", "63.1"}, {0.15, "76.4", "94.4"}};
    for (const auto& row : rows) {
        const double below = rangeBelow(0.25 / row.s_thou, 5);
        EXPECT_TRUE(printed(100 * (1 - below), row.oneAxis, "%")) << row.s_thou << " thou";
        EXPECT_TRUE(printed(100 * (1 - below * below), row.twoAxes, "%")) << row.s_thou << " thou";
    }
}

// d2 of control charts. 2.326 for five: Montgomery, Introduction to Statistical Quality Control
// (seen); the others: values from memory. Two and three have closed forms, 2/√π and 3/√π.
TEST(MeanRange, AsControlChartsHaveIt) {
    EXPECT_TRUE(near(meanRange(2), 2 / std::sqrt(std::numbers::pi), 1e-9));
    EXPECT_TRUE(near(meanRange(3), 3 / std::sqrt(std::numbers::pi), 1e-9));
    const char* d2[] = {"1.128", "1.693", "2.059", "2.326", "2.534",
                        "2.704", "2.847", "2.970", "3.078"};
    for (int n = 2; n <= 10; ++n)
        EXPECT_TRUE(printed(meanRange(n), d2[n - 2])) << n << " readings";
    EXPECT_EQ(meanRange(1), 0) << "one reading has no range";
}

// Two draws differ by √2 of a normal: P(range ≤ r) = 2Φ(r/√2) − 1 = erf(r/2). The 95 % point of the
// range of three and ten draws, 3.31 and 4.47: tables of the studentized range (value from memory).
TEST(RangeBelow, AgreesWithWhatIsKnown) {
    for (const double r : {0.01, 0.5, 1.0, 2.77, 6.0})
        EXPECT_TRUE(near(rangeBelow(r, 2), std::erf(r / 2), 1e-9)) << r;
    EXPECT_TRUE(near(rangeBelow(3.31, 3), 0.95, 0.001));
    EXPECT_TRUE(near(rangeBelow(4.47, 10), 0.95, 0.001));
    EXPECT_EQ(rangeBelow(0, 5), 0);
    EXPECT_EQ(rangeBelow(-1, 5), 0);
    EXPECT_EQ(rangeBelow(1, 1), 1);
    EXPECT_EQ(rangeBelow(INFINITY, 5), 1) << "a gauge without noise";
    EXPECT_TRUE(near(rangeBelow(20, 5), 1, 1e-9));
}

// What a part grows by (Callister's and ISO 3650's expansions; figures derived).
TEST(Growth, OfABoreThatIsWarm) {
    const auto thou = [](const char* size_in, Expansion material, double celsius) {
        return growthOf(in(size_in), material, celsius).in(Unit::thou);
    };
    EXPECT_TRUE(printed(thou("3.44", Expansion::greyIron, 10), "0.392", "thou"));
    EXPECT_TRUE(printed(thou("3.44", Expansion::sleeveInAluminium, 10), "0.550", "thou"));
    EXPECT_TRUE(printed(thou("3.44", Expansion::aluminium, 10), "0.740", "thou"));
    EXPECT_TRUE(printed(thou("3.44", Expansion::sleeveInAluminium, 4), "0.220", "thou"));
    const double from68to90 = 22 / 1.8;
    EXPECT_TRUE(printed(thou("3.000", Expansion::greyIron, from68to90), "0.418", "thou"));
    EXPECT_TRUE(printed(thou("3.000", Expansion::aluminium, from68to90), "0.788", "thou"));
    EXPECT_TRUE(printed(growthOf(mm("80"), Expansion::greyIron, 10).in(Unit::micrometre), "9.12"));
    EXPECT_TRUE(
        printed(growthOf(mm("80"), Expansion::aluminium, 10).in(Unit::micrometre), "17.20"));
}

// A steel ring as warm as the part: the bore reads high by (α_part − α_ring)·D·ΔT.
TEST(Growth, OfABoreAgainstItsRing) {
    const auto high_um = [](Expansion part) {
        GaugeSetting gauge;
        gauge.entry = Entry::deviation;
        gauge.setSize = typedMm("80");
        gauge.masterTemperature = *readTemperature("30 C", Scale::celsius);
        gauge.blockTemperature = *readTemperature("30 C", Scale::celsius);
        gauge.blockExpansion = part;
        return (mm("80") - *diameterAt20(typedUm("0"), gauge)).in(Unit::micrometre);
    };
    EXPECT_TRUE(printed(high_um(Expansion::greyIron), "-0.08", "µm"));
    EXPECT_TRUE(printed(high_um(Expansion::aluminium), "8.00", "µm"));
}

// Room 20 °C, 35 → 30 °C in ten minutes: τ 24.663 min, within 1 °C 66.79 min after the first.
TEST(Cooling, OfABlockBackToTheRoom) {
    const auto celsius = [](const char* text) { return *readTemperature(text, Scale::celsius); };
    const auto down = coolDown({celsius("20"), celsius("35"), celsius("30"), 10, {}});
    ASSERT_TRUE(down);
    EXPECT_TRUE(printed(down->timeConstant_min, "24.663", "min"));
    EXPECT_TRUE(printed(down->wait_min + 10, "66.79", "min"));
}

} // namespace
} // namespace borewright
