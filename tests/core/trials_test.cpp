// SPDX-License-Identifier: GPL-3.0-or-later
// The doubt of a bore's figures against figures that are known without trials.
#include "core/form/trials.h"
#include "core/statistics/distributions.h"
#include "core/statistics/range.h"
#include "tests/support/blocks.h"
#include "tests/support/printed.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

using namespace test;

constexpr double s = 2; // own noise, µm
const TrialOptions many{20, 20, 1, 10};

// Sizes by level, then axis, µm.
TrialBore boreOf(const std::vector<std::vector<double>>& levels, OwnDoubt own = {s, 0, 0}) {
    TrialBore bore;
    for (std::size_t level = 0; level < levels.size(); ++level)
        for (std::size_t axis = 0; axis < levels[level].size(); ++axis)
            bore.stations.push_back(
                {static_cast<int>(level), static_cast<int>(axis), levels[level][axis], true, own});
    return bore;
}
SharedDoubt sharedBy(double u_um, Distribution distribution = Distribution::normal,
                     std::vector<double> loading = {}) {
    return {Source::master, u_um, distribution, std::numeric_limits<double>::infinity(),
            std::move(loading)};
}
BoreDoubt doubtOf(const TrialBore& bore, const TrialOptions& options = many) {
    return doubtsOf({&bore, 1}, options).at(0);
}
// Every reading stands clear: 50 µm worn at the top, 20 µm oval there, less below.
TrialBore wornBore() {
    return boreOf({{150, 120}, {90, 80}, {40, 38}, {0, -20}});
}
bool same(const BoreDoubt& a, const BoreDoubt& b) {
    return a.trials == b.trials && std::ranges::equal(a.figure, b.figure, [](auto& x, auto& y) {
               if (!x || !y) return !x && !y;
               return x->u_um == y->u_um && x->freedom == y->freedom &&
                      x->below_um == y->below_um && x->above_um == y->above_um &&
                      x->gaugeAlone_um == y->gaugeAlone_um && x->noise_um == y->noise_um;
           });
}
constexpr Figure all[] = {Figure::largest, Figure::smallest, Figure::outOfRound, Figure::taper,
                          Figure::straightness};

TEST(Trials, ABoreGetsTheSameDoubtAloneAmongOthersAndAgain) {
    TrialBore first = wornBore();
    first.shared = {sharedBy(1), sharedBy(2, Distribution::rectangular)};
    TrialBore longer = boreOf({{1, 2}, {1, 1}, {2, 2}, {1, 3}, {0, 1}, {2, 1}});
    longer.shared = first.shared;
    TrialBore alone = boreOf({{1, 2}, {4, 3}}); // hangs on nothing that the others hang on
    TrialBore few = wornBore();
    few.ownFreedom = 5;
    const std::vector<TrialBore> bores{longer, first, alone, few};
    const auto together = doubtsOf(bores);
    const auto again = doubtsOf(bores);
    ASSERT_EQ(together.size(), 4U);
    for (std::size_t i = 0; i < bores.size(); ++i) {
        EXPECT_TRUE(same(together[i], again[i])) << i;
        EXPECT_TRUE(same(together[i], doubtOf(bores[i], {}))) << i;
    }
}

TEST(Trials, AClearFigureIsItselfPlusMinusNormal) {
    const double k = normalQuantile(0.975);
    TrialBore bore = wornBore();
    bore.shared = {sharedBy(1.5)};
    const BoreDoubt doubt = doubtOf(bore);
    for (const Figure figure : all) {
        const FigureDoubt& d = *doubt.of(figure);
        const double u = figure <= Figure::smallest ? std::hypot(s, 1.5) : std::sqrt(2.0) * s;
        EXPECT_TRUE(near(d.u_um, u, 1e-9, "µm"));
        EXPECT_TRUE(near(d.below_um, k * u, 0.02 * u, "µm"));
        EXPECT_TRUE(near(d.above_um, k * u, 0.02 * u, "µm"));
        EXPECT_TRUE(near(d.noiseAt(0.05), normalQuantile(0.95) * u, 0.02 * u, "µm"));
    }
}

