// SPDX-License-Identifier: GPL-3.0-or-later
// Coverage and conformance; every share is kept below one, so that no fourth power overflows.
#include "core/statistics/coverage.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace borewright {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

bool isProbability(double p) {
    return p >= 0 && p <= 1;
}

} // namespace

double divisor(Distribution distribution) {
    switch (distribution) {
    case Distribution::normal:
        return 1;
    case Distribution::rectangular:
        return std::numbers::sqrt3;
    case Distribution::triangular:
        return std::sqrt(6.0);
    case Distribution::uShaped:
        return std::numbers::sqrt2;
    }
    return nan;
}

double welchSatterthwaite(std::span<const Contribution> contributions) {
    double combined = 0;
    for (const Contribution& line : contributions) {
        if (!(line.u >= 0) || !std::isfinite(line.u) || !(line.freedom > 0)) return nan;
        combined = std::hypot(combined, line.u);
    }
    if (combined == 0) return infinity;
    double sum = 0; // each share ≤ 1, so that no fourth power can overflow
    for (const Contribution& line : contributions)
        sum += std::pow(line.u / combined, 4) / line.freedom;
    return 1 / sum;
}

double coverageFactor(double probability, double freedom) {
    if (!isProbability(probability)) return nan;
    return std::fabs(studentQuantile((1 - probability) / 2, freedom));
}

double oneSidedFactor(double risk, double freedom) {
    return -studentQuantile(risk, freedom);
}

double rectangularPairFactor(double a, double b, double probability) {
    if (!(a >= 0) || !(b >= 0) || !std::isfinite(a + b) || a + b == 0) return nan;
    if (!isProbability(probability)) return nan;
    const double beta = std::fabs(a - b) / (a + b);
    const double u = std::sqrt((1 + beta * beta) / 6); // over half the base of the trapezoid
    if (probability < 2 * beta / (1 + beta)) return probability * (1 + beta) / 2 / u;
    return (1 - std::sqrt((1 - probability) * (1 - beta * beta))) / u;
}

double conformance(double y, double u, std::optional<double> lower, std::optional<double> upper) {
    if (!std::isfinite(y) || !(u >= 0)) return nan;
    if (u == 0) return (!lower || y >= *lower) && (!upper || y <= *upper) ? 1 : 0;
    // Φ of −z where a limit is missing or far away keeps the digits of a small chance.
    if (lower && upper) {
        const bool mostlyAbove = y > *lower / 2 + *upper / 2;
        const double near = mostlyAbove ? *upper - y : y - *lower;
        const double far = mostlyAbove ? *lower - y : y - *upper;
        return std::max(0.0, normalBelow(near / u) - normalBelow(far / u));
    }
    if (lower) return normalBelow((y - *lower) / u);
    return upper ? normalBelow((*upper - y) / u) : 1;
}

} // namespace borewright
