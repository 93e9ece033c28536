// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/ring_gap.h"

#include "core/statistics/random.h"
#include "tests/support/fitted.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

// Bores 1, 2, 3 of 3.4400, 3.4410 and 3.4420 in, all alike along their depth.
std::vector<MeasuredBore> three() {
    return {boreRead(1, {{"1", {"3.4400"}}, {"3", {"3.4400"}}}),
            boreRead(2, {{"1", {"3.4410"}}, {"3", {"3.4410"}}}),
            boreRead(3, {{"1", {"3.4420"}}, {"3", {"3.4420"}}})};
}

// All measured in bore 1, so that a ring in bore 3 gaps by 6.3 thou more.
Ring ringIn1(const char* label, const char* gap_in, std::optional<int> bore = {}, int groove = 1) {
    Ring ring = ringOf(gap_in, 1, "1");
    ring.id = std::string("g") + label + std::to_string(groove);
    ring.label = label;
    ring.bore = bore;
    ring.groove = groove;
    return ring;
}

FitRecord record(std::vector<Ring> rings, const char* aim_in = "0.012") {
    FitRecord fit;
    fit.rings = std::move(rings);
    fit.ringGap = limitsOf("0.008", "0.016", aim_in);
    return fit;
}

// Labels by bore, "-" for none.
std::string dealt(const RingDeal& deal, const FitRecord& fit) {
    std::string labels;
    for (const auto& ring : deal.ring)
        labels += (labels.empty() ? "" : " ") + (ring ? fit.rings[*ring].label : "-");
    return labels;
}
std::string dealt(const std::vector<MeasuredBore>& bores, const FitRecord& fit) {
    const auto deals = dealRings(bores, fit, true);
    return deals.size() == 1 ? dealt(deals[0], fit) : "not one groove";
}

TEST(RingDeals, TheSmallestGapGoesInTheLargestBore) {
    // 12.0 in bore 1; 8.9 + π = 12.04 in bore 2; 5.7 + 2π = 11.98 in bore 3.
    const FitRecord fit =
        record({ringIn1("a", "0.0057"), ringIn1("b", "0.0120"), ringIn1("c", "0.0089")});
    const auto deals = dealRings(three(), fit, true);
    ASSERT_EQ(deals.size(), 1U);
    EXPECT_EQ(dealt(deals[0], fit), "b c a");
    EXPECT_EQ(deals[0].groove, 1);
    EXPECT_EQ(deals[0].bores, (std::vector{1, 2, 3}));
    EXPECT_EQ(deals[0].equals, 1);
    EXPECT_EQ(deals[0].why, "");
    EXPECT_EQ(deals[0].gap[0]->smallest.gap, in("0.012")) << "each in the bore it is dealt to";
    EXPECT_NEAR(deals[0].gap[2]->smallest.gap.in(Unit::thou), 11.983, 0.001);
}

TEST(RingDeals, DecidedRingsStay) {
    const FitRecord fit =
        record({ringIn1("a", "0.0057", 1), ringIn1("b", "0.0120"), ringIn1("c", "0.0089")});
    EXPECT_EQ(dealt(three(), fit), "a b c") << "b and c: worst 3.1 thou, the other way round 6.3";
    FitRecord elsewhere = fit;
    elsewhere.rings[0].bore = 7;
    EXPECT_EQ(dealt(three(), elsewhere), "- - -") << "a ring decided for another bore is not free";
    elsewhere.rings.push_back(ringIn1("d", "0.0060"));
    EXPECT_EQ(dealt(three(), elsewhere), "b c d");
}

TEST(RingDeals, AllDecidedNeedsNoAim) {
    FitRecord fit =
        record({ringIn1("a", "0.0057", 3), ringIn1("b", "0.0120", 2), ringIn1("c", "0.0089", 1)});
    fit.ringGap = {};
    const RingDeal deal = dealRings(three(), fit, true).at(0);
    EXPECT_EQ(dealt(deal, fit), "c b a");
    EXPECT_EQ(deal.why, "");
}

TEST(RingDeals, EachGrooveIsDealtByItself) {
    const FitRecord fit = record({ringIn1("s1", "0.012", {}, 2), ringIn1("t1", "0.012"),
                                  ringIn1("s2", "0.013", {}, 2), ringIn1("s3", "0.014", {}, 2)});
    const auto deals = dealRings(three(), fit, true);
    ASSERT_EQ(deals.size(), 2U);
    EXPECT_EQ(deals[0].why, "1 ring of groove 1 for 3 bores");
    // The smallest of them goes in the largest bore; s2 and s3 come to 6.1 thou either way.
    EXPECT_EQ(dealt(deals[1], fit), "s2 s3 s1");
    EXPECT_EQ(deals[1].equals, 2);
}

TEST(RingDeals, MoreRingsThanBoresLeaveSomeOver) {
    const FitRecord fit = record({ringIn1("a", "0.0057"), ringIn1("b", "0.0120"),
                                  ringIn1("c", "0.0089"), ringIn1("d", "0.0300")});
    EXPECT_EQ(dealt(three(), fit), "b c a");
}

TEST(RingDeals, FewerRingsThanBoresDealNoneButTheDecided) {
    const FitRecord fit = record({ringIn1("a", "0.0057"), ringIn1("b", "0.0120", 2)});
    const RingDeal deal = dealRings(three(), fit, true).at(0);
    EXPECT_EQ(dealt(deal, fit), "- b -");
    EXPECT_EQ(deal.why, "1 ring of groove 1 for 2 bores");
    EXPECT_TRUE(deal.gap[1]);
}

