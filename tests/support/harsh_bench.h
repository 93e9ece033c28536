// SPDX-License-Identifier: GPL-3.0-or-later
// The harsh bench: all that the gentle one leaves out, each trait to be switched on its own.
#pragma once

#include "tests/support/simulated_bench.h"

#include <string>

namespace borewright::test {

struct HarshTraits {
    bool tilts = false;          // in its holder, from weakly to firmly held
    bool complianceWide = false; // within a factor of five either way, ±10 % from stone to stone
    bool scatters = false;       // 15 % from window to window
    bool loads = false;          // the stone loads and its rate wanders
    bool ports = false;          // a band with 20–40 % of the turn missing
    bool hardSpots = false;      // ±20 %
    bool lengthDiffers = false;  // by 1–3 mm from what is stated
    bool witness = false;        // a ridge or a relief of 3–8 µm at the ends
    bool slips = false;          // 1.5 % of the readings
    bool bends = false;
    bool endsInexact = false;  // ±1.5 mm, anew for each window
    bool countInexact = false; // ±1 stroke
    bool warm = false;         // read 0–2 µm large
    bool speedUneven = false;  // part of it as a sine, and longer reversals
    bool wearsMore = false;    // 3–8 %
    bool pressureLaw = false;  // removal not quite proportional; not one of harsh()

    static HarshTraits harsh(); // all but the last
    // By the name of the member; nothing is switched on where there is none such.
    static HarshTraits only(const std::string& name);
    static const std::vector<std::string>& names();
};

// Bores of one block share the stones. The same seed gives the same bench.
std::vector<SimulatedBench> harshBlock(std::uint64_t seed, std::size_t bores,
                                       const HarshTraits& traits = HarshTraits::harsh());
SimulatedBench harshBench(std::uint64_t seed, const HarshTraits& traits = HarshTraits::harsh());

} // namespace borewright::test
