// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/assignment.h"

#include "core/sizing/assignment_graph.h"
#include "core/sizing/equal_assignments.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

constexpr std::int64_t greatestCost = 100'000'000'000'000;

Result<void> check(const AssignmentProblem& problem) {
    const auto& [rows, columns, cost] = problem;
    if (rows < 0 || columns < 0) return refuse("fewer than none to assign");
    if (rows > mostRows) return refuse(fmt::format("more than {} to assign", mostRows));
    if (rows > columns) return refuse(fmt::format("{} for {}: not enough", columns, rows));
    if (cost.size() != static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns))
        return refuse("the table has not one place for each pair");
    if (std::ranges::any_of(cost, [](const auto& c) { return c && (*c < 0 || *c > greatestCost); }))
        return refuse("a cost is below nothing or too large");
    return {};
}

// The least worst cost that some assignment has: all costs in order, halved until it is found.
std::optional<std::int64_t> bottleneck(const AssignmentProblem& problem) {
    std::vector<std::int64_t> costs{0};
    for (const auto& cost : problem.cost)
        if (cost) costs.push_back(*cost);
    std::ranges::sort(costs);
    const auto repeated = std::ranges::unique(costs);
    costs.erase(repeated.begin(), repeated.end());
    const auto least = std::ranges::partition_point(
        costs, [&](std::int64_t most) { return !canAssignAll(problem, most); });
    if (least == costs.end()) return {};
    return *least;
}

} // namespace

Result<Assignment> assign(const AssignmentProblem& problem) {
    if (const auto sound = check(problem); !sound) return tl::unexpected(sound.error());
    if (problem.rows == 0) return Assignment{};
    const auto most = bottleneck(problem);
    if (!most) return refuse("there is no way to give each one of its own");
    const EqualAssignments equal = equalAssignments(problem, *most, leastSum(problem, *most));
    const auto worth = costOf(problem, equal.first);
    return Assignment{equal.first, worth->worst, worth->sum, equal.count};
}

std::optional<AssignmentCost> costOf(const AssignmentProblem& problem,
                                     const std::vector<int>& column) {
    if (column.size() != static_cast<std::size_t>(problem.rows)) return {};
    const auto columns = static_cast<std::size_t>(problem.columns);
    std::vector<bool> taken(columns, false);
    AssignmentCost worth;
    for (std::size_t i = 0; i < column.size(); ++i) {
        const auto j = static_cast<std::size_t>(column[i]);
        if (column[i] < 0 || j >= columns || taken[j]) return {};
        taken[j] = true;
        const auto& cost = problem.cost[i * columns + j];
        if (!cost) return {};
        worth.worst = std::max(worth.worst, *cost);
        worth.sum += *cost;
    }
    return worth;
}

} // namespace borewright
