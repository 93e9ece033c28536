// SPDX-License-Identifier: GPL-3.0-or-later
// Set-ups found by trying them out on a copy of the bench itself, whose wall, stones and hand are
// all known; only what chance brings while honing (scatter, ends and counts of a window) is not.
// What it reaches is surely possible on that bench. It is no bound: its search is short and looks
// only at the mean, so a planner that takes smaller steps near the size can end straighter.
#pragma once

#include "tests/support/closed_loop.h"
#include "tests/support/simulated_bench.h"

namespace borewright::test {

using SimulatedMaker = std::function<std::unique_ptr<SimulatedBench>(std::uint64_t seed)>;
// Seeds from … to − 1, two at a time. Takes some seconds a set-up.
std::vector<LoopResult> runToldEverything(const SimulatedMaker& maker, std::uint64_t from,
                                          std::uint64_t to);

} // namespace borewright::test
