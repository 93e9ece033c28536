// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/told_everything.h"

#include "tests/support/told_course.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <optional>
#include <thread>
#include <utility>

namespace borewright::test {
namespace {

constexpr std::size_t mostSetUps = 20;
constexpr double farSigmas = 2.33;

double meanOf(const HoneBench& bench) {
    double sum = 0;
    for (const double depth : bench.stated().stations)
        sum += bench.truth(depth, 0) + bench.truth(depth, 1);
    return sum / (2 * static_cast<double>(bench.stated().stations.size()));
}

// Sequences worth trying; 0 full rough, 1 short rough, 2 full finish.
std::vector<std::vector<std::size_t>> sequences(double toGo_um) {
    if (toGo_um > 60) return {{0, 1, 2}, {1, 0, 2}, {0, 1, 0, 1, 2}, {0, 2}};
    if (toGo_um > 14) return {{2}, {1, 2}, {0, 2}, {0, 1, 2}, {1, 0, 2}};
    return {{2}, {2, 2}};
}

bool goodEnough(const HoneBench& bench, bool finished) {
    const HoneTruth truth = truthOf(bench);
    return finished && truth.overStations < 4.5 && truth.overAll < 8 && truth.smallest > -6;
}

class ToldPolicy {
public:
    explicit ToldPolicy(SimulatedBench& bench)
        : m_bench(bench) {}

    std::optional<HoneSetUp> next() {
        if (goodEnough(m_bench, m_finished)) return std::nullopt;
        const double toGo = -meanOf(m_bench);
        const double inOne = toGo > 60 ? 8 : 2;
        std::vector<ToldCourse> courses;
        if (m_course && m_course->more()) courses.push_back(m_course->rest(m_bench, inOne));
        for (const auto& stones : sequences(toGo))
            for (const bool low : {false, true}) {
                courses.emplace_back(m_bench, stones, inOne);
                courses.back().begin(std::max(toGo, 4.0), low);
            }
        for (const auto& [rounds, left] : {std::pair{3, 4}, std::pair{6, 1}, std::pair{8, 1}}) {
            for (ToldCourse& course : courses)
                course.improve(rounds);
            std::ranges::sort(courses, {}, &ToldCourse::cost);
            courses.erase(courses.begin() + std::min<std::ptrdiff_t>(left, std::ssize(courses)),
                          courses.end());
        }
        m_course = courses.front();
        HoneSetUp setUp{m_course->firstStone(), m_course->firstWindows(), {}, {}, {}};
        const double share = std::min(safeShare(setUp), correctable(setUp));
        for (HoneWindow& window : setUp.windows)
            window.strokes = std::round(share * window.strokes);
        std::erase_if(setUp.windows, [](const HoneWindow& window) { return window.strokes < 1; });
        if (setUp.windows.empty()) return std::nullopt;
        if (m_finished && nowCost() - m_course->cost() < 0.05) return std::nullopt;
        m_finished = m_bench.stated().stones[setUp.stone].finish;
        return setUp;
    }

private:
    // As courses count it, had the bore nothing more to come.
    [[nodiscard]] double nowCost() const {
        double squares = 0;
        const double depth = m_bench.stated().depth_mm;
        for (double z = 0.5; z < depth - 2.5; z += 1) {
            const double off = (m_bench.truth(z, 0) + m_bench.truth(z, 1)) / 2 - ToldCourse::aim_um;
            squares += std::pow((z > 4 && z < depth - 7 ? 1 : z > 3 ? 0.6 : 0.2) * off, 2);
        }
        return std::sqrt(squares / depth);
    }

    // How much of it keeps under the cap though the stone should cut at its fastest.
    [[nodiscard]] double safeShare(const HoneSetUp& setUp) const {
        const bool finish = m_bench.stated().stones[setUp.stone].finish;
        const double cap = finish ? 2 : -5;
        const double fast = std::exp(farSigmas * m_bench.kit().scatter);
        const auto over = [&](double share) {
            SimulatedBench trial = quietCopy(m_bench, 4);
            for (HoneWindow window : setUp.windows) {
                window.strokes *= share * fast / 4;
                trial.stroke(setUp.stone, window);
            }
            return trial.largest() > cap;
        };
        if (!over(1)) return 1;
        double least = 0, most = 1;
        for (int round = 0; round < 7; ++round) {
            const double middle = (least + most) / 2;
            (over(middle) ? most : least) = middle;
        }
        return least;
    }

    // How much of it leaves room to put right what chance does to it.
    [[nodiscard]] double correctable(const HoneSetUp& setUp) const {
        SimulatedBench trial = quietCopy(m_bench, 4);
        double taken = 0;
        for (HoneWindow window : setUp.windows) {
            window.strokes /= 4;
            trial.stroke(setUp.stone, window);
        }
        for (const double depth : m_bench.stated().stations)
            taken = std::max(taken, trial.truth(depth, 0) - m_bench.truth(depth, 0));
        const bool finish = m_bench.stated().stones[setUp.stone].finish;
        const double room_um = finish ? 2.5 : 8;
        return std::clamp(room_um / (2 * m_bench.kit().scatter * taken + 1e-6), 0.7, 1.0);
    }

    SimulatedBench& m_bench;
    std::optional<ToldCourse> m_course;
    bool m_finished = false;
};

LoopResult runTold(SimulatedBench& bench) {
    LoopResult result;
    ToldPolicy policy(bench);
    result.truths.push_back(truthOf(bench));
    std::optional<std::size_t> fitted;
    while (result.setUps() < mostSetUps) {
        const std::optional<HoneSetUp> next = policy.next();
        result.said = !next;
        if (!next) break;
        if (fitted && *fitted != next->stone) ++result.stoneChanges;
        fitted = next->stone;
        for (const HoneWindow& window : next->windows)
            bench.stroke(next->stone, window);
        bench.beginReading();
        result.windows += next->windows.size();
        result.history.steps.push_back({*next, {}});
        result.truths.push_back(truthOf(bench));
    }
    return result;
}

} // namespace

std::vector<LoopResult> runToldEverything(const SimulatedMaker& maker, std::uint64_t from,
                                          std::uint64_t to) {
    std::vector<LoopResult> results(to - from);
    std::atomic<std::uint64_t> next = from;
    const auto work = [&] {
        for (std::uint64_t seed = next++; seed < to; seed = next++) {
            results[seed - from] = runTold(*maker(seed));
            results[seed - from].seed = seed;
        }
    };
    std::thread other(work);
    work();
    other.join();
    return results;
}

} // namespace borewright::test
