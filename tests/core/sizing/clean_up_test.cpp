// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/clean_up.h"
#include "tests/support/worn_bores.h"

#include <cmath>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// Axis B of a bore of 3.4200 with wear that falls from 4.3 to 0.8 thou; A with less.
MeasuredBore wornInch(std::optional<Length> u = {}) {
    return wornBore({{"0.25", "A", "3.4203"},
                     {"0.25", "B", "3.4205"},
                     {"0.60", "A", "3.4224"},
                     {"0.60", "B", "3.4243"},
                     {"1.20", "A", "3.4220"},
                     {"1.20", "B", "3.4237"},
                     {"1.80", "A", "3.4216"},
                     {"1.80", "B", "3.4231"},
                     {"3.75", "A", "3.4205"},
                     {"3.75", "B", "3.4208"}},
                    Unit::inch, "3.4200", u);
}

BoreWear scored(bool felt = false) {
    BoreWear wear;
    wear.damages = {damageOf(typedIn("1.40"), "B", typedThou("6"), felt)};
    return wear;
}

TEST(CleanUp, WearAlone) {
    const BoreCleanUp bore = cleanUpOf(wornInch(), {});
    EXPECT_EQ(bore.wornBore.size, in("3.4243"));
    EXPECT_EQ(bore.wornBore.depth, in("0.60"));
    EXPECT_EQ(bore.wornBore.axis, "B");
    EXPECT_FALSE(bore.wornBore.damage);
    ASSERT_TRUE(bore.originalAxis);
    EXPECT_EQ(bore.originalAxis->size, in("3.4286")) << "twice the wear of 4.3 thou";
    EXPECT_TRUE(bore.sideAssumed);
    EXPECT_TRUE(bore.undamaged);
    EXPECT_EQ(bore.largest.diameter, in("3.4243"));
    EXPECT_EQ(bore.smallest.diameter, in("3.4203"));
}

TEST(CleanUp, AScoreCountsTwice) {
    const BoreCleanUp bore = cleanUpOf(wornInch(), scored());
    EXPECT_EQ(bore.wornBore.size, in("3.4355")) << "3.5 thou of wear at 1.40, 6 deep twice";
    EXPECT_EQ(bore.wornBore.depth, in("1.40"));
    EXPECT_EQ(bore.wornBore.damage, std::size_t{0});
    EXPECT_EQ(bore.originalAxis->size, in("3.4390")) << "and the wear twice";
    EXPECT_EQ(bore.wornOnly.size, in("3.4243"));
    EXPECT_EQ(bore.originalOnly->size, in("3.4286"));
    EXPECT_FALSE(bore.undamaged);
}

TEST(CleanUp, APitInMillimetres) {
    const MeasuredBore bore = wornBore({{"24", "B", "73.214"},
                                        {"58", "B", "73.243"},
                                        {"70", "B", "73.261"},
                                        {"80", "B", "73.271"}},
                                       Unit::millimetre, "73.200");
    BoreWear wear;
    wear.damages = {damageOf(typedMm("66"), "B", typedMm("0.12"))};
    const BoreCleanUp cleanUp = cleanUpOf(bore, wear);
    EXPECT_EQ(cleanUp.wornBore.size, mm("73.495")) << "wear of 55 at 66 mm, 0.12 deep twice";
    EXPECT_EQ(cleanUp.originalAxis->size, mm("73.550"));
}

TEST(CleanUp, WornOnBothSidesAlikeTheOriginalAxisTakesNoMore) {
    BoreWear wear = scored();
    wear.side = WearSide::bothSides;
    const BoreCleanUp bore = cleanUpOf(wornInch(), wear);
    EXPECT_EQ(bore.originalAxis->size, in("3.4355"));
    EXPECT_EQ(bore.originalOnly->size, in("3.4243"));
    EXPECT_FALSE(bore.sideAssumed);
    wear.side = WearSide::oneSide;
    EXPECT_EQ(cleanUpOf(wornInch(), wear).originalAxis->size, in("3.4390"));
    EXPECT_FALSE(cleanUpOf(wornInch(), wear).sideAssumed) << "somebody said so";
}

TEST(CleanUp, LastBoredToReplacesTheStandardSize) {
    BoreWear wear;
    wear.madeTo = typedIn("3.4220");
    EXPECT_EQ(cleanUpOf(wornInch(), wear).originalAxis->size, in("3.4266")) << "wear is 2.3 thou";
    MeasuredBore unknown = wornInch();
    unknown.standardSize.reset();
    EXPECT_EQ(cleanUpOf(unknown, wear).originalAxis->size, in("3.4266"));
}

