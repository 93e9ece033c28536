// SPDX-License-Identifier: GPL-3.0-or-later
// What is decided must not decide for the rest.
#include "core/sizing/matching.h"

#include "tests/support/bench_pistons.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// Piston 1 decided for bore 1, 10.1 thou from the aim. Pistons 2 and 3 miss by 2.4 and 4.4 in
// bore 2, by 4.4 and 6.4 in bore 3.
std::vector<MeasuredBore> threeBores() {
    return {boreOf(1, in("3.4400")), boreOf(2, in("3.4426")), boreOf(3, in("3.4446"))};
}
FitRecord oneDecided() {
    FitRecord fit;
    fit.pistons = {pistonOf("1", typedIn("3.4257")), pistonOf("2", typedIn("3.4360")),
                   pistonOf("3", typedIn("3.4340"))};
    fit.pistons[0].bore = 1;
    fit.clearance.aim = typedThou("4.2");
    return fit;
}
std::vector<MeasuredBore> withOwnDoubt(std::vector<MeasuredBore> bores, const char* u_thou) {
    for (MeasuredBore& bore : bores)
        bore.ownU = thou(u_thou);
    return bores;
}

// The 10.1 thou were the worst whatever the others had, so that 2.4 and 6.4 passed for as good.
TEST(DecidedPairs, ALargeMissAmongThemHidesNoneOfTheRest) {
    const FitRecord fit = oneDecided();
    const Matching found = matchPistons(threeBores(), fit);
    EXPECT_EQ(labels(found, fit), "1 3 2") << "4.4 and 4.4, not 2.4 and 6.4";
    EXPECT_EQ(found.equals, 1);
    ASSERT_TRUE(found.best && found.ownOrder);
    EXPECT_EQ(found.best->worst, thou("10.1")) << "over all bores";
    EXPECT_EQ(found.best->sum, thou("18.9"));
    EXPECT_EQ(found.ownOrder->worst, thou("10.1"));
    EXPECT_EQ(found.ownOrder->sum, thou("18.9"));
}

TEST(DecidedPairs, AnyOfTheseIsAskedOfTheRest) {
    const FitRecord fit = oneDecided();
    // Their own order misses by 6.4, 2.0 more than the best: 2·√2·0.5 = 1.41 can tell that.
    Matching found = matchPistons(withOwnDoubt(threeBores(), "0.5"), fit);
    EXPECT_FALSE(found.anyOfThese) << "both have 10.1 thou, but in a bore that is decided";
    EXPECT_EQ(labels(found, fit), "1 3 2");
    found = matchPistons(withOwnDoubt(threeBores(), "0.8"), fit); // 2.26
    EXPECT_TRUE(found.anyOfThese);
    EXPECT_EQ(labels(found, fit), "1 2 3");
}

TEST(DecidedPairs, TheirDoubtIsNoMatter) {
    FitRecord fit = oneDecided();
    fit.pistons[0].doubt = typedThou("50");
    std::vector<MeasuredBore> bores = withOwnDoubt(threeBores(), "0.5");
    bores[0].ownU.reset();
    const Matching found = matchPistons(bores, fit);
    ASSERT_TRUE(found.tellApart);
    EXPECT_NEAR(found.tellApart->in(Unit::thou), 1.414214, 1e-6);
}

TEST(DecidedPairs, AllDecidedHaveTheirWorthAndNothingIsSearched) {
    FitRecord fit = oneDecided();
    fit.pistons[1].bore = 2;
    fit.pistons[2].bore = 3;
    const Matching found = matchPistons(withOwnDoubt(threeBores(), "0.5"), fit);
    EXPECT_EQ(found.why, "");
    EXPECT_EQ(labels(found, fit), "1 2 3");
    ASSERT_TRUE(found.best && found.ownOrder);
    EXPECT_EQ(found.best->worst, thou("10.1"));
    EXPECT_EQ(found.best->sum, thou("18.9"));
    EXPECT_EQ(found.ownOrder->piston, found.best->piston);
    EXPECT_EQ(found.equals, 1);
    EXPECT_FALSE(found.tellApart);
    EXPECT_FALSE(found.anyOfThese);
    ASSERT_TRUE(found.cells[1][2].swap) << "what a swap costs can still be seen";
    EXPECT_EQ(found.cells[1][2].swap->worst, thou("10.1"));
}

} // namespace
} // namespace borewright
