// SPDX-License-Identifier: GPL-3.0-or-later
// Orders of stones screened, refined, weighed.
#include "core/honing/plan_search.h"

#include "core/honing/plan_dictionary.h"
#include "core/honing/plan_share.h"
#include "core/honing/plan_worth.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace borewright {

namespace {

constexpr double leastDose = 0.25; // µm; windows of less are left out
constexpr std::size_t mostOrders = 24;
constexpr int mostStepsOn = 15, mostStepsAnew = 20; // of a fit that goes on, and one begun anew

double shareCost(double share) {
    // What is not dared now needs another set-up; next to nothing dared, several.
    return (1 - share) + 10 * std::max(0.0, 0.25 - share);
}

// What the windows of the last set-up stray, which no later one puts right: mean square, µm².
double lastScatter(const PlanGround& ground, const Course& course) {
    const SetUp& last = course.back();
    double sum = 0;
    for (std::size_t w = 0; w < last.windows.size(); ++w) {
        Course less = course;
        less.back().windows[w].strokes *= 1 - ground.learning.windowScatter;
        less.back().windows[w].held *= 1 - ground.learning.windowScatter;
        const Eigen::VectorXd off = walkCourse(ground, less, 0.6, false).wall.back() -
                                    walkCourse(ground, course, 0.6, false).wall.back();
        sum += ground.weight.dot(off.cwiseAbs2());
    }
    return sum;
}

class Search {
public:
    Search(const PlanGround& ground, const Prospect& now, const PlanOptions& options,
           const PlanProgress& progress)
        : m_ground(ground)
        , m_coarse(coarser(ground))
        , m_now(now)
        , m_options(options)
        , m_progress(progress)
        , m_windows(std::clamp(options.mostWindows, 1, 3)) {}

    void screen() {
        const WindowDictionary dictionary(m_coarse);
        const std::vector<StoneOrder> orders = stoneOrders(m_ground, m_options, mostOrders);
        fitAll(
            orders.size(),
            [&](std::size_t k) {
                return fitted(dictionary.startFor(orders[k], m_windows), 6, 0.8);
            },
            0, 0.5);
    }
    // Plans that were in hand: what is left of it, and the whole of it again.
    void warm(const HonePlan& plan) {
        Course course;
        for (const SetUp& setUp : plan.setUps)
            if (setUp.stone < m_ground.may.size() && m_ground.may[setUp.stone] &&
                !setUp.windows.empty())
                course.push_back(setUp);
        for (std::size_t from = 0; from < course.size() && from < 2; ++from) {
            const Course rest(course.begin() + static_cast<std::ptrdiff_t>(from), course.end());
            if (m_options.first && rest.front().stone != *m_options.first) continue;
            if (!m_found.empty() && !goesOn(0.1)) return;
            keep(fitted(withRoom(m_ground, rest, m_windows), m_options.quick ? 3 : 6, 0.6));
        }
    }
    void refine() {
        sort();
        const std::size_t count = std::min<std::size_t>(m_found.size(), 5);
        std::vector<std::pair<Course, int>> starts; // and steps
        for (std::size_t k = 0; k < count; ++k) {
            starts.emplace_back(m_found[k].course, mostStepsOn);
            for (const StartShape shape : startShapes)
                starts.emplace_back(startOf(m_ground, orderOf(m_found[k].course), m_windows, shape),
                                    mostStepsAnew);
        }
        fitAll(
            starts.size(),
            [&](std::size_t k) { return fitted(starts[k].first, starts[k].second, 0.6); }, 0.5,
            0.3);
    }
    // The best are made ready for other tools than believed, tidied, and their first step weighed.
    std::vector<Candidate> weigh(std::size_t count, int steps) {
        sort();
        keepBest(count);
        const auto ready = [&](std::size_t k) {
            Candidate& candidate = m_found[k];
            FitOptions options{steps, 0.5, 0.01, {{0.7, 0, 0}, {0, 0.7, 0}, {0, 0, -1}}};
            Course tidy = tidied(m_ground, candidate.course, leastDose);
            if (tidy.empty()) tidy = candidate.course;
            FittedCourse fitted = fitCourse(m_ground, tidy, options);
            // A first set-up that takes next to nothing is not worth its stop.
            while (fitted.course.size() > 1 && nextToNothing(fitted.course.front()) &&
                   !m_options.first)
                fitted = fitCourse(m_ground, Course(fitted.course.begin() + 1, fitted.course.end()),
                                   options);
            candidate.course = std::move(fitted.course);
            candidate.end = std::move(fitted.end);
            candidate.share = shareAbout(m_ground, m_now, candidate.course.front());
            candidate.cost_um = costOf(candidate);
        };
        shareOut(m_found.size(), ready, [&](std::size_t done) {
            return goesOn(0.8 + 0.2 * static_cast<double>(done) / static_cast<double>(count));
        });
        sort();
        onePerOrder();
        return std::move(m_found);
    }

private:
    bool goesOn(double done) { return !m_progress || m_progress(done); }

