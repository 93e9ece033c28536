// SPDX-License-Identifier: GPL-3.0-or-later
// The pistons' own order, and the finish sizes that they ask of bores still to be honed.
#include "core/sizing/matching.h"

#include "tests/support/bench_pistons.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

std::string orderOf(std::vector<Piston> pistons) {
    std::string text;
    for (const std::size_t place : ownOrder(pistons))
        text += (text.empty() ? "" : " ") + pistons[place].id;
    return text;
}

TEST(OwnOrder, CountsAsPeopleDo) {
    const auto labelled = [](const std::vector<std::string>& all) {
        std::vector<Piston> pistons;
        for (const std::string& label : all) {
            pistons.push_back(pistonOf(label, typedMm("70")));
            pistons.back().id = label;
        }
        return orderOf(pistons);
    };
    EXPECT_EQ(labelled({"10", "spare", "2", "1"}), "1 2 10 spare");
    EXPECT_EQ(labelled({"B2", "A10", "A9", "B"}), "A9 A10 B B2");
    EXPECT_EQ(labelled({"2b", "2", "02a", "1"}), "1 2 02a 2b");
    EXPECT_EQ(labelled({"99999999999999999999999", "100000000000000000000000", "7"}),
              "7 99999999999999999999999 100000000000000000000000");
    EXPECT_EQ(labelled({}), "");
}

TEST(OwnOrder, BySizeThenIdWhereLabelsAreAlike) {
    std::vector<Piston> pistons{pistonOf("", typedMm("70.02")), pistonOf("", typedMm("70.01")),
                                pistonOf("", typedMm("70.01")), pistonOf("", typedMm("70.00"))};
    pistons[0].id = "p1";
    pistons[1].id = "p10";
    pistons[2].id = "p2";
    pistons[3].id = "p3";
    pistons[3].size.reset();
    EXPECT_EQ(orderOf(pistons), "p2 p10 p1 p3");
}

TEST(FinishForPistons, PistonAndClearance) {
    const auto finish = finishForPistons({3, 1, 2}, benchFit());
    ASSERT_TRUE(finish) << finish.error().message();
    ASSERT_EQ(finish->size(), 3U);
    EXPECT_EQ((*finish)[1].bore, 2);
    EXPECT_EQ((*finish)[1].piston, 1U);
    EXPECT_EQ((*finish)[1].finish, in("3.4404"));
    EXPECT_EQ((*finish)[1].lower, in("3.4400"));
    EXPECT_EQ((*finish)[1].upper, in("3.4410"));
}

TEST(FinishForPistons, DecidedPairsFirst) {
    FitRecord fit = benchFit();
    fit.pistons[0].bore = 3;
    fit.pistons[1].bore = 6; // not among those to be honed
    fit.pistons[2].size.reset();
    fit.clearance.lower.reset();
    const auto finish = finishForPistons({1, 2, 3}, fit);
    ASSERT_TRUE(finish) << finish.error().message();
    EXPECT_EQ((*finish)[0].piston, 3U);
    EXPECT_EQ((*finish)[1].piston, 4U);
    EXPECT_EQ((*finish)[2].piston, 0U);
    EXPECT_FALSE((*finish)[0].lower);
}

// A piston proposed for a finished bore was dealt again to a bore still to be honed.
TEST(FinishForPistons, LeavesOutWhatIsTaken) {
    FitRecord fit = benchFit();
    const auto finish = finishForPistons({2, 3}, fit, {"p1", "p3"});
    ASSERT_TRUE(finish) << finish.error().message();
    EXPECT_EQ((*finish)[0].piston, 1U);
    EXPECT_EQ((*finish)[1].piston, 3U);
    fit.pistons[2].bore = 3;
    EXPECT_EQ((*finishForPistons({2, 3}, fit, {"p3"}))[1].piston, 2U) << "decided is decided";
    EXPECT_EQ(
        finishForPistons({1}, benchFit(), {"p1", "p2", "p3", "p4", "p5", "p6"}).error().message(),
        "no piston with its size and measuring height is left for bore 1");
}

TEST(FinishForPistons, RefusesWhatItCannotSay) {
    FitRecord fit = benchFit();
    const auto refusal = [&](const std::vector<int>& bores) {
        const auto finish = finishForPistons(bores, fit);
        return finish ? std::string("said") : finish.error().message();
    };
    EXPECT_EQ(refusal({}), "said");
    EXPECT_EQ(refusal({1, 2, 3, 4, 5, 6, 7}),
              "no piston with its size and measuring height is left for bore 7");
    fit.pistons[3].bore = 2;
    fit.pistons[3].height.reset();
    EXPECT_NE(refusal({1, 2}), "said") << "decided, but not measured";
    EXPECT_EQ(refusal({1, 3}), "said");
    fit.clearance = {};
    EXPECT_EQ(refusal({1}), "no clearance to aim at");
}

} // namespace
} // namespace borewright
