// SPDX-License-Identifier: GPL-3.0-or-later
// The gentle bench: a blind bore of about 100 mm, stones held firmly in line, rates unknown within
// a factor of three either way, 8 % scatter, faces that wear 3 % of the stock, a compliance of
// about 20 µm.
#pragma once

#include "tests/support/simulated_bench.h"

namespace borewright::test {

struct MildTraits {
    double least_mm = 80, most_mm = 110; // depth
    double compliance_um = 20;           // within a factor of 1.5 either way
    double wear = 0.03;
    double scatter = 0.08;
};

// Bores of one block share the stones. The same seed gives the same bench.
std::vector<SimulatedBench> mildBlock(std::uint64_t seed, std::size_t bores,
                                      const MildTraits& traits = {});
SimulatedBench mildBench(std::uint64_t seed, const MildTraits& traits = {});

} // namespace borewright::test
