// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/told_course.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace borewright::test {
namespace {

constexpr std::size_t windowsOfSetUp = 3;
constexpr Eigen::Index perWindow = 3;
constexpr Eigen::Index perSetUp = perWindow * windowsOfSetUp;
constexpr double endsApart_mm = 1; // for a difference
constexpr double leftForFinish_um = 12, leftAtMost_um = 20;
constexpr double leftForRough_um = 30, leftForAgain_um = 3;

double mean(const HoneBench& bench, double depth_mm) {
    return (bench.truth(depth_mm, 0) + bench.truth(depth_mm, 1)) / 2;
}

double larger(const HoneBench& bench, double depth_mm) {
    return std::max(bench.truth(depth_mm, 0), bench.truth(depth_mm, 1));
}

} // namespace

SimulatedBench quietCopy(const SimulatedBench& bench, double inOne) {
    SimulatedBench quiet = bench.copy();
    HoneKit& kit = quiet.kit();
    kit.scatter = kit.drift = kit.endError_mm = 0;
    kit.countError = 0;
    kit.step_mm = inOne > 4 ? 2 : 1;
    for (TrueStone& stone : kit.stones) {
        stone.rate_um *= inOne;
        stone.loadingStrokes /= inOne;
        stone.loaded /= inOne;
    }
    return quiet;
}

ToldCourse::ToldCourse(const SimulatedBench& bench, std::vector<std::size_t> stones, double inOne)
    : m_bench(quietCopy(bench, inOne))
    , m_inOne(inOne)
    , m_stones(std::move(stones))
    , m_x(perSetUp * static_cast<Eigen::Index>(m_stones.size())) {}

ToldCourse ToldCourse::rest(const SimulatedBench& after, double inOne) const {
    ToldCourse course(after, {m_stones.begin() + 1, m_stones.end()}, inOne);
    course.m_x = m_x.tail(m_x.size() - perSetUp);
    return course;
}

void ToldCourse::begin(double toGo_um, bool low) {
    const BoreAsStated& stated = m_bench.stated();
    const double share = toGo_um / static_cast<double>(m_stones.size());
    for (std::size_t i = 0; i < m_stones.size(); ++i) {
        const std::size_t stone = m_stones[i];
        const double highest = stated.highest_mm(stone), lowest = stated.lowest_mm(stone);
        const bool finish = stated.stones[stone].finish;
        const double rate = m_bench.kit().stones[stone].rate_um / m_inOne;
        const double strokes = (finish ? std::min(toGo_um, 15.0) : share) / rate;
        const bool brief = stated.stones[stone].length_mm < 40;
        const auto at = perSetUp * static_cast<Eigen::Index>(i);
        m_x.segment<perWindow>(at) << (brief ? lowest - (low ? 12 : 40) : highest), lowest, strokes;
        m_x.segment<perWindow>(at + perWindow) << (low || brief ? lowest - 6 : highest),
            (low || brief ? lowest : highest + 20), strokes / 3;
        m_x.segment<perWindow>(at + 2 * perWindow) << lowest - 1.2, lowest, strokes / 10;
    }
    m_x = bounded(m_x);
}

std::vector<HoneWindow> ToldCourse::windows(const Eigen::VectorXd& x, std::size_t setUp) const {
    std::vector<HoneWindow> made;
    for (std::size_t w = 0; w < windowsOfSetUp; ++w) {
        const auto at =
            perSetUp * static_cast<Eigen::Index>(setUp) + perWindow * static_cast<Eigen::Index>(w);
        made.push_back({x[at], x[at + 1], x[at + 2], 0});
    }
    return made;
}

Eigen::VectorXd ToldCourse::bounded(Eigen::VectorXd x) const {
    for (Eigen::Index at = 0; at < x.size(); at += perWindow) {
        const std::size_t stone = m_stones[static_cast<std::size_t>(at / perSetUp)];
        const double highest = m_bench.stated().highest_mm(stone);
        const double lowest = m_bench.stated().lowest_mm(stone);
        x[at] = std::clamp(x[at], highest, lowest - 1);
        x[at + 1] = std::clamp(x[at + 1], x[at] + 1, lowest);
        x[at + 2] = std::clamp(x[at + 2], 0.0, 400.0);
    }
    return x;
}