TEST(Trials, BunchedReadingsReachFurtherInward) {
    const FigureDoubt clear = *doubtOf(boreOf({{0}, {-50}, {-50}, {-50}})).of(Figure::largest);
    const BoreDoubt bunched = doubtOf(boreOf({{0}, {0}, {0}, {0}}));
    const FigureDoubt& largest = *bunched.of(Figure::largest);
    const FigureDoubt& smallest = *bunched.of(Figure::smallest);
    EXPECT_TRUE(near(largest.above_um, clear.above_um, 0.02 * s, "µm"));
    // P(largest of four ≤ q) = Φ(q)⁴ is 95 %: 2.234 s.
    EXPECT_TRUE(near(largest.below_um, normalQuantile(std::pow(0.95, 0.25)) * s, 0.03 * s, "µm"));
    EXPECT_TRUE(near(smallest.above_um, largest.below_um, 0.03 * s, "µm")) << "the other way";
    EXPECT_TRUE(near(smallest.below_um, largest.above_um, 0.03 * s, "µm"));
}

TEST(Trials, APerfectBoreShowsTheMeanRange) {
    for (const int n : {2, 5, 6}) {
        const BoreDoubt doubt = doubtOf(boreOf(
            std::vector<std::vector<double>>(static_cast<std::size_t>(n), std::vector<double>{0})));
        const double expected = meanRange(n) * s;
        EXPECT_TRUE(near(doubt.of(Figure::taper)->gaugeAlone_um, expected, 0.01 * expected, "µm"));
        EXPECT_EQ(doubt.of(Figure::largest)->gaugeAlone_um, 0);
        EXPECT_FALSE(doubt.of(Figure::outOfRound)) << "one axis";
    }
    const BoreDoubt pair = doubtOf(boreOf({{0, 0}}));
    EXPECT_TRUE(near(pair.of(Figure::outOfRound)->gaugeAlone_um, meanRange(2) * s, 0.01 * s * 2));
    EXPECT_FALSE(pair.of(Figure::taper)) << "one level";
}

TEST(Trials, AgreesWithTheRangeOfAStraightBore) {
    const BoreDoubt doubt = doubtOf(boreOf({{0}, {0}, {0}, {0}, {0}}));
    for (const double r : {2.0, 3.0, 4.0})
        EXPECT_TRUE(
            near(doubt.of(Figure::taper)->chanceOfMore(r * s), 1 - rangeBelow(r, 5), 0.005));
}

// u² = cᵀCc with C of the survey, the contrast being what decides.
TEST(Trials, StandardDoubtIsThatOfTheCovariance) {
    Workbook workbook = inchBlock(1, {"0", "2", "4"});
    SurveyHeader survey;
    survey.gauge.gear = halfThouDialAndMicrometer();
    survey.zeroChecks = {{typedThou("0.1"), {survey.time.secondsSinceEpoch + 3600, 0}, {}}};
    std::vector<ReadAt> read;
    for (const char* depth : {"0", "2", "4"})
        read.push_back({{1, in(depth), "A"}, {{static_cast<std::int64_t>(600 * read.size()), 0}}});
    const SurveyDoubt known = *borewright::doubtOf(workbook, survey, in("3.5"), read);
    const auto c = covarianceOf(known);
    TrialBore bore = boreOf({{100}, {50}, {0}});
    for (std::size_t i = 0; i < 3; ++i)
        bore.stations[i].own = known.own[i];
    bore.shared = known.shared;
    const BoreDoubt doubt = doubtOf(bore);
    EXPECT_TRUE(near(doubt.of(Figure::largest)->u_um, std::sqrt(c[0]), 1e-9, "µm"));
    EXPECT_TRUE(near(doubt.of(Figure::smallest)->u_um, std::sqrt(c[8]), 1e-9, "µm"));
    const double taper = std::sqrt(c[0] + c[8] - 2 * c[2]);
    EXPECT_TRUE(near(doubt.of(Figure::taper)->u_um, taper, 1e-9, "µm"));
    EXPECT_TRUE(near(doubt.of(Figure::taper)->above_um, 1.93 * taper, 0.06 * taper, "µm"));
}

