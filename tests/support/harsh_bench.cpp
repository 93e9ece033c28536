// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/harsh_bench.h"

#include "tests/support/bench_bore.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace borewright::test {
namespace {

using Trait = std::pair<const char*, bool HarshTraits::*>;
constexpr Trait harshTraits[] = {
    {"tilts", &HarshTraits::tilts},
    {"complianceWide", &HarshTraits::complianceWide},
    {"scatters", &HarshTraits::scatters},
    {"loads", &HarshTraits::loads},
    {"ports", &HarshTraits::ports},
    {"hardSpots", &HarshTraits::hardSpots},
    {"lengthDiffers", &HarshTraits::lengthDiffers},
    {"witness", &HarshTraits::witness},
    {"slips", &HarshTraits::slips},
    {"bends", &HarshTraits::bends},
    {"endsInexact", &HarshTraits::endsInexact},
    {"countInexact", &HarshTraits::countInexact},
    {"warm", &HarshTraits::warm},
    {"speedUneven", &HarshTraits::speedUneven},
    {"wearsMore", &HarshTraits::wearsMore},
    {"pressureLaw", &HarshTraits::pressureLaw},
};

// Every trait draws its figures whether it is switched on or not, so that one seed means the same
// bore, stones and hand in every row of a table.
double drawn(Random& random, bool on, double least, double most, double otherwise) {
    const double value = drawnBetween(random, least, most);
    return on ? value : otherwise;
}

HoneKit drawnHand(const HarshTraits& traits, Random& random) {
    HoneKit kit;
    const double factor = traits.complianceWide ? 5 : 1.5;
    kit.holding.compliance_um = 20 * std::exp(drawnWithin(random, factor));
    const double loose = std::exp(drawnBetween(random, std::log(0.05), std::log(3.0)));
    kit.holding.loose = traits.tilts ? loose : 0;
    kit.holding.soft = drawn(random, traits.bends, 0.02, 0.3, 0);
    kit.scatter = traits.scatters ? 0.15 : 0.08;
    kit.drift = traits.loads ? 0.05 : 0;
    kit.endError_mm = traits.endsInexact ? 1.5 : 0;
    kit.countError = traits.countInexact ? 1 : 0;
    kit.sine = drawn(random, traits.speedUneven, 0.2, 0.8, 0);
    kit.reversal_mm = drawn(random, traits.speedUneven, 0.3, 2, 1);
    kit.edgeShare = drawn(random, traits.ports, 0.2, 0.8, 0);
    kit.fallIn_um = drawn(random, traits.ports, 0, 2, 0);
    kit.pressureLaw = drawn(random, traits.pressureLaw, 0.85, 1.2, 1);
    return kit;
}

TrueStone drawnStone(const StatedStone& stated, const HarshTraits& traits, Random& random) {
    const double usual = stated.finish ? 0.5 : stated.length_mm < 40 ? 2.4 : 1.6;
    TrueStone stone;
    stone.rate_um = usual * std::exp(drawnWithin(random, 3));
    stone.wear = drawn(random, traits.wearsMore, 0.03, 0.08, 0.03);
    stone.loadingLoss = drawn(random, traits.loads, 0.1, 0.4, 0);
    stone.loadingStrokes = drawnBetween(random, 40, 120);
    stone.complianceFactor = drawn(random, traits.complianceWide, 0.9, 1.1, 1);
    const double side = random.uniform() < 0.5 ? -1 : 1;
    stone.length_mm = stated.length_mm + side * drawn(random, traits.lengthDiffers, 1, 3, 0);
    return stone;
}

StatedPorts addPorts(TrueBore& bore, Random& random) {
    const auto depth = benchCell_mm * static_cast<double>(bore.land.size());
    const double top = drawnBetween(random, 0.2, 0.6) * depth;
    const double height = drawnBetween(random, 8, 25);
    const double land = drawnBetween(random, 0.6, 0.8);
    for (std::size_t i = 0; i < bore.land.size(); ++i) {
        const double at = benchCell_mm * (static_cast<double>(i) + 0.5) - top;
        if (at >= 0 && at <= height) bore.land[i] = land;
    }
    return {top, top + height};
}

void addHardSpots(TrueBore& bore, Random& random) {
    const auto depth = benchCell_mm * static_cast<double>(bore.hardness.size());
    for (int spot = 0; spot < 4; ++spot) {
        const double middle = drawnBetween(random, 0, depth);
        const double reach = drawnBetween(random, 4, 12);
        const double by = drawnBetween(random, -0.2, 0.2);
        for (std::size_t i = 0; i < bore.hardness.size(); ++i) {
            const double x = (benchCell_mm * (static_cast<double>(i) + 0.5) - middle) / reach;
            bore.hardness[i] += by * std::exp(-x * x / 2);
        }
    }
    for (double& hardness : bore.hardness)
        hardness = std::clamp(hardness, -0.2, 0.2);
}

// What the rings never touched, at either end: left standing, or relieved.
void addWitness(TrueBore& bore, Random& random) {
    const std::size_t cells = bore.diameter.size();
    for (const bool open : {true, false}) {
        const double size = drawnBetween(random, 3, 8) * (random.uniform() < 0.5 ? -1 : 1);
        const auto high = static_cast<std::size_t>(drawnBetween(random, 3, 10) / benchCell_mm);
        for (std::size_t i = 0; i < high; ++i)
            bore.diameter[open ? i : cells - 1 - i] += size;
    }
}

TrueBore drawnBore(double depth_mm, const HarshTraits& traits, Random& random,
                   BoreAsStated& stated) {
    TrueBore bore = wornBore(depth_mm, random);
    Random ports(random.next()), spots(random.next()), witness(random.next());
    if (traits.ports) stated.ports = {addPorts(bore, ports)};
    if (traits.hardSpots) addHardSpots(bore, spots);
    if (traits.witness) addWitness(bore, witness);
    return bore;
}

} // namespace

