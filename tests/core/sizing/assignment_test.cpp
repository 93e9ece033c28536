// SPDX-License-Identifier: GPL-3.0-or-later
// Assignments against trying every one of them.
#include "core/sizing/assignment.h"

#include "core/statistics/random.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <numeric>

namespace borewright {
namespace {

using Row = std::vector<std::optional<std::int64_t>>;
constexpr std::nullopt_t no = std::nullopt;

AssignmentProblem table(const std::vector<Row>& rows) {
    AssignmentProblem problem{static_cast<int>(rows.size()), 0, {}};
    for (const Row& row : rows) {
        problem.columns = static_cast<int>(row.size());
        problem.cost.insert(problem.cost.end(), row.begin(), row.end());
    }
    return problem;
}

std::string shown(const AssignmentProblem& problem) {
    std::string text;
    for (std::size_t i = 0; i < problem.cost.size(); ++i) {
        text += problem.cost[i] ? std::to_string(*problem.cost[i]) : "-";
        text += (i + 1) % static_cast<std::size_t>(problem.columns) == 0 ? "\n" : " ";
    }
    return text;
}

// Every assignment in the order of rows, then columns.
class Trying {
public:
    explicit Trying(const AssignmentProblem& problem)
        : m_problem(problem)
        , m_taken(static_cast<std::size_t>(problem.columns), false) {
        place({});
    }
    std::optional<Assignment> best;

private:
    void place(std::vector<int> columns) {
        if (columns.size() == static_cast<std::size_t>(m_problem.rows)) return keep(columns);
        for (int j = 0; j < m_problem.columns; ++j) {
            const auto column = static_cast<std::size_t>(j);
            const auto pair = columns.size() * m_taken.size() + column;
            if (m_taken[column] || !m_problem.cost[pair]) continue;
            m_taken[column] = true;
            columns.push_back(j);
            place(columns);
            columns.pop_back();
            m_taken[column] = false;
        }
    }
    void keep(const std::vector<int>& columns) {
        std::int64_t worst = 0;
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const auto pair = i * m_taken.size() + static_cast<std::size_t>(columns[i]);
            worst = std::max(worst, *m_problem.cost[pair]);
            sum += *m_problem.cost[pair];
        }
        const std::pair now{worst, sum};
        if (best && now == std::pair{best->worst, best->sum})
            ++best->equals;
        else if (!best || now < std::pair{best->worst, best->sum})
            best = Assignment{columns, worst, sum, 1};
    }
    const AssignmentProblem& m_problem;
    std::vector<bool> m_taken;
};

AssignmentProblem randomProblem(Random& random, int rows, int columns, std::uint64_t steps,
                                double forbidden) {
    AssignmentProblem problem{rows, columns, {}};
    for (int i = 0; i < rows * columns; ++i)
        problem.cost.push_back(
            random.uniform() < forbidden
                ? std::nullopt
                : std::optional(static_cast<std::int64_t>(random.next() % steps)));
    return problem;
}

void expectAsTried(const AssignmentProblem& problem) {
    const Trying tried(problem);
    const auto found = assign(problem);
    ASSERT_EQ(found.has_value(), tried.best.has_value()) << shown(problem);
    if (!found) return;
    EXPECT_EQ(found->column, tried.best->column) << shown(problem);
    EXPECT_EQ(found->worst, tried.best->worst) << shown(problem);
    EXPECT_EQ(found->sum, tried.best->sum) << shown(problem);
    EXPECT_EQ(found->equals, std::min(tried.best->equals, mostTies)) << shown(problem);
}

// Few different costs, so that nearly every table has equals.
TEST(Assignment, IsTheBestOfAllByTrial) {
    Random random(20260401);
    for (int trial = 0; trial < 6000; ++trial) {
        const int rows = 1 + static_cast<int>(random.next() % 5);
        const int columns = rows + static_cast<int>(random.next() % 3);
        const std::uint64_t steps = 1 + random.next() % 8;
        const double forbidden = trial % 2 == 0 ? 0 : 0.5 * random.uniform();
        expectAsTried(randomProblem(random, rows, columns, steps, forbidden));
    }
}

TEST(Assignment, IsTheBestOfAllByTrialUpToSevenOfEight) {
    Random random(20260402);
    for (int trial = 0; trial < 60; ++trial)
        for (const auto& [rows, columns] : {std::pair{6, 6}, {6, 8}, {7, 7}, {7, 8}})
            expectAsTried(randomProblem(random, rows, columns, 2 + random.next() % 12,
                                        trial % 3 == 0 ? 0.3 : 0));
}

// The columns left over are held by one idle row together: it must find every way that they could.
TEST(Assignment, CountsEqualsWithManyColumnsLeftOver) {
    Random random(20260405);
    for (int trial = 0; trial < 600; ++trial) {
        const int rows = 1 + static_cast<int>(random.next() % 3);
        expectAsTried(randomProblem(random, rows, rows + 3 + static_cast<int>(random.next() % 3),
                                    1 + random.next() % 3, trial % 2 == 0 ? 0.4 : 0));
    }
}

TEST(Assignment, SparseTablesAreFoundPossibleOrNot) {
    Random random(20260403);
    int impossible = 0;
    for (int trial = 0; trial < 3000; ++trial) {
        const AssignmentProblem problem =
            randomProblem(random, 5, 6, 3, 0.6 + 0.2 * random.uniform());
        impossible += Trying(problem).best ? 0 : 1;
        expectAsTried(problem);
    }
    EXPECT_GT(impossible, 500) << "the trial has to try both";
    EXPECT_LT(impossible, 2500) << "the trial has to try both";
}

// Rows and columns entered in another order: the same worth and as many equals.
TEST(Assignment, IsIndependentOfTheOrderOfEntry) {
    Random random(20260404);
    for (int trial = 0; trial < 200; ++trial) {
        const AssignmentProblem problem = randomProblem(random, 12, 15, 9, 0.2);
        std::vector<std::size_t> rows(12);
        std::vector<std::size_t> columns(15);
        std::iota(rows.begin(), rows.end(), 0U);
        std::iota(columns.begin(), columns.end(), 0U);
        for (std::size_t i = rows.size(); i-- > 1;)
            std::swap(rows[i], rows[random.next() % (i + 1)]);
        for (std::size_t i = columns.size(); i-- > 1;)
            std::swap(columns[i], columns[random.next() % (i + 1)]);
        AssignmentProblem shuffled{12, 15, {}};
        for (const std::size_t i : rows)
            for (const std::size_t j : columns)
                shuffled.cost.push_back(problem.cost[i * columns.size() + j]);
        const auto plain = assign(problem);
        const auto other = assign(shuffled);
        ASSERT_TRUE(plain && other);
        EXPECT_EQ(plain->worst, other->worst) << shown(problem);
        EXPECT_EQ(plain->sum, other->sum) << shown(problem);
        EXPECT_EQ(plain->equals, other->equals) << shown(problem);
    }
}

TEST(Assignment, TiesGoToTheLowestColumnAndAreCounted) {
    const auto all = assign(table({{5, 5, 5}, {5, 5, 5}, {5, 5, 5}}));
    ASSERT_TRUE(all);
    EXPECT_EQ(all->column, (std::vector{0, 1, 2}));
    EXPECT_EQ(all->equals, 6);
    // Column 0 has to be used, by either row: its cost is the lower for both.
    const auto needed = assign(table({{1, 2, 2}, {1, 2, 2}}));
    ASSERT_TRUE(needed);
    EXPECT_EQ(needed->column, (std::vector{0, 1}));
    EXPECT_EQ(needed->equals, 4);
}

TEST(Assignment, CountsEqualsUpToTheMost) {
    AssignmentProblem problem{16, 24, {}};
    problem.cost.assign(16 * 24, 7);
    const auto found = assign(problem);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->equals, mostTies);
    EXPECT_EQ(found->sum, 16 * 7);
    std::vector<int> order(16);
    std::iota(order.begin(), order.end(), 0);
    EXPECT_EQ(found->column, order);
}

