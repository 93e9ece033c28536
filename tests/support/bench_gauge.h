// SPDX-License-Identifier: GPL-3.0-or-later
// The gauge of a bench and who reads it: noise, the dial's steps, and now and then a slip.
#pragma once

#include "core/statistics/random.h"

namespace borewright::test {

struct BenchGauge {
    double noise_um = 1.3;
    double step_um = 2.54; // a tenth of a thou; 0 = shown as it is
    double slips = 0;      // share of readings
    double warm_um = 0;    // a bore just honed is read too large by up to this
};

// What is written down for a diameter that is so much beyond the finish size.
double readOff(const BenchGauge& gauge, double true_um, Random& chance);

} // namespace borewright::test
