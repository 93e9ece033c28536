// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/mild_bench.h"

#include "tests/support/bench_bore.h"

#include <cmath>

namespace borewright::test {

std::vector<SimulatedBench> mildBlock(std::uint64_t seed, std::size_t bores,
                                      const MildTraits& traits) {
    Random random(seed);
    const double depth = std::round(drawnBetween(random, traits.least_mm, traits.most_mm));
    const BoreAsStated stated = usualStones(depth, random);
    auto kit = std::make_shared<HoneKit>();
    kit->holding.compliance_um = traits.compliance_um * std::exp(drawnWithin(random, 1.5));
    kit->scatter = traits.scatter;
    for (const StatedStone& stone : stated.stones) {
        const double usual = stone.finish ? 0.5 : stone.length_mm < 40 ? 2.4 : 1.6;
        TrueStone made;
        made.length_mm = stone.length_mm;
        made.rate_um = usual * std::exp(drawnWithin(random, 3));
        made.wear = traits.wear;
        kit->stones.push_back(made);
    }
    kit->chance = Random(random.next());
    std::vector<SimulatedBench> block;
    for (std::size_t i = 0; i < bores; ++i) {
        TrueBore bore = wornBore(depth, random);
        block.emplace_back(stated, std::move(bore), kit, BenchGauge{}, random.next());
    }
    return block;
}

SimulatedBench mildBench(std::uint64_t seed, const MildTraits& traits) {
    return mildBlock(seed, 1, traits).front();
}

} // namespace borewright::test
