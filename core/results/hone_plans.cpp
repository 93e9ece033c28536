// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_plans.h"

#include "core/results/hone_memory.h"

#include <algorithm>

namespace borewright {
namespace {

// What a stop to measure has to be worth, in straightness. The bores of a block share their stops.
constexpr double ownStop_um = 2.6;
constexpr double sharedStop_um = 1.3;
// The same of a change of stone: three minutes, against eight for a stop.
constexpr double changeShare = 0.4;
// Of a stop, where fewer are wished.
constexpr double dearStop_um = 6;

const SurveyResult* surveyOf(const Results& results, const LearnedBore& bore) {
    return bore.survey.empty() ? nullptr : findResult(results, bore.survey);
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts)
        text += (text.empty() ? "" : "; ") + part;
    return text;
}

} // namespace

std::optional<std::size_t> fittedStone(const Workbook& workbook, const HoneWishes& wishes) {
    const auto& stones = workbook.hone.stones;
    const auto placeOf = [&](const std::string& id) -> std::optional<std::size_t> {
        const auto found = std::ranges::find(stones, id, &Stone::id);
        if (found == stones.end()) return std::nullopt;
        return static_cast<std::size_t>(found - stones.begin());
    };
    if (wishes.fitted) return placeOf(*wishes.fitted);
    std::optional<std::size_t> last;
    for (const LogEvent& event : orderOfWork(workbook))
        if (event.kind == LogEvent::Kind::pass)
            last = placeOf(workbook.hone.passes[event.index].stone);
    return last;
}

bool isShort(const LearnedGroup& group, std::size_t benchStone) {
    const auto& stones = group.group.bench.stones;
    double longest = 0;
    for (const BenchStone& stone : stones)
        longest = std::max(longest, stone.grid.length_mm);
    const double here = stones[benchStone].grid.length_mm;
    return here < longest && here < 0.5 * group.group.bench.grid.depth_mm();
}

HonePlanner::HonePlanner(const Workbook& workbook, const Results& results, const HoneWishes& wishes,
                         HoneMemory* memory, const HoneProgress& progress)
    : m_workbook(workbook)
    , m_results(results)
    , m_wishes(wishes)
    , m_memory(memory)
    , m_progress(progress)
    , m_groups(learnFrom(workbook, results, memory))
    , m_fitted(fittedStone(workbook, wishes)) {}

PlannedBore HonePlanner::start(int number) const {
    PlannedBore result;
    result.bore = number;
    const Bore* bore = findBore(m_workbook.block, number);
    if (bore == nullptr) {
        result.refused = "there is no such bore in the block";
        return result;
    }
    if (result.refused = cannotHone(*bore); !result.refused.empty()) {
        result.outcome = HoneOutcome::noStone;
        return result;
    }
    for (const LearnedGroup& group : m_groups)
        if (const LearnedBore* learned = group.find(number)) {
            result.group = &group;
            result.learned = learned;
        }
    auto aim = boreAim(m_workbook, surveyOf(m_results, *result.learned), *bore);
    if (!aim) {
        result.refused = aim.error().what;
        return result;
    }
    result.aim = std::move(*aim);
    if (result.group->group.bench.stones.empty()) {
        result.outcome = HoneOutcome::noStone;
        result.refused = m_workbook.hone.stones.empty()
                             ? "no stone is in the list: enter the stones there are"
                             : "no stone in the list can be stroked in this bore: " +
                                   joined(result.group->group.refused);
        return result;
    }
    if (!result.learned->place) {
        result.refused = result.learned->leftOut > 0
                             ? "all its readings look like slips: settle them first"
                             : "it has not been measured yet: measure it first";
        return result;
    }
    result.place = *result.learned->place;
    return result;
}

double HonePlanner::stopCost() const {
    return m_workbook.block.bores.size() > 1 ? sharedStop_um : ownStop_um;
}

