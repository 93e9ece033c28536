// SPDX-License-Identifier: GPL-3.0-or-later
// Assignments against published examples; those of the least sum alone are checked on its search.
#include "core/sizing/assignment.h"
#include "core/sizing/assignment_graph.h"

#include <gtest/gtest.h>

namespace borewright {
namespace {

std::int64_t leastSumOf(const AssignmentProblem& problem) {
    const LeastSum least = leastSum(problem, 1'000'000);
    return costOf(problem, least.column).value_or(AssignmentCost{-1, -1}).sum;
}

// Test tables of SciPy's linear_sum_assignment (square: seen; with a fourth column: from memory).
TEST(AssignmentReference, LeastSumOfScipysTables) {
    EXPECT_EQ(leastSumOf({3, 3, {400, 150, 400, 400, 450, 600, 300, 225, 300}}), 850);
    EXPECT_EQ(leastSumOf({3, 3, {10, 10, 8, 9, 8, 1, 9, 7, 4}}), 18);
    EXPECT_EQ(leastSumOf({3, 4, {400, 150, 400, 1, 400, 450, 600, 2, 300, 225, 300, 3}}), 452);
    EXPECT_EQ(leastSumOf({3, 4, {10, 10, 8, 11, 9, 8, 1, 1, 9, 7, 4, 10}}), 15);
}

// Their bottlenecks, by trying all six. In the second the least sum, 18, has a worst of 10.
TEST(AssignmentReference, WorstBeforeSumOfScipysTables) {
    const auto first = assign({3, 3, {400, 150, 400, 400, 450, 600, 300, 225, 300}});
    ASSERT_TRUE(first);
    EXPECT_EQ(first->worst, 400);
    EXPECT_EQ(first->sum, 850);
    EXPECT_EQ(first->column, (std::vector{1, 0, 2}));
    const auto second = assign({3, 3, {10, 10, 8, 9, 8, 1, 9, 7, 4}});
    ASSERT_TRUE(second);
    EXPECT_EQ(second->worst, 9);
    EXPECT_EQ(second->sum, 24);
    EXPECT_EQ(second->column, (std::vector{2, 0, 1}));
}

// Burkard, Dell'Amico & Martello, Assignment Problems (SIAM 2009), example 6.5: bottleneck 5
// (seen). The least sum with that worst, 10, is by trying all 24.
TEST(AssignmentReference, BottleneckOfBurkardsExample) {
    const auto found = assign({4, 4, {8, 2, 3, 3, 2, 7, 5, 8, 0, 9, 8, 4, 2, 5, 6, 3}});
    ASSERT_TRUE(found);
    EXPECT_EQ(found->worst, 5);
    EXPECT_EQ(found->sum, 10);
    EXPECT_EQ(found->column, (std::vector{1, 2, 0, 3}));
    EXPECT_EQ(found->equals, 1);
}

} // namespace
} // namespace borewright
