// SPDX-License-Identifier: GPL-3.0-or-later
// Clearances and ring gaps against standards, handbooks and what follows from them. The source
// stands beside each check.
#include "core/constants.h"
#include "core/sizing/clearance.h"
#include "core/sizing/ring_gap.h"
#include "tests/support/fitted.h"
#include "tests/support/printed.h"

#include <cmath>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

MeasuredBore evenBore(Length size, const char* u_thou = "") {
    MeasuredBore bore = boreRead(1, {{"1", {"1", "1"}}, {"3", {"1", "1"}}});
    for (MeasuredAt& at : bore.at)
        at.diameter = size;
    return *u_thou == '\0' ? bore : withDoubt(bore, u_thou, u_thou);
}

Piston warmPiston(TypedLength size, const char* temperature) {
    Piston piston = pistonOf("1");
    piston.size = size;
    piston.temperature = *readTemperature(temperature, Scale::celsius);
    return piston;
}

Length clearanceAt(Length bore, Length piston) {
    Piston made = pistonOf("1");
    made.size = typedFrom(piston, Unit::millimetre);
    return clearanceOf(evenBore(bore), made, {})->value;
}

// ISO 286-1:2010. Hole: 80 H7 = 80.000 … 80.030 (values seen). Shafts from memory: upper deviation
// of g −10 µm and of f −30 µm at 80 mm; IT6 19 and IT7 30 µm (seen). Least clearance: the smallest
// hole less the largest shaft, greatest: the largest hole less the smallest shaft.
TEST(Iso286Fits, LeastAndGreatestClearance) {
    const struct {
        const char* fit;
        Length largest, smallest; // of the shaft
        Length least, greatest;
    } fits[] = {{"80 H7/g6", mm("79.990"), mm("79.971"), um("10"), um("59")},
                {"80 H7/f7", mm("79.970"), mm("79.940"), um("30"), um("90")},
                {"80 H7/h6", mm("80.000"), mm("79.981"), um("0"), um("49")}};
    for (const auto& fit : fits) {
        EXPECT_EQ(clearanceAt(mm("80.000"), fit.largest), fit.least) << fit.fit;
        EXPECT_EQ(clearanceAt(mm("80.030"), fit.smallest), fit.greatest) << fit.fit;
    }
}

// The deviations above by ISO 286-1's formulas (from memory): g 2.5·D^0.34, f 5.5·D^0.41 µm, D the
// geometric mean of the step 50 … 80 mm.
TEST(Iso286Fits, DeviationsByTheirFormulas) {
    const double mean_mm = std::sqrt(50.0 * 80.0);
    EXPECT_EQ(std::lround(2.5 * std::pow(mean_mm, 0.34)), 10);
    EXPECT_EQ(std::lround(5.5 * std::pow(mean_mm, 0.41)), 30);
}

// A fit's limits as limits of the clearance: every hole and shaft on its own limits is within them.
TEST(Iso286Fits, PartsOnTheirLimitsAreWithin) {
    FitLimits limits;
    limits.lower = typedUm("30");
    limits.upper = typedUm("90");
    for (const char* hole : {"80.000", "80.030"})
        for (const char* shaft : {"79.970", "79.940"}) {
            Piston piston = pistonOf("1");
            piston.size = typedMm(shaft);
            EXPECT_EQ(clearanceOf(evenBore(mm(hole)), piston, limits)->verdict, Verdict::within)
                << hole << " with " << shaft;
        }
}

// Callister, Materials Science and Engineering, Table B.6 (seen): cast aluminium 356.0 21.5e-6/°C.
// ISO 3650 (from memory): steel 11.5e-6/°C; the micrometer is of steel and as warm as the piston.
// ΔD = D·(α_piston − α_steel)·ΔT (derived): 80 mm by 10 °C 8.00 µm, 3.000 in from 68 to 90 °F
// 0.367 thou. Dividing by 1 + α·ΔT takes off 2 nm and 0.0001 thou.
TEST(PistonExpansion, OfCastAluminium) {
    EXPECT_EQ(expansionOf(Piston{}), 21.5e-6);
    const Length metric = mm("80") - sizeOf(warmPiston(typedMm("80"), "30 C"))->at20;
    EXPECT_TRUE(printed(metric.in(Unit::micrometre), "8.00", "µm"));
    const Length inch = in("3") - sizeOf(warmPiston(typedIn("3"), "90 F"))->at20;
    EXPECT_TRUE(printed(inch.in(Unit::thou), "0.367", "thou"));
}

// What a steel micrometer at the piston's temperature reads of a true length.
TypedLength readBySteel(const char* length_mm, double celsius) {
    const double reading_mm = mm(length_mm).in(Unit::millimetre) / (1 + 11.5e-6 * (celsius - 20));
    return typedFrom(Length::nearest(reading_mm, Unit::millimetre), Unit::millimetre);
}

// NIST TN 1900, example E13 (seen): a bar of 1.4999 m at 288.15 K is 1.5021 m at 373.10 K,
// α = 1.73e-5 (1.72662e-5 unrounded, derived). Both states come to one length at 20 °C, but for
// 85·5·α², 0.2 µm.
TEST(PistonExpansion, BringsBothStatesOfABarToOneLength) {
    Piston cold = warmPiston(readBySteel("1499.9", 15), "15 C");
    Piston hot = warmPiston(readBySteel("1502.1", 99.95), "99.95 C");
    cold.expansion = hot.expansion = 17.2662;
    const Length apart = sizeOf(hot)->at20 - sizeOf(cold)->at20;
    EXPECT_TRUE(near(apart.in(Unit::micrometre), 0, 0.3, "µm"));
}