PlanOptions HonePlanner::optionsFor(const PlannedBore& bore, const HoneWishes& wishes) const {
    PlanOptions options;
    const std::size_t stones = bore.group->group.bench.stones.size();
    if (wishes.noShort) {
        options.mayUse.assign(stones, true);
        for (std::size_t stone = 0; stone < stones; ++stone)
            options.mayUse[stone] = !isShort(*bore.group, stone);
    }
    options.setUpCost_um = wishes.fewerStops ? dearStop_um : stopCost();
    // Depths that a scale shows: 0.05 in, or a millimetre.
    options.cell_mm = isInchFamily(naturalUnits(m_workbook).size) ? 1.27 : 1;
    if (m_fitted) {
        options.fitted = bore.group->group.stoneAt(*m_fitted);
        if (options.fitted) options.changeCost_um = changeShare * stopCost();
    }
    return options;
}

HonePlan HonePlanner::search(const PlannedBore& bore, const PlanOptions& options,
                             const HonePlan* warm) {
    std::string key;
    if (m_memory != nullptr) {
        key = bore.group->key + "\nplan " + std::to_string(bore.place) + " " +
              keyOf(bore.aim->aim) + keyOf(options) + keyOf(warm);
        if (const auto known = m_memory->plan(key)) {
            ++m_done;
            return *known;
        }
    }
    const auto progress = [this](double share) {
        if (m_cancelled) return false;
        const double whole = static_cast<double>(std::max(m_expected, m_done + 1));
        if (m_progress && !m_progress((static_cast<double>(m_done) + share) / whole))
            m_cancelled = true;
        return !m_cancelled;
    };
    HonePlan plan =
        planBore(bore.group->learner, bore.place, bore.aim->aim, options, warm, progress);
    ++m_done;
    if (m_memory != nullptr && !m_cancelled) m_memory->keep(key, plan);
    return plan;
}

// The best of the plans with a single stone: the one in the hone, where that was said.
HonePlan HonePlanner::oneStone(const PlannedBore& bore, const HoneWishes& wishes) {
    const std::size_t stones = bore.group->group.bench.stones.size();
    const auto fitted = wishes.fitted && m_fitted ? bore.group->group.stoneAt(*m_fitted)
                                                  : std::optional<std::size_t>();
    std::optional<HonePlan> best;
    for (std::size_t stone = 0; stone < stones; ++stone) {
        if (fitted && *fitted != stone) continue;
        if (wishes.noShort && isShort(*bore.group, stone)) continue;
        PlanOptions options = optionsFor(bore, wishes);
        options.mayUse.assign(stones, false);
        options.mayUse[stone] = true;
        HonePlan plan = search(bore, options, nullptr);
        const bool better =
            !best || (plan.outcome == HoneOutcome::next &&
                      (best->outcome != HoneOutcome::next || plan.cost_um < best->cost_um));
        if (better) best = std::move(plan);
    }
    if (!best) {
        best = HonePlan();
        best->outcome = HoneOutcome::noStone;
    }
    return *best;
}

HonePlan HonePlanner::planAs(const PlannedBore& bore, const HoneWishes& wishes) {
    if (wishes.oneStone) return oneStone(bore, wishes);
    return search(bore, optionsFor(bore, wishes), nullptr);
}

std::vector<PlannedBore> HonePlanner::plan(const std::vector<int>& bores) {
    std::vector<PlannedBore> planned;
    for (const int number : bores)
        planned.push_back(start(number));
    m_expected += 2 * planned.size();
    for (PlannedBore& bore : planned) {
        if (!bore.canBePlanned() || bore.learned->passSince || m_cancelled) continue;
        bore.plan = planAs(bore, m_wishes);
        bore.chosen = bore.plan;
        bore.outcome = bore.plan.outcome;
    }
    settleStone(planned);
    return planned;
}

