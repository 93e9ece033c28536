// SPDX-License-Identifier: GPL-3.0-or-later
// Doses of many windows at once, as if what they take off simply added up.
#include "core/honing/plan_dictionary.h"

#include "core/honing/bounded_least_squares.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int ends = 7;           // places for the ends of windows
constexpr double onTheWay = 0.25; // weight of the wall after all but the last set-ups
constexpr double doseCost = 0.01; // of a micrometre of dose, so that no two windows are alike

} // namespace

// One window of one set-up of an order.
struct WindowDictionary::Choice {
    std::size_t setUp = 0;
    const Entry* entry = nullptr;
};

WindowDictionary::WindowDictionary(const PlanGround& ground)
    : m_ground(ground)
    , m_entries(ground.may.size()) {
    for (std::size_t s = 0; s < ground.may.size(); ++s)
        if (ground.may[s]) m_entries[s] = entriesOf(s);
}

std::vector<WindowDictionary::Entry> WindowDictionary::entriesOf(std::size_t stone) const {
    const WindowBounds bounds = windowBounds(m_ground, stone);
    const double rate = m_ground.rate(stone);
    const double toGo = m_ground.aim.aim_um - m_ground.weight.dot(m_ground.wall);
    const bool rough = m_ground.rough(stone) || !m_ground.finishes;
    // What a window does depends on how much of it is done: about half of what is to be.
    const double dose = std::max(3.0, 0.5 * (rough ? toGo : std::min(toGo, 25.0)));
    std::vector<Stroking> windows;
    const double step = bounds.room_mm() / (ends - 1);
    for (int from = 0; from < ends; ++from)
        for (int to = from + 1; to < ends; ++to)
            windows.push_back(
                {bounds.highest_mm + from * step, bounds.highest_mm + to * step, dose / rate, 0});
    if (bounds.holds)
        windows.push_back({bounds.lowest_mm - step, bounds.lowest_mm, 0, dose / rate});
    std::vector<Entry> entries;
    for (Stroking& window : windows) {
        const double span = window.held > 0 ? 0 : window.to_mm - window.from_mm;
        if (window.held <= 0 && span < bounds.shortest_mm(window.to_mm) && windows.size() > 2)
            continue;
        const Course course{{stone, {window}}};
        Entry entry;
        entry.takesOff =
            (walkCourse(m_ground, course, 0.8, false).wall.front() - m_ground.wall) / dose;
        entry.dear = 2 - span / std::max(1.0, bounds.room_mm());
        window.strokes /= dose;
        window.held /= dose;
        entry.window = window;
        entries.push_back(std::move(entry));
    }
    return entries;
}

VectorXd WindowDictionary::dosesOf(const StoneOrder& order,
                                   const std::vector<Choice>& choices) const {
    const Index cells = m_ground.wall.size();
    const auto count = static_cast<Index>(choices.size());
    const auto stages = static_cast<Index>(order.size());
    MatrixXd a = MatrixXd::Zero(cells * stages + count, count);
    VectorXd b = VectorXd::Zero(a.rows());
    const VectorXd root = m_ground.weight.cwiseSqrt();
    for (Index stage = 0; stage < stages; ++stage) {
        const bool last = stage + 1 == stages;
        const std::size_t stone = order[static_cast<std::size_t>(stage)];
        const std::size_t next = last ? stone : order[static_cast<std::size_t>(stage) + 1];
        // Before the finish stone, what it takes is to be left; earlier, nothing much is asked.
        const bool handsOver =
            !last && m_ground.rough(stone) && !m_ground.rough(next) && m_ground.finishes;
        const double level =
            last ? m_ground.level_um : m_ground.level_um - 0.8 * m_ground.aim.finishStock_um;
        const double weight = last ? 1 : handsOver ? onTheWay : onTheWay / 3;
        const VectorXd scale = weight * root;
        b.segment(stage * cells, cells) =
            scale.cwiseProduct((level - m_ground.wall.array()).matrix());
        for (Index j = 0; j < count; ++j) {
            const Choice& choice = choices[static_cast<std::size_t>(j)];
            if (choice.setUp <= static_cast<std::size_t>(stage))
                a.col(j).segment(stage * cells, cells) = scale.cwiseProduct(choice.entry->takesOff);
        }
    }
    for (Index j = 0; j < count; ++j)
        a(cells * stages + j, j) = doseCost * choices[static_cast<std::size_t>(j)].entry->dear;
    return boundedLeastSquares(a, b, VectorXd::Zero(count),
                               VectorXd::Constant(count, std::numeric_limits<double>::infinity()))
        .x;
}

Course WindowDictionary::startFor(const StoneOrder& order, int windows) const {
    std::vector<Choice> all;
    for (std::size_t k = 0; k < order.size(); ++k)
        for (const Entry& entry : m_entries[order[k]])
            all.push_back({k, &entry});
    VectorXd doses = dosesOf(order, all);
    // Each set-up keeps its largest.
    std::vector<Choice> kept;
    for (std::size_t k = 0; k < order.size(); ++k) {
        std::vector<std::pair<double, Choice>> own;
        for (std::size_t j = 0; j < all.size(); ++j)
            if (all[j].setUp == k) own.emplace_back(doses[static_cast<Index>(j)], all[j]);
        std::ranges::stable_sort(own,
                                 [](const auto& x, const auto& y) { return x.first > y.first; });
        for (std::size_t n = 0; n < own.size() && n < static_cast<std::size_t>(windows); ++n)
            kept.push_back(own[n].second);
    }
    doses = dosesOf(order, kept);
    Course course;
    for (std::size_t k = 0; k < order.size(); ++k) {
        SetUp setUp{order[k], {}};
        for (std::size_t j = 0; j < kept.size(); ++j) {
            if (kept[j].setUp != k) continue;
            const double dose = std::max(0.3, doses[static_cast<Index>(j)]);
            Stroking window = kept[j].entry->window;
            window.strokes *= dose;
            window.held *= dose;
            setUp.windows.push_back(window);
        }
        course.push_back(std::move(setUp));
    }
    return course;
}

} // namespace borewright
