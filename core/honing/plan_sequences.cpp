// SPDX-License-Identifier: GPL-3.0-or-later
// Orders of stones, and starts of fits.
#include "core/honing/plan_sequences.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;

// Share of a stone's reach.
struct Part {
    double from = 0;
    double to = 1;
    double dose = 1; // of the set-up's
};

// Ways of spreading three windows, by what kind of stone it is: the best of some hundred drawn at
// random, fitted on walls that honing leaves. Long, short and finish stones in this order.
constexpr Part parts[startsKnown][3][3] = {
    {{{0.51, 1.00, 0.17}, {0.35, 0.80, 0.63}, {0.87, 0.89, 0.29}},
     {{0.66, 1.00, 0.13}, {0.43, 0.76, 0.22}, {0.05, 0.44, 0.61}},
     {{0.12, 0.36, 0.46}, {0.37, 0.50, 0.16}, {0.42, 1.00, 0.27}}},
    {{{0.07, 1.00, 0.09}, {0.76, 0.98, 0.43}, {0.32, 0.67, 0.26}},
     {{0.02, 1.00, 0.60}, {0.01, 0.67, 0.33}, {0.74, 0.88, 0.28}},
     {{0.23, 0.74, 0.60}, {0.59, 0.80, 0.08}, {0.69, 0.76, 0.12}}},
    {{{0.42, 1.00, 0.51}, {0.38, 0.41, 0.11}, {0.47, 1.00, 0.14}},
     {{0.12, 1.00, 0.51}, {0.00, 0.23, 0.25}, {0.54, 0.76, 0.66}},
     {{0.19, 0.67, 0.27}, {0.36, 0.65, 0.55}, {0.62, 0.70, 0.59}}},
};

double weightedMean(const PlanGround& ground, const Eigen::VectorXd& wall) {
    return ground.weight.dot(wall);
}

// Long, short, finish.
std::size_t kindOf(const PlanGround& ground, std::size_t stone) {
    if (!ground.rough(stone)) return 2;
    double longest = 0;
    for (const BenchStone& other : ground.bench.stones)
        longest = std::max(longest, other.grid.length_mm);
    return ground.bench.stones[stone].grid.length_mm < 0.6 * longest ? 1 : 0;
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

Stroking windowAt(const PlanGround& ground, std::size_t stone, const Part& part, double dose) {
    const WindowBounds bounds = windowBounds(ground, stone);
    return {bounds.highest_mm + part.from * bounds.room_mm(),
            bounds.highest_mm + part.to * bounds.room_mm(), dose * part.dose / ground.rate(stone),
            0};
}

} // namespace

std::vector<StoneOrder> stoneOrders(const PlanGround& ground, const PlanOptions& options,
                                    std::size_t most) {
    std::vector<StoneOrder> orders = Orders(ground, options).all();
    if (orders.size() > most) orders.resize(most);
    return orders;
}

Course startOf(const PlanGround& ground, const StoneOrder& order, int windows, int start) {
    const std::vector<double> shares = stockShares(ground, order);
    Course course;
    for (std::size_t k = 0; k < order.size(); ++k) {
        SetUp setUp{order[k], {}};
        const double dose = doseFor(ground, order[k], shares[k]);
        for (int w = 0; w < std::min(windows, 3); ++w)
            setUp.windows.push_back(
                windowAt(ground, order[k], parts[start][kindOf(ground, order[k])][w], dose));
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
        int next = 0;
        while (static_cast<int>(setUp.windows.size()) < windows && next < 3)
            setUp.windows.push_back(windowAt(
                ground, setUp.stone, parts[0][kindOf(ground, setUp.stone)][2 - next++], 1.0));
    }
    return course;
}

} // namespace borewright
