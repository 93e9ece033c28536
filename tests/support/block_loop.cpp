// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/block_loop.h"

#include "tests/support/loop_table.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <fmt/format.h>
#include <map>
#include <thread>

namespace borewright::test {
namespace {

class BoreByBore final : public BlockPolicy {
public:
    BoreByBore(const HonePolicyMaker& maker, const BoreAsStated& stated, std::size_t bores) {
        for (std::size_t i = 0; i < bores; ++i)
            m_bores.push_back({maker(stated), true, std::nullopt});
    }

    std::optional<BlockStop> next(const BlockHistory& history) override {
        std::map<std::size_t, std::size_t> asking; // by stone
        for (std::size_t i = 0; i < m_bores.size(); ++i) {
            Bore& bore = m_bores[i];
            if (bore.worked) bore.wish = bore.policy->next(historyOf(history, i));
            bore.worked = false;
            if (bore.wish) ++asking[bore.wish->stone];
        }
        if (asking.empty()) return std::nullopt;
        if (!m_fitted || !asking.contains(*m_fitted))
            m_fitted = std::ranges::max_element(asking, {}, [](const auto& of) {
                           return of.second;
                       })->first;
        BlockStop stop;
        for (std::size_t i = 0; i < m_bores.size(); ++i) {
            Bore& bore = m_bores[i];
            if (!bore.wish || bore.wish->stone != *m_fitted) continue;
            stop.push_back({i, *bore.wish});
            bore.worked = true;
        }
        return stop;
    }

private:
    struct Bore {
        std::unique_ptr<HonePolicy> policy;
        bool worked; // since it was last asked
        std::optional<HoneSetUp> wish;
    };
    std::vector<Bore> m_bores;
    std::optional<std::size_t> m_fitted;
};

// Hones all bores of a stop, then measures them.
void work(std::vector<SimulatedBench>& bores, const BlockStop& stop, std::size_t number,
          BlockHistory& history) {
    for (const BlockWork& one : stop)
        for (const HoneWindow& window : one.setUp.windows)
            bores[one.bore].stroke(one.setUp.stone, window);
    for (const BlockWork& one : stop) {
        bores[one.bore].beginReading();
        history.entries.push_back(
            {number, one.bore, {one.setUp, readAll(bores[one.bore], one.setUp.stations)}});
    }
}

} // namespace

HoneHistory historyOf(const BlockHistory& history, std::size_t bore) {
    HoneHistory own;
    own.before = history.before[bore];
    for (const BlockEntry& entry : history.entries)
        if (entry.bore == bore) own.steps.push_back(entry.step);
    return own;
}

BlockResult runBlock(std::vector<SimulatedBench>& bores, BlockPolicy& policy) {
    using Clock = std::chrono::steady_clock;
    BlockResult result;
    BlockHistory history;
    for (SimulatedBench& bore : bores) {
        history.before.push_back(readAll(bore, allStations(bore.stated())));
        result.most.push_back(bore.largest());
    }
    std::optional<std::size_t> fitted;
    while (result.stops < stopLimit) {
        const auto begun = Clock::now();
        const std::optional<BlockStop> stop = policy.next(history);
        const std::chrono::duration<double> took = Clock::now() - begun;
        result.slowest_s = std::max(result.slowest_s, took.count());
        result.said = !stop;
        if (!stop) break;
        const std::size_t stone = stop->front().setUp.stone;
        if (fitted && *fitted != stone) ++result.stoneChanges;
        fitted = stone;
        work(bores, *stop, result.stops++, history);
        result.setUps += stop->size();
        for (std::size_t i = 0; i < bores.size(); ++i)
            result.most[i] = std::max(result.most[i], bores[i].largest());
    }
    for (const SimulatedBench& bore : bores)
        result.last.push_back(truthOf(bore));
    return result;
}

std::vector<BlockResult> runBlocks(const BlockMaker& block, const BlockPolicyMaker& policy,
                                   std::uint64_t from, std::uint64_t to) {
    std::vector<BlockResult> results(to - from);
    std::atomic<std::uint64_t> next = from;
    const auto run = [&] {
        for (std::uint64_t seed = next++; seed < to; seed = next++) {
            std::vector<SimulatedBench> bores = block(seed);
            results[seed - from] = runBlock(bores, *policy(bores[0].stated(), bores.size()));
        }
    };
    std::thread other(run);
    run();
    other.join();
    return results;
}

std::string blockTableHead() {
    return fmt::format(
        "{:<14} {:<10} {:>6} {:>6} {:>8} {:>8} {:>8} {:>12} {:>12} {:>6} {:>8} {:>6}",
        "block policy", "bench", "blocks", "stops", "changes", "set-ups", "straight", "spread um",
        "all um", "most", "over", "s");
}

std::string blockTableRow(const std::string& policy, const std::string& bench,
                          const std::vector<BlockResult>& results) {
    std::vector<double> stops, changes, setUps, spread, all, most;
    double straight = 0, over = 0, slowest = 0;
    for (const BlockResult& result : results) {
        stops.push_back(static_cast<double>(result.stops));
        changes.push_back(static_cast<double>(result.stoneChanges));
        setUps.push_back(static_cast<double>(result.setUps));
        slowest = std::max(slowest, result.slowest_s);
        for (std::size_t i = 0; i < result.last.size(); ++i) {
            spread.push_back(result.last[i].overStations);
            all.push_back(result.last[i].overAll);
            most.push_back(result.most[i]);
            straight += spread.back() <= straight_um ? 1 : 0;
            over += most.back() > overCap_um ? 1 : 0;
        }
    }
    const auto bores = static_cast<double>(spread.size());
    return fmt::format("{:<14} {:<10} {:>6} {:>6.1f} {:>8.1f} {:>8.1f} {:>7.0f}% {:>5.1f}/{:>6.1f} "
                       "{:>5.1f}/{:>6.1f} {:>6.1f} {:>7.1f}% {:>6.2f}",
                       policy, bench, results.size(), quantileOf(stops, 0.5),
                       quantileOf(changes, 0.5), quantileOf(setUps, 0.5), 100 * straight / bores,
                       quantileOf(spread, 0.5), quantileOf(spread, 0.95), quantileOf(all, 0.5),
                       quantileOf(all, 0.9), quantileOf(most, 1), 100 * over / bores, slowest);
}

BlockPolicyMaker boreByBore(const HonePolicyMaker& maker) {
    return [maker](const BoreAsStated& stated, std::size_t bores) -> std::unique_ptr<BlockPolicy> {
        return std::make_unique<BoreByBore>(maker, stated, bores);
    };
}

} // namespace borewright::test
