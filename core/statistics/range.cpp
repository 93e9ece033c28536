// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/statistics/range.h"

#include "core/statistics/distributions.h"

#include <cmath>
#include <numbers>

namespace borewright {
namespace {

constexpr double edge = 8;
constexpr int steps = 400;

// ∫ f by Simpson's rule.
template<class F>
double integral(double from, double to, F f) {
    const double h = (to - from) / steps;
    double sum = f(from) + f(to);
    for (int i = 1; i < steps; ++i)
        sum += (i % 2 == 1 ? 4 : 2) * f(from + i * h);
    return sum * h / 3;
}

} // namespace

double rangeBelow(double r, int n) {
    if (n < 2) return 1;
    if (!(r > 0)) return 0;
    if (r >= 2 * edge) return 1;
    const double chance = integral(-edge - r, edge, [&](double z) {
        const double density = std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
        return density * std::pow(normalBelow(z + r) - normalBelow(z), n - 1);
    });
    return std::fmin(1, n * chance);
}

// Mean = ∫ P(range > r) dr, here as ∫ 1 − Φ(z)^n − (1 − Φ(z))^n dz (Tippett).
double meanRange(int n) {
    if (n < 2) return 0;
    return integral(-edge, edge, [&](double z) {
        const double below = normalBelow(z);
        return 1 - std::pow(below, n) - std::pow(1 - below, n);
    });
}

} // namespace borewright
