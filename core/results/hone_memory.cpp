// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_memory.h"

#include "core/results/hone_outlook.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

// A block of sixteen with alternatives; beyond, all is forgotten and begun anew.
constexpr std::size_t mostPlans = 600;
constexpr std::size_t mostLearned = 6;

std::string keyOf(const Look& look) {
    return exactly(look.depth_mm) + exactly(look.axis);
}

} // namespace

std::shared_ptr<HoneMemory> newHoneMemory() {
    return std::make_shared<HoneMemory>();
}

std::optional<HoneMemory::Learned>
HoneMemory::longestBeginning(const std::string& bench, const std::vector<std::string>& steps) {
    const std::scoped_lock lock(m_mutex);
    const Learned* best = nullptr;
    for (const Learned& one : m_learned) {
        if (one.bench != bench || one.steps.size() > steps.size()) continue;
        if (best != nullptr && one.steps.size() <= best->steps.size()) continue;
        if (std::equal(one.steps.begin(), one.steps.end(), steps.begin())) best = &one;
    }
    return best == nullptr ? std::nullopt : std::optional(*best);
}

void HoneMemory::keep(Learned learned) {
    const std::scoped_lock lock(m_mutex);
    std::erase_if(m_learned, [&](const Learned& one) {
        return one.bench == learned.bench && one.steps == learned.steps;
    });
    m_learned.push_back(std::move(learned));
    if (m_learned.size() > mostLearned) m_learned.pop_front();
}

std::optional<HonePlan> HoneMemory::plan(const std::string& key) {
    const std::scoped_lock lock(m_mutex);
    const auto found = m_plans.find(key);
    return found == m_plans.end() ? std::nullopt : std::optional(found->second);
}

void HoneMemory::keep(const std::string& key, const HonePlan& plan) {
    const std::scoped_lock lock(m_mutex);
    if (m_plans.size() >= mostPlans) m_plans.clear();
    m_plans[key] = plan;
}

std::string exactly(double value) {
    return fmt::format("{:a} ", value);
}

std::string keyOf(const Stroking& window) {
    return exactly(window.from_mm) + exactly(window.to_mm) + exactly(window.strokes) +
           exactly(window.held);
}

std::string keyOf(const SetUp& setUp) {
    std::string key = std::to_string(setUp.stone) + ":";
    for (const Stroking& window : setUp.windows)
        key += keyOf(window) + "/";
    return key;
}

std::string keyOf(const LearnedStep& step) {
    std::string key = fmt::format("{} {} {} {} ", static_cast<int>(step.kind), step.bore,
                                  step.stone, step.check) +
                      exactly(step.shared_um) + keyOf(step.setUp);
    if (step.kind == LearnedStep::Kind::survey) key += step.survey;
    for (const BoreReading& reading : step.readings)
        key += keyOf(reading.look) + exactly(reading.size_um) + exactly(reading.doubt_um);
    return key;
}

std::string keyOf(const Bench& bench) {
    std::string key = std::to_string(bench.grid.cells) + " " + exactly(bench.grid.height_mm);
    for (Eigen::Index i = 0; i < bench.land.size(); ++i)
        key += exactly(bench.land[i]);
    for (const BenchStone& stone : bench.stones)
        key += std::to_string(stone.grid.cells) + " " + exactly(stone.grid.topShare) +
               exactly(stone.grid.length_mm) + exactly(stone.grid.highest_mm) +
               exactly(stone.grid.lowest_mm) + (stone.finish ? "f " : "r ") +
               exactly(stone.logRate) + exactly(stone.logRateDoubt);
    return key;
}

std::string keyOf(const HoneAim& aim) {
    std::string key;
    for (const double value : {aim.aim_um, aim.cap_um, aim.upperLimit_um, aim.lowest_um,
                               aim.straight_um, aim.chance, aim.finishStock_um, aim.finishLeast_um,
                               aim.fullStops_um, aim.gaugeDoubt_um, aim.gaugeShared_um})
        key += exactly(value);
    for (const Look& look : aim.stations)
        key += keyOf(look);
    key += "|";
    for (const Look& look : aim.readable)
        key += keyOf(look);
    return key;
}

std::string keyOf(const PlanOptions& options) {
    std::string key;
    for (const bool may : options.mayUse)
        key += may ? '1' : '0';
    const auto place = [](const std::optional<std::size_t>& stone) {
        return stone ? std::to_string(*stone) : std::string("-");
    };
    return fmt::format("{} {} {} {}{}{}{} {} {}", key, options.mostSetUps, options.mostWindows,
                       exactly(options.setUpCost_um), exactly(options.changeCost_um),
                       exactly(options.cell_mm), place(options.fitted), place(options.first),
                       options.quick);
}

std::string keyOf(const HonePlan* warm) {
    if (warm == nullptr) return "cold";
    std::string key = "warm";
    for (const SetUp& setUp : warm->setUps)
        key += keyOf(setUp) + ";";
    return key;
}

} // namespace borewright