TEST(RingDeals, ARingOfWhichNothingIsKnownIsLeftOutAndNamed) {
    FitRecord fit =
        record({ringIn1("a", "0.0057"), ringIn1("b", "0.0120"), ringIn1("c", "0.0089")});
    fit.rings[1].gap.reset();
    EXPECT_EQ(dealRings(three(), fit, true).at(0).why,
              "2 rings of groove 1 for 3 bores; ring b: its gap is not given");
    fit.rings.push_back(ringIn1("d", "0.0121"));
    EXPECT_EQ(dealt(three(), fit), "d c a");
    fit.rings[3].measuredIn = 9;
    EXPECT_EQ(dealRings(three(), fit, true).at(0).why,
              "2 rings of groove 1 for 3 bores; ring b: its gap is not given");
    fit.rings[1] = ringIn1("b", "0.0120");
    fit.rings[1].measuredIn.reset();
    EXPECT_EQ(dealRings(three(), fit, true).at(0).why,
              "2 rings of groove 1 for 3 bores; ring b: the bore it was measured in is not given");
}

TEST(RingDeals, OfNoRingAnythingIsKnown) {
    FitRecord fit = record({ringIn1("a", "0.0057")});
    fit.rings[0].measuredIn = 9;
    const RingDeal deal = dealRings(three(), fit, true).at(0);
    EXPECT_EQ(deal.why,
              "no ring of groove 1 for 3 bores; ring a: bore 9, in which it was measured, "
              "was not read");
    EXPECT_EQ(deal.refused[2], "ring a: bore 9, in which it was measured, was not read");
}

TEST(RingDeals, ADecidedRingThatCannotBeReckonedSaysWhy) {
    FitRecord fit =
        record({ringIn1("a", "0.0057", 2), ringIn1("b", "0.0120"), ringIn1("c", "0.0089")});
    fit.rings[0].measuredAt.reset();
    const RingDeal deal = dealRings(three(), fit, true).at(0);
    EXPECT_EQ(dealt(deal, fit), "b a c");
    EXPECT_FALSE(deal.gap[1]);
    EXPECT_EQ(deal.refused[1], "ring a: the depth it was measured at is not given");
}

TEST(RingDeals, ABoreReadOnItsLandAloneDoesNotSpoilTheOthers) {
    std::vector<MeasuredBore> bores = three();
    for (MeasuredAt& at : bores[1].at)
        at.zone = Zone::ridgeLand;
    const FitRecord fit = record({ringIn1("a", "0.0057"), ringIn1("b", "0.0120")});
    const RingDeal deal = dealRings(bores, fit, true).at(0);
    EXPECT_EQ(dealt(deal, fit), "b - a");
    EXPECT_EQ(deal.refused[1], "bore 2: nothing was read in the ring's travel");
}

TEST(RingDeals, WithoutAnythingToAimAtNoneIsDealt) {
    FitRecord fit =
        record({ringIn1("a", "0.0057"), ringIn1("b", "0.0120"), ringIn1("c", "0.0089")});
    fit.ringGap = limitsOf("", "0.016");
    EXPECT_EQ(dealt(three(), fit), "- - -");
    EXPECT_EQ(dealRings(three(), fit, true).at(0).why,
              "no gap to aim at: give the engine maker's limits");
    fit.ringGap = limitsOf("0.012", "");
    EXPECT_EQ(dealt(three(), fit), "b c a") << "the lower limit will do";
}

TEST(RingDeals, NothingGivesNothing) {
    EXPECT_TRUE(dealRings(three(), {}, true).empty());
    const auto deals = dealRings({}, record({ringIn1("a", "0.0057")}), true);
    ASSERT_EQ(deals.size(), 1U);
    EXPECT_TRUE(deals[0].bores.empty());
    EXPECT_EQ(deals[0].why, "");
}

TEST(RingDeals, EqualsAreToldAndTheRingsOwnOrderWins) {
    const FitRecord fit =
        record({ringIn1("10", "0.010"), ringIn1("9", "0.010"), ringIn1("11", "0.010")});
    const RingDeal deal = dealRings(three(), fit, true).at(0);
    EXPECT_EQ(deal.equals, 6);
    EXPECT_EQ(dealt(deal, fit), "9 10 11");
}

TEST(RingDeals, DoNotDependOnTheOrderOfEntry) {
    Random random(11);
    const auto below = [&](std::size_t count) {
        return static_cast<std::size_t>(random.next() % count);
    };
    for (int run = 0; run < 200; ++run) {
        std::vector<Ring> rings;
        for (const char* label : {"1", "2", "3", "4", "5"})
            rings.push_back(ringIn1(label, "0.010"));
        for (Ring& ring : rings)
            ring.gap = typedFrom(Length::whole(40 + static_cast<int>(below(100)), Unit::tenth),
                                 Unit::inch);
        FitRecord fit = record(rings);
        std::vector<MeasuredBore> bores = three();
        const std::string straight = dealt(bores, fit);
        for (std::size_t i = fit.rings.size(); i-- > 1;)
            std::swap(fit.rings[i], fit.rings[below(i + 1)]);
        std::ranges::reverse(bores);
        EXPECT_EQ(dealt(bores, fit), straight);
    }
}

} // namespace
} // namespace borewright
