// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/planned_policy.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace borewright::test {
namespace {

// Noise and rounding of the benches' gauge (bench_gauge.h), as a repeatability study would say.
constexpr double readingDoubt_um = 1.5;
constexpr double sharedDoubt_um = 0.5;
// What the program takes for the share of wall where ports cut it on both axes (log.cpp).
constexpr double landAtPorts = 0.6;

Look lookOf(const HoneStation& station) {
    return {station.depth_mm, station.axis == 0 ? 1.0 : -1.0};
}

SetUp setUpOf(const HoneSetUp& done) {
    SetUp setUp{done.stone, {}};
    for (const HoneWindow& window : done.windows)
        setUp.windows.push_back({window.from_mm, window.to_mm, window.strokes, window.held});
    return setUp;
}

std::vector<BoreReading> readingsOf(const std::vector<HoneReading>& read) {
    std::vector<BoreReading> readings;
    for (const HoneReading& reading : read)
        readings.push_back({lookOf(reading.at), reading.size_um, readingDoubt_um});
    return readings;
}

// The set-up that a plan begins with, all stations to be read after it, and what they should show.
HoneSetUp begunBy(const HonePlan& plan, const HoneLearner& learner, std::size_t bore,
                  const std::vector<HoneStation>& stations) {
    HoneSetUp setUp;
    setUp.stone = plan.setUps.front().stone;
    for (const Stroking& window : plan.setUps.front().windows)
        setUp.windows.push_back({window.from_mm, window.to_mm, window.strokes, window.held});
    setUp.stations = stations;
    setUp.chanceOver = plan.foreseen.front().chanceOver;
    const Belief then = pushed(learner.bench(), learner.belief(bore), plan.setUps.front(),
                               learner.options(), learner.errorFactor());
    for (const HoneStation& station : stations) {
        const Expected expected = expectedAt(then, learner.bench().grid, lookOf(station));
        const double wide = std::hypot(expected.deviation_um, readingDoubt_um, sharedDoubt_um);
        setUp.expected.push_back({expected.mean_um, wide});
    }
    return setUp;
}

const char* wordFor(HoneOutcome outcome) {
    switch (outcome) {
    case HoneOutcome::next:
        return "next";
    case HoneOutcome::done:
        return "done";
    case HoneOutcome::asGoodAsItGets:
        return "as good as it gets";
    case HoneOutcome::gaugeCannotTell:
        return "the gauge cannot tell";
    case HoneOutcome::wouldGoOver:
        return "would go over";
    case HoneOutcome::overAlready:
        return "over already";
    case HoneOutcome::noStone:
        return "no stone";
    case HoneOutcome::notMeasured:
        return "not measured";
    }
    return "";
}

} // namespace

Bench benchAsStated(const BoreAsStated& stated) {
    Bench bench;
    double stop = 0;
    for (std::size_t i = 0; i < stated.stones.size(); ++i)
        stop = std::max(stop, stated.lowest_mm(i));
    bench.grid = wallGridToStop(stated.depth_mm, stop);
    if (!stated.ports.empty())
        bench.land = Eigen::VectorXd::Ones(static_cast<Eigen::Index>(bench.grid.cells));
    for (const StatedPorts& ports : stated.ports)
        for (std::size_t cell = 0; cell < bench.grid.cells; ++cell)
            if (bench.grid.middle_mm(cell) >= ports.from_mm &&
                bench.grid.middle_mm(cell) <= ports.to_mm)
                bench.land[static_cast<Eigen::Index>(cell)] = landAtPorts;
    for (std::size_t i = 0; i < stated.stones.size(); ++i) {
        borewright::BenchStone stone;
        stone.grid = stoneOnGrid(bench.grid, stated.stones[i].length_mm, stated.highest_mm(i),
                                 stated.lowest_mm(i));
        stone.finish = stated.stones[i].finish;
        bench.stones.push_back(stone);
    }
    return bench;
}

HoneAim aimAsStated(const BoreAsStated& stated) {
    HoneAim aim;
    aim.upperLimit_um = overCap_um;
    aim.straight_um = straight_um;
    aim.gaugeDoubt_um = readingDoubt_um;
    aim.gaugeShared_um = sharedDoubt_um;
    for (const HoneStation& station : allStations(stated))
        aim.stations.push_back(lookOf(station));
    aim.readable = aim.stations;
    return aim;
}

PlannedPolicy::PlannedPolicy(const BoreAsStated& stated)
    : m_all(allStations(stated))
    , m_aim(aimAsStated(stated))
    , m_learner(benchAsStated(stated), 1) {}

