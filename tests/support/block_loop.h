// SPDX-License-Identifier: GPL-3.0-or-later
// A whole block on the bench: at each stop one stone is fitted, the bores that want it are honed in
// turn, then washed and measured together.
#pragma once

#include "tests/support/closed_loop.h"
#include "tests/support/simulated_bench.h"

#include <string>
#include <vector>

namespace borewright::test {

struct BlockEntry {
    std::size_t stop = 0;
    std::size_t bore = 0;
    HoneStep step;
};
struct BlockHistory {
    std::vector<std::vector<HoneReading>> before; // by bore
    std::vector<BlockEntry> entries;              // in the order of the work
};
// What one bore has seen of it.
HoneHistory historyOf(const BlockHistory& history, std::size_t bore);

struct BlockWork {
    std::size_t bore = 0;
    HoneSetUp setUp;
};
using BlockStop = std::vector<BlockWork>; // all with the same stone

class BlockPolicy {
public:
    virtual ~BlockPolicy() = default;
    virtual std::optional<BlockStop> next(const BlockHistory& history) = 0; // nothing = done
};
using BlockPolicyMaker =
    std::function<std::unique_ptr<BlockPolicy>(const BoreAsStated&, std::size_t bores)>;

struct BlockResult {
    std::size_t stops = 0;
    std::size_t stoneChanges = 0;
    std::size_t setUps = 0; // of all bores
    bool said = false;
    std::vector<HoneTruth> last; // by bore
    std::vector<double> most;    // of the largest after any stop
    double slowest_s = 0;        // thinking for one stop
};

inline constexpr std::size_t stopLimit = 60;
BlockResult runBlock(std::vector<SimulatedBench>& bores, BlockPolicy& policy);

using BlockMaker = std::function<std::vector<SimulatedBench>(std::uint64_t seed)>;
// Seeds from … to − 1, two at a time.
std::vector<BlockResult> runBlocks(const BlockMaker& block, const BlockPolicyMaker& policy,
                                   std::uint64_t from, std::uint64_t to);
std::string blockTableHead();
std::string blockTableRow(const std::string& policy, const std::string& bench,
                          const std::vector<BlockResult>& results);

// Each bore by a policy of its own; the fitted stone stays as long as any bore asks for it, then
// the one that most ask for goes in.
BlockPolicyMaker boreByBore(const HonePolicyMaker& maker);

} // namespace borewright::test
