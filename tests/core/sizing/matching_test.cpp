// SPDX-License-Identifier: GPL-3.0-or-later
// Pistons matched to bores: the demonstrations' figures by hand, and by trying every matching.
#include "core/sizing/matching.h"

#include "core/statistics/random.h"
#include "tests/support/bench_pistons.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

TEST(Matching, SaltmarshAsFinished) {
    const FitRecord fit = benchFit();
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(found.why, "");
    EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
    ASSERT_TRUE(found.best && found.ownOrder);
    EXPECT_EQ(found.best->worst, thou("0.1"));
    EXPECT_EQ(found.best->sum, thou("0.2"));
    EXPECT_EQ(found.equals, 8);
    EXPECT_EQ(found.ownOrder->worst, thou("0.2"));
    EXPECT_EQ(found.ownOrder->sum, thou("0.8"));
    EXPECT_EQ(labels(found, fit, found.ownOrder->piston), "1 2 3 4 5 6");
    EXPECT_FALSE(found.tellApart) << "no doubt was given";
    EXPECT_FALSE(found.anyOfThese);
    const std::vector<Length> clearances{thou("4.1"), thou("4.1"), thou("4.2"),
                                         thou("4.2"), thou("4.2"), thou("4.2")};
    for (std::size_t i = 0; i < 6; ++i)
        EXPECT_EQ(found.cells[i][*found.chosen[i]].clearance->value, clearances[i])
            << "bore " << i + 1;
}

TEST(Matching, RushmereAsFinished) {
    const std::vector<MeasuredBore> bores{boreOf(1, mm("73.703")), boreOf(2, mm("73.706")),
                                          boreOf(3, mm("73.705"))};
    FitRecord fit;
    fit.pistons = {pistonOf("1", typedMm("73.618")), pistonOf("2", typedMm("73.621")),
                   pistonOf("3", typedMm("73.620"))};
    fit.clearance.lower = typedMm("0.075");
    fit.clearance.upper = typedMm("0.095"); // half-way: 0.085
    const Matching found = matchPistons(bores, fit);
    EXPECT_EQ(labels(found, fit), "1 2 3");
    ASSERT_TRUE(found.best);
    EXPECT_EQ(found.best->worst, Length());
    EXPECT_EQ(found.equals, 1);
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_EQ(found.cells[i][i].clearance->value, um("85"));
}

// Bore 3 with piston 3 (4.0) instead of 1: bore 1 then has piston 1 (4.3).
TEST(Matching, SaysWhatASwapWouldCost) {
    const Matching found = matchPistons(benchBores(), benchFit());
    const auto& swap = found.cells[2][2].swap;
    ASSERT_TRUE(swap);
    EXPECT_EQ(swap->worst, thou("0.2"));
    EXPECT_EQ(swap->sum, thou("0.4")); // 0.1 in bore 2, 0.2 and 0.1 in these
    EXPECT_EQ(found.cells[0][0].swap->sum, swap->sum) << "the same two exchanged";
    EXPECT_FALSE(found.cells[0][2].swap) << "it is there already";
}

TEST(Matching, ASwapWithAPistonLeftOver) {
    FitRecord fit = benchFit();
    fit.pistons.push_back(pistonOf("spare", typedIn("3.4350")));
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
    ASSERT_TRUE(found.cells[2][6].swap);
    EXPECT_EQ(found.cells[2][6].swap->worst, thou("0.8")) << "5.0 in bore 3";
    EXPECT_EQ(found.cells[2][6].swap->sum, thou("1.0"));
}

TEST(Matching, KeepsDecidedPairs) {
    FitRecord fit = benchFit();
    fit.pistons[5].bore = 1; // 4.1 as well
    fit.pistons[1].bore = 3; // 3.8: 0.4 from the aim
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(found.fixed, (std::vector{true, false, true, false, false, false}));
    EXPECT_EQ(found.chosen[0], 5U);
    EXPECT_EQ(found.chosen[2], 1U);
    ASSERT_TRUE(found.best && found.ownOrder);
    EXPECT_EQ(found.best->worst, thou("0.4"));
    EXPECT_EQ(labels(found, fit, found.ownOrder->piston), "6 1 2 3 4 5");
    EXPECT_TRUE(found.cells[0][0].swap) << "what a decided pair costs can still be seen";
}

