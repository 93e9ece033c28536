// SPDX-License-Identifier: GPL-3.0-or-later
// The two searches of an assignment, by Boost.Graph (Boost Software License): its headers stay
// behind this one. Both see only pairs that may go together and cost no more than `most`.
#pragma once

#include "core/sizing/assignment.h"

namespace borewright {

// Whether such a pair may stand in an assignment.
bool isOpen(const AssignmentProblem& problem, int row, int column, std::int64_t most);

// Whether every row finds a column of its own: a largest matching has as many pairs as rows
// (Edmonds).
bool canAssignAll(const AssignmentProblem& problem, std::int64_t most);

// One assignment of least sum and its dual values (Burkard, Dell'Amico & Martello, Assignment
// Problems, 2009, section 4.1), by successive shortest paths. For every open pair
//   cost ≥ column value − row value,
// and an assignment has the least sum exactly where all its pairs meet this with equality, it uses
// every column whose value is below `spare` and none whose value is above.
struct LeastSum {
    std::vector<int> column; // by row
    std::vector<std::int64_t> rowValue;
    std::vector<std::int64_t> columnValue;
    std::int64_t spare = 0;
};
// canAssignAll(problem, most) must hold. At most `mostRows` rows: the values stay below 2^62.
LeastSum leastSum(const AssignmentProblem& problem, std::int64_t most);

} // namespace borewright
