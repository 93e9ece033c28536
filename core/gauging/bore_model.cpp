// SPDX-License-Identifier: GPL-3.0-or-later
// Building the manners of a bore: covariance, Cholesky factor, inverse.
#include "core/gauging/bore_model.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace borewright::slips {
namespace {

// Standard deviations in µm of what a bore may do, by common practice, no source: a honed bore
// keeps within a few tenths of a thou, a worn one runs to seven thou.
struct Amounts {
    double profile, kink, endKink, oval, leaning, endLeaning, own;
};

Amounts amountsOf(std::size_t manner) {
    constexpr std::array<double, mannerCount / 2> wear_um{2, 8, 25, 70, 180};
    const double wear = wear_um[manner / 2];
    const double oval = manner % 2 == 0 ? 0.15 * wear : 0.35 * wear;
    return {wear,       0.3 + 0.06 * wear, 0.8 * wear, 1 + oval, 0.5 + 0.5 * oval,
            0.9 * oval, 1.2 + 0.025 * wear};
}

// How common each is: a bore worn by seven thou is rare.
double shareOfManner(std::size_t manner) {
    return manner / 2 == mannerCount / 2 - 1 ? 0.1 : 1;
}

constexpr double size_um = 1000; // of the bore as a whole: anything
constexpr double profileReach = 0.5;
constexpr double leaningReach = 0.6;

double square(double v) {
    return v * v;
}

// What two spots share, apart from amounts.
struct Ties {
    double bend = 0, lean = 0;
    bool level = false, axis = false, end = false;
};

std::vector<Ties> tiesOf(const std::vector<Spot>& spots) {
    const std::size_t n = spots.size();
    std::vector<Ties> ties(n * n);
    double first = 1e9, last = -1e9;
    for (const Spot& s : spots) {
        first = std::min(first, s.depth);
        last = std::max(last, s.depth);
    }
    const auto isEnd = [&](std::size_t i) {
        return spots[i].depth <= first || spots[i].depth >= last;
    };
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j <= i; ++j) {
            const double apart = std::abs(spots[i].depth - spots[j].depth);
            const double near = std::sqrt(3.0) * apart / profileReach;
            const double leanNear = std::sqrt(3.0) * apart / leaningReach;
            const bool axis = spots[i].axis == spots[j].axis;
            const bool level = spots[i].level == spots[j].level;
            ties[i * n + j] = {(1 + near) * std::exp(-near), // Matérn, ν = 3/2
                               axis ? (1 + leanNear) * std::exp(-leanNear) : 0, level, axis,
                               level && isEnd(i)};
        }
    return ties;
}

// Lower half of the covariance, by rows.
std::vector<double> covariance(const std::vector<Ties>& ties, std::size_t n, const Amounts& amounts,
                               double noise_um) {
    const double profile = square(amounts.profile), kink = square(amounts.kink),
                 oval = square(amounts.oval), leaning = square(amounts.leaning),
                 own = square(amounts.own), endKink = square(amounts.endKink),
                 endLeaning = square(amounts.endLeaning), noise = square(noise_um);
    std::vector<double> c(n * n);
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j <= i; ++j) {
            const Ties& tie = ties[i * n + j];
            double value = square(size_um) + profile * tie.bend + leaning * tie.lean;
            if (tie.level) value += kink;
            if (tie.end) value += endKink;
            if (tie.end && tie.axis) value += endLeaning;
            if (tie.axis) value += oval;
            if (tie.level && tie.axis) value += own;
            if (i == j) value += noise;
            c[i * n + j] = value;
        }
    return c;
}

// Turns the lower half of a positive definite matrix into its Cholesky factor; returns Σ log of its
// diagonal.
double factorise(std::vector<double>& c, std::size_t n) {
    double logs = 0;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            double sum = c[i * n + j];
            for (std::size_t k = 0; k < j; ++k)
                sum -= c[i * n + k] * c[j * n + k];
            c[i * n + j] = sum / c[j * n + j];
        }
        double sum = c[i * n + i];
        for (std::size_t k = 0; k < i; ++k)
            sum -= square(c[i * n + k]);
        c[i * n + i] = std::sqrt(sum);
        logs += std::log(c[i * n + i]);
    }
    return logs;
}

// The whole inverse from the factor: first the factor's own inverse, by rows, then its square.
std::vector<double> inverse(const std::vector<double>& factor, std::size_t n) {
    std::vector<double> half(n * n), whole(n * n);
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            const double by = factor[i * n + k];
            for (std::size_t j = 0; j <= k; ++j)
                half[i * n + j] -= by * half[k * n + j];
        }
        const double scale = 1 / factor[i * n + i];
        for (std::size_t j = 0; j < i; ++j)
            half[i * n + j] *= scale;
        half[i * n + i] = scale;
    }
    for (std::size_t k = 0; k < n; ++k)
        for (std::size_t i = 0; i <= k; ++i) {
            const double by = half[k * n + i];
            for (std::size_t j = 0; j <= k; ++j)
                whole[i * n + j] += by * half[k * n + j];
        }
    return whole;
}

} // namespace

BoreModel::BoreModel(std::vector<Spot> spots, double noise_um)
    : m_spots(std::move(spots)) {
    const std::size_t n = m_spots.size();
    const std::vector<Ties> ties = tiesOf(m_spots);
    for (std::size_t m = 0; m < mannerCount; ++m) {
        std::vector<double> c = covariance(ties, n, amountsOf(m), noise_um);
        const double logs = factorise(c, n);
        m_manners[m].precision = inverse(c, n);
        m_manners[m].logNorm = std::log(shareOfManner(m)) + -logs -
                               0.5 * static_cast<double>(n) * std::log(2 * std::numbers::pi);
    }
}

} // namespace borewright::slips
