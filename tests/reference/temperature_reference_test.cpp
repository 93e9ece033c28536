// SPDX-License-Identifier: GPL-3.0-or-later
// Expansion and its doubt against handbooks and standards, beyond what standards_test.cpp checks.
#include "core/constants.h"
#include "core/gauging/gauging.h"
#include "core/statistics/anova.h"
#include "core/statistics/random.h"
#include "tests/support/lengths.h"
#include "tests/support/printed.h"

#include <vector>

namespace borewright {
namespace {

using namespace test;

// How much a block of this size reads larger at a temperature than at 20 °C, thou.
double growth_thou(const char* size_in, Expansion material, const char* temperature) {
    GaugeSetting gauge;
    gauge.setSize = typedIn(size_in);
    gauge.masterTemperature = *readTemperature("20 C", Scale::celsius);
    gauge.blockTemperature = *readTemperature(temperature, Scale::celsius);
    gauge.blockExpansion = material;
    return (in(size_in) - *diameterAt20(typedThou("0"), gauge)).in(Unit::thou);
}

// Callister, Materials Science and Engineering, Table B.6 (seen): grey iron G1800-G4000 and cast
// aluminium 356.0. Gauge steel: ISO 3650 (value from memory).
TEST(Expansions, OfTheHandbook) {
    EXPECT_EQ(expansionPerCelsius(Expansion::greyIron), 11.4e-6);
    EXPECT_EQ(expansionPerCelsius(Expansion::aluminium), 21.5e-6);
    EXPECT_EQ(expansionPerCelsius(Expansion::gaugeSteel), 11.5e-6);
}

// ΔD = D·α·ΔT (derived): 3.000 in from 68 to 90 °F, 3.44 in by 10 °C.
TEST(Expansions, OfAWarmBlock) {
    EXPECT_TRUE(printed(growth_thou("3", Expansion::greyIron, "90 F"), "0.418", "thou"));
    EXPECT_TRUE(printed(growth_thou("3", Expansion::aluminium, "90 F"), "0.788", "thou"));
    EXPECT_TRUE(printed(growth_thou("3.44", Expansion::greyIron, "30 C"), "0.392", "thou"));
    EXPECT_TRUE(
        printed(growth_thou("3.44", Expansion::sleeveInAluminium, "30 C"), "0.550", "thou"));
    // The linear figure is 0.7396; dividing by 1 + αΔT takes off its square, 0.0002 thou.
    EXPECT_TRUE(near(growth_thou("3.44", Expansion::aluminium, "30 C"), 0.740, 0.0007, "thou"));
}

// A block 4 °C warmer at one end shows a taper that is not there (derived).
TEST(Expansions, AWarmEndFakesATaper) {
    const double end = growth_thou("3.44", Expansion::sleeveInAluminium, "28 C");
    const double other = growth_thou("3.44", Expansion::sleeveInAluminium, "24 C");
    EXPECT_TRUE(printed(end - other, "0.220", "thou"));
}

// Thin iron sleeve bonded in aluminium, α = ΣE·t·α/ΣE·t with E 105 and 71 GPa (a model, derived).
// The constant of the program, with ± 3e-6, spans the walls that are met.
TEST(Expansions, SleeveInAluminium) {
    const auto sleeve = [](double iron_mm, double aluminium_mm) {
        const double iron = 105 * iron_mm;
        const double aluminium = 71 * aluminium_mm;
        return (iron * constants::expansionGreyIron +
                aluminium * constants::expansionCastAluminium) /
               (iron + aluminium);
    };
    EXPECT_TRUE(printed(1e6 * sleeve(4, 8), "17.206"));
    EXPECT_TRUE(printed(1e6 * sleeve(3, 10), "18.396"));
    EXPECT_TRUE(printed(1e6 * sleeve(5, 4), "14.946"));
    for (const double alpha : {sleeve(4, 8), sleeve(3, 10), sleeve(5, 4)})
        EXPECT_TRUE(near(alpha, constants::expansionSleeveInAluminium, 3e-6, "1/°C"));
}

// NIST TN 1900, example E13 (seen): expansion from two lengths and two temperatures; the longer
// figures derived, to first order.
TEST(NistTn1900, ExpansionAndItsDoubt) {
    constexpr double l0 = 1.4999, l1 = 1.5021, t0 = 288.15, t1 = 373.10;
    const auto alpha = [](double from_m, double to_m, double cold_K, double hot_K) {
        return (to_m - from_m) / (from_m * (hot_K - cold_K));
    };
    EXPECT_TRUE(printed(alpha(l0, l1, t0, t1), "1.73e-5", "1/K"));
    EXPECT_TRUE(printed(alpha(l0, l1, t0, t1), "1.72662e-5", "1/K"));
    Random random(13);
    std::vector<double> draws(500'000);
    for (double& draw : draws)
        draw = alpha(l0 + 1e-4 * random.normal(), l1 + 2e-4 * random.normal(),
                     t0 + 0.02 * random.normal(), t1 + 0.05 * random.normal());
    const auto spread = spreadOf(draws);
    EXPECT_TRUE(printed(spread->mean, "1.73e-5", "1/K"));
    EXPECT_TRUE(printed(spread->deviation, "1.8e-6", "1/K"));
    EXPECT_TRUE(near(spread->deviation, 1.75548e-6, 0.008e-6, "1/K")) << "0.1 % of 500 000 draws";
}

} // namespace
} // namespace borewright
