// SPDX-License-Identifier: GPL-3.0-or-later
// Outlooks of a bore that was honed since it was measured, with its pass logged or without.
#include "tests/support/hone_shop.h"
#include "tests/support/mild_bench.h"
#include "tests/support/says.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

using namespace test;

TEST(HonedSince, ABoreHonedSinceItWasReadIsMeasuredFirst) {
    HoneShop shop(mildBlock(5, 1));
    const HoneOutlook before = shop.outlook();
    const std::size_t planned = before.bores[0].next->measure.size();
    shop.log(1, *before.bores[0].next);
    const BoreOutlook bore = shop.outlook().bores[0];
    EXPECT_EQ(bore.outcome, HoneOutcome::notMeasured);
    EXPECT_EQ(bore.headline, "Honed since it was measured: measure it first.");
    EXPECT_TRUE(says(bore.sentences, "What tells most: A and B at "));
    EXPECT_EQ(bore.toRead.size(), planned) << "as many as were to be measured after it";
    EXPECT_FALSE(bore.next);
}

TEST(HonedSince, HoningThatNobodyLoggedIsSaidAndNotLearnedFrom) {
    HoneShop shop(mildBlock(5, 1));
    HoneOutlook outlook = shop.outlook();
    shop.hone(1, *outlook.bores[0].next);
    shop.measure(std::vector<int>{1});
    outlook = shop.outlook();
    ASSERT_TRUE(outlook.bores[0].next) << outlook.bores[0].headline;
    const int passes = outlook.stones[0].passes + outlook.stones[1].passes;
    for (int i = 0; i < 3; ++i)
        shop.stroke(1, *outlook.bores[0].next);
    shop.measure(std::vector<int>{1});
    outlook = shop.outlook();
    EXPECT_TRUE(says(outlook.bores[0].oddities, "with no pass logged between"))
        << "forgotten: " << outlook.bores[0].headline;
    EXPECT_EQ(outlook.stones[0].passes + outlook.stones[1].passes, passes);
    EXPECT_FALSE(outlook.bores[0].checked);
}

} // namespace
} // namespace borewright