TEST(Matching, APistonDecidedForABoreNotMeasuredStaysThere) {
    FitRecord fit = benchFit();
    fit.pistons[0].bore = 6;
    std::vector<MeasuredBore> bores = benchBores();
    bores.pop_back();
    const Matching found = matchPistons(bores, fit);
    EXPECT_EQ(found.why, "");
    EXPECT_EQ(std::ranges::count(found.chosen, std::optional<std::size_t>(0)), 0);
    EXPECT_FALSE(found.cells[2][0].swap) << "it is not free to go in bore 3";
    bores.push_back(boreOf(7, in("3.4400")));
    EXPECT_EQ(matchPistons(bores, fit).why, "5 pistons for 6 bores");
}

TEST(Matching, ADecidedPistonWithoutSizeStays) {
    FitRecord fit = benchFit();
    fit.pistons[1].bore = 5;
    fit.pistons[1].size.reset();
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(found.why, "");
    EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
    EXPECT_EQ(found.best->sum, thou("0.2")) << "its own miss is not known";
    EXPECT_FALSE(found.cells[4][1].clearance);
    EXPECT_NE(found.cells[4][1].refused, "");
}

TEST(Matching, ADecidedPistonLargerThanItsBoreStaysAndSaysSo) {
    FitRecord fit = benchFit();
    fit.pistons[1].size = typedIn("3.4410");
    fit.pistons[1].bore = 5;
    const Matching found = matchPistons(benchBores(), fit);
    EXPECT_EQ(found.chosen[4], 1U);
    EXPECT_EQ(found.best->worst, thou("4.8"));
    EXPECT_EQ(found.cells[4][1].clearance->verdict, Verdict::outside);
}

TEST(Matching, MorePistonsThanBores) {
    FitRecord fit = benchFit();
    fit.pistons.push_back(pistonOf("7", typedIn("3.4359"))); // 4.2 in bore 1
    fit.pistons.push_back(pistonOf("8", typedIn("3.4360"))); // 4.2 in bore 2
    const Matching found = matchPistons(benchBores(), fit);
    ASSERT_TRUE(found.best);
    EXPECT_EQ(found.best->sum, Length());
    EXPECT_EQ(labels(found, fit, found.ownOrder->piston), "1 2 3 4 5 6");
    EXPECT_EQ(found.equals, 12) << "4 and 7 are one size, 3, 6 and 8 another for two bores";
}

TEST(Matching, AnyOfTheseWhereTheReadingsCannotTell) {
    std::vector<MeasuredBore> bores = benchBores();
    for (MeasuredBore& bore : bores)
        bore.ownU = thou("0.03");
    FitRecord fit = benchFit();
    // 2·√2·0.03 = 0.085 thou: less than the 0.1 between the two.
    Matching found = matchPistons(bores, fit);
    ASSERT_TRUE(found.tellApart);
    EXPECT_NEAR(found.tellApart->in(Unit::thou), 0.084853, 1e-6);
    EXPECT_FALSE(found.anyOfThese);
    EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
    // With ± 0.08 of the pistons, u 0.04: 2·√2·0.05 = 0.141 thou.
    for (Piston& piston : fit.pistons)
        piston.doubt = typedThou("0.08");
    found = matchPistons(bores, fit);
    ASSERT_TRUE(found.tellApart);
    EXPECT_NEAR(found.tellApart->in(Unit::thou), 0.141421, 1e-6);
    EXPECT_TRUE(found.anyOfThese);
    EXPECT_EQ(labels(found, fit), "1 2 3 4 5 6");
    EXPECT_EQ(labels(found, fit, found.best->piston), "3 5 1 6 2 4") << "still shown";
    EXPECT_EQ(found.equals, 8);
    EXPECT_EQ(found.cells[0][1].swap->sum, thou("1.0")) << "a swap of what was chosen";
    bores[3].ownU.reset();
    found = matchPistons(bores, fit);
    EXPECT_FALSE(found.tellApart);
    EXPECT_FALSE(found.anyOfThese);
}

TEST(Matching, OwnOrderIsNotPreferredOutsideTheLimits) {
    std::vector<MeasuredBore> bores = benchBores();
    for (MeasuredBore& bore : bores)
        bore.ownU = thou("0.3");
    FitRecord fit = benchFit();
    fit.clearance.lower = typedThou("4.05"); // 4.0 in bores 2 and 3 in their own order
    const Matching found = matchPistons(bores, fit);
    EXPECT_FALSE(found.anyOfThese);
    EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
}

