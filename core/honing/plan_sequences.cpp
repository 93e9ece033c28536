// SPDX-License-Identifier: GPL-3.0-or-later
// Orders of stones, and starts of fits.
#include "core/honing/plan_sequences.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace borewright {

namespace {

using Eigen::Index;

double weightedMean(const PlanGround& ground, const Eigen::VectorXd& wall) {
    return ground.weight.dot(wall);
}

// Long, short, finish.
std::size_t kindOf(const PlanGround& ground, std::size_t stone) {
    if (!ground.rough(stone)) return 2;
    return ground.brief(stone) ? 1 : 0;
}

// Orders by what tends to be best: few stones first, then the longest rough ones.
class Orders {
public:
    Orders(const PlanGround& ground, const PlanOptions& options)
        : m_ground(ground)
        , m_options(options) {
        for (std::size_t s = 0; s < ground.may.size(); ++s) {
            if (!ground.may[s] || (needless(s) && options.first != s)) continue;
            (ground.rough(s) ? m_rough : m_finish).push_back(s);
        }
        const auto longer = [&](std::size_t a, std::size_t b) {
            const double la = ground.bench.stones[a].grid.length_mm;
            const double lb = ground.bench.stones[b].grid.length_mm;
            return la != lb ? la > lb : a < b;
        };
        std::ranges::sort(m_rough, longer);
        std::ranges::sort(m_finish, longer);
    }

    std::vector<StoneOrder> all() {
        if (m_finish.empty()) {
            roughOnly();
        } else {
            for (const std::size_t n : m_finish)
                add({n});
            for (const std::size_t r : m_rough)
                for (const std::size_t n : m_finish)
                    add({r, n});
            pairsOf(m_finish, {});
            threes();
        }
        return std::move(m_orders);
    }

private:
    // A short stone brings a closed end along. Where a longer one stands out of that end, it is
    // not needed.
    [[nodiscard]] bool needless(std::size_t stone) const {
        if (kindOf(m_ground, stone) != 1) return false;
        for (std::size_t s = 0; s < m_ground.may.size(); ++s) {
            const StoneOnGrid& other = m_ground.bench.stones[s].grid;
            if (m_ground.may[s] && m_ground.rough(s) && kindOf(m_ground, s) == 0 &&
                other.lowest_mm > m_ground.bench.grid.depth_mm() + other.length_mm / 8)
                return true;
        }
        return false;
    }
    void add(StoneOrder order) {
        if (static_cast<int>(order.size()) > std::max(1, m_options.mostSetUps)) return;
        if (m_options.first && order.front() != *m_options.first) return;
        if (std::ranges::find(m_orders, order) == m_orders.end())
            m_orders.push_back(std::move(order));
    }
    // Two of these, not the same, then the rest.
    void pairsOf(const std::vector<std::size_t>& stones, const StoneOrder& then) {
        for (const std::size_t a : stones)
            for (const std::size_t b : stones) {
                if (a == b) continue;
                StoneOrder order{a, b};
                order.insert(order.end(), then.begin(), then.end());
                add(std::move(order));
            }
    }
    void threes() {
        for (const std::size_t n : m_finish)
            pairsOf(m_rough, {n});
        for (const std::size_t n : m_finish) {
            add({n, n});
            for (const std::size_t r : m_rough) {
                add({r, n, n});
                add({n, r, n}); // while the closed end still has the stock for it
                add({r, r, n});
            }
        }
        for (const std::size_t r : m_rough)
            for (const std::size_t a : m_finish)
                for (const std::size_t b : m_finish)
                    if (a != b) add({r, a, b});
    }
    void roughOnly() {
        for (const std::size_t r : m_rough)
            add({r});
        pairsOf(m_rough, {});
        for (const std::size_t r : m_rough) {
            add({r, r});
            pairsOf(m_rough, {r});
        }
    }