TEST(CleanUp, WithoutTheSizeItWasMadeToThereIsNoOriginalAxis) {
    MeasuredBore unknown = wornInch();
    unknown.standardSize.reset();
    const BoreCleanUp bore = cleanUpOf(unknown, scored());
    EXPECT_FALSE(bore.originalAxis);
    EXPECT_FALSE(bore.originalOnly);
    EXPECT_FALSE(bore.sideAssumed);
    EXPECT_EQ(&cleanUpBy(bore, Centring::originalAxis), &bore.wornBore);
    EXPECT_EQ(&withoutDamage(bore, Centring::originalAxis), &bore.wornOnly);
    const BoreCleanUp known = cleanUpOf(wornInch(), scored());
    EXPECT_EQ(&cleanUpBy(known, Centring::originalAxis), &*known.originalAxis);
    EXPECT_EQ(&cleanUpBy(known, Centring::wornBore), &known.wornBore);
    EXPECT_EQ(&withoutDamage(known, Centring::originalAxis), &*known.originalOnly);
}

TEST(CleanUp, ABoreSmallerThanItWasMadeToHasNoWear) {
    const MeasuredBore tight = wornBore({{"1", "A", "3.4190"}, {"2", "A", "3.4188"}});
    const BoreCleanUp bore = cleanUpOf(tight, {});
    EXPECT_EQ(bore.wornBore.size, in("3.4190"));
    EXPECT_EQ(bore.originalAxis->size, in("3.4200"));
    BoreWear wear;
    wear.damages = {damageOf(typedIn("1"), "A", typedThou("2"))};
    EXPECT_EQ(cleanUpOf(tight, wear).originalAxis->size, in("3.4240"));
}

TEST(CleanUp, ADamageThatAsksForLessThanTheWearDecidesNothing) {
    BoreWear wear;
    wear.damages = {damageOf(typedIn("3.75"), "A", typedThou("1"))};
    const BoreCleanUp bore = cleanUpOf(wornInch(), wear);
    EXPECT_EQ(bore.wornBore.size, in("3.4243"));
    EXPECT_FALSE(bore.wornBore.damage);
    EXPECT_FALSE(bore.undamaged);
}

TEST(CleanUp, DamageOutsideTheReadingsTakesTheNearest) {
    BoreWear wear;
    wear.damages = {damageOf(typedIn("0.05"), "B", typedThou("5"))};
    EXPECT_EQ(cleanUpOf(wornInch(), wear).wornBore.size, in("3.4305")) << "3.4205 at 0.25";
    wear.damages = {damageOf(typedIn("4.05"), "B", typedThou("5"))};
    EXPECT_EQ(cleanUpOf(wornInch(), wear).wornBore.size, in("3.4308")) << "3.4208 at 3.75";
}

TEST(CleanUp, DamageOnAnAxisNotReadOrNotSaidTakesTheLargerOverTheAxes) {
    for (const std::string axis : {"C", ""}) {
        BoreWear wear;
        wear.damages = {damageOf(typedIn("1.40"), axis, typedThou("6"))};
        const BoreCleanUp bore = cleanUpOf(wornInch(), wear);
        EXPECT_EQ(bore.wornBore.size, in("3.4355")) << "axis '" << axis << "'";
        EXPECT_EQ(bore.originalAxis->size, in("3.4390")) << "axis '" << axis << "'";
        EXPECT_EQ(bore.wornBore.axis, axis) << "as the user gave it";
    }
}

TEST(CleanUp, SeveralDamagesTheLargestDecidesWhateverTheirOrder) {
    BoreWear wear = scored();
    wear.damages.insert(wear.damages.begin(), damageOf(typedIn("1.40"), "A", typedThou("6.2")));
    EXPECT_EQ(cleanUpOf(wornInch(), wear).wornBore.damage, std::size_t{1})
        << "6.2 deep where there is less wear: 3.4343";
    std::swap(wear.damages[0], wear.damages[1]);
    EXPECT_EQ(cleanUpOf(wornInch(), wear).wornBore.damage, std::size_t{0});
}

TEST(CleanUp, OfEqualPlacesTheShallowerAndWearBeforeDamage) {
    const MeasuredBore even = wornBore({{"1", "A", "3.4240"}, {"2", "A", "3.4240"}});
    BoreWear wear;
    wear.damages = {damageOf(typedIn("1"), "A", TypedLength{})}; // no depth: no more than the wall
    const BoreCleanUp bore = cleanUpOf(even, wear);
    EXPECT_EQ(bore.wornBore.size, in("3.4240"));
    EXPECT_EQ(bore.wornBore.depth, in("1"));
    EXPECT_FALSE(bore.wornBore.damage);
    wear.damages = {damageOf(typedIn("1"), "A", typedThou("-3"))};
    EXPECT_EQ(cleanUpOf(even, wear).wornBore.size, in("3.4240")) << "never less than the wear";
}

