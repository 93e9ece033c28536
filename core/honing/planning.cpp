// SPDX-License-Identifier: GPL-3.0-or-later
// What to do next with a bore: search, dare, or stop.
#include "core/honing/planning.h"

#include "core/honing/plan_search.h"
#include "core/honing/plan_telling.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

constexpr double sureEnough = 0.93; // of straight over the stations, not over, not under
constexpr double evenEnough_um = 9; // over all depths
constexpr double unsureCost_um = 3; // of stopping without being sure

class Planner {
public:
    Planner(const PlanGround& ground, const PlanOptions& options)
        : m_ground(ground)
        , m_options(options)
        , m_now(prospectNow(ground)) {
        m_plan.now = foreseenNow(ground, m_now);
    }

    HonePlan plan(const HonePlan* warm, const PlanProgress& progress) {
        if (std::ranges::none_of(m_ground.may, [](bool may) { return may; }))
            return ends(HoneOutcome::noStone);
        if (isOver()) return ends(HoneOutcome::overAlready);
        if (m_plan.now.chanceDone > sureEnough && m_plan.now.spreadAll_um < evenEnough_um)
            return ends(HoneOutcome::done);
        const std::vector<Candidate> found =
            searchCourses(m_ground, m_now, m_options, warm, progress);
        if (found.empty()) return ends(HoneOutcome::noStone);
        bool dared = false;
        for (const Candidate& candidate : found) {
            const CarefulSetUp careful =
                carefully(m_ground, m_now, candidate.course.front(), m_options.cell_mm);
            if (careful.setUp.windows.empty()) continue;
            dared = true;
            if (!worthWhile(candidate)) break;
            return goOn(candidate, careful);
        }
        return ends(whyNot(dared));
    }

private:
    HonePlan ends(HoneOutcome outcome) {
        m_plan.outcome = outcome;
        m_plan.cost_um = costOfLeaving(m_ground);
        return std::move(m_plan);
    }

    [[nodiscard]] bool isOver() const {
        for (std::size_t i = 0; i < m_ground.cells(); ++i)
            if (m_ground.reached[i] &&
                m_plan.now.largest[static_cast<Eigen::Index>(i)] > m_ground.aim.upperLimit_um)
                return true;
        return false;
    }

    // Is some station smaller than a finished bore may be?
    [[nodiscard]] bool undersize() const {
        for (const Look& look : m_ground.aim.stations)
            if (expectedAt(m_ground.belief, m_ground.bench.grid, look).mean_um <
                m_ground.aim.lowest_um)
                return true;
        return false;
    }

    [[nodiscard]] bool worthWhile(const Candidate& candidate) const {
        if (undersize()) return true;
        const double leaving =
            costOfLeaving(m_ground) + unsureCost_um * (1 - m_plan.now.chanceDone);
        return candidate.cost_um < leaving;
    }

    [[nodiscard]] HoneOutcome whyNot(bool dared) const {
        if (!undersize() && m_plan.now.spread_um <= m_ground.aim.straight_um)
            return HoneOutcome::gaugeCannotTell;
        return dared ? HoneOutcome::asGoodAsItGets : HoneOutcome::wouldGoOver;
    }

    HonePlan goOn(const Candidate& candidate, const CarefulSetUp& careful) {
        m_plan.outcome = HoneOutcome::next;
        m_plan.cost_um = candidate.cost_um;
        m_plan.cautious = careful.share < 0.97;
        m_plan.setUps.push_back(careful.setUp);
        m_plan.setUps.insert(m_plan.setUps.end(), candidate.course.begin() + 1,
                             candidate.course.end());
        m_plan.setUpsLeft = static_cast<int>(m_plan.setUps.size()) + (careful.share < 0.8 ? 1 : 0);
        Prospect from = m_now;
        for (const SetUp& setUp : m_plan.setUps) {
            Prospect after;
            m_plan.foreseen.push_back(foreseenAfter(m_ground, from, setUp, &after));
            if (m_plan.foreseen.size() == 1) m_plan.measure = looksAfter(m_ground, after);
            from = std::move(after);
        }
        return std::move(m_plan);
    }

    const PlanGround& m_ground;
    const PlanOptions& m_options;
    Prospect m_now;
    HonePlan m_plan;
};

} // namespace

HonePlan planBore(const HoneLearner& learner, std::size_t bore, const HoneAim& aim,
                  const PlanOptions& options, const HonePlan* warm, const PlanProgress& progress) {
    if (!learner.surveyed(bore)) return {};
    const PlanGround ground = planGround(learner, bore, aim, options.mayUse);
    return Planner(ground, options).plan(warm, progress);
}

Foreseen foresee(const HoneLearner& learner, std::size_t bore, const HoneAim& aim,
                 const SetUp& setUp) {
    const PlanGround ground = planGround(learner, bore, aim, {});
    return foreseenAfter(ground, prospectNow(ground), setUp);
}

Foreseen asItStands(const HoneLearner& learner, std::size_t bore, const HoneAim& aim) {
    const PlanGround ground = planGround(learner, bore, aim, {});
    return foreseenNow(ground, prospectNow(ground));
}

std::vector<Look> mostTelling(const Belief& after, const Bench& bench, const HoneAim& aim,
                              std::size_t count) {
    const auto seen = static_cast<Eigen::Index>(2 * bench.grid.cells);
    return tellingLooks(after.covariance.topLeftCorner(seen, seen), bench.grid, aim, count, {});
}

} // namespace borewright
