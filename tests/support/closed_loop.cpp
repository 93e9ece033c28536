// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/closed_loop.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <thread>

namespace borewright::test {

HoneTruth truthOf(const HoneBench& bench) {
    return {bench.spreadOverStations(), bench.spreadOverAll(), bench.spreadOverAll(6),
            bench.largest(), bench.smallest()};
}

double LoopResult::most() const {
    return std::ranges::max(truths, {}, &HoneTruth::largest).largest;
}

std::vector<HoneStation> allStations(const BoreAsStated& stated) {
    std::vector<HoneStation> stations;
    for (int axis = 0; axis < benchAxes; ++axis)
        for (const double depth : stated.stations)
            stations.push_back({depth, axis});
    return stations;
}

std::vector<HoneReading> readAll(HoneBench& bench, const std::vector<HoneStation>& stations) {
    std::vector<HoneReading> readings;
    for (const HoneStation& station : stations)
        readings.push_back({station, bench.read(station.depth_mm, station.axis)});
    return readings;
}

LoopResult runLoop(HoneBench& bench, HonePolicy& policy) {
    using Clock = std::chrono::steady_clock;
    LoopResult result;
    result.truths.push_back(truthOf(bench));
    result.history.before = readAll(bench, allStations(bench.stated()));
    std::optional<std::size_t> fitted;
    while (result.setUps() < setUpLimit) {
        const auto begun = Clock::now();
        const std::optional<HoneSetUp> next = policy.next(result.history);
        const std::chrono::duration<double> took = Clock::now() - begun;
        result.slowest_s = std::max(result.slowest_s, took.count());
        result.thinking_s += took.count();
        result.said = !next;
        result.lastWord = policy.lastWord();
        if (!next) break;
        if (fitted && *fitted != next->stone) ++result.stoneChanges;
        fitted = next->stone;
        for (const HoneWindow& window : next->windows)
            bench.stroke(next->stone, window);
        result.windows += next->windows.size();
        bench.beginReading();
        result.history.steps.push_back({*next, readAll(bench, next->stations)});
        result.truths.push_back(truthOf(bench));
    }
    return result;
}

std::vector<LoopResult> runSeeds(const HoneBenchMaker& bench, const HonePolicyMaker& policy,
                                 std::uint64_t from, std::uint64_t to) {
    std::vector<LoopResult> results(to - from);
    std::atomic<std::uint64_t> next = from;
    const auto work = [&] {
        for (std::uint64_t seed = next++; seed < to; seed = next++) {
            const std::unique_ptr<HoneBench> made = bench(seed);
            results[seed - from] = runLoop(*made, *policy(made->stated()));
            results[seed - from].seed = seed;
        }
    };
    std::thread other(work);
    work();
    other.join();
    return results;
}

} // namespace borewright::test
