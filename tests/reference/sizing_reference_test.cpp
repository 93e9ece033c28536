// SPDX-License-Identifier: GPL-3.0-or-later
// Clean-up sizes against plane geometry. The rules in core/sizing/clean_up.h are common practice
// with no source; the figures here are derived, not published: a worn cross-section is laid out as
// points, and the smallest circle about a fixed centre that leaves none of them outside is looked
// for. It also shows where the rules say more than is needed, and where they would say too little.
#include "core/sizing/size_choice.h"
#include "core/statistics/random.h"
#include "tests/support/offered_sizes.h"
#include "tests/support/printed.h"
#include "tests/support/worn_bores.h"

#include <functional>
#include <numbers>

namespace borewright {
namespace {

using namespace test;

constexpr double radius_thou = 1710; // of a bore of 3.4200 in

// The wall of one cross-section about the axis that it was bored on; 0° is axis B, the worn side.
struct Section {
    std::function<double(double)> wear_thou; // by angle, in degrees
    double score_thou = 0;
    int scoreAt_deg = 0;

    [[nodiscard]] double wall(int degrees) const { return radius_thou + wear_thou(degrees); }
    // What a two-point gauge reads along a line through that axis.
    [[nodiscard]] Length gauged(int degrees) const {
        return Length::nearest(wall(degrees) + wall((degrees + 180) % 360), Unit::thou);
    }
    // The middle between both walls along axis B, from the original axis.
    [[nodiscard]] double wornCentre() const { return (wall(0) - wall(180)) / 2; }
    // The smallest circle with its centre at `x` on axis B that no wall lies outside of.
    [[nodiscard]] double leastDiameter(double x) const {
        double farthest = 0;
        for (int degrees = 0; degrees < 360; ++degrees) {
            const double angle = degrees * std::numbers::pi / 180;
            const double r = wall(degrees) + (degrees == scoreAt_deg ? score_thou : 0);
            farthest = std::max(farthest, std::hypot(r * std::cos(angle) - x, r * std::sin(angle)));
        }
        return 2 * farthest;
    }
    [[nodiscard]] double onWornBore() const { return leastDiameter(wornCentre()); }
    [[nodiscard]] double onOriginalAxis() const { return leastDiameter(0); }