TEST(Assignment, TheWorstCountsBeforeTheSum) {
    const auto found = assign(table({{0, 4}, {4, 5}}));
    ASSERT_TRUE(found);
    EXPECT_EQ(found->column, (std::vector{1, 0})) << "sum 8 with worst 4, not sum 5 with worst 5";
}

TEST(Assignment, HoldsTheLargestCosts) {
    constexpr std::int64_t great = 100'000'000'000'000;
    AssignmentProblem problem{mostRows, mostRows + 5, {}};
    for (int i = 0; i < problem.rows; ++i)
        for (int j = 0; j < problem.columns; ++j)
            problem.cost.push_back(j == i ? great - i : great);
    auto found = assign(problem);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->sum, mostRows * great - mostRows * (mostRows - 1) / 2);
    // Steps, so that each row pushes the one before it along: the longest paths there are.
    for (int i = 0; i < problem.rows; ++i)
        for (int j = 0; j < problem.columns; ++j)
            problem.cost[static_cast<std::size_t>(i * problem.columns + j)] =
                j > i + 1 ? std::nullopt : std::optional(j == i + 1 ? great : great / 2 * (j % 2));
    found = assign(problem);
    ASSERT_TRUE(found);
    EXPECT_LE(found->worst, great);
}

TEST(Assignment, NothingToAssignCostsNothing) {
    const auto none = assign({0, 3, {}});
    ASSERT_TRUE(none);
    EXPECT_TRUE(none->column.empty());
    EXPECT_EQ(none->sum, 0);
    EXPECT_EQ(none->equals, 1);
}