TEST(Trials, WhatIsSharedCancelsUnlessItGrowsDownTheBore) {
    TrialBore bore = wornBore();
    const BoreDoubt without = doubtOf(bore);
    bore.shared = {sharedBy(40), sharedBy(30, Distribution::rectangular)};
    const BoreDoubt with = doubtOf(bore);
    for (const Figure figure : {Figure::outOfRound, Figure::taper, Figure::straightness})
        EXPECT_TRUE(near(with.of(figure)->above_um, without.of(figure)->above_um, 0.01, "µm"));
    EXPECT_TRUE(near(with.of(Figure::largest)->u_um, std::sqrt(4 + 2500), 1e-9, "µm"));
    bore.shared = {sharedBy(3, Distribution::normal, {-1, -1, -0.3, -0.3, 0.3, 0.3, 1, 1})};
    const BoreDoubt warmEnd = doubtOf(bore);
    EXPECT_TRUE(near(warmEnd.of(Figure::taper)->u_um, std::sqrt(8 + 36), 1e-9, "µm"));
    EXPECT_TRUE(near(warmEnd.of(Figure::taper)->above_um, 1.96 * std::sqrt(44.0), 0.15, "µm"));
    EXPECT_TRUE(near(warmEnd.of(Figure::outOfRound)->u_um, std::sqrt(8.0), 1e-9, "µm"));
}

TEST(Trials, FewDegreesOfFreedomWidenByStudent) {
    for (const double freedom : {2.0, 5.0, 9.0, 61.0}) {
        TrialBore bore = wornBore();
        bore.ownFreedom = freedom;
        const BoreDoubt doubt = doubtOf(bore);
        const double k = studentQuantile(0.975, freedom);
        for (const Figure figure : {Figure::largest, Figure::taper}) {
            const FigureDoubt& d = *doubt.of(figure);
            EXPECT_TRUE(near(d.freedom, freedom, 1e-6));
            EXPECT_TRUE(near(d.above_um, k * d.u_um, 0.02 * k * d.u_um, "µm")) << freedom;
        }
        if (freedom < 9) continue; // too few trials in so long a tail
        const FigureDoubt& largest = *doubt.of(Figure::largest);
        const double tail = studentQuantile(1 - 2.0 / 256, freedom) * largest.u_um;
        EXPECT_TRUE(near(largest.noiseAt(2.0 / 256), tail, 0.012 * tail, "µm")) << freedom;
    }
}

TEST(Trials, EndToEndTaperHangsOnTheEndsAlone) {
    TrialBore bore = boreOf({{50}, {90}, {0}, {20}});
    bore.stations[0].own.normal_um = 1;
    bore.stations[3].own.normal_um = 3;
    bore.rule = TaperRule::endToEnd;
    const BoreDoubt doubt = doubtOf(bore);
    EXPECT_TRUE(near(doubt.of(Figure::taper)->u_um, std::sqrt(10.0), 1e-9, "µm"));
    EXPECT_TRUE(near(doubt.of(Figure::straightness)->u_um, std::sqrt(8.0), 1e-9, "µm"))
        << "still largest less smallest";
}

TEST(Trials, OutsideTheJudgedZoneOnlyStraightnessCounts) {
    TrialBore bore = boreOf({{200}, {50}, {20}, {0}});
    bore.stations[0].judged = false;
    bore.stations[0].own.normal_um = 5;
    const BoreDoubt doubt = doubtOf(bore);
    EXPECT_TRUE(near(doubt.of(Figure::largest)->u_um, 2, 1e-9, "µm"));
    EXPECT_TRUE(near(doubt.of(Figure::taper)->u_um, std::sqrt(8.0), 1e-9, "µm"));
    EXPECT_TRUE(near(doubt.of(Figure::straightness)->u_um, std::sqrt(29.0), 1e-9, "µm"));
    for (TrialStation& station : bore.stations)
        station.judged = false;
    const BoreDoubt none = doubtOf(bore);
    EXPECT_FALSE(none.of(Figure::largest));
    EXPECT_FALSE(none.of(Figure::taper));
    EXPECT_TRUE(none.of(Figure::straightness));
}