// Before the finish stone: what it needs everywhere, and not much more. Before another rough stone:
// enough that what comes out wrong can still be put right.
void ToldCourse::addStock(const SimulatedBench& bench, std::size_t setUp,
                          std::vector<double>& residuals) const {
    const auto finishes = [&](std::size_t k) { return bench.stated().stones[m_stones[k]].finish; };
    const bool before = !finishes(setUp) && finishes(setUp + 1);
    const double least = finishes(setUp) ? leftForAgain_um
                         : before        ? leftForFinish_um
                                         : leftForRough_um;
    for (double depth = 3; depth <= bench.stated().depth_mm - 3; depth += 2) {
        residuals.push_back((before ? 3 : 0.5) * std::max(0.0, larger(bench, depth) + least));
        if (before) residuals.push_back(0.6 * std::max(0.0, -leftAtMost_um - mean(bench, depth)));
    }
}

void ToldCourse::addEnd(const SimulatedBench& bench, std::vector<double>& residuals) const {
    const double depth = bench.stated().depth_mm;
    for (double z = 0.5; z < depth - 2.5; z += 1) {
        const bool inside = z > 4 && z < depth - 7;
        residuals.push_back((inside ? 1 : z > 3 ? 0.6 : 0.2) * (mean(bench, z) - aim_um));
        residuals.push_back(3 * std::max(0.0, larger(bench, z) - 1.5));
    }
}

Eigen::VectorXd ToldCourse::tried(const Eigen::VectorXd& x, std::size_t from,
                                  std::vector<SimulatedBench>& at) const {
    const bool keeps = from == 0;
    if (keeps) at.assign(1, m_bench.copy());
    SimulatedBench bench = at[from].copy();
    std::vector<double> residuals;
    for (std::size_t i = 0; i < m_stones.size(); ++i) {
        const bool last = i + 1 == m_stones.size();
        if (i >= from) {
            std::uint64_t seed = 100 * i;
            for (HoneWindow window : windows(x, i)) {
                bench.kit().chance = Random(++seed);
                window.strokes /= m_inOne;
                bench.stroke(m_stones[i], window);
            }
            if (keeps) at.push_back(bench.copy());
        }
        const SimulatedBench& now = i >= from ? bench : at[i + 1];
        if (!last) addStock(now, i, residuals);
        for (const HoneWindow& window : windows(x, i))
            residuals.push_back(0.05 * std::sqrt(window.strokes + 1));
    }
    addEnd(bench, residuals);
    return Eigen::Map<const Eigen::VectorXd>(residuals.data(),
                                             static_cast<Eigen::Index>(residuals.size()));
}

double ToldCourse::costOf(const Eigen::VectorXd& residuals) const {
    return std::sqrt(residuals.squaredNorm() / m_bench.stated().depth_mm) +
           setUpCost_um * static_cast<double>(m_stones.size());
}

void ToldCourse::improve(int rounds) {
    std::vector<SimulatedBench> at, ignored;
    Eigen::VectorXd r = tried(m_x, 0, at);
    double damping = 0.03;
    for (int round = 0; round < rounds; ++round) {
        Eigen::MatrixXd slope(r.size(), m_x.size());
        Eigen::VectorXd unit(m_x.size());
        for (Eigen::Index k = 0; k < m_x.size(); ++k) {
            unit[k] = k % perWindow == 2 ? 1 + 0.08 * m_x[k] : endsApart_mm;
            Eigen::VectorXd x = m_x;
            x[k] += unit[k];
            if ((bounded(x) - x).norm() > 1e-9) {
                unit[k] = -unit[k];
                x[k] = m_x[k] + unit[k];
                x = bounded(x);
            }
            slope.col(k) = tried(x, static_cast<std::size_t>(k / perSetUp), at) - r;
        }
        bool better = false;
        for (int attempt = 0; attempt < 4 && !better; ++attempt, damping *= 5) {
            Eigen::MatrixXd normal = slope.transpose() * slope;
            normal.diagonal() *= 1 + damping;
            normal.diagonal().array() += damping;
            const Eigen::VectorXd move = normal.ldlt().solve(-slope.transpose() * r);
            const Eigen::VectorXd x =
                bounded(m_x + move.cwiseMax(-12).cwiseMin(12).cwiseProduct(unit));
            std::vector<SimulatedBench> then;
            const Eigen::VectorXd found = tried(x, 0, then);
            if (found.squaredNorm() >= r.squaredNorm()) continue;
            better = true;
            const bool little = found.squaredNorm() > 0.995 * r.squaredNorm();
            m_x = x, r = found, at = std::move(then);
            damping = std::max(1e-3, damping / 25);
            if (little) round = rounds;
        }
        if (!better) break;
    }
    m_cost = costOf(r);
}

} // namespace borewright::test
