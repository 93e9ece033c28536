// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/bench_bore.h"

#include <cmath>
#include <numbers>

namespace borewright::test {

double drawnBetween(Random& random, double least, double most) {
    return least + (most - least) * random.uniform();
}

double drawnWithin(Random& random, double factor) {
    return drawnBetween(random, -std::log(factor), std::log(factor));
}

TrueBore wornBore(double depth_mm, Random& random) {
    const double toGo = drawnBetween(random, 150, 350);
    const double taper = 15 * random.normal();
    const double belly = 12 * random.normal();
    const double oval = 4 * random.normal();
    const double ovalGrows = 3 * random.normal();
    struct Wave {
        double height, length, phase;
    };
    std::vector<Wave> waves;
    for (int i = 0; i < 4; ++i)
        waves.push_back({1.5 * random.normal(), drawnBetween(random, 12, 60),
                         drawnBetween(random, 0, 2 * std::numbers::pi)});
    TrueBore bore;
    const auto cells = static_cast<std::size_t>(std::lround(depth_mm / benchCell_mm));
    for (std::size_t i = 0; i < cells; ++i) {
        const double depth = benchCell_mm * (static_cast<double>(i) + 0.5);
        const double u = depth / depth_mm;
        double size = -toGo + taper * (2 * u - 1) + belly * (4 * u * (1 - u) - 2.0 / 3);
        for (const Wave& wave : waves)
            size += wave.height * std::sin(2 * std::numbers::pi * depth / wave.length + wave.phase);
        bore.diameter.push_back(size);
        bore.oval.push_back(oval + ovalGrows * (2 * u - 1));
    }
    bore.hardness.assign(cells, 0);
    bore.land.assign(cells, 1);
    return bore;
}

BoreAsStated usualStones(double depth_mm, Random& random) {
    BoreAsStated stated;
    stated.depth_mm = depth_mm;
    const double full = depth_mm < 95 ? std::round(0.75 * depth_mm) : 75;
    const double fullDead = drawnBetween(random, 1, 2);
    stated.stones = {{"full rough", false, full, fullDead},
                     {"short rough", false, 25, drawnBetween(random, 1, 2)},
                     {"full finish", true, full, fullDead}};
    stated.stations = usualStations(depth_mm);
    return stated;
}

} // namespace borewright::test
