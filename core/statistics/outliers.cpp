// SPDX-License-Identifier: GPL-3.0-or-later
// The two tests, and the printed table of the second.
#include "core/statistics/outliers.h"

#include "core/statistics/anova.h"
#include "core/statistics/distributions.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <vector>

namespace borewright {
namespace {

constexpr std::size_t fewest = 4; // at n = 3 do not test
constexpr int firstInTable = 3;
constexpr int lastInTable = 10;
using Column = std::array<double, lastInTable - firstInTable + 1>;

// Rorabacher, Anal. Chem. 63 (1991) 139, Table 1, r10, n = 3 … 10.
constexpr Column dixonFivePercent{.970, .829, .710, .625, .568, .526, .493, .466};
constexpr Column dixonOnePercent{.994, .926, .821, .740, .680, .634, .598, .568};

} // namespace

std::optional<Suspect> grubbs(std::span<const double> values) {
    const std::optional<Spread> spread = spreadOf(values);
    if (values.size() < fewest || !spread) return std::nullopt;
    if (!(spread->deviation > 0) || !std::isfinite(spread->deviation)) return std::nullopt;
    const auto farthest = std::ranges::max_element(
        values, {}, [&](double value) { return std::fabs(value - spread->mean); });
    return Suspect{std::fabs(*farthest - spread->mean) / spread->deviation,
                   static_cast<std::size_t>(farthest - values.begin())};
}

std::optional<double> grubbsCritical(int count, double risk, Sides sides) {
    if (count < 3 || !(risk > 0 && risk < 1)) return std::nullopt;
    const double n = count;
    const double tail = risk / (sides == Sides::one ? n : 2 * n);
    const double t = studentQuantile(tail, n - 2); // below zero; only its square is needed
    return (n - 1) / std::sqrt(n) * std::sqrt(t * t / (n - 2 + t * t));
}

std::optional<Suspect> dixon(std::span<const double> values) {
    if (values.size() < fewest || values.size() > lastInTable) return std::nullopt;
    if (!spreadOf(values)) return std::nullopt; // a value is not finite
    std::vector<std::size_t> order(values.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return values[i]; });
    const std::size_t last = order.size() - 1;
    const double range = values[order[last]] - values[order[0]];
    if (!(range > 0) || !std::isfinite(range)) return std::nullopt;
    const double below = values[order[1]] - values[order[0]];
    const double above = values[order[last]] - values[order[last - 1]];
    if (above > below) return Suspect{above / range, order[last]};
    return Suspect{below / range, order[0]};
}

std::optional<double> dixonCritical(int count, DixonRisk risk) {
    if (count < firstInTable || count > lastInTable) return std::nullopt;
    const Column& column = risk == DixonRisk::fivePercent ? dixonFivePercent : dixonOnePercent;
    return column[static_cast<std::size_t>(count - firstInTable)];
}

} // namespace borewright