TEST(Matching, WhatIsAllDecidedIsNotAnyOfThese) {
    std::vector<MeasuredBore> bores = benchBores();
    for (MeasuredBore& bore : bores)
        bore.ownU = thou("1");
    FitRecord fit = benchFit();
    const std::vector<int> decided{3, 5, 1, 6, 2, 4};
    for (std::size_t i = 0; i < 6; ++i)
        fit.pistons[i].bore = decided[i];
    const Matching found = matchPistons(bores, fit);
    EXPECT_FALSE(found.anyOfThese);
    EXPECT_EQ(found.equals, 1);
    EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
}

TEST(Matching, IsIndependentOfTheOrderOfEntry) {
    std::vector<MeasuredBore> bores = benchBores();
    FitRecord fit = benchFit();
    Random random(20260410);
    for (int trial = 0; trial < 50; ++trial) {
        for (std::size_t i = bores.size(); i-- > 1;) {
            std::swap(bores[i], bores[random.next() % (i + 1)]);
            std::swap(fit.pistons[i], fit.pistons[random.next() % (i + 1)]);
        }
        const Matching found = matchPistons(bores, fit);
        EXPECT_EQ(found.bores, (std::vector{1, 2, 3, 4, 5, 6}));
        EXPECT_EQ(labels(found, fit), "3 5 1 6 2 4");
        EXPECT_EQ(found.equals, 8);
    }
}

// Worst and sum over the bores not decided, of every matching that keeps the decided pairs.
class EveryMatching {
public:
    EveryMatching(const Matching& matching, const FitRecord& fit)
        : m_matching(matching)
        , m_fit(fit) {
        place({}, Length(), Length());
    }
    std::optional<std::pair<Length, Length>> best;

private:
    void place(std::vector<std::size_t> taken, Length worst, Length sum) {
        if (taken.size() == m_matching.bores.size()) {
            if (!best || std::pair(worst, sum) < *best) best = {worst, sum};
            return;
        }
        const std::size_t bore = taken.size();
        for (std::size_t p = 0; p < m_matching.pistons.size(); ++p) {
            const auto decided = m_fit.pistons[m_matching.pistons[p]].bore;
            if (std::ranges::count(taken, p) > 0) continue;
            if (m_matching.fixed[bore] ? decided != m_matching.bores[bore] : decided.has_value())
                continue;
            const MatchCell& cell = m_matching.cells[bore][p];
            const Length miss = m_matching.fixed[bore] ? Length() : cell.miss;
            taken.push_back(p);
            place(taken, std::max(worst, miss), sum + miss);
            taken.pop_back();
        }
    }
    const Matching& m_matching;
    const FitRecord& m_fit;
};

TEST(Matching, IsNeverWorseThanTheBestOfAll) {
    Random random(20260411);
    for (int trial = 0; trial < 300; ++trial) {
        const int count = 2 + static_cast<int>(random.next() % 4);
        std::vector<MeasuredBore> bores;
        FitRecord fit;
        fit.clearance.aim = typedUm("85");
        const auto near = [&](std::int64_t size) {
            return size + static_cast<std::int64_t>(random.next() % 12);
        };
        for (int i = 1; i <= count; ++i)
            bores.push_back(boreOf(i, Length::whole(near(73700), Unit::micrometre)));
        for (int i = 1; i <= count + 1; ++i)
            fit.pistons.push_back(
                pistonOf(std::to_string(i), typedUm(std::to_string(near(73612)))));
        if (trial % 2 == 0) fit.pistons[random.next() % fit.pistons.size()].bore = count;
        const Matching found = matchPistons(bores, fit);
        ASSERT_TRUE(found.best) << found.why;
        const auto best = EveryMatching(found, fit).best;
        ASSERT_TRUE(best);
        Length worst;
        Length sum;
        Length decided;
        for (std::size_t i = 0; i < found.chosen.size(); ++i) {
            const Length miss = found.cells[i][*found.chosen[i]].miss;
            if (found.fixed[i]) {
                decided = miss;
                continue;
            }
            worst = std::max(worst, miss);
            sum += miss;
        }
        EXPECT_EQ(worst, best->first);
        EXPECT_EQ(sum, best->second);
        EXPECT_EQ(found.best->worst, std::max(worst, decided));
        EXPECT_EQ(found.best->sum, sum + decided);
    }
}

} // namespace
} // namespace borewright
