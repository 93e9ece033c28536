// SPDX-License-Identifier: GPL-3.0-or-later
// Random numbers for Monte Carlo: the same numbers from the same seed on every machine, for ever.
// Generator: xoshiro256** seeded by splitmix64: Blackman & Vigna, ACM Trans. Math. Softw. 47 (2021)
// 36. Normals: the ziggurat of Marsaglia & Tsang, J. Stat. Softw. 5(8) (2000), 256 levels, with the
// level and the value taken from different bits (Doornik 2005 showed why). The tables are computed
// by the compiler and rare draws use our own exp and log, so that no mathematics library has a say.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace borewright {

namespace ziggurat {
inline constexpr std::size_t levels = 256;
// Level i is the rectangle |x| < x_i, of which |x| < x_(i+1) lies wholly under the curve.
struct Level {
    double width; // x_i / 2^52
    double inner; // x_(i+1)
};
extern const std::array<Level, levels> table;
} // namespace ziggurat

class Random {
public:
    // Any seed, 0 as well.
    explicit constexpr Random(std::uint64_t seed) noexcept {
        for (std::uint64_t& word : m_state) { // splitmix64
            seed += 0x9e3779b97f4a7c15U;
            std::uint64_t z = seed;
            z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
            z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
            word = z ^ (z >> 31);
        }
    }

    // 64 random bits.
    constexpr std::uint64_t next() noexcept {
        const std::uint64_t result = rotated(m_state[1] * 5, 7) * 9;
        const std::uint64_t shifted = m_state[1] << 17;
        m_state[2] ^= m_state[0];
        m_state[3] ^= m_state[1];
        m_state[1] ^= m_state[2];
        m_state[0] ^= m_state[3];
        m_state[2] ^= shifted;
        m_state[3] = rotated(m_state[3], 45);
        return result;
    }
    // Evenly spread over 0 ≤ u < 1, in steps of 2^−53.
    double uniform() noexcept { return static_cast<double>(next() >> 11) * 0x1p-53; }

    // Normal with mean 0 and standard deviation 1.
    double normal() noexcept {
        const std::uint64_t bits = next();
        const std::size_t level = bits % ziggurat::levels;
        const double x = static_cast<double>(static_cast<std::int64_t>(bits) >> 11) *
                         ziggurat::table[level].width;
        if (std::fabs(x) < ziggurat::table[level].inner) [[likely]]
            return x;
        return normalAtTheEdge(level, x);
    }

private:
    static constexpr std::uint64_t rotated(std::uint64_t word, int by) noexcept {
        return (word << by) | (word >> (64 - by));
    }
    // The 1 draw in 90 that falls outside the inner rectangle of its level.
    double normalAtTheEdge(std::size_t level, double x) noexcept;

    std::array<std::uint64_t, 4> m_state{};
};

} // namespace borewright
