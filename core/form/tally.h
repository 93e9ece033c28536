// SPDX-License-Identifier: GPL-3.0-or-later
// The distribution of a figure's noise, counted into narrow steps. Part of the trials.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

namespace borewright {

class Tally {
public:
    // Steps of scale/32 over −8 … +24 of `scale`, > 0; draws beyond count in the outermost step.
    explicit Tally(double scale = 1);
    void add(std::span<const float> draws);
    void add(const Tally& other);
    void clear();
    [[nodiscard]] std::uint64_t count() const { return m_count; }
    // The value that a share `below` of the draws lies below, even within a step.
    [[nodiscard]] double quantile(double below) const;
    // `count` ≥ 2 quantiles at equal steps of chance from 0 to 1, in one walk.
    [[nodiscard]] std::vector<float> quantiles(std::size_t count) const;
    [[nodiscard]] double shareBelow(double value) const;
    // ± about zero that holds a share of the draws: the shortest interval, where they are
    // symmetric.
    [[nodiscard]] double around(double share) const;

private:
    static constexpr std::size_t steps = 1024;
    [[nodiscard]] double edge(double step) const;
    double m_scale;
    double m_perUnit;
    std::uint64_t m_count = 0;
    std::vector<std::uint32_t> m_steps;
};

} // namespace borewright
