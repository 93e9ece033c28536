// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/trials.h"
#include "core/results/results.h"
#include "core/statistics/random.h"
#include "core/storage/workbook_file.h"
#include "core/workbook/edit.h"
#include "tests/bench/large_block.h"

#include <benchmark/benchmark.h>

namespace borewright::bench {
namespace {

// What `borewright check` does to 20 000 bores: 1250 workbooks of 16, five levels, read and judged.
void check20000Bores(benchmark::State& state) {
    const std::string file = writeWorkbook(largeBlock(16, 5, 1));
    for (auto _ : state)
        for (int i = 0; i < 1250; ++i) {
            const auto workbook = readWorkbook(file);
            benchmark::DoNotOptimize(compute(*workbook, DisplayUnits::inch()).surveys[0].verdict);
        }
}
BENCHMARK(check20000Bores)->Unit(benchmark::kMillisecond);

void computeOnly20000Bores(benchmark::State& state) {
    const Workbook workbook = largeBlock(16, 5, 1);
    for (auto _ : state)
        for (int i = 0; i < 1250; ++i)
            benchmark::DoNotOptimize(compute(workbook, DisplayUnits::inch()).surveys[0].verdict);
}
BENCHMARK(computeOnly20000Bores)->Unit(benchmark::kMillisecond);

void computeLargestBlock(benchmark::State& state) {
    const Workbook workbook = largeBlock(16, 12, 10);
    for (auto _ : state)
        benchmark::DoNotOptimize(compute(workbook, DisplayUnits::inch()).surveys.size());
}
BENCHMARK(computeLargestBlock)->Unit(benchmark::kMillisecond);

// With the doubt known: all 160 bores' trials from nothing, quick as the window's first picture has
// them, and whole.
void doubtsOfLargestBlock(benchmark::State& state) {
    const Workbook workbook = largeBlock(16, 12, 10, WithGear::yes);
    const auto reckoning = state.range(0) == 0 ? Reckoning::quick : Reckoning::whole;
    for (auto _ : state) {
        DoubtMemory memory;
        benchmark::DoNotOptimize(
            compute(workbook, DisplayUnits::inch(), memory, reckoning).surveys.size());
    }
}
BENCHMARK(doubtsOfLargestBlock)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void writeLargestBlock(benchmark::State& state) {
    const Workbook workbook = largeBlock(16, 12, 10);
    for (auto _ : state)
        benchmark::DoNotOptimize(writeWorkbook(workbook).size());
}
BENCHMARK(writeLargestBlock)->Unit(benchmark::kMillisecond);

// Six bores × five levels × two axes, from perfect to worn, with the gear of a tenth dial.
std::vector<TrialBore> sixBores() {
    Random random(6);
    std::vector<TrialBore> bores(6);
    for (std::size_t b = 0; b < bores.size(); ++b) {
        for (int level = 0; level < 5; ++level)
            for (int axis = 0; axis < 2; ++axis)
                bores[b].stations.push_back({level,
                                             axis,
                                             1.5 * static_cast<double>(b) * random.normal(),
                                             true,
                                             {2.03, 0.73, 0.73}});
        for (const double u_um : {0.6, 1.27, 1.46, 0.8, 0.68}) {
            SharedDoubt shared;
            shared.u_um = u_um;
            if (u_um < 1) shared.distribution = Distribution::rectangular;
            bores[b].shared.push_back(std::move(shared));
        }
    }
    return bores;
}

// 200 000 trials of a six-bore block on one core.
void trialsOfSixBores(benchmark::State& state) {
    const std::vector<TrialBore> bores = sixBores();
    const TrialOptions options{20, 20, 1, 10};
    for (auto _ : state)
        benchmark::DoNotOptimize(doubtsOf(bores, options).size());
}
BENCHMARK(trialsOfSixBores)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace borewright::bench
