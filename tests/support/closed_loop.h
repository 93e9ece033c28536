// SPDX-License-Identifier: GPL-3.0-or-later
// Runs whatever says what to do next against a bench, until it says "done", and keeps score.
#pragma once

#include "tests/support/hone_bench.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace borewright::test {

struct HoneStation {
    double depth_mm = 0;
    int axis = 0;
};
struct HoneReading {
    HoneStation at;
    double size_um = 0; // beyond the finish size
};
// What the next reading at a station is expected to be, the gauge's noise and all.
struct ExpectedReading {
    double mean_um = 0;
    double sd_um = 0;
};
struct HoneSetUp {
    std::size_t stone = 0;
    std::vector<HoneWindow> windows;
    std::vector<HoneStation> stations; // to measure afterwards
    // Where the policy promises anything: one a station, and the chance that any depth will then be
    // beyond the finish size by more than overCap_um.
    std::vector<ExpectedReading> expected;
    std::optional<double> chanceOver;
};
struct HoneStep {
    HoneSetUp setUp;
    std::vector<HoneReading> readings;
};
struct HoneHistory {
    std::vector<HoneReading> before; // all stations, both axes
    std::vector<HoneStep> steps;
};

// Knows only what the user knows: the bore as stated, and what was done and read.
class HonePolicy {
public:
    virtual ~HonePolicy() = default;
    virtual std::optional<HoneSetUp> next(const HoneHistory& history) = 0; // nothing = done
    [[nodiscard]] virtual std::string lastWord() const { return {}; }      // why it is done
};
using HonePolicyMaker = std::function<std::unique_ptr<HonePolicy>(const BoreAsStated&)>;

inline constexpr double overCap_um = 5;     // 0.0002 in
inline constexpr double straight_um = 6.35; // 0.00025 in
inline constexpr std::size_t setUpLimit = 40;

struct HoneTruth {
    double overStations = 0; // spread
    double overAll = 0;
    double overMost = 0; // the same without the last 6 mm above the stop
    double largest = 0;
    double smallest = 0;
};
HoneTruth truthOf(const HoneBench& bench);

struct LoopResult {
    std::uint64_t seed = 0;
    std::size_t windows = 0;
    std::size_t stoneChanges = 0;
    bool said = false; // "done", before the limit
    HoneHistory history;
    std::vector<HoneTruth> truths; // before, then after each set-up
    std::string lastWord;
    double slowest_s = 0; // thinking
    double thinking_s = 0;
    [[nodiscard]] std::size_t setUps() const { return history.steps.size(); }
    [[nodiscard]] const HoneTruth& last() const { return truths.back(); }
    [[nodiscard]] double most() const; // of the largest after any set-up
};

// All stations of a bore on both axes.
std::vector<HoneStation> allStations(const BoreAsStated& stated);
std::vector<HoneReading> readAll(HoneBench& bench, const std::vector<HoneStation>& stations);

LoopResult runLoop(HoneBench& bench, HonePolicy& policy);

using HoneBenchMaker = std::function<std::unique_ptr<HoneBench>(std::uint64_t seed)>;
// Seeds from … to − 1, two at a time.
std::vector<LoopResult> runSeeds(const HoneBenchMaker& bench, const HonePolicyMaker& policy,
                                 std::uint64_t from, std::uint64_t to);

} // namespace borewright::test