HarshTraits HarshTraits::harsh() {
    HarshTraits traits;
    for (const auto& [name, trait] : harshTraits)
        traits.*trait = true;
    traits.pressureLaw = false;
    return traits;
}

HarshTraits HarshTraits::only(const std::string& name) {
    HarshTraits traits;
    for (const auto& [called, trait] : harshTraits)
        if (name == called) traits.*trait = true;
    return traits;
}

const std::vector<std::string>& HarshTraits::names() {
    static const std::vector<std::string> all = [] {
        std::vector<std::string> names;
        for (const auto& [name, trait] : harshTraits)
            names.emplace_back(name);
        return names;
    }();
    return all;
}

std::vector<SimulatedBench> harshBlock(std::uint64_t seed, std::size_t bores,
                                       const HarshTraits& traits) {
    Random random(seed + 0x5eed'0000'0000U);
    const double depth = std::round(drawnBetween(random, 80, 110));
    const BoreAsStated stated = usualStones(depth, random);
    auto kit = std::make_shared<HoneKit>(drawnHand(traits, random));
    for (const StatedStone& stone : stated.stones)
        kit->stones.push_back(drawnStone(stone, traits, random));
    kit->chance = Random(random.next());
    BenchGauge gauge;
    gauge.slips = traits.slips ? 0.015 : 0;
    gauge.warm_um = traits.warm ? 2 : 0;
    std::vector<SimulatedBench> block;
    for (std::size_t i = 0; i < bores; ++i) {
        BoreAsStated own = stated;
        TrueBore bore = drawnBore(depth, traits, random, own);
        block.emplace_back(std::move(own), std::move(bore), kit, gauge, random.next());
    }
    return block;
}

SimulatedBench harshBench(std::uint64_t seed, const HarshTraits& traits) {
    return harshBlock(seed, 1, traits).front();
}

} // namespace borewright::test
