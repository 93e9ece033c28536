// SPDX-License-Identifier: GPL-3.0-or-later
// What to do next with a bore: search, dare, or stop.
#include "core/honing/planning.h"

#include "core/honing/plan_search.h"
#include "core/honing/plan_share.h"
#include "core/honing/plan_telling.h"
#include "core/honing/plan_worth.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

constexpr double sureEnough = 0.93; // of straight over the stations, not over, not under
constexpr double evenEnough_um = 9; // over all depths
constexpr double likelyDone = 0.4;
constexpr double reserve_um = 4; // of stock, to put right with
constexpr double undersizeCost_um = 3;
constexpr double near_um = 45, farToGo_um = 90; // to go

constexpr double creeping_um = 0.35;   // over the bore, off the diameter
constexpr double creepingShare = 0.03; // of what is to go
constexpr double worthAStop = 0.05;    // more chance of being done

// Where passes keep turning out otherwise than thought, smaller steps and more measuring are worth
// more: a stop costs less.
PlanOptions careful(PlanOptions options, const PlanGround& ground) {
    options.setUpCost_um /= 1 + ground.surprise();
    return options;
}

class Planner {
public:
    Planner(const PlanGround& ground, const PlanOptions& options)
        : m_ground(ground)
        , m_options(careful(options, ground))
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
        if (const std::optional<SetUp> trial = trialPass(found.front())) {
            const CarefulSetUp careful = carefully(m_ground, m_now, *trial, m_options.cell_mm, 0);
            if (careful.share > 0.99) return goOn(found.front(), careful, true);
        }
        const std::optional<Step> step = bestOf(found);
        if (!step || step->cost_um >= leaving()) return ends(whyNot(step.has_value()));
        return goOn(*step->candidate, step->careful, false);
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

    // A candidate with its first set-up as it may be done.
    struct Step {
        const Candidate* candidate = nullptr;
        CarefulSetUp careful;
        double cost_um = 0;
    };

    [[nodiscard]] std::optional<Step> bestOf(const std::vector<Candidate>& found) const {
        std::vector<std::optional<Step>> steps(found.size());
        shareOut(found.size(), [&](std::size_t k) { steps[k] = worthwhile(found[k]); }, {});
        std::optional<Step> best;
        for (std::optional<Step>& step : steps)
            if (step && (!best || step->cost_um < best->cost_um)) best = std::move(step);
        return best;
    }

    [[nodiscard]] std::optional<Step> worthwhile(const Candidate& candidate) const {
        Step step{&candidate, stepOf(candidate.course.front()), 0};
        const SetUp& first = step.careful.setUp;
        if (first.windows.empty() || creeps(first) || tooRisky(first)) return std::nullopt;
        step.cost_um = costOf(step);
        return step;
    }

    // Whatever is the cause, the step or what is in doubt already.
    [[nodiscard]] bool tooRisky(const SetUp& first) const {
        return foreseenAfter(m_ground, m_now, first).chanceOver > m_ground.aim.chance;
    }

    // A stop to measure for next to nothing, that finishes nothing and teaches nothing.
    [[nodiscard]] bool creeps(const SetUp& first) const {
        if (rateUnknown(m_ground, first.stone)) return false;
        const Eigen::VectorXd wall = walkCourse(m_ground, {first}, 0.6, false).wall.front();
        const double taken = m_ground.weight.dot(wall - m_ground.wall);
        if (taken > std::max(creeping_um, creepingShare * toGo())) return false;
        return foreseenAfter(m_ground, m_now, first).chanceDone <
               m_plan.now.chanceDone + worthAStop;
    }

