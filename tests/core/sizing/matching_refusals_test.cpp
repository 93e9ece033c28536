// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons that cannot be matched, or not all of them.
#include "core/sizing/matching.h"

#include "tests/support/bench_pistons.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

TEST(Matching, FewerPistonsThanBoresMatchNothing) {
    FitRecord fit = benchFit();
    fit.pistons.resize(2);
    fit.pistons[1].bore = 4;
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(found.why, "2 pistons for 6 bores");
    EXPECT_FALSE(found.best);
    EXPECT_EQ(labels(found, fit), "- - - 2 - -") << "what is decided stays decided";
    EXPECT_EQ(found.cells[0][0].clearance->value, thou("4.3")) << "still shown";
}

TEST(Matching, PistonsWithoutSizeOrHeightAreNotMatched) {
    FitRecord fit = benchFit();
    fit.pistons[0].size.reset();
    const Matching none = matchPistons(benchBores(), fit);
    EXPECT_EQ(none.why, "5 pistons with size and measuring height for 6 bores");
    EXPECT_NE(none.cells[0][0].refused, "");
    EXPECT_EQ(none.cells[0][1].refused, "");
    fit.pistons.push_back(pistonOf("7", typedIn("3.4358")));
    fit.pistons.push_back(pistonOf("8", typedIn("3.4358")));
    fit.pistons.back().height.reset();
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(labels(found, fit), "3 5 7 6 2 4");
    EXPECT_EQ(labels(found, fit, found.ownOrder->piston), "2 3 4 5 6 7");
    EXPECT_NE(found.cells[0][7].refused, "");
}

TEST(Matching, SaysWhatIsMissing) {
    FitRecord fit = benchFit();
    EXPECT_EQ(matchPistons({}, fit).why, "no bore measured");
    fit.clearance = {};
    const Matching noAim = matchPistons(benchBores(), fit);
    EXPECT_EQ(noAim.why, "no clearance to aim at");
    EXPECT_EQ(noAim.cells[0][0].clearance->value, thou("4.3")) << "a clearance needs no aim";
    fit = benchFit();
    fit.clearance.aim.reset();
    fit.clearance.upper.reset();
    EXPECT_EQ(matchPistons(benchBores(), fit).why, "no clearance to aim at");
    fit.pistons.clear();
    EXPECT_EQ(matchPistons(benchBores(), fit).why, "no pistons");
    std::vector<MeasuredBore> many;
    for (int bore = 1; bore <= mostRows + 1; ++bore)
        many.push_back(boreOf(bore, in("3.44")));
    EXPECT_EQ(matchPistons(many, benchFit()).why, "more than 64 bores");
}

// It used to say that no piston goes in.
TEST(Matching, SaysThatNothingWasReadWhereThePistonRuns) {
    std::vector<MeasuredBore> bores = benchBores();
    bores[1].at[0].zone = Zone::ridgeLand;
    EXPECT_EQ(matchPistons(bores, benchFit()).why,
              "nothing was read where the piston runs in bore 2");
    bores[4].at[0].zone = Zone::ridgeLand;
    EXPECT_EQ(matchPistons(bores, benchFit()).why,
              "nothing was read where the piston runs in bores 2, 5");
    FitRecord fit = benchFit();
    fit.pistons[1].bore = 2;
    fit.pistons[4].bore = 5;
    EXPECT_EQ(matchPistons(bores, fit).why, "") << "decided: nothing has to be found for them";
}

TEST(Matching, APistonLargerThanTheBoreGoesNowhereNear) {
    FitRecord fit = benchFit();
    fit.pistons[0].size = typedIn("3.4403"); // goes in bore 5 alone
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(found.chosen[4], 0U);
    EXPECT_FALSE(found.ownOrder) << "its first piston does not go in the first bore";
    EXPECT_FALSE(found.cells[0][0].swap);
    fit.pistons[0].size = typedIn("3.4404"); // as large as bore 5
    const Matching none = matchPistons(benchBores(), fit);
    EXPECT_EQ(none.why, "no way to give every bore a piston that goes in");
    EXPECT_FALSE(none.best);
}

} // namespace
} // namespace borewright
