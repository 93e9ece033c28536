// SPDX-License-Identifier: GPL-3.0-or-later
// Spread and analysis of variance: made data whose shares are known, ends, and refusals.
#include "core/statistics/anova.h"
#include "core/statistics/random.h"
#include "tests/support/printed.h"

#include <limits>

namespace borewright {
namespace {

using test::near;
using Groups = std::vector<std::vector<double>>;
using Cells = std::vector<Groups>;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

TEST(Spread, OfASample) {
    const auto spread = spreadOf(std::vector<double>{2, 4, 4, 4, 5, 5, 7, 9});
    ASSERT_TRUE(spread);
    EXPECT_EQ(spread->mean, 5);
    EXPECT_TRUE(near(spread->deviation, std::sqrt(32.0 / 7), 1e-14));
    EXPECT_EQ(spread->count, 8);
}

TEST(Spread, OfEqualValuesIsExactlyNothing) {
    EXPECT_EQ(spreadOf(std::vector<double>(7, 0.1))->deviation, 0);
    EXPECT_EQ(spreadOf(std::vector<double>(7, 87.3777))->mean, 87.3777);
}

TEST(Spread, NeedsTwoFiniteValues) {
    EXPECT_FALSE(spreadOf({}));
    EXPECT_FALSE(spreadOf(std::vector<double>{1}));
    EXPECT_FALSE(spreadOf(std::vector<double>{1, nan, 2}));
    EXPECT_FALSE(spreadOf(std::vector<double>{1, infinity}));
}

// Unequal groups by hand: means 2, 6, 9; grand 4.5; between 3·6.25 + 2·2.25 + 1·20.25 = 43.5,
// within 2 + 2 = 4; n0 = (6 − 14/6)/2.
TEST(OneWay, OfUnequalGroups) {
    const auto result = oneWay(Groups{{1, 2, 3}, {5, 7}, {9}});
    ASSERT_TRUE(result) << result.error().message();
    EXPECT_TRUE(near(result->betweenSquares, 43.5, 1e-12));
    EXPECT_TRUE(near(result->withinSquares, 4, 1e-12));
    EXPECT_EQ(result->betweenFreedom, 2);
    EXPECT_EQ(result->withinFreedom, 3);
    EXPECT_TRUE(near(result->f, 16.3125, 1e-12));
    EXPECT_TRUE(near(result->betweenVariance, (21.75 - 4.0 / 3) / (11.0 / 6), 1e-12));
    EXPECT_FALSE(result->betweenWasNegative);
}

// Over many made studies of unequal groups the two variances come out as they were put in.
TEST(OneWay, FindsTheSharesThatWerePutIn) {
    Random random(21);
    double within = 0;
    double between = 0;
    constexpr int studies = 4000;
    for (int study = 0; study < studies; ++study) {
        Groups groups;
        for (const int count : {2, 3, 5, 8, 3, 4}) {
            const double group = 3 * random.normal();
            std::vector<double>& values = groups.emplace_back();
            for (int i = 0; i < count; ++i)
                values.push_back(100 + group + random.normal());
        }
        const auto result = oneWay(groups);
        within += result->withinVariance / studies;
        between += result->betweenVariance / studies;
    }
    EXPECT_TRUE(near(within, 1, 0.03));
    EXPECT_TRUE(near(between, 9, 0.5));
}

TEST(OneWay, WithoutScatterHasItsEnds) {
    const auto apart = oneWay(Groups{{1, 1}, {2, 2}});
    EXPECT_EQ(apart->f, infinity);
    EXPECT_EQ(apart->chance, 0);
    const auto equal = oneWay(Groups{{0.1, 0.1}, {0.1, 0.1, 0.1}});
    EXPECT_EQ(equal->f, 0);
    EXPECT_EQ(equal->chance, 1);
    EXPECT_EQ(equal->betweenVariance, 0);
    EXPECT_FALSE(equal->betweenWasNegative);
}

TEST(OneWay, RefusesWhatCannotBeCompared) {
    for (const Groups& bad :
         {Groups{}, Groups{{1, 2}}, Groups{{1, 2}, {}}, Groups{{1}, {2}}, Groups{{1, nan}, {2, 3}},
          Groups{{1, infinity}, {2, 3}}, Groups{{1e200, 2}, {-1e200, 3}}}) {
        const auto result = oneWay(bad);
        ASSERT_FALSE(result) << bad.size() << " groups";
        EXPECT_FALSE(result.error().what.empty());
    }
}

// cell = person + spot + interaction + repeat, from the known shares.
Cells madeStudy(Random& random, double person, double spot, double interaction) {
    Cells cells;
    std::vector<double> spots(6);
    for (double& value : spots)
        value = spot * random.normal();
    for (int p = 0; p < 4; ++p) {
        const double own = person * random.normal();
        Groups& row = cells.emplace_back();
        for (const double at : spots) {
            const double cell = 1000 + own + at + interaction * random.normal();
            row.push_back({cell + random.normal(), cell + random.normal(), cell + random.normal()});
        }
    }
    return cells;
}

TEST(TwoWay, FindsTheSharesThatWerePutIn) {
    Random random(22);
    TwoWay mean{};
    constexpr int studies = 4000;
    for (int study = 0; study < studies; ++study) {
        const auto result = twoWay(madeStudy(random, 4, 3, 2), Interaction::kept);
        mean.repeatabilityVariance += result->repeatabilityVariance / studies;
        mean.personVariance += result->personVariance / studies;
        mean.spotVariance += result->spotVariance / studies;
        mean.interactionVariance += result->interactionVariance / studies;
    }
    EXPECT_TRUE(near(mean.repeatabilityVariance, 1, 0.03));
    EXPECT_TRUE(near(mean.interactionVariance, 4, 0.2));
    EXPECT_TRUE(near(mean.spotVariance, 9, 0.6));
    EXPECT_TRUE(near(mean.personVariance, 16, 1.2));
}

TEST(TwoWay, SquaresAddUp) {
    Random random(23);
    const auto t = twoWay(madeStudy(random, 1, 1, 1), Interaction::kept);
    EXPECT_TRUE(near(t->personSquares + t->spotSquares + t->interactionSquares + t->errorSquares,
                     t->totalSquares, 1e-9));
    EXPECT_EQ(t->personFreedom + t->spotFreedom + t->interactionFreedom + t->errorFreedom,
              t->totalFreedom);
    EXPECT_EQ(t->totalFreedom, 71);
}

TEST(TwoWay, PoolsJustWhatCouldBeChance) {
    Random random(24);
    const Cells strong = madeStudy(random, 1, 1, 10);
    EXPECT_FALSE(twoWay(strong, Interaction::pooled)->interactionPooled);
    const Cells none = madeStudy(random, 1, 1, 0);
    const auto pooled = twoWay(none, Interaction::pooled);
    ASSERT_GT(pooled->interactionChance, 0.05) << "made without interaction";
    EXPECT_TRUE(pooled->interactionPooled);
    EXPECT_EQ(pooled->repeatabilityFreedom, pooled->interactionFreedom + pooled->errorFreedom);
    EXPECT_EQ(pooled->interactionVariance, 0);
    EXPECT_FALSE(twoWay(none, Interaction::kept)->interactionPooled);
    // Pooling is decided by the level: at one hair above its chance the interaction is kept.
    const double chance = pooled->interactionChance;
    EXPECT_TRUE(twoWay(none, Interaction::pooled, chance)->interactionPooled);
    EXPECT_FALSE(twoWay(none, Interaction::pooled, chance + 1e-9)->interactionPooled);
}

TEST(TwoWay, OfEqualValuesIsNothing) {
    const auto t = twoWay(Cells(2, Groups(3, std::vector<double>(2, 0.7))), Interaction::pooled);
    EXPECT_EQ(t->totalSquares, 0);
    EXPECT_EQ(t->interactionF, 0);
    EXPECT_EQ(t->repeatabilityVariance, 0);
    EXPECT_EQ(t->personVariance, 0);
}

TEST(TwoWay, RefusesWhatCannotBeCompared) {
    const Groups row{{1, 2}, {3, 4}};
    for (const Cells& bad :
         {Cells{}, Cells{row}, Cells{{}, row}, Cells{row, {}}, Cells{{{1, 2}}, {{3, 4}}},
          Cells{{{1}, {2}}, {{3}, {4}}}, Cells{row, {{1, 2}, {3}}}, Cells{row, {{1, 2}}},
          Cells{row, {{1, 2}, {3, nan}}}, Cells{row, {{1, 2}, {3, 1e300}}}}) {
        const auto result = twoWay(bad, Interaction::kept);
        ASSERT_FALSE(result) << bad.size() << " persons";
        EXPECT_FALSE(result.error().what.empty());
    }
    for (const double level : {-0.1, 1.1, nan})
        EXPECT_FALSE(twoWay(Cells{row, row}, Interaction::pooled, level)) << level;
}

} // namespace
} // namespace borewright
