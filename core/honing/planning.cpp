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

// Off the diameter, over the bore: what is next to nothing for a stop to measure, and what little.
constexpr double creeping_um = 0.35, little_um = 0.8;
constexpr double creepingShare = 0.03, littleShare = 0.14; // of what is to go
constexpr double worthAStop = 0.05;                        // more chance of being done
constexpr double littleCost_um = 6;                        // what makes little headway costs more

// How many set-ups a plan of several takes more than it says, as no pass goes quite as thought and
// the plan is made anew after each. Of 40 gentle bores: with 250 µm to go, 8.3 instead of 3.9; with
// 70, 6.4 for 2.6; with 25, 3.9 for 2.3; with 10, 2.1 for 1.8.
int planAnew(double toGo_um) {
    constexpr double each = 0.95, none_um = 6, most = 4.4;
    return static_cast<int>(
        std::lround(std::clamp(each * std::log2(std::max(1.0, toGo_um) / none_um), 0.0, most)));
}

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
        const Steps steps = stepsOf(found);
        if (!steps.best) return ends(whyNot(steps.dared));
        return goOn(*steps.best->candidate, steps.best->careful, false);
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

    // How far a first set-up brings the bore on: a stop to measure wants something for it.
    enum class Headway { none, little, good };

    // A candidate with its first set-up as it may be done.
    struct Step {
        const Candidate* candidate = nullptr;
        CarefulSetUp careful;
        Headway headway = Headway::good;
        double cost_um = 0;
        [[nodiscard]] double rank() const {
            return cost_um + (headway == Headway::little ? littleCost_um : 0);
        }
    };

    // Of the steps that are worth it. Where none is: was there any that may be dared?
    struct Steps {
        std::optional<Step> best;
        bool dared = false;
    };

    [[nodiscard]] Steps stepsOf(const std::vector<Candidate>& found) const {
        std::vector<std::optional<Step>> tried(found.size());
        shareOut(found.size(), [&](std::size_t k) { tried[k] = daring(found[k]); }, {});
        Steps steps;
        for (std::optional<Step>& step : tried) {
            if (!step) continue;
            steps.dared = true;
            if (step->cost_um >= leaving()) continue;
            if (!steps.best || step->rank() < steps.best->rank()) steps.best = std::move(step);
        }
        return steps;
    }

    [[nodiscard]] std::optional<Step> daring(const Candidate& candidate) const {
        Step step{&candidate, stepOf(candidate.course.front())};
        const SetUp& first = step.careful.setUp;
        if (first.windows.empty()) return std::nullopt;
        step.headway = headwayOf(first);
        if (step.headway == Headway::none || tooRisky(first)) return std::nullopt;
        step.cost_um = costOf(step);
        return step;
    }

    // Whatever is the cause, the step or what is in doubt already.
    [[nodiscard]] bool tooRisky(const SetUp& first) const {
        return foreseenAfter(m_ground, m_now, first).chanceOver > m_ground.aim.chance;
    }

    // What finishes the bore, or teaches a rate, is good headway whatever it takes off.
    [[nodiscard]] Headway headwayOf(const SetUp& first) const {
        if (rateUnknown(m_ground, first.stone)) return Headway::good;
        const Eigen::VectorXd wall = walkCourse(m_ground, {first}, 0.6, false).wall.front();
        const double taken = m_ground.weight.dot(wall - m_ground.wall);
        if (taken > std::max(little_um, littleShare * toGo())) return Headway::good;
        const double sure = foreseenAfter(m_ground, m_now, first).chanceDone;
        if (sure >= m_plan.now.chanceDone + worthAStop) return Headway::good;
        return taken > std::max(creeping_um, creepingShare * toGo()) ? Headway::little
                                                                     : Headway::none;
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
        if (m_plan.setUps.size() > 1) m_plan.setUpsLeft += planAnew(toGo());
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
