// SPDX-License-Identifier: GPL-3.0-or-later
// What a planner pays for one window: 40 mm of travel of a 75 mm stone in a worn bore of 100 mm, 60
// strokes of 1 µm, compliance 20 µm.
#include "tests/support/stroked.h"

#include <benchmark/benchmark.h>

namespace borewright::bench {
namespace {

using namespace test;

Stroked window() {
    Stroked bore;
    bore.stone = stoneOnGrid(bore.grid, 75, 20, 100);
    bore.worn(1);
    bore.stroking = {60, 100, 60, 0};
    return bore;
}

void honeOneWindow(benchmark::State& state) {
    const Stroked bore = window();
    WallAndFace wall = bore.before;
    for (auto _ : state) {
        wall = bore.before;
        hone(bore.grid, bore.stone, bore.settings, bore.ground, bore.stroking, wall);
        benchmark::DoNotOptimize(wall.diameter.data());
    }
}
BENCHMARK(honeOneWindow)->Unit(benchmark::kMicrosecond);

// Directions of a planner (ends and strokes of nine windows) and of a full covariance.
void honeOneWindowWithDirections(benchmark::State& state) {
    const Stroked bore = window();
    const auto count = static_cast<Index>(state.range(0));
    Directions before;
    before.diameter = Eigen::MatrixXd::Random(bore.before.diameter.size(), count);
    before.face = Eigen::MatrixXd::Random(bore.before.face.size(), count);
    before.logCompliance = before.from = before.to = before.strokes =
        Eigen::RowVectorXd::Unit(count, 0);
    WallAndFace wall = bore.before;
    Directions carried = before;
    for (auto _ : state) {
        wall = bore.before;
        carried = before;
        hone(bore.grid, bore.stone, bore.settings, bore.ground, bore.stroking, wall, &carried);
        benchmark::DoNotOptimize(carried.diameter.data());
    }
}
BENCHMARK(honeOneWindowWithDirections)->Arg(8)->Arg(27)->Arg(150)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace borewright::bench
