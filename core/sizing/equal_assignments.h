// SPDX-License-Identifier: GPL-3.0-or-later
// All assignments as good as the best, from its dual values: those of the tight pairs only, where
// cost = column value − row value. Enumerated row by row, the lowest column first; a step is taken
// only where the rest can still be completed, so that no search runs dry.
#pragma once

#include "core/sizing/assignment_graph.h"

namespace borewright {

struct EqualAssignments {
    std::vector<int> first; // in the order of rows, then columns
    int count = 0;          // up to mostTies
};
EqualAssignments equalAssignments(const AssignmentProblem& problem, std::int64_t most,
                                  const LeastSum& least);

} // namespace borewright