TEST(Assignment, RefusesWhatCannotBe) {
    const auto refusal = [](const AssignmentProblem& problem) {
        const auto found = assign(problem);
        return found ? std::string("assigned") : found.error().message();
    };
    EXPECT_EQ(refusal(table({{1}, {2}})), "1 for 2: not enough");
    EXPECT_EQ(refusal(table({{1, no}, {2, no}})), "there is no way to give each one of its own");
    EXPECT_EQ(refusal(table({{no, no}, {2, 1}})), "there is no way to give each one of its own");
    EXPECT_EQ(refusal({2, 2, {1, 2, 3}}), "the table has not one place for each pair");
    EXPECT_EQ(refusal(table({{-1}})), "a cost is below nothing or too large");
    EXPECT_EQ(refusal(table({{100'000'000'000'001}})), "a cost is below nothing or too large");
    EXPECT_EQ(refusal({-1, 2, {}}), "fewer than none to assign");
    AssignmentProblem many{mostRows + 1, mostRows + 1, {}};
    many.cost.assign(static_cast<std::size_t>(many.rows * many.columns), 0);
    EXPECT_EQ(refusal(many), "more than 64 to assign");
}

TEST(AssignmentCost, IsThatOfAGivenAssignment) {
    const AssignmentProblem problem = table({{1, 2, no}, {4, 8, 16}});
    EXPECT_EQ(costOf(problem, {1, 2}), (AssignmentCost{16, 18}));
    EXPECT_EQ(costOf(problem, {0, 1}), (AssignmentCost{8, 9}));
    EXPECT_FALSE(costOf(problem, {2, 1})) << "not allowed";
    EXPECT_FALSE(costOf(problem, {1, 1})) << "taken twice";
    EXPECT_FALSE(costOf(problem, {0})) << "a row without a column";
    EXPECT_FALSE(costOf(problem, {0, 3}));
    EXPECT_FALSE(costOf(problem, {0, -1}));
}

} // namespace
} // namespace borewright