// The piston's cast size goes up as the bore does: 3.4158 and 3.4200 in standard, 3.4358 and 3.4400
// at 0.020 in over, 4.2 thou both (derived). What is measured across the skirt and where the bore
// is smallest: common practice, no source.
TEST(ClearanceOfTheTrade, IsTheSameAtEveryOversize) {
    EXPECT_EQ(clearanceAt(in("3.4200"), in("3.4158")), thou("4.2"));
    EXPECT_EQ(clearanceAt(in("3.4200") + thou("20"), in("3.4158") + thou("20")), thou("4.2"));
}

// Two sets of gear (inputs from memory, sums derived): u of a reading 0.1275 thou with a tenth dial
// set in a ring, 0.2818 with a half-thou dial set by micrometer; piston u 0.10. ISO 14253-1:2017:
// w = 1.65 u, so that of a band of limits what is left to be called within is band − 2w.
struct Left {
    double u_thou, w_thou;
    double band_thou; // between the smallest and largest clearance called within
    bool anyWithin;
};
Left leftOf(const char* readingU_thou, const char* band_thou) {
    FitLimits limits;
    limits.lower = typedThou("3");
    limits.upper = typedFrom(thou("3") + thou(band_thou), Unit::thou);
    Piston piston = pistonOf("3.4358");
    piston.doubt = typedThou("0.20");
    Left left{0, 0, 0, false};
    std::optional<Length> first;
    const Length stepped = Length::whole(1, Unit::tenth);
    for (Length c = thou("2"); c < thou("5");
         c += Length::fromPicometres(stepped.picometres() / 1000)) {
        const auto clearance =
            clearanceOf(evenBore(in("3.4358") + c, readingU_thou), piston, limits);
        left.u_thou = clearance->u->in(Unit::thou);
        if (clearance->verdict != Verdict::within) continue;
        if (!first) first = c;
        left.w_thou = (*first - thou("3")).in(Unit::thou);
        left.band_thou = (c - *first).in(Unit::thou);
        left.anyWithin = true;
    }
    return left;
}

TEST(ClearanceOfTheTrade, WhatTwoSetsOfGearLeaveOfABand) {
    const Left fine = leftOf("0.1275", "1.0");
    EXPECT_TRUE(near(fine.u_thou, 0.162, 0.0005, "thou"));
    EXPECT_TRUE(near(fine.w_thou, 0.267, 0.0006, "thou"));
    EXPECT_TRUE(near(fine.band_thou, 0.465, 0.0006, "thou"));
    EXPECT_FALSE(leftOf("0.1275", "0.5").anyWithin) << "0.5 − 2w is −0.035: nothing can be";
    EXPECT_TRUE(leftOf("0.1275", "0.535").anyWithin) << "2w is 0.5347";
    const Left coarse = leftOf("0.2818", "1.0");
    EXPECT_TRUE(near(coarse.u_thou, 0.299, 0.0005, "thou"));
    EXPECT_TRUE(near(coarse.w_thou, 0.493, 0.0006, "thou"));
    EXPECT_TRUE(near(coarse.band_thou, 0.013, 0.0006, "thou"));
}

// hot = cold + D·α_bore·ΔT_bore − D·α_piston·ΔT_skirt, 3.44 in, 4.2 thou cold, bore 16e-6 at +60
// °C, piston 21e-6 (derived): the sign turns on the skirt's temperature.
TEST(HotClearanceModel, TurnsItsSignOnTheSkirt) {
    const auto hot = [](double skirt) {
        return hotClearance(thou("4.2"), in("3.44"), 16e-6, 60, 21e-6, skirt).in(Unit::thou);
    };
    EXPECT_TRUE(printed(hot(80), "1.72", "thou"));
    EXPECT_TRUE(printed(hot(130), "-1.89", "thou"));
}

// Gap of 20 thou where the bore is `size`, in a bore that is `wider` larger.
Length gapMore(Length size, Length wider) {
    MeasuredBore other = evenBore(size + wider);
    other.bore = 2;
    const auto gap = ringGapOf(other, evenBore(size), ringOf("0.020", 1, "1"), {}, thou("2"));
    return gap->smallest.gap - in("0.020");
}

// A circle's circumference grows by π a unit of its diameter (derived). "About 3 thou of gap a thou
// of bore": common practice, no source.
TEST(RingGapOfTheTrade, GrowsByPiTimesTheBore) {
    EXPECT_TRUE(printed(gapMore(in("3.44"), in("0.001")).in(Unit::inch), "0.003142", "in"));
    EXPECT_TRUE(printed(gapMore(in("3.44"), in("0.010")).in(Unit::inch), "0.031416", "in"));
    EXPECT_TRUE(printed(gapMore(mm("80"), mm("0.25")).in(Unit::millimetre), "0.7854", "mm"));
    EXPECT_TRUE(printed(gapMore(in("3.44"), thou("1")).in(Unit::thou), "3", "thou"));
}

// A ring of grey iron (Callister, Table B.6, seen: 11.4e-6/°C) 100 °C hotter than the wall of
// a 3.44 in bore is longer by what a bore smaller by D·α·ΔT takes from its gap: 12.32 thou
// (derived).
TEST(RingGapOfTheTrade, ClosesAsTheRingWarms) {
    const Length warmer = Length::nearest(3.44 * constants::expansionGreyIron * 100, Unit::inch);
    EXPECT_TRUE(printed(-gapMore(in("3.44"), -warmer).in(Unit::thou), "12.32", "thou"));
}

} // namespace
} // namespace borewright
