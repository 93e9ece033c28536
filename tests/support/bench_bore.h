// SPDX-License-Identifier: GPL-3.0-or-later
// Worn bores for the benches, drawn by chance. Invented.
#pragma once

#include "tests/support/simulated_bench.h"

namespace borewright::test {

double drawnBetween(Random& random, double least, double most);
// ln of a factor evenly spread between 1/factor and factor.
double drawnWithin(Random& random, double factor);

// 150–350 µm to take off, with taper, belly, waviness and some ovality of each bore's own.
TrueBore wornBore(double depth_mm, Random& random);

// A full rough stone and a full finish stone of 75 mm, a short rough one of 25 mm, shorter in a
// shallow bore; 1–2 mm of carrier below the abrasive.
BoreAsStated usualStones(double depth_mm, Random& random);

} // namespace borewright::test