// What all bores cost when this stone is fitted now: each is worked with it, or waits for a stop.
double HonePlanner::costWith(std::size_t stone, std::vector<PlannedBore>& bores,
                             std::vector<std::optional<HonePlan>>& plans) {
    double total = m_fitted && *m_fitted != stone ? changeShare * stopCost() : 0;
    for (std::size_t b = 0; b < bores.size(); ++b) {
        PlannedBore& bore = bores[b];
        plans.emplace_back();
        if (bore.outcome != HoneOutcome::next) continue;
        PlanOptions options = optionsFor(bore, m_wishes);
        const double waiting = bore.plan.cost_um + options.setUpCost_um;
        const auto here = bore.group->group.stoneAt(stone);
        if (here && bore.plan.setUps.front().stone == *here) {
            plans.back() = bore.plan;
        } else if (here && (options.mayUse.empty() || options.mayUse[*here]) &&
                   !m_wishes.oneStone) {
            options.first = here;
            options.quick = true;
            HonePlan plan = search(bore, options, &bore.plan);
            if (plan.outcome == HoneOutcome::next && plan.cost_um < waiting)
                plans.back() = std::move(plan);
        }
        total += plans.back() ? plans.back()->cost_um : waiting;
    }
    return total;
}

void HonePlanner::settleStone(std::vector<PlannedBore>& bores) {
    std::vector<std::size_t> candidates; // what some bore needs next
    for (const PlannedBore& bore : bores)
        if (bore.outcome == HoneOutcome::next)
            candidates.push_back(bore.recorded(bore.plan.setUps.front().stone));
    std::ranges::sort(candidates);
    candidates.erase(std::ranges::unique(candidates).begin(), candidates.end());
    std::optional<double> least;
    std::vector<std::optional<HonePlan>> chosen;
    for (const std::size_t stone : candidates) {
        std::vector<std::optional<HonePlan>> plans;
        const double cost = candidates.size() > 1 ? costWith(stone, bores, plans) : 0;
        if (least && cost >= *least) continue;
        least = cost;
        m_fit = stone;
        chosen = std::move(plans);
    }
    if (candidates.size() < 2) return;
    for (std::size_t b = 0; b < bores.size(); ++b) {
        if (bores[b].outcome != HoneOutcome::next) continue;
        bores[b].waits = !chosen[b].has_value();
        if (chosen[b]) bores[b].chosen = *chosen[b];
    }
}

BlockAhead blockAhead(const std::vector<PlannedBore>& bores, std::optional<std::size_t> fitted,
                      std::optional<std::size_t> fit) {
    // Of each bore the stones still to come, the last repeated for set-ups beyond the plan.
    std::vector<std::vector<std::size_t>> toCome;
    for (const PlannedBore& bore : bores) {
        if (bore.outcome != HoneOutcome::next) continue;
        const HonePlan& plan = bore.waits ? bore.plan : bore.chosen;
        std::vector<std::size_t> stones;
        for (const SetUp& setUp : plan.setUps)
            stones.push_back(bore.recorded(setUp.stone));
        while (static_cast<int>(stones.size()) < plan.setUpsLeft)
            stones.push_back(stones.back());
        std::ranges::reverse(stones);
        toCome.push_back(std::move(stones));
    }
    BlockAhead ahead;
    const auto stillToDo = [](const auto& stones) { return !stones.empty(); };
    while (std::ranges::any_of(toCome, stillToDo)) {
        std::map<std::size_t, int> needed;
        for (const auto& stones : toCome)
            if (!stones.empty()) ++needed[stones.back()];
        std::size_t stone = needed.begin()->first;
        for (const auto& [one, count] : needed)
            if (count > needed[stone] || (count == needed[stone] && fitted == one)) stone = one;
        if (ahead.stops == 0 && fit && needed.contains(*fit)) stone = *fit;
        ++ahead.stops;
        if (fitted != stone) {
            if (fitted) ++ahead.changes;
            ahead.minutes += hone_time::change_min;
        }
        fitted = stone;
        for (auto& stones : toCome)
            if (!stones.empty() && stones.back() == stone) {
                stones.pop_back();
                ahead.minutes += hone_time::bore_min;
            }
        ahead.minutes += hone_time::measure_min;
    }
    return ahead;
}

} // namespace borewright
