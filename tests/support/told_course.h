// SPDX-License-Identifier: GPL-3.0-or-later
// Part of told_everything.h: some set-ups in a row, tried out on a copy of the bench and bettered
// by Levenberg–Marquardt with derivatives by differences.
#pragma once

#include "tests/support/simulated_bench.h"

#include <Eigen/Core>

namespace borewright::test {

// The bench without chance, and a few times as fast: so many strokes are done as one.
SimulatedBench quietCopy(const SimulatedBench& bench, double strokesInOne);

class ToldCourse {
public:
    // Stones by set-up, each with three windows.
    ToldCourse(const SimulatedBench& bench, std::vector<std::size_t> stones, double inOne);

    // Begins with windows that are usual, wide or low, meant to take what is to go.
    void begin(double toGo_um, bool low);
    void improve(int rounds);

    [[nodiscard]] double cost() const { return m_cost; } // µm; a set-up counts for setUpCost_um
    [[nodiscard]] std::vector<HoneWindow> firstWindows() const { return windows(m_x, 0); }
    [[nodiscard]] std::size_t firstStone() const { return m_stones.front(); }
    // What remains when the first set-up is done.
    [[nodiscard]] ToldCourse rest(const SimulatedBench& after, double inOne) const;
    [[nodiscard]] bool more() const { return m_stones.size() > 1; }

    static constexpr double setUpCost_um = 0.1;
    static constexpr double aim_um = -2.5;

private:
    [[nodiscard]] std::vector<HoneWindow> windows(const Eigen::VectorXd& x,
                                                  std::size_t setUp) const;
    [[nodiscard]] Eigen::VectorXd bounded(Eigen::VectorXd x) const;
    // Residuals; set-ups before `from` are taken as they stand in `at`.
    [[nodiscard]] Eigen::VectorXd tried(const Eigen::VectorXd& x, std::size_t from,
                                        std::vector<SimulatedBench>& at) const;
    void addStock(const SimulatedBench& bench, std::size_t setUp,
                  std::vector<double>& residuals) const;
    void addEnd(const SimulatedBench& bench, std::vector<double>& residuals) const;
    [[nodiscard]] double costOf(const Eigen::VectorXd& residuals) const;

    SimulatedBench m_bench;
    double m_inOne; // strokes done as one
    std::vector<std::size_t> m_stones;
    Eigen::VectorXd m_x; // by window: from, to, strokes
    double m_cost = 1e9;
};

} // namespace borewright::test
