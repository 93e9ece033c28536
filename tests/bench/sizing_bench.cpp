// SPDX-License-Identifier: GPL-3.0-or-later
// Sixteen bores, twenty-four pistons: aim under 10 ms.
#include "core/sizing/matching.h"
#include "core/statistics/random.h"

#include <benchmark/benchmark.h>

namespace borewright::bench {
namespace {

constexpr int rows = 16;
constexpr int columns = 24;

// Costs of so many steps: 1 = all equal, few = many equals, 10^8 = none.
void assign16Of24(benchmark::State& state) {
    Random random(1624);
    AssignmentProblem problem{rows, columns, {}};
    for (int i = 0; i < rows * columns; ++i)
        problem.cost.push_back(
            static_cast<std::int64_t>(random.next() % static_cast<std::uint64_t>(state.range(0))));
    for (auto _ : state)
        benchmark::DoNotOptimize(assign(problem)->sum);
}
BENCHMARK(assign16Of24)->Arg(100'000'000)->Arg(3)->Arg(1)->Unit(benchmark::kMillisecond);

// Twelve depths on two axes; sizes within 20 µm, to the micrometre, or all alike.
void match16Of24(benchmark::State& state) {
    Random random(1625);
    const auto steps = static_cast<std::uint64_t>(state.range(0));
    const auto drawn = [&](std::int64_t um) {
        return Length::whole(um + static_cast<std::int64_t>(random.next() % steps),
                             Unit::micrometre);
    };
    std::vector<MeasuredBore> bores(rows);
    for (MeasuredBore& bore : bores) {
        bore.bore = static_cast<int>(&bore - bores.data()) + 1;
        bore.ownU = Length::whole(1, Unit::micrometre);
        for (int level = 0; level < 12; ++level)
            for (const char* axis : {"A", "B"})
                bore.at.push_back({Length::whole(5 + 8 * level, Unit::millimetre), axis,
                                   drawn(73'700), Zone::ringTravel,
                                   Length::whole(2, Unit::micrometre)});
    }
    FitRecord fit;
    for (int i = 1; i <= columns; ++i) {
        Piston piston;
        piston.label = std::to_string(i);
        piston.size = typedFrom(drawn(73'615), Unit::micrometre);
        piston.height = piston.size;
        fit.pistons.push_back(piston);
    }
    fit.clearance.aim = typedFrom(Length::whole(85, Unit::micrometre), Unit::micrometre);
    for (auto _ : state)
        benchmark::DoNotOptimize(matchPistons(bores, fit).equals);
}
BENCHMARK(match16Of24)->Arg(20)->Arg(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace borewright::bench
