// SPDX-License-Identifier: GPL-3.0-or-later
// The step is about what stones are off by, so that the parabola is read between its points. What a
// length costs beforehand, and the least gain, are from trials on simulated benches: with less,
// chance alone moves stones that are as stated, and on the harsh bench a bore went 47 µm over by
// it; with more, those that are not are found late.
#include "core/honing/learning_lengths.h"

#include "core/honing/plan_share.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

constexpr double step_mm = 2, mostOff_mm = 3, told_mm = 0.5; // told in halves of a millimetre
constexpr double unlike = 1.5, unlikeA_mm = 0.3;             // ln of the chance beforehand
constexpr double leastGain = 0.5;                            // ln
constexpr int mostMoves = 3;                                 // a survey

double unlikely(double longer_mm) {
    return longer_mm == 0 ? 0 : unlike + unlikeA_mm * std::abs(longer_mm);
}

Bench benchWith(Bench bench, const std::vector<double>& longer_mm) {
    for (std::size_t s = 0; s < bench.stones.size(); ++s) {
        StoneOnGrid& stone = bench.stones[s].grid;
        if (longer_mm[s] != 0)
            stone = stoneOnGrid(bench.grid, stone.length_mm + longer_mm[s], stone.highest_mm,
                                stone.lowest_mm);
    }
    return bench;
}

Bench onHigherCells(Bench bench) {
    const std::size_t fine = bench.grid.cells;
    bench.grid.height_mm *= 2;
    bench.grid.cells = (fine + 1) / 2;
    if (bench.land.size() > 0) {
        Eigen::VectorXd land(static_cast<Eigen::Index>(bench.grid.cells));
        for (std::size_t i = 0; i < bench.grid.cells; ++i) {
            const std::size_t other = std::min(2 * i + 1, fine - 1);
            land[static_cast<Eigen::Index>(i)] =
                0.5 * (bench.land[static_cast<Eigen::Index>(2 * i)] +
                       bench.land[static_cast<Eigen::Index>(other)]);
        }
        bench.land = std::move(land);
    }
    for (BenchStone& stone : bench.stones)
        stone.grid = stoneOnGrid(bench.grid, stone.grid.length_mm, stone.grid.highest_mm,
                                 stone.grid.lowest_mm);
    return bench;
}

// Where a parabola through 0 in the middle and these values a step to either side is highest, as
// steps, within them; and how high.
struct Peak {
    double at = 0, height = 0;
};
Peak peakOf(double before, double behind) {
    const double bend = before + behind;
    const double tilt = behind - before;
    if (bend < 0 && std::abs(tilt) < -2 * bend)
        return {-tilt / (2 * bend), -tilt * tilt / (8 * bend)};
    return behind > before ? Peak{1, behind} : Peak{-1, before};
}

} // namespace

LengthsTried::LengthsTried(const Bench& stated, std::size_t bores, const LearningOptions& options)
    : m_bench(onHigherCells(stated))
    , m_bores(bores)
    , m_options(options)
    , m_longer_mm(stated.stones.size(), 0)
    , m_here(m_bench, bores, options)
    , m_beside(stated.stones.size()) {}

double LengthsTried::longer_mm(std::size_t stone) const {
    return stone < m_longer_mm.size() ? m_longer_mm[stone] : 0;
}

Bench LengthsTried::with(const Bench& stated) const {
    return benchWith(stated, m_longer_mm);
}

LogLearner LengthsTried::toldAgain(const std::vector<double>& longer_mm) const {
    LogLearner learner(benchWith(m_bench, longer_mm), m_bores, m_options);
    for (const LearningEvent& event : m_told)
        learner.take(event);
    return learner;
}

void LengthsTried::beginBeside(std::size_t stone) {
    const auto begin = [&](std::size_t side) {
        std::vector<double> longer_mm = m_longer_mm;
        longer_mm[stone] += side == 0 ? -step_mm : step_mm;
        (side == 0 ? m_beside[stone].shorter : m_beside[stone].longer) = toldAgain(longer_mm);
    };
    shareOut(2, begin, {});
}

void LengthsTried::goOn(const LearningEvent& event) {
    std::vector<LogLearner*> accounts{&m_here};
    for (Beside& beside : m_beside)
        if (beside.longer) {
            accounts.push_back(&*beside.shorter);
            accounts.push_back(&*beside.longer);
        }
    shareOut(accounts.size(), [&](std::size_t i) { accounts[i]->take(event); }, {});
    m_told.push_back(event);
}

void LengthsTried::take(const LearningEvent& event) {
    if (event.kind == LearningEvent::Kind::pass && !m_beside[event.setUp.stone].longer)
        beginBeside(event.setUp.stone);
    goOn(event);
}

void LengthsTried::tellAllAgain() {
    m_here = toldAgain(m_longer_mm);
    for (std::size_t stone = 0; stone < m_beside.size(); ++stone)
        if (m_beside[stone].longer) beginBeside(stone);
}

std::optional<LengthsTried::Better> LengthsTried::likeliest() const {
    std::optional<Better> best;
    for (std::size_t stone = 0; stone < m_beside.size(); ++stone) {
        const Beside& beside = m_beside[stone];
        if (!beside.longer) continue;
        const double here_mm = m_longer_mm[stone];
        const Peak peak = peakOf(beside.shorter->likelihood() - m_here.likelihood(),
                                 beside.longer->likelihood() - m_here.likelihood());
        const double then_mm = std::clamp(
            told_mm * std::round((here_mm + step_mm * peak.at) / told_mm), -mostOff_mm, mostOff_mm);
        const double gain = peak.height + unlikely(here_mm) - unlikely(then_mm);
        if (then_mm != here_mm && gain > (best ? best->gain : leastGain))
            best = {stone, then_mm, gain};
    }
    return best;
}

bool LengthsTried::improve() {
    bool any = false;
    for (int move = 0; move < mostMoves; ++move) {
        const auto better = likeliest();
        if (!better) break;
        const LengthsTried before = *this;
        double& longer_mm = m_longer_mm[better->stone];
        const double gain = unlikely(longer_mm) - unlikely(better->longer_mm);
        longer_mm = better->longer_mm;
        tellAllAgain();
        // The parabola may have promised too much.
        if (m_here.likelihood() - before.m_here.likelihood() + gain < leastGain / 2) {
            *this = before;
            break;
        }
        any = true;
    }
    return any;
}

} // namespace borewright
