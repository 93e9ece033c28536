// SPDX-License-Identifier: GPL-3.0-or-later
// Rows to columns, one to one, so that the worst cost is least and, among those, the sum is least:
// the bottleneck assignment problem, then the linear sum assignment on what it allows (Burkard,
// Dell'Amico & Martello, Assignment Problems, SIAM 2009, chapters 4 and 6). Exact: costs are whole
// numbers. Searched by Boost.Graph (assignment_graph.h); the equals by our own hand, since it has
// nothing that lists them (equal_assignments.h).
#pragma once

#include "core/result.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace borewright {

struct AssignmentProblem {
    int rows = 0;
    int columns = 0; // ≥ rows; those left over stay free
    // Row by row; nothing = these two may not go together. 0 ≤ cost ≤ 10^14.
    std::vector<std::optional<std::int64_t>> cost;
};

struct Assignment {
    std::vector<int> column; // by row
    std::int64_t worst = 0;
    std::int64_t sum = 0;
    // How many assignments are exactly as good, this one included; counted up to `mostTies`.
    int equals = 1;
};
inline constexpr int mostTies = 1000;
inline constexpr int mostRows = 64; // a block's most bores; no sum of costs overflows

// The best; of equals the first in the order of rows, then columns (row 0 takes the lowest column
// that an equal allows, then row 1 …). Refuses: more rows than columns or than mostRows, costs out
// of range, a table of the wrong size, no assignment possible (says so).
Result<Assignment> assign(const AssignmentProblem& problem);

// Worst and sum of a given assignment; nothing where a pair is not allowed or a column taken twice.
struct AssignmentCost {
    std::int64_t worst = 0;
    std::int64_t sum = 0;
    friend auto operator<=>(const AssignmentCost&, const AssignmentCost&) = default;
};
std::optional<AssignmentCost> costOf(const AssignmentProblem& problem,
                                     const std::vector<int>& column);

} // namespace borewright