TEST(CleanUp, DoubtIsThatOfTheDiameterTimesWhatItCounts) {
    const BoreCleanUp bore = cleanUpOf(wornInch(thou("0.15")), scored());
    EXPECT_EQ(bore.wornBore.u, thou("0.15")) << "a measured score adds nothing";
    EXPECT_EQ(bore.originalAxis->u, thou("0.3"));
    EXPECT_TRUE(bore.wornBore.gaugeDoubtKnown);
    EXPECT_TRUE(bore.wornBore.lessSure.empty());
    BoreWear both = scored();
    both.side = WearSide::bothSides;
    EXPECT_EQ(cleanUpOf(wornInch(thou("0.15")), both).originalAxis->u, thou("0.15"));
    EXPECT_FALSE(cleanUpOf(wornInch(), scored()).wornBore.u) << "none known, none stated";
    EXPECT_FALSE(cleanUpOf(wornInch(), scored()).wornBore.gaugeDoubtKnown);
}

TEST(CleanUp, AFeltScoreIsKnownToHalfItsDepth) {
    const BoreCleanUp bore = cleanUpOf(wornInch(thou("0.15")), scored(true));
    EXPECT_EQ(bore.wornBore.size, in("3.4355"));
    const double felt_thou = 2 * 3 / std::sqrt(3.0); // ± 3 thou deep, twice on the diameter
    EXPECT_NEAR(bore.wornBore.u->in(Unit::thou), std::hypot(felt_thou, 0.15), 1e-6);
    EXPECT_NEAR(bore.originalAxis->u->in(Unit::thou), std::hypot(felt_thou, 0.3), 1e-6);
    const BoreCleanUp noGauge = cleanUpOf(wornInch(), scored(true));
    EXPECT_NEAR(noGauge.wornBore.u->in(Unit::thou), felt_thou, 1e-6) << "its own part alone";
    EXPECT_FALSE(noGauge.wornBore.gaugeDoubtKnown);
}

// A felt score 1.4 deep at 3.75 asks for 3.4236, less than the wear's 3.4243, but may ask for more.
TEST(CleanUp, ALessSurePlaceWidensTheGuardBand) {
    BoreWear wear;
    wear.damages = {damageOf(typedIn("3.75"), "B", typedThou("1.4"), true)};
    const BoreCleanUp bore = cleanUpOf(wornInch(thou("0.1")), wear);
    EXPECT_EQ(bore.wornBore.size, in("3.4243"));
    EXPECT_FALSE(bore.wornBore.damage);
    EXPECT_EQ(bore.wornBore.u, thou("0.1"));
    ASSERT_EQ(bore.wornBore.lessSure.size(), 1U);
    EXPECT_EQ(bore.wornBore.lessSure[0].size, in("3.4236"));
    const double u_thou = std::hypot(1.4 / std::sqrt(3.0), 0.1);
    EXPECT_NEAR(guardBand(bore.wornBore, {}).in(Unit::thou), 1.65 * u_thou - 0.7, 1e-6);
    EXPECT_EQ(guardBand(bore.wornOnly, {}), thou("0.165"));
    EXPECT_EQ(guardBand(bore.wornBore, {DecisionRule::Kind::plain}), Length{});
    EXPECT_NEAR(guardBand(bore.wornBore, {DecisionRule::Kind::twoAndHalfPercent}).in(Unit::thou),
                1.96 * u_thou - 0.7, 1e-6);
    EXPECT_EQ(guardBand(cleanUpOf(wornInch(), {}).wornBore, {}), Length{}) << "no doubt known";
}

TEST(CleanUp, WhatTheSurveySaysOfItselfIsKept) {
    MeasuredBore measured = wornInch();
    measured.bore = 4;
    measured.survey = "s3";
    measured.coverage = 2.3;
    measured.complete = false;
    const BoreCleanUp bore = cleanUpOf(measured, {});
    EXPECT_EQ(bore.bore, 4);
    EXPECT_EQ(bore.survey, "s3");
    EXPECT_EQ(bore.coverage, 2.3);
    EXPECT_FALSE(bore.complete);
}

TEST(CleanUp, AllowancesAreTheUsersOrUsual) {
    SizingPlan plan;
    EXPECT_EQ(finishAllowanceOf(plan, true), in("0.0005"));
    EXPECT_EQ(finishAllowanceOf(plan, false), mm("0.010"));
    EXPECT_EQ(honeStockOf(plan, true), in("0.003"));
    EXPECT_EQ(honeStockOf(plan, false), mm("0.075"));
    plan.finishAllowance = typedMm("0.02");
    plan.honeStock = typedIn("0");
    EXPECT_EQ(finishAllowanceOf(plan, true), mm("0.02"));
    EXPECT_EQ(honeStockOf(plan, false), Length{}) << "nothing left is what he said";
}

} // namespace
} // namespace borewright