std::unique_ptr<HonePolicy> PlannedPolicy::make(const BoreAsStated& stated) {
    return std::make_unique<PlannedPolicy>(stated);
}

std::string PlannedPolicy::lastWord() const {
    return wordFor(m_plan.outcome);
}

std::optional<HoneSetUp> PlannedPolicy::next(const HoneHistory& history) {
    const bool first = history.steps.empty();
    if (first) m_learner.survey(0, readingsOf(history.before), sharedDoubt_um);
    for (; m_learned < history.steps.size(); ++m_learned) {
        const HoneStep& step = history.steps[m_learned];
        m_learner.pass(0, setUpOf(step.setUp));
        m_learner.survey(0, readingsOf(step.readings), sharedDoubt_um);
        m_fitted = step.setUp.stone;
    }
    PlanOptions options;
    options.fitted = m_fitted;
    const HonePlan before = m_plan;
    m_plan = planBore(m_learner, 0, m_aim, options, first ? nullptr : &before);
    if (m_plan.outcome != HoneOutcome::next) return std::nullopt;
    return begunBy(m_plan, m_learner, 0, m_all);
}

PlannedBlock::PlannedBlock(const BoreAsStated& stated, std::size_t bores)
    : m_all(allStations(stated))
    , m_aim(aimAsStated(stated))
    , m_learner(benchAsStated(stated), bores)
    , m_plans(bores) {}

std::unique_ptr<BlockPolicy> PlannedBlock::make(const BoreAsStated& stated, std::size_t bores) {
    return std::make_unique<PlannedBlock>(stated, bores);
}

// The bores of a stop were honed one after another and measured after the last of them.
void PlannedBlock::learn(const BlockHistory& history) {
    if (history.entries.empty())
        for (std::size_t bore = 0; bore < history.before.size(); ++bore)
            m_learner.survey(bore, readingsOf(history.before[bore]), sharedDoubt_um);
    while (m_learned < history.entries.size()) {
        std::size_t end = m_learned;
        const std::size_t stop = history.entries[m_learned].stop;
        for (; end < history.entries.size() && history.entries[end].stop == stop; ++end)
            m_learner.pass(history.entries[end].bore, setUpOf(history.entries[end].step.setUp));
        for (; m_learned < end; ++m_learned) {
            const BlockEntry& entry = history.entries[m_learned];
            m_learner.survey(entry.bore, readingsOf(entry.step.readings), sharedDoubt_um);
            m_fitted = entry.step.setUp.stone;
        }
    }
}

// The fitted stone while at least half of those that go on want it, else the most wanted.
std::size_t PlannedBlock::stoneOfMost(const std::vector<HonePlan>& plans) const {
    std::map<std::size_t, std::size_t> wanting;
    std::size_t going = 0;
    for (const HonePlan& plan : plans)
        if (plan.outcome == HoneOutcome::next) {
            ++wanting[plan.setUps.front().stone];
            ++going;
        }
    if (m_fitted && 2 * wanting[*m_fitted] >= going) return *m_fitted;
    return std::ranges::max_element(wanting, {}, [](const auto& of) { return of.second; })->first;
}

std::optional<BlockStop> PlannedBlock::next(const BlockHistory& history) {
    const bool first = history.entries.empty();
    learn(history);
    PlanOptions options;
    options.fitted = m_fitted;
    options.setUpCost_um = 1.3; // shared by all bores
    options.changeCost_um = 0.5;
    bool any = false;
    for (std::size_t bore = 0; bore < m_plans.size(); ++bore) {
        const HonePlan before = m_plans[bore];
        m_plans[bore] = planBore(m_learner, bore, m_aim, options, first ? nullptr : &before);
        any = any || m_plans[bore].outcome == HoneOutcome::next;
    }
    if (!any) return std::nullopt;
    const std::size_t stone = stoneOfMost(m_plans);
    options.first = stone;
    BlockStop stop;
    for (std::size_t bore = 0; bore < m_plans.size(); ++bore) {
        HonePlan plan = m_plans[bore];
        if (plan.outcome != HoneOutcome::next) continue;
        if (plan.setUps.front().stone != stone) {
            // It may as well begin with this stone, or else waits for its own.
            plan = planBore(m_learner, bore, m_aim, options);
            const double dearer = plan.cost_um - m_plans[bore].cost_um;
            if (plan.outcome != HoneOutcome::next || dearer > 1) continue;
        }
        stop.push_back({bore, begunBy(plan, m_learner, bore, m_all)});
    }
    return stop;
}

} // namespace borewright::test
