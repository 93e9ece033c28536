// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/bench_gauge.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace borewright::test {
namespace {

constexpr double tenth_um = 2.54;
constexpr double turn_um = 254; // ten thou on the dial

// The last two digits exchanged, as written in tenths of a thou.
double swapped(double size_um) {
    std::string digits = std::to_string(std::lround(std::fabs(size_um) / tenth_um));
    if (digits.size() < 2) return size_um;
    std::swap(digits[digits.size() - 1], digits[digits.size() - 2]);
    return std::copysign(std::stod(digits) * tenth_um, size_um);
}

double slipped(double size_um, Random& chance) {
    const double kind = chance.uniform();
    const double side = chance.uniform() < 0.5 ? -1 : 1;
    if (kind < 0.25) return -size_um;
    if (kind < 0.5) return size_um + side * turn_um;
    if (kind < 0.75) return swapped(size_um);
    return size_um + side * 10 * tenth_um;
}

} // namespace

double readOff(const BenchGauge& gauge, double true_um, Random& chance) {
    double shown = true_um + gauge.noise_um * chance.normal();
    if (gauge.step_um > 0) shown = std::nearbyint(shown / gauge.step_um) * gauge.step_um;
    const bool slips = chance.uniform() < gauge.slips;
    return slips ? slipped(shown, chance) : shown;
}

} // namespace borewright::test
