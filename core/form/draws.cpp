// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/draws.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace borewright {
namespace {

constexpr std::size_t batch = trialsABatch;

enum class Stream : std::uint64_t { normal, steps, scale, shared };

Random stream(Stream kind, int run, std::size_t place) {
    return Random((static_cast<std::uint64_t>(kind) << 56) +
                  (static_cast<std::uint64_t>(run) << 24) + place);
}

// 24 bits become an even draw with mean 0 and standard deviation 1.
float flat(std::uint64_t bits) {
    constexpr float root12 = 3.46410162F;
    return root12 *
           ((static_cast<float>(static_cast<std::int32_t>(bits)) + 0.5F) / 16777216.0F - 0.5F);
}

// √(ν/χ²): Student's t is a normal draw times this (JCGM 101, 6.4.9).
double freedomScale(double freedom, Random& random) {
    constexpr double many = 60; // beyond, χ² is a cube of a normal (Wilson & Hilferty 1931)
    if (freedom > many) {
        const double spread = 2 / (9 * freedom);
        const double cube = 1 - spread + random.normal() * std::sqrt(spread);
        return 1 / std::sqrt(cube * cube * cube);
    }
    double chi = 0;
    for (int i = 0; i < static_cast<int>(freedom); ++i) {
        const double z = random.normal();
        chi += z * z;
    }
    return std::sqrt(freedom / std::max(chi, 1e-12));
}

double sharedDraw(Distribution distribution, Random& random) {
    constexpr double root12 = 3.4641016151377544;
    switch (distribution) {
    case Distribution::rectangular:
        return root12 * (random.uniform() - 0.5);
    case Distribution::triangular:
        return std::sqrt(6.0) * (random.uniform() + random.uniform() - 1);
    case Distribution::uShaped:
        return std::numbers::sqrt2 * std::sin(2 * std::numbers::pi * random.uniform());
    case Distribution::normal:
        break;
    }
    return random.normal();
}

} // namespace

DrawMaker::DrawMaker(std::size_t stations, const std::vector<SharedDoubt>& shared,
                     double ownFreedom)
    : m_freedom(ownFreedom)
    , m_stations(stations) {
    for (const SharedDoubt& source : shared)
        m_shared.push_back(source.distribution);
}

void DrawMaker::startRun(int run) {
    m_own.clear();
    m_flat.clear();
    m_factors.clear();
    for (std::size_t i = 0; i < m_stations; ++i) {
        m_own.push_back(stream(Stream::normal, run, i));
        m_flat.push_back(stream(Stream::steps, run, i));
    }
    for (std::size_t k = 0; k < m_shared.size(); ++k)
        m_factors.push_back(stream(Stream::shared, run, k));
    m_scale.emplace(stream(Stream::scale, run, 0));
}

void DrawMaker::next(TrialDraws& draws) {
    draws.own.resize(m_stations);
    draws.shared.resize(m_shared.size());
    for (std::size_t i = 0; i < m_stations; ++i) {
        TrialDraws::Own& own = draws.own[i];
        for (float& z : own.normal)
            z = static_cast<float>(m_own[i].normal());
        for (std::size_t t = 0; t < batch; ++t) {
            const std::uint64_t bits = m_flat[i].next();
            own.step[t] = flat(bits >> 40);
            own.local[t] = flat((bits >> 8) & 0xffffff);
        }
    }
    for (std::size_t k = 0; k < m_shared.size(); ++k)
        for (float& f : draws.shared[k])
            f = static_cast<float>(sharedDraw(m_shared[k], m_factors[k]));
    if (std::isinf(m_freedom))
        draws.scale.fill(1);
    else
        for (float& scale : draws.scale)
            scale = static_cast<float>(freedomScale(m_freedom, *m_scale));
}

} // namespace borewright
