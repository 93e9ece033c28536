// SPDX-License-Identifier: GPL-3.0-or-later
// The main job against the outside: standards and values derived from them. The source stands
// beside each check.
#include "core/constants.h"
#include "core/form/form.h"
#include "core/results/results.h"
#include "tests/support/blocks.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

// ISO 1:2022: the reference temperature is 20 °C = 68 °F exactly.
TEST(Iso1, ReferenceTemperature) {
    EXPECT_EQ(constants::referenceCelsius, 20.0);
    EXPECT_DOUBLE_EQ(readTemperature("68 F", Scale::celsius)->celsius(), 20.0);
}

// ΔD = D·α·ΔT with the expansions of Callister, Table B.6 (derived from the formula).
TEST(Iso1, ABlockTenDegreesWarmIsBroughtBack) {
    struct Case {
        Expansion material;
        double growth_um; // of 80.000 mm at +10 °C
    };
    for (const Case& c : {Case{Expansion::greyIron, 9.12}, Case{Expansion::aluminium, 17.20}}) {
        GaugeSetting gauge;
        gauge.setSize = typedMm("80");
        gauge.masterTemperature = *readTemperature("20", Scale::celsius);
        gauge.blockTemperature = *readTemperature("30", Scale::celsius);
        gauge.blockExpansion = c.material;
        const Length cold = *diameterAt20(typedUm("0"), gauge);
        // D20 = D/(1 + αΔT): second order in αΔT is 1 nm here, below the printed digits.
        EXPECT_NEAR((mm("80") - cold).in(Unit::micrometre), c.growth_um, 0.005);
    }
    // 3.000 in from 68 to 90 °F: iron 0.418 thou, aluminium 0.788 thou (derived).
    GaugeSetting inch;
    inch.setSize = typedIn("3");
    inch.masterTemperature = *readTemperature("68 F", Scale::celsius);
    inch.blockTemperature = *readTemperature("90 F", Scale::celsius);
    EXPECT_NEAR((in("3") - *diameterAt20(typedThou("0"), inch)).in(Unit::thou), 0.418, 0.0005);
}

// Steel ring at the part's own temperature: the bore reads high by (α_part − α_ring)·D·ΔT. 80 mm,
// +10 °C, ring 11.5e-6: iron −0.08, aluminium +8.00 µm (derived).
TEST(Iso1, ARingAsWarmAsTheBlockCancelsForIron) {
    GaugeSetting gauge;
    gauge.setSize = typedMm("80");
    gauge.masterTemperature = *readTemperature("30", Scale::celsius);
    gauge.blockTemperature = *readTemperature("30", Scale::celsius);
    EXPECT_NEAR((mm("80") - *diameterAt20(typedUm("0"), gauge)).in(Unit::micrometre), -0.08, 0.005);
    gauge.blockExpansion = Expansion::aluminium;
    EXPECT_NEAR((mm("80") - *diameterAt20(typedUm("0"), gauge)).in(Unit::micrometre), 8.00, 0.005);
}

// A diameter typed as such goes through the same formula as the deviation that it is.
TEST(Iso1, DiameterAndDeviationAgreeWhenWarm) {
    GaugeSetting gauge;
    gauge.setSize = typedMm("80");
    gauge.masterTemperature = *readTemperature("25", Scale::celsius);
    gauge.blockTemperature = *readTemperature("35", Scale::celsius);
    const Length byDeviation = *diameterAt20(typedUm("20"), gauge);
    gauge.entry = Entry::diameter;
    EXPECT_EQ(*diameterAt20(typedMm("80.020"), gauge), byDeviation);
}

