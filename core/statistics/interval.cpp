// SPDX-License-Identifier: GPL-3.0-or-later
// Sorts the draws and looks through the intervals that hold enough of them.
#include "core/statistics/interval.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>

namespace borewright {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

// q = ⌊p·M + ½⌋ with the draws sorted; nothing where there is no interval.
std::optional<std::size_t> stepsAcross(std::vector<double>& draws, double probability) {
    if (draws.size() < 2 || !(probability >= 0 && probability <= 1)) return std::nullopt;
    if (std::ranges::any_of(draws, [](double draw) { return std::isnan(draw); }))
        return std::nullopt;
    if (!std::ranges::is_sorted(draws)) std::ranges::sort(draws);
    const double q = std::floor(probability * static_cast<double>(draws.size()) + 0.5);
    return std::min(static_cast<std::size_t>(q), draws.size() - 1);
}

} // namespace

Interval shortestInterval(std::vector<double>& draws, double probability) {
    const auto q = stepsAcross(draws, probability);
    if (!q) return {nan, nan};
    std::size_t best = 0;
    for (std::size_t r = 0; r + *q < draws.size(); ++r)
        if (draws[r + *q] - draws[r] < draws[best + *q] - draws[best]) best = r;
    return {draws[best], draws[best + *q]};
}

Interval symmetricInterval(std::vector<double>& draws, double probability) {
    const auto q = stepsAcross(draws, probability);
    if (!q) return {nan, nan};
    const std::size_t r = (draws.size() - *q + 1) / 2 - 1; // counted from 0
    return {draws[r], draws[r + *q]};
}

} // namespace borewright
