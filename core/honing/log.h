// SPDX-License-Identifier: GPL-3.0-or-later
// The record of a workbook as the learner wants it: bores with the same geometry beside one bench,
// passes, surveys and care of the stones in the order of the work, and what is odd about that
// record in words.
//
// Order: surveys as they stand in the workbook; a pass stands behind the survey it was logged
// after, care of a stone behind the pass it was logged after, each in the order logged. Clocks do
// not count: the one on the wall of a shop is often wrong, and a pass may be logged later.
#pragma once

#include "core/honing/belief.h"
#include "core/workbook/workbook.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct LogEvent {
    enum class Kind { survey, pass, care };
    Kind kind = Kind::survey;
    std::size_t index = 0; // in workbook.surveys, hone.passes or hone.care
    friend bool operator==(const LogEvent&, const LogEvent&) = default;
};
// What was struck out is left out. A pass or care whose place is gone stands at the end.
std::vector<LogEvent> orderOfWork(const Workbook& workbook);

// Bores that one learner can take together: of equal depth, ports, and reach of every stone.
struct BenchGroup {
    Bench bench;
    std::vector<int> bores;           // engine numbers, in the order of the block
    std::vector<std::size_t> stones;  // of the bench: places in hone.stones
    std::vector<std::string> refused; // stones that cannot be stroked in these bores, and why
    bool landAssumed = false;         // ports: how much of the turn they leave is a guess

    [[nodiscard]] std::optional<std::size_t> placeOf(int bore) const;
    [[nodiscard]] std::optional<std::size_t> stoneAt(std::size_t recorded) const;
};
// Every bore that can be honed; one with no depth, or plated, is in no group.
std::vector<BenchGroup> benchGroups(const Workbook& workbook);

// Why nothing can be planned in this bore whatever was measured; empty = it can.
std::string cannotHone(const Bore& bore);

// A pass as the learner takes it: strokes at the hone's usual speed, as removal is proportional to
// path (Preston): a pass at 1.1 times the speed counts 1.1 times its strokes.
SetUp setUpOf(const Pass& pass, const Hone& hone, std::size_t benchStone);

// What is odd about the record of one bore, a sentence each.
std::vector<std::string> logOddities(const Workbook& workbook, int bore);

// Share of the turn that port bands leave, at each cell: one that cuts k axes leaves 1 − 0.2·k, at
// least 0.4 (assumed, no source). Empty where there are none.
Eigen::VectorXd landOf(const Bore& bore, const WallGrid& grid);

} // namespace borewright