TEST(Trials, ThreeAxesAndOneStationAndNone) {
    const BoreDoubt three = doubtOf(boreOf({{0, 30, 60}, {0, 5, 10}}));
    EXPECT_TRUE(near(three.of(Figure::outOfRound)->u_um, std::sqrt(8.0), 1e-9, "µm"));
    EXPECT_TRUE(near(three.of(Figure::outOfRound)->below_um, 1.96 * std::sqrt(8.0), 0.08, "µm"));
    const BoreDoubt one = doubtOf(boreOf({{7}}));
    EXPECT_TRUE(one.of(Figure::largest) && one.of(Figure::smallest));
    EXPECT_FALSE(one.of(Figure::outOfRound) || one.of(Figure::taper));
    EXPECT_FALSE(doubtOf(TrialBore{}).of(Figure::largest));
    EXPECT_TRUE(doubtsOf({}).empty());
}

TEST(Trials, AGaugeWithoutNoiseHasNone) {
    for (const auto& levels : {std::vector<std::vector<double>>{{3, 3}, {3, 3}, {3, 3}},
                               std::vector<std::vector<double>>{{9, 4}, {3, 2}, {3, 1}}}) {
        const BoreDoubt doubt = doubtOf(boreOf(levels, {}));
        for (const Figure figure : all) {
            const FigureDoubt& d = *doubt.of(figure);
            EXPECT_EQ(d.u_um, 0);
            for (const double value : {d.below_um, d.above_um, d.gaugeAlone_um, d.noiseAt(0.05)})
                EXPECT_TRUE(near(value, 0, 1e-8, "µm"));
            EXPECT_EQ(d.chanceOfMore(0.1), 0);
        }
    }
}

TEST(FigureDoubt, ChanceOfMoreAndNoiseAtAreInverse) {
    const BoreDoubt doubt = doubtOf(boreOf({{0, 1}, {2, 0}, {1, 1}}));
    for (const Figure figure : all)
        for (const double chance : {0.01, 0.05, 0.2, 0.5, 0.9, 0.99}) {
            const FigureDoubt& d = *doubt.of(figure);
            EXPECT_TRUE(near(d.chanceOfMore(d.noiseAt(chance)), chance, 1e-4));
        }
    EXPECT_EQ(doubt.of(Figure::taper)->chanceOfMore(-1000), 1);
    EXPECT_EQ(doubt.of(Figure::taper)->chanceOfMore(1000), 0);
}

TEST(TrialOptions, RefuseWhatWouldNeverEnd) {
    EXPECT_TRUE(TrialOptions().check());
    for (const TrialOptions& bad :
         {TrialOptions{1, 10, 0.1, 1}, TrialOptions{5, 4, 0.1, 1}, TrialOptions{5, 10'001, 0.1, 1},
          TrialOptions{2, 4, 0, 1}, TrialOptions{2, 4, std::nan(""), 1}, TrialOptions{2, 4, 1, 0},
          TrialOptions{2, 4, 1, 1001}}) {
        EXPECT_FALSE(bad.check());
        const TrialBore bore = wornBore();
        EXPECT_TRUE(doubtsOf({&bore, 1}, bad).empty());
    }
}

TEST(TrialOptions, StopEarlyWhereTheFiguresStandOrHeCalls) {
    const TrialBore bore = wornBore();
    EXPECT_EQ(doubtOf(bore, {4, 100, 10, 1}).trials, 4U * trialsABatch);
    EXPECT_EQ(doubtOf(bore, {4, 7, 1e-9, 2}).trials, 14U * trialsABatch);
    int asked = 0;
    EXPECT_TRUE(doubtsOf({&bore, 1}, many, [&] { return ++asked == 3; }).empty());
    EXPECT_EQ(asked, 3) << "once a run";
}

} // namespace
} // namespace borewright