    // Near the size, what is not dared now will not be dared later either: then the course counts
    // as it ends with the step as it is, not as it was meant.
    [[nodiscard]] double costOf(const Step& step) const {
        const Course& course = step.candidate->course;
        const SetUp& first = step.careful.setUp;
        const double stops = costOfStops(course, m_options);
        if (rateUnknown(m_ground, first.stone) || toGo() > near_um) return step.candidate->cost_um;
        Course asDone = course;
        asDone.front() = first;
        const CourseEnd end = endOf(m_ground, asDone, 0.5, false, {});
        if (course.size() > 1) return costOfEnd(m_ground, end) + stops;
        const double sure = foreseenAfter(m_ground, m_now, first).chanceDone;
        return worthOfOff(end.square()) + stops + crookedCost_um * (1 - sure);
    }
    [[nodiscard]] double leaving() const {
        return costOfLeaving(m_ground) + crookedCost_um * (1 - m_plan.now.chanceDone) +
               (undersize() ? undersizeCost_um : 0);
    }
    [[nodiscard]] double toGo() const {
        return m_ground.level_um - m_ground.weight.dot(m_ground.wall);
    }

    [[nodiscard]] HoneOutcome whyNot(bool dared) const {
        if (!undersize() && m_plan.now.spread_um <= m_ground.aim.straight_um)
            return HoneOutcome::gaugeCannotTell;
        return dared ? HoneOutcome::asGoodAsItGets : HoneOutcome::wouldGoOver;
    }

    // The set-up as it may be done. One after which the bore will hardly be done leaves the next
    // something to put right with.
    [[nodiscard]] CarefulSetUp stepOf(const SetUp& wanted) const {
        CarefulSetUp careful = carefully(m_ground, m_now, wanted, m_options.cell_mm, 0);
        if (m_ground.rough(wanted.stone) || careful.setUp.windows.empty()) return careful;
        if (foreseenAfter(m_ground, m_now, careful.setUp).chanceDone > likelyDone) return careful;
        CarefulSetUp held = carefully(m_ground, m_now, wanted, m_options.cell_mm, reserve_um);
        return held.setUp.windows.empty() ? careful : held;
    }

    // A stone whose rate is not known could dare next to nothing once it is to be used; while there
    // is far to go a short pass of it tells its rate and spoils nothing.
    [[nodiscard]] std::optional<SetUp> trialPass(const Candidate& candidate) const {
        const Course& course = candidate.course;
        if (m_options.first || rateUnknown(m_ground, course.front().stone)) return std::nullopt;
        for (std::size_t k = 1; k < course.size(); ++k) {
            const std::size_t stone = course[k].stone;
            if (!rateUnknown(m_ground, stone)) continue;
            if (!m_ground.rough(stone)) {
                const WindowBounds bounds = windowBounds(m_ground, stone);
                return SetUp{stone, {{bounds.highest_mm, bounds.lowest_mm, firstStrokes, 0}}};
            }
            // A rough one does some of its work by it.
            if (toGo() < farToGo_um) continue;
            SetUp trial = course[k];
            double strokes = 0;
            for (const Stroking& window : trial.windows)
                strokes += window.strokes;
            for (Stroking& window : trial.windows)
                window.strokes *= std::min(1.0, firstStrokes / std::max(1.0, strokes));
            return trial;
        }
        return std::nullopt;
    }

    // `ahead`: the set-up comes before the candidate's own.
    HonePlan goOn(const Candidate& candidate, const CarefulSetUp& careful, bool ahead) {
        m_plan.outcome = HoneOutcome::next;
        m_plan.cost_um = candidate.cost_um;
        m_plan.cautious = careful.share < 0.97;
        m_plan.setUps.push_back(careful.setUp);
        m_plan.setUps.insert(m_plan.setUps.end(), candidate.course.begin() + (ahead ? 0 : 1),
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
    const PlanOptions m_options;
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

std::vector<Look> worthReading(const HoneLearner& learner, std::size_t bore, const HoneAim& aim) {
    const PlanGround ground = planGround(learner, bore, aim, {});
    return looksAfter(ground, prospectNow(ground));
}

} // namespace borewright