    Candidate fitted(Course start, int steps, double contactStep) const {
        FitOptions options;
        options.mostSteps = steps;
        options.contactStep = contactStep;
        FittedCourse fitted = fitCourse(m_coarse, std::move(start), options);
        Candidate candidate{std::move(fitted.course), std::move(fitted.end), 1, 0};
        candidate.cost_um = roughCostOf(candidate);
        return candidate;
    }

    // Side by side, kept in their order: the same search gives the same plan on any machine.
    template<typename Fit>
    void fitAll(std::size_t count, const Fit& fit, double from, double share) {
        std::vector<std::optional<Candidate>> fits(count);
        shareOut(
            count, [&](std::size_t k) { fits[k] = fit(k); },
            [&](std::size_t done) {
                return goesOn(from +
                              share * static_cast<double>(done) / static_cast<double>(count));
            });
        for (std::optional<Candidate>& candidate : fits)
            if (candidate) keep(std::move(*candidate));
    }

    // One of each order, the best.
    void keep(Candidate candidate) {
        const StoneOrder order = orderOf(candidate.course);
        const auto like = std::ranges::find_if(
            m_found, [&](const Candidate& other) { return orderOf(other.course) == order; });
        if (like == m_found.end())
            m_found.push_back(std::move(candidate));
        else if (candidate.cost_um < like->cost_um)
            *like = std::move(candidate);
    }

    // The best few, and with each stone to begin with the best: should the first not be dared.
    void keepBest(std::size_t count) {
        std::vector<Candidate> kept;
        std::vector<bool> begun(m_ground.may.size(), false);
        bool finishOnly = false;
        for (Candidate& candidate : m_found) {
            const std::size_t stone = candidate.course.front().stone;
            const bool finishes = std::ranges::none_of(
                candidate.course, [&](const SetUp& setUp) { return m_ground.rough(setUp.stone); });
            if (kept.size() >= count && begun[stone] && (finishOnly || !finishes)) continue;
            begun[stone] = true;
            finishOnly = finishOnly || finishes;
            kept.push_back(std::move(candidate));
        }
        m_found = std::move(kept);
    }

    // What was tidied may have become like another.
    void onePerOrder() {
        std::vector<Candidate> kept;
        for (Candidate& candidate : m_found) {
            const StoneOrder order = orderOf(candidate.course);
            if (std::ranges::none_of(
                    kept, [&](const Candidate& other) { return orderOf(other.course) == order; }))
                kept.push_back(std::move(candidate));
        }
        m_found = std::move(kept);
    }

    bool nextToNothing(const SetUp& setUp) const {
        const Eigen::VectorXd taken =
            walkCourse(m_ground, {setUp}, 0.6, false).wall.front() - m_ground.wall;
        const double toGo = m_ground.level_um - m_ground.weight.dot(m_ground.wall);
        return m_ground.weight.dot(taken) < std::clamp(0.04 * toGo, 0.2, 3.0);
    }

    double roughCostOf(const Candidate& candidate) const {
        return costOfEnd(m_coarse, candidate.end) + costOfStops(candidate.course, m_options);
    }
    double costOf(const Candidate& candidate) const {
        return costOfEnd(m_ground, candidate.end, lastScatter(m_ground, candidate.course)) +
               costOfStops(candidate.course, m_options) +
               m_options.setUpCost_um * shareCost(candidate.share);
    }
    void sort() { std::ranges::stable_sort(m_found, {}, &Candidate::cost_um); }

    const PlanGround& m_ground;
    const PlanGround m_coarse; // for all but the last fits
    const Prospect& m_now;
    const PlanOptions& m_options;
    const PlanProgress& m_progress;
    int m_windows;
    std::vector<Candidate> m_found;
};

} // namespace

std::vector<Candidate> searchCourses(const PlanGround& ground, const Prospect& now,
                                     const PlanOptions& options, const HonePlan* warm,
                                     const PlanProgress& progress) {
    Search search(ground, now, options, progress);
    if (warm) search.warm(*warm);
    if (options.quick && warm) {
        std::vector<Candidate> found = search.weigh(2, 2);
        if (!found.empty()) return found;
    }
    search.screen();
    search.refine();
    return search.weigh(4, 8);
}

} // namespace borewright