    // The same section as the user records it: both axes read, the score on its axis's line.
    [[nodiscard]] BoreCleanUp recorded(WearSide side) const {
        MeasuredBore bore = wornBore({{"1", "A", "0"}, {"1", "B", "0"}});
        bore.at[0].diameter = gauged(90);
        bore.at[1].diameter = gauged(0);
        BoreWear wear;
        wear.side = side;
        const Length deep = Length::nearest(score_thou, Unit::thou);
        if (score_thou > 0)
            wear.damages = {damageOf(typedIn("1"), scoreAt_deg % 180 == 0 ? "B" : "A",
                                     typedFrom(deep, Unit::thou))};
        return cleanUpOf(bore, wear);
    }
};

// A crescent e deep at 0° that falls away to both sides as a power of the cosine.
std::function<double(double)> crescent(double e_thou, double power) {
    return [=](double degrees) {
        const double cosine = std::cos(degrees * std::numbers::pi / 180);
        return cosine > 1e-12 ? e_thou * std::pow(cosine, power) : 0;
    };
}
// The same on both sides, e on the diameter.
std::function<double(double)> lens(double e_thou, double power) {
    return [=](double degrees) {
        return e_thou / 2 * std::pow(std::fabs(std::cos(degrees * std::numbers::pi / 180)), power);
    };
}

double thouOf(const CleanUp& cleanUp) {
    return cleanUp.size.in(Unit::thou);
}

// What lengths hold is exact; the sines are not.
constexpr double exact_thou = 1e-6;

// Derived, plane geometry: one-sided wear e of a standard size S cleans at S + e about the worn
// centre and at S + 2e about the original one. 3.4200 and 6 thou: 3.4260 and 3.4320, so that
// 0.010 over (3.4300) passes the one and fails the other. A score s adds 2s to both.
TEST(CleanUpGeometry, SixThouOnOneSideOf3420) {
    Section section{crescent(6, 1)};
    EXPECT_TRUE(near(section.onWornBore(), 3426, exact_thou, "thou"));
    EXPECT_TRUE(near(section.onOriginalAxis(), 3432, exact_thou, "thou"));
    const BoreCleanUp bore = section.recorded(WearSide::oneSide);
    EXPECT_EQ(bore.wornBore.size, in("3.4260"));
    EXPECT_EQ(bore.originalAxis->size, in("3.4320"));
    for (const Centring centring : {Centring::wornBore, Centring::originalAxis}) {
        const SizeChoice choice =
            chooseSize({bore}, {oversize("0.010", "3.4300", 1)}, centring, Length{});
        EXPECT_EQ(choice.offers[0].cells[0].cleans,
                  centring == Centring::wornBore ? Cleans::yes : Cleans::no);
    }
    section.score_thou = 4;
    EXPECT_TRUE(near(section.onWornBore(), 3434, exact_thou, "thou"));
    EXPECT_TRUE(near(section.onOriginalAxis(), 3440, exact_thou, "thou"));
    EXPECT_EQ(section.recorded(WearSide::oneSide).wornBore.size, in("3.4340"));
    EXPECT_EQ(section.recorded(WearSide::oneSide).originalAxis->size, in("3.4400"));
}

// Derived, by random sections: crescents that fall away as a cosine or faster, a score anywhere on
// the gauge's two axes.
TEST(CleanUpGeometry, CrescentAndScoreByPoints) {
    Random random(20);
    for (int trial = 0; trial < 400; ++trial) {
        const double e = random.uniform() * 10;
        const double s = random.uniform() * 8;
        const int at = 90 * static_cast<int>(random.next() % 4);
        const Section section{crescent(e, 1 + 5 * random.uniform()), s, at};
        const BoreCleanUp bore = section.recorded(WearSide::notSaid);
        const std::string what = std::to_string(e) + " worn, score " + std::to_string(s) + " at " +
                                 std::to_string(at) + "°";
        if (at == 0 || at == 180) {
            EXPECT_TRUE(near(thouOf(bore.wornBore), section.onWornBore(), exact_thou)) << what;
        } else { // the score's end lies off the shifted centre: e²/(4R) more, a hundredth of a thou
            const double more = section.onWornBore() - thouOf(bore.wornBore);
            EXPECT_GE(more, -exact_thou) << what;
            EXPECT_LE(more, e * e / (4 * radius_thou) + exact_thou) << what;
        }
        // The side of a score on axis B is not asked for: the worn one is taken. On the other side
        // the circle about the original axis need hold only the larger of the two.
        const double spare = at == 180 ? 2 * std::min(e, s) : 0;
        EXPECT_TRUE(near(thouOf(*bore.originalAxis), section.onOriginalAxis() + spare, exact_thou))
            << what;
    }
}

// Derived: worn alike on both sides both centres are one.
TEST(CleanUpGeometry, WornOnBothSidesAlike) {
    Random random(21);
    for (int trial = 0; trial < 200; ++trial) {
        const double e = random.uniform() * 10;
        const int at = 90 * static_cast<int>(random.next() % 4);
        const Section section{lens(e, 1 + 5 * random.uniform()), random.uniform() * 8, at};
        const BoreCleanUp bore = section.recorded(WearSide::bothSides);
        EXPECT_TRUE(near(thouOf(bore.wornBore), section.onWornBore(), exact_thou)) << e;
        EXPECT_TRUE(near(thouOf(*bore.originalAxis), section.onOriginalAxis(), exact_thou)) << e;
        // Taken as one side where nobody says, it asks for e more than is needed.
        const double assumed = thouOf(*section.recorded(WearSide::notSaid).originalAxis);
        EXPECT_GE(assumed, section.onOriginalAxis() - exact_thou) << e;
        EXPECT_LE(assumed, section.onOriginalAxis() + e + exact_thou) << e;
    }
}

// Derived, the limit of the rule: two axes do not see wear that is as deep 60° to either side as
// in the middle. About the worn centre it takes half of e more than the gauge's largest reading;
// about the original axis nothing more.
TEST(CleanUpGeometry, WideWearTakesMoreAboutTheWornCentreThanTheGaugeShows) {
    const double e = 6;
    const Section section{[=](double degrees) { return degrees <= 60 || degrees >= 300 ? e : 0; }};
    const BoreCleanUp bore = section.recorded(WearSide::oneSide);
    EXPECT_EQ(bore.wornBore.size, in("3.4260"));
    EXPECT_TRUE(near(section.onWornBore(), 3420 + 1.5 * e, 0.01, "thou"));
    EXPECT_GT(thouOf(*bore.originalAxis), section.onWornBore()) << "which the other size covers";
    EXPECT_TRUE(near(thouOf(*bore.originalAxis), section.onOriginalAxis(), exact_thou, "thou"));
}

// Common practice, no source: all bores of a block go to the smallest oversize that cleans up the
// worst. One bore worn by 12 thou takes its five good neighbours with it.
TEST(CommonPractice, AllBoresGoToTheSizeThatCleansTheWorst) {
    std::vector<std::optional<BoreCleanUp>> bores;
    for (int number = 1; number <= 6; ++number)
        bores.emplace_back(Section{crescent(number == 4 ? 12 : 3, 1)}.recorded(WearSide::oneSide));
    const SizeChoice choice =
        chooseSize(bores,
                   {oversize("0.010", "3.4300", 6), oversize("0.020", "3.4400", 6),
                    oversize("0.030", "3.4500", 6)},
                   Centring::wornBore, in("0.0005"));
    ASSERT_TRUE(choice.chosen);
    EXPECT_EQ(choice.offers[*choice.chosen].offer.name, "0.020");
    EXPECT_EQ(choice.offers[*choice.chosen].deciding, std::size_t{3});
}

// Common practice, no source: 0.002 to 0.004 in on the diameter left for the hone after boring.
TEST(CommonPractice, HoneStockLiesWithinTheUsual) {
    for (const bool inches : {true, false}) {
        EXPECT_GE(honeStockOf({}, inches), in("0.002"));
        EXPECT_LE(honeStockOf({}, inches), in("0.004"));
        EXPECT_LT(finishAllowanceOf({}, inches), honeStockOf({}, inches))
            << "what has to come off below the deepest mark is part of what is left";
    }
}

// JCGM 100:2008 (GUM), 4.3.7 (seen): limits ± a with nothing known between them have a standard
// uncertainty of a/√3. A score felt as 6 thou is taken as ± 3, and counts twice on the diameter.
TEST(Gum, AFeltScoreIsRectangular) {
    MeasuredBore bore = wornBore({{"1", "B", "3.4235"}}, Unit::inch, "3.4200", thou("0"));
    BoreWear wear;
    wear.damages = {damageOf(typedIn("1"), "B", typedThou("6"), true)};
    EXPECT_TRUE(printed(cleanUpOf(bore, wear).wornBore.u->in(Unit::thou), "3.4641", "thou"));
}

} // namespace
} // namespace borewright