// ISO 286-1:2010, Table 1 (values seen): IT7 of 50 … 80 mm is 30 µm; hole H has lower deviation 0,
// so 80 H7 = 80.000 … 80.030 mm. The limits themselves are within.
TEST(Iso286, LimitsOfAHoleH7AreWithin) {
    Workbook workbook = inchBlock(1, {"1", "2"});
    LimitSet set;
    set.id = "h7";
    set.purpose = LimitPurpose::worn;
    set.limits.sizeLower = typedMm("80.000");
    set.limits.sizeUpper = typedMm("80.030");
    workbook.limitSets.push_back(set);
    const auto verdict = [&](const char* small, const char* large) {
        workbook.surveys.clear();
        const std::string survey = addSurvey(workbook, SurveyKind::asFound, "found");
        Survey& s = *findSurvey(workbook, survey);
        s.header.gauge.entry = Entry::diameter;
        s.header.gauge.setSize.reset();
        for (const auto& [depth, size] : {std::pair{"1", small}, std::pair{"2", large}})
            for (const char* axis : {"A", "B"})
                s.readings.push_back({{1, in(depth), axis}, typedMm(size), {}, {}, {}, {}});
        return compute(workbook, DisplayUnits::metric()).surveys[0].verdict;
    };
    EXPECT_EQ(verdict("80.000", "80.030"), Verdict::within);
    EXPECT_EQ(verdict("79.999", "80.030"), Verdict::outside);
    EXPECT_EQ(verdict("80.000", "80.031"), Verdict::outside);
}

// ISO 286-1:2010: i = 0.45·∛D + 0.001·D µm; IT7 = 16 i of the geometric mean of the step, rounded
// to the table's 30 µm. Checks the table value that the limits above come from.
TEST(Iso286, ToleranceUnit) {
    const double mean_mm = std::sqrt(50.0 * 80.0);
    const double i_um = 0.45 * std::cbrt(mean_mm) + 0.001 * mean_mm;
    EXPECT_NEAR(i_um, 1.85614, 5e-6);
    EXPECT_EQ(std::lround(16 * i_um), 30);
}

// ISO 14405-1: a distance between two opposed points is a two-point size. Radius R + a·cos nφ
// gives the diameter 2R + 2a·cos nφ for even n and 2R for odd n (derived).
std::vector<Diameter> lobed(int lobes, double amplitude_um) {
    std::vector<Diameter> diameters;
    for (const auto& [axis, degrees] : {std::pair{"A", 0.0}, std::pair{"B", 90.0}}) {
        const double phi = degrees * std::numbers::pi / 180;
        const double radii_um = amplitude_um * std::cos(lobes * phi) +
                                amplitude_um * std::cos(lobes * (phi + std::numbers::pi));
        diameters.push_back(
            {mm("10"), axis, mm("80") + Length::nearest(radii_um, Unit::micrometre)});
    }
    return diameters;
}

TEST(Iso14405, AnOvalShowsFourTimesItsAmplitudeAndOddLobesNothing) {
    const std::vector<std::string> axes{"A", "B"};
    const auto outOfRound = [&](int lobes) {
        return formOf(lobed(lobes, 5), axes, TaperRule::largestLessSmallest)->outOfRound->value;
    };
    // ISO 1101 roundness of this oval is radial: 2a = 10 µm, half of A − B.
    EXPECT_EQ(outOfRound(2), um("20"));
    EXPECT_EQ(outOfRound(3), Length()) << "three lobes pass as round on any two-point gauge";
    EXPECT_EQ(outOfRound(5), Length());
    EXPECT_EQ(outOfRound(4), Length()) << "four lobes on axes a quarter turn apart as well";
}

// Two-point sizes of real bores: Wooluru, Swamy & Nagesh, Int. J. Quality Research 8(3) (2014) 399
// (R data PH1XBAR::bore_diameter_data), first group of five, µm over 205.000 mm.
TEST(RealBores, MeanAndRangeOfAGroupAsPublished) {
    const std::vector<std::string> axes{"A", "B", "C", "D", "E"};
    std::vector<Diameter> group;
    const char* values[] = {"30", "20", "10", "45", "10"};
    for (std::size_t i = 0; i < axes.size(); ++i)
        group.push_back({mm("10"), axes[i], mm("205") + um(values[i])});
    const auto form = formOf(group, axes, TaperRule::largestLessSmallest);
    EXPECT_EQ(form->mean, mm("205.023"));
    EXPECT_EQ(form->outOfRound->value, um("35"));
}

} // namespace
} // namespace borewright
