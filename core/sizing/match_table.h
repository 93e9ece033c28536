// SPDX-License-Identifier: GPL-3.0-or-later
// Bores and pistons laid out for matching: who may go where, and what each pair costs.
#pragma once

#include "core/sizing/matching.h"

namespace borewright {

struct MatchTable {
    std::vector<const MeasuredBore*> bores; // by number
    std::vector<const Piston*> pistons;     // in their own order
    // Bores, pistons, cells and the decided pairs; `why` where no matching can be; else nothing
    // yet.
    Matching matching;
    // What could stand, decided or not: pairs that go in, of pistons not decided for a bore that is
    // not among these; and the decided pairs whatever their clearance. The cost is the miss in
    // picometres, 0 where a decided piston has none.
    AssignmentProblem pairs;
    // What the decided pairs leave open: the bores not decided, and the pistons with a size that
    // are not decided for any bore. The decided are no part of it: a large miss among them would
    // hide every smaller one.
    std::vector<std::size_t> openBores;   // places in `bores`
    std::vector<std::size_t> openPistons; // places in `pistons`
    AssignmentProblem open;
};
MatchTable layOut(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                  const std::optional<DisplayUnits>& units);

} // namespace borewright
