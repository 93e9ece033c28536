// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/results.h"
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
    for (auto _ : state) benchmark::DoNotOptimize(compute(workbook, DisplayUnits::inch()).surveys.size());
}
BENCHMARK(computeLargestBlock)->Unit(benchmark::kMillisecond);

void writeLargestBlock(benchmark::State& state) {
    const Workbook workbook = largeBlock(16, 12, 10);
    for (auto _ : state) benchmark::DoNotOptimize(writeWorkbook(workbook).size());
}
BENCHMARK(writeLargestBlock)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace borewright::bench
