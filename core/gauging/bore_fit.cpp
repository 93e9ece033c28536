// SPDX-License-Identifier: GPL-3.0-or-later
// A bore's readings seen through the model.
#include "core/gauging/bore_model.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace borewright::slips {
namespace {

// How far a bore may have more or less of the block's pattern, as a share of it.
constexpr double patternScatter = 0.35;
constexpr double scoreScale_um = 50.8;

const double logTwoPi = std::log(2 * std::numbers::pi);

// Sums over the manners without a place in memory for each.
class LogSum {
public:
    void add(double log) {
        if (log > m_most) {
            m_sum = m_sum * std::exp(m_most - log) + 1;
            m_most = log;
        } else if (log > m_most - 40) {
            m_sum += std::exp(log - m_most);
        }
    }
    [[nodiscard]] double value() const { return m_sum > 0 ? m_most + std::log(m_sum) : m_most; }

private:
    double m_most = -std::numeric_limits<double>::infinity();
    double m_sum = 0;
};

// Log density of a normal with this spread plus an exponential excess, at r from its middle.
double logExcess(double r, double spread) {
    const double s = scoreScale_um;
    const double tail = 0.5 * std::erfc(-(r / spread - spread / s) / std::numbers::sqrt2);
    return std::log(std::max(tail, 1e-300)) - std::log(s) + 0.5 * spread * spread / (s * s) - r / s;
}

} // namespace

double logSum(std::span<const double> logs) {
    LogSum sum;
    for (const double log : logs)
        sum.add(log);
    return sum.value();
}

BoreFit::BoreFit(const BoreModel& model, std::vector<double> x_um, Patterns patterns)
    : m_size(model.size())
    , m_x(std::move(x_um))
    , m_patterns(std::move(patterns)) {
    const double alone = -std::log(m_patterns.empty() ? 1.0 * mannerCount : 2.0 * mannerCount);
    const double each = alone - std::log(std::max(1.0, static_cast<double>(m_patterns.size())));
    m_seen.reserve((1 + m_patterns.size()) * mannerCount);
    LogSum sum;
    const auto add = [&](Seen seen, double share) {
        seen.logDensity += share;
        sum.add(seen.logDensity);
        m_seen.push_back(std::move(seen));
    };
    for (std::size_t m = 0; m < mannerCount; ++m) {
        add(see(model.manner(m), nullptr), alone);
        for (const std::vector<double>& pattern : m_patterns)
            add(see(model.manner(m), &pattern), each);
    }
    m_logEvidence = sum.value();
}

// A pattern p that a bore has (1 ± κ) of adds κ²·p·pᵀ to the covariance; the precision Q becomes
// Q − a·Qp·(Qp)ᵀ with a = κ² / (1 + κ²·pᵀQp) (Sherman & Morrison 1950).
BoreFit::Seen BoreFit::see(const BoreModel::Manner& manner,
                           const std::vector<double>* pattern_um) const {
    const std::size_t n = m_size;
    Seen seen;
    seen.manner = &manner;
    seen.pulled.resize(n);
    const bool withPattern = pattern_um != nullptr;
    if (withPattern) seen.patterned.resize(n);
    double pQp = 0, yQp = 0, yQy = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const double* row = manner.precision.data() + i * n;
        double pulled = 0, patterned = 0;
        for (std::size_t j = 0; j < n; ++j) {
            pulled += row[j] * m_x[j];
            if (withPattern) patterned += row[j] * (*pattern_um)[j];
        }
        seen.pulled[i] = pulled - patterned; // Q·y with y = x − p
        const double y = m_x[i] - (withPattern ? (*pattern_um)[i] : 0);
        yQy += y * seen.pulled[i];
        if (!withPattern) continue;
        seen.patterned[i] = patterned;
        pQp += (*pattern_um)[i] * patterned;
        yQp += y * patterned;
    }
    const double k2 = patternScatter * patternScatter;
    if (withPattern) {
        seen.patternFactor = k2 / (1 + k2 * pQp);
        for (std::size_t i = 0; i < n; ++i)
            seen.pulled[i] -= seen.patternFactor * yQp * seen.patterned[i];
        yQy -= seen.patternFactor * yQp * yQp;
    }
    seen.logDensity = manner.logNorm - 0.5 * yQy - (withPattern ? 0.5 * std::log1p(k2 * pQp) : 0);
    return seen;
}

double BoreFit::precision(const Seen& seen, std::size_t i, std::size_t j) const {
    const double own = seen.manner->precision[i * m_size + j];
    return seen.patterned.empty()
               ? own
               : own - seen.patternFactor * seen.patterned[i] * seen.patterned[j];
}

double BoreFit::logWithout(std::size_t cell) const {
    LogSum sum;
    for (const Seen& seen : m_seen) {
        const double q = precision(seen, cell, cell), pull = seen.pulled[cell];
        sum.add(seen.logDensity + 0.5 * pull * pull / q + 0.5 * (logTwoPi - std::log(q)));
    }
    return sum.value();
}

double BoreFit::mostGain(std::size_t cell) const {
    double most = -std::numeric_limits<double>::infinity();
    for (const Seen& seen : m_seen) {
        const double pull = seen.pulled[cell];
        most = std::max(most, seen.logDensity + 0.5 * pull * pull / precision(seen, cell, cell));
    }
    return most + std::log(static_cast<double>(m_seen.size())) - m_logEvidence;
}

double BoreFit::logChanged(const Seen& seen, std::span<const Change> changes) const {
    double moved = 0;
    for (const Change& a : changes) {
        const double da = a.x_um - m_x[a.cell];
        moved += 2 * da * seen.pulled[a.cell];
        for (const Change& b : changes)
            moved += da * (b.x_um - m_x[b.cell]) * precision(seen, a.cell, b.cell);
    }
    return seen.logDensity - 0.5 * moved;
}

double BoreFit::logChanged(std::span<const Change> changes) const {
    LogSum sum;
    for (const Seen& seen : m_seen)
        sum.add(logChanged(seen, changes));
    return sum.value();
}

double BoreFit::logChangedAtMost(std::span<const Change> changes) const {
    double most = -std::numeric_limits<double>::infinity();
    for (const Seen& seen : m_seen)
        most = std::max(most, logChanged(seen, changes));
    return most + std::log(static_cast<double>(m_seen.size()));
}

double BoreFit::logScored(std::size_t cell) const {
    LogSum sum;
    for (const Seen& seen : m_seen) {
        const double q = precision(seen, cell, cell), pull = seen.pulled[cell];
        const double without =
            seen.logDensity + 0.5 * pull * pull / q + 0.5 * (logTwoPi - std::log(q));
        sum.add(without + logExcess(pull / q, 1 / std::sqrt(q)));
    }
    return sum.value();
}

double BoreFit::expected(std::size_t cell) const {
    const Seen* best = &m_seen.front();
    double most = -std::numeric_limits<double>::infinity();
    for (const Seen& seen : m_seen) {
        const double pull = seen.pulled[cell];
        const double log = seen.logDensity + 0.5 * pull * pull / precision(seen, cell, cell);
        if (log > most) best = &seen, most = log;
    }
    return m_x[cell] - best->pulled[cell] / precision(*best, cell, cell);
}

} // namespace borewright::slips
