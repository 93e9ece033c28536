// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of the ziggurat and its rare draws. exp, log and square root are written out here in
// plain arithmetic, which IEEE 754 fixes to the last bit; the library's may differ in it.
#include "core/statistics/random.h"

#include <bit>

namespace borewright {
namespace {

constexpr double ln2High = 0x1.62e42fee00000p-1; // ln 2 in two parts: k times the first is exact
constexpr double ln2Low = 0x1.a39ef35793c76p-33;

// e^x for −700 < x ≤ 0: 2^k times the Taylor series of a remainder below ½·ln 2.
constexpr double expOf(double x) {
    const int k = static_cast<int>(x / (ln2High + ln2Low) - 0.5);
    const double r = (x - k * ln2High) - k * ln2Low;
    double sum = 1;
    for (int n = 14; n >= 1; --n)
        sum = 1 + sum * r / n;
    return sum * std::bit_cast<double>(static_cast<std::uint64_t>(1023 + k) << 52);
}

// ln x of a normal positive x: exponent, and the series of 2·artanh((m − 1)/(m + 1)).
constexpr double logOf(double x) {
    const auto bits = std::bit_cast<std::uint64_t>(x);
    int exponent = static_cast<int>(bits >> 52) - 1023;
    double m = std::bit_cast<double>((bits & 0xfffffffffffffU) | 0x3ff0000000000000U);
    if (m > 1.4142135623730951) {
        m /= 2;
        ++exponent;
    }
    const double s = (m - 1) / (m + 1);
    double sum = 0;
    for (int n = 23; n >= 1; n -= 2)
        sum = sum * s * s + 1.0 / n;
    return exponent * ln2High + (2 * s * sum + exponent * ln2Low);
}

constexpr double rootOf(double x) { // Newton; 0 ≤ x < 100
    double root = x < 1 ? 1 : x;
    for (int i = 0; i < 60; ++i)
        root = (root + x / root) / 2;
    return root;
}

constexpr double density(double x) {
    return expOf(-x * x / 2);
}

// Where the lowest level ends and the tail begins, and the area of each level, for 256 levels:
// v = r·f(r) + ∫f beyond r, f = e^(−x²/2).
constexpr double tailBegins = 3.6541528853610088;
constexpr double area = 0.004928673233974655;

// x_0 … x_256: x_0 is the width of a rectangle as large as the lowest level with its tail.
constexpr auto edges = [] {
    std::array<double, ziggurat::levels + 1> x{};
    x[0] = area / density(tailBegins);
    x[1] = tailBegins;
    for (std::size_t i = 2; i < ziggurat::levels; ++i)
        x[i] = rootOf(-2 * logOf(area / x[i - 1] + density(x[i - 1])));
    return x; // the last is 0
}();
constexpr auto heights = [] {
    std::array<double, ziggurat::levels + 1> f{};
    for (std::size_t i = 0; i <= ziggurat::levels; ++i)
        f[i] = density(edges[i]);
    return f;
}();

} // namespace

constinit const std::array<ziggurat::Level, ziggurat::levels> ziggurat::table = [] {
    std::array<Level, levels> made{};
    for (std::size_t i = 0; i < levels; ++i)
        made[i] = {edges[i] * 0x1p-52, edges[i + 1]};
    return made;
}();

double Random::normalAtTheEdge(std::size_t level, double x) noexcept {
    if (level == 0) { // the tail: Marsaglia, Technometrics 6 (1964) 101
        double beyond = 0;
        double bound = 0;
        do {
            beyond = -logOf(1 - uniform()) / tailBegins;
            bound = -logOf(1 - uniform());
        } while (2 * bound < beyond * beyond);
        return x < 0 ? -(tailBegins + beyond) : tailBegins + beyond;
    }
    const double height = heights[level] + uniform() * (heights[level + 1] - heights[level]);
    return height < density(x) ? x : normal();
}

} // namespace borewright
