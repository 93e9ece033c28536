// SPDX-License-Identifier: GPL-3.0-or-later
// How often "cleans" and "does not clean" are wrong, counted on bores whose truth is known.
#include "core/sizing/size_choice.h"
#include "core/statistics/random.h"
#include "tests/support/worn_bores.h"

#include <cmath>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

struct Shares {
    double cleans = 0;
    double doesNot = 0;
};

constexpr int trials = 20000;
constexpr double own_thou = 0.09;
constexpr double shared_thou = 0.09;

// A bore worn evenly by 4 thou at `levels` depths, and a size that by truth just cleans it: each
// answer but "too close to call" is as good as wrong.
Shares justCleaned(int levels, Centring centring) {
    Random random(7);
    const Length u = Length::nearest(std::hypot(own_thou, shared_thou), Unit::thou);
    const Length finish = centring == Centring::wornBore ? in("3.4240") : in("3.4280");
    const Offer offer{"just", Length{}, false, {OfferedBore{finish, {}, {}}}};
    int counts[4] = {};
    for (int trial = 0; trial < trials; ++trial) {
        MeasuredBore bore;
        bore.standardSize = in("3.4200");
        const double alike = shared_thou * random.normal();
        for (int level = 0; level < levels; ++level)
            bore.at.push_back(
                {Length::whole(level, Unit::inch), "B",
                 in("3.4240") + Length::nearest(alike + own_thou * random.normal(), Unit::thou),
                 Zone::ringTravel, u});
        const SizeChoice choice = chooseSize({cleanUpOf(bore, {})}, {offer}, centring, Length{});
        ++counts[static_cast<int>(choice.offers[0].cells[0].cleans)];
    }
    const auto share = [&](Cleans cleans) {
        return static_cast<double>(counts[static_cast<int>(cleans)]) / trials;
    };
    return {share(Cleans::yes), share(Cleans::no)};
}

TEST(SizeChoiceRisk, OneReadingIsWronglyCalledInOneOfTwentyEitherWay) {
    for (const Centring centring : {Centring::wornBore, Centring::originalAxis}) {
        const Shares shares = justCleaned(1, centring);
        EXPECT_NEAR(shares.cleans, 0.0495, 0.006);
        EXPECT_NEAR(shares.doesNot, 0.0495, 0.006);
    }
}

// Noise raises the largest of many, so that "cleans" is the surer and "does not clean" the less
// sure: the cost is a size more, never a bore left uncleaned.
TEST(SizeChoiceRisk, OfManyReadingsCleansIsSurerThanPromised) {
    const Shares shares = justCleaned(10, Centring::wornBore);
    EXPECT_LT(shares.cleans, 0.002);
    EXPECT_GT(shares.doesNot, 0.15) << "not a promise; stated in size_choice.h";
    EXPECT_LT(shares.doesNot, 0.35);
}

// A score felt as 6 thou is anything from 3 to 9. Finish sizes that just pass as "cleans" leave
// some of it in less than one of twenty.
TEST(SizeChoiceRisk, AFeltScoreIsLeftInLessThanOneOfTwenty) {
    Random random(8);
    const MeasuredBore bore = wornBore({{"1", "B", "3.4235"}}, Unit::inch, "3.4200", thou("0.13"));
    BoreWear wear;
    wear.damages = {damageOf(typedIn("1"), "B", typedThou("6"), true)};
    const CleanUp size = cleanUpOf(bore, wear).wornBore;
    const double finish_thou = (size.size + guardBand(size, {})).in(Unit::thou);
    int left = 0;
    for (int trial = 0; trial < trials; ++trial) {
        const double wall_thou = 3423.5 + 0.13 * random.normal();
        left += wall_thou + 2 * (3 + 6 * random.uniform()) > finish_thou;
    }
    EXPECT_LT(static_cast<double>(left) / trials, 0.05);
    EXPECT_GT(left, 0) << "nor is it wider than need be";
}

} // namespace
} // namespace borewright
