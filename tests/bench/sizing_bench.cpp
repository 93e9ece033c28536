// SPDX-License-Identifier: GPL-3.0-or-later
// What is reckoned anew after every reading typed: sixteen bores and twenty-four pistons under
// 10 ms, two hundred pistons for twelve or forty bores under 30 ms, sixteen bores and sixty-four
// rings under 30 ms.
#include "core/sizing/matching.h"
#include "core/sizing/ring_gap.h"
#include "core/statistics/random.h"

#include <benchmark/benchmark.h>

namespace borewright::bench {
namespace {

// Lengths so many micrometres over `least`, below `steps`: 1 = all alike, few = many equals.
class Draw {
public:
    explicit Draw(std::int64_t steps)
        : m_steps(static_cast<std::uint64_t>(steps)) {}
    Length operator()(std::int64_t least_um) {
        return Length::whole(least_um + static_cast<std::int64_t>(m_random.next() % m_steps),
                             Unit::micrometre);
    }

private:
    Random m_random{1625};
    std::uint64_t m_steps;
};

// Costs of so many steps.
void assignRandom(benchmark::State& state) {
    Random random(1624);
    AssignmentProblem problem{
        static_cast<int>(state.range(0)), static_cast<int>(state.range(1)), {}};
    for (int i = 0; i < problem.rows * problem.columns; ++i)
        problem.cost.push_back(
            static_cast<std::int64_t>(random.next() % static_cast<std::uint64_t>(state.range(2))));
    for (auto _ : state)
        benchmark::DoNotOptimize(assign(problem)->sum);
}
BENCHMARK(assignRandom)
    ->ArgNames({"rows", "columns", "steps"})
    ->ArgsProduct({{16}, {24}, {100'000'000, 3, 1}})
    ->ArgsProduct({{12, 40}, {200}, {100'000'000, 20, 3, 1}})
    ->Unit(benchmark::kMillisecond);

// Twelve depths on two axes.
std::vector<MeasuredBore> drawBores(std::int64_t count, Draw& draw) {
    std::vector<MeasuredBore> bores(static_cast<std::size_t>(count));
    for (MeasuredBore& bore : bores) {
        bore.bore = static_cast<int>(&bore - bores.data()) + 1;
        bore.ownU = Length::whole(1, Unit::micrometre);
        for (int level = 0; level < 12; ++level)
            for (const char* axis : {"A", "B"})
                bore.at.push_back({Length::whole(5 + 8 * level, Unit::millimetre), axis,
                                   draw(73'700), Zone::ringTravel,
                                   Length::whole(2, Unit::micrometre)});
    }
    return bores;
}

void matchBoresAndPistons(benchmark::State& state) {
    Draw draw(state.range(2));
    const auto bores = drawBores(state.range(0), draw);
    FitRecord fit;
    for (int i = 1; i <= state.range(1); ++i) {
        Piston piston;
        piston.label = std::to_string(i);
        piston.size = typedFrom(draw(73'615), Unit::micrometre);
        piston.height = piston.size;
        fit.pistons.push_back(piston);
    }
    fit.clearance.aim = typedFrom(Length::whole(85, Unit::micrometre), Unit::micrometre);
    for (auto _ : state)
        benchmark::DoNotOptimize(matchPistons(bores, fit).equals);
}
BENCHMARK(matchBoresAndPistons)
    ->ArgNames({"bores", "pistons", "steps"})
    ->ArgsProduct({{16}, {24}, {20, 1}})
    ->ArgsProduct({{12, 40}, {200}, {200, 20, 1}})
    ->Unit(benchmark::kMillisecond);

void dealBoresAndRings(benchmark::State& state) {
    Draw draw(20);
    const auto bores = drawBores(state.range(0), draw);
    FitRecord fit;
    for (int i = 1; i <= state.range(1); ++i) {
        Ring ring;
        ring.label = std::to_string(i);
        ring.gap = typedFrom(draw(300), Unit::micrometre);
        ring.measuredIn = 1;
        ring.measuredAt = typedFrom(Length::whole(21, Unit::millimetre), Unit::millimetre);
        fit.rings.push_back(ring);
    }
    fit.ringGap.aim = typedFrom(Length::whole(350, Unit::micrometre), Unit::micrometre);
    for (auto _ : state)
        benchmark::DoNotOptimize(dealRings(bores, fit, false).front().equals);
}
BENCHMARK(dealBoresAndRings)
    ->ArgNames({"bores", "rings"})
    ->Args({16, 64})
    ->Args({64, 400})
    ->Unit(benchmark::kMillisecond);

} // namespace
} // namespace borewright::bench
