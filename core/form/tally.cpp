// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/tally.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double lowest = -8;
constexpr double stepsAUnit = 32;

} // namespace

Tally::Tally(double scale)
    : m_scale(scale)
    , m_perUnit(stepsAUnit / scale)
    , m_steps(steps, 0) {}

void Tally::add(std::span<const float> draws) {
    const auto perUnit = static_cast<float>(m_perUnit);
    constexpr auto shift = static_cast<float>(-lowest * stepsAUnit);
    constexpr auto last = static_cast<float>(steps - 1);
    // Places first and counts after: the first loop then runs several draws at once.
    std::array<std::int32_t, 256> places;
    for (std::size_t from = 0; from < draws.size(); from += places.size()) {
        const std::size_t some = std::min(places.size(), draws.size() - from);
        for (std::size_t i = 0; i < some; ++i)
            places[i] = static_cast<std::int32_t>(
                std::min(std::max(draws[from + i] * perUnit + shift, 0.0F), last));
        for (std::size_t i = 0; i < some; ++i)
            ++m_steps[static_cast<std::size_t>(places[i])];
    }
    m_count += draws.size();
}

void Tally::add(const Tally& other) {
    for (std::size_t i = 0; i < steps; ++i)
        m_steps[i] += other.m_steps[i];
    m_count += other.m_count;
}

void Tally::clear() {
    std::ranges::fill(m_steps, 0);
    m_count = 0;
}

double Tally::edge(double step) const {
    return (lowest + step / stepsAUnit) * m_scale;
}

double Tally::quantile(double below) const {
    const double wanted = below * static_cast<double>(m_count);
    double sum = 0;
    for (std::size_t i = 0; i < steps; ++i) {
        const auto here = static_cast<double>(m_steps[i]);
        if (here > 0 && sum + here >= wanted)
            return edge(static_cast<double>(i) + std::clamp((wanted - sum) / here, 0.0, 1.0));
        sum += here;
    }
    return edge(steps);
}

std::vector<float> Tally::quantiles(std::size_t count) const {
    std::vector<float> found;
    found.reserve(count);
    std::size_t i = 0;
    double sum = 0;
    for (std::size_t q = 0; q < count; ++q) {
        const double wanted =
            static_cast<double>(m_count) * static_cast<double>(q) / static_cast<double>(count - 1);
        while (i < steps && (m_steps[i] == 0 || sum + m_steps[i] < wanted))
            sum += m_steps[i++];
        const double within = i < steps ? (wanted - sum) / m_steps[i] : 0;
        found.push_back(
            static_cast<float>(edge(static_cast<double>(i) + std::clamp(within, 0.0, 1.0))));
    }
    return found;
}

double Tally::shareBelow(double value) const {
    if (m_count == 0) return 0;
    const double place = (value / m_scale - lowest) * stepsAUnit;
    const double whole = std::clamp(std::floor(place), 0.0, static_cast<double>(steps));
    double sum = 0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(whole); ++i)
        sum += m_steps[i];
    if (whole < steps)
        sum += std::clamp(place - whole, 0.0, 1.0) * m_steps[static_cast<std::size_t>(whole)];
    return sum / static_cast<double>(m_count);
}

double Tally::around(double share) const {
    const double tail = (1 - share) / 2;
    return (quantile(1 - tail) - quantile(tail)) / 2;
}

} // namespace borewright