    const PlanGround& m_ground;
    const PlanOptions& m_options;
    std::vector<std::size_t> m_rough, m_finish;
    std::vector<StoneOrder> m_orders;
};

// What is to come off with each set-up of the order, µm over the whole bore.
std::vector<double> stockShares(const PlanGround& ground, const StoneOrder& order) {
    const double toGo = ground.aim.aim_um - weightedMean(ground, ground.wall);
    std::size_t rough = 0;
    for (const std::size_t s : order)
        rough += ground.rough(s) && ground.finishes ? 1 : 0;
    const double forFinish = rough > 0 ? std::min(toGo, 0.8 * ground.aim.finishStock_um) : toGo;
    double longest = 0;
    for (const std::size_t s : order)
        longest = std::max(longest, ground.bench.stones[s].grid.length_mm);
    std::vector<double> shares;
    for (const std::size_t s : order) {
        const bool asRough = ground.rough(s) && ground.finishes;
        const auto alike = static_cast<double>(asRough ? rough : order.size() - rough);
        double share = std::max(0.5, (asRough ? toGo - forFinish : forFinish) / alike);
        // A short stone brings one end along; a long one takes the rest.
        if (ground.bench.stones[s].grid.length_mm < 0.6 * longest) share = std::min(share, 15.0);
        shares.push_back(share);
    }
    return shares;
}

// A dose that takes so much off on the average over the bore: the force is the same everywhere, so
// that the mean over the stone's length is the dose.
double doseFor(const PlanGround& ground, std::size_t stone, double stock) {
    const StoneOnGrid& on = ground.bench.stones[stone].grid;
    return stock * ground.bench.grid.depth_mm() / std::max(1.0, on.length_mm);
}

// Where another kind of stone begins to cut when it stands at its lowest: what ends there meets it
// without a seam. Half-way where there is no other kind.
double meetingPlace(const PlanGround& ground, std::size_t stone) {
    const WindowBounds bounds = windowBounds(ground, stone);
    const bool brief = kindOf(ground, stone) == 1;
    std::optional<double> place;
    for (std::size_t other = 0; other < ground.may.size(); ++other) {
        if (!ground.may[other] || (kindOf(ground, other) == 1) == brief) continue;
        const StoneOnGrid& on = ground.bench.stones[other].grid;
        const double top = on.lowest_mm - on.length_mm;
        place = place ? std::max(*place, top) : top;
    }
    const double halfWay = bounds.highest_mm + bounds.room_mm() / 2;
    return std::clamp(place.value_or(halfWay), std::min(bounds.highest_mm + 2, bounds.lowest_mm),
                      bounds.lowest_mm);
}

constexpr double briefly_mm = 1, atMeeting_mm = 4; // lengths of windows to start from

std::vector<Stroking> windowsToStart(const PlanGround& ground, std::size_t stone, double dose,
                                     StartShape shape) {
    const WindowBounds bounds = windowBounds(ground, stone);
    const double strokes = dose / ground.rate(stone);
    const double lowest = bounds.lowest_mm, highest = bounds.highest_mm;
    const double meeting = meetingPlace(ground, stone);
    const double above = std::max(highest, meeting - atMeeting_mm);
    std::vector<Stroking> windows{
        {std::max(highest, lowest - briefly_mm), lowest, 0.45 * strokes, 0},
        {above, meeting, 0.35 * strokes, 0}};
    const double share = 0.2 * strokes;
    switch (shape) {
    case StartShape::above:
        windows.push_back({highest, meeting, share, 0});
        break;
    case StartShape::below:
        windows.push_back({above, meeting + 0.8 * (lowest - meeting), share, 0});
        break;
    case StartShape::throughout:
        windows.push_back({highest, lowest, share, 0});
        break;
    }
    return windows;
}

} // namespace

std::vector<StoneOrder> stoneOrders(const PlanGround& ground, const PlanOptions& options,
                                    std::size_t most) {
    std::vector<StoneOrder> orders = Orders(ground, options).all();
    if (orders.size() > most) orders.resize(most);
    return orders;
}

Course startOf(const PlanGround& ground, const StoneOrder& order, int windows, StartShape shape) {
    const std::vector<double> shares = stockShares(ground, order);
    Course course;
    for (std::size_t k = 0; k < order.size(); ++k) {
        const double dose = doseFor(ground, order[k], shares[k]);
        SetUp setUp{order[k], windowsToStart(ground, order[k], dose, shape)};
        if (static_cast<int>(setUp.windows.size()) > windows)
            setUp.windows.resize(static_cast<std::size_t>(std::max(1, windows)));
        course.push_back(std::move(setUp));
    }
    return course;
}

StoneOrder orderOf(const Course& course) {
    StoneOrder order;
    for (const SetUp& setUp : course)
        order.push_back(setUp.stone);
    return order;
}

Course withRoom(const PlanGround& ground, Course course, int windows) {
    for (SetUp& setUp : course) {
        const double dose = 1;
        for (const Stroking& window :
             windowsToStart(ground, setUp.stone, dose, StartShape::throughout))
            if (static_cast<int>(setUp.windows.size()) < windows) setUp.windows.push_back(window);
    }
    return course;
}

} // namespace borewright
