// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/stone_press.h"

#include <algorithm>
#include <cmath>

namespace borewright::test {
namespace {

using Three = std::array<double, 3>;
using Matrix = std::array<Three, 3>;

// Gauss without pivoting: the matrix is symmetric and positive definite.
Three solved(Matrix m, Three right) {
    for (std::size_t k = 0; k < 3; ++k)
        for (std::size_t row = k + 1; row < 3; ++row) {
            const double by = m[row][k] / m[k][k];
            for (std::size_t column = k; column < 3; ++column)
                m[row][column] -= by * m[k][column];
            right[row] -= by * right[k];
        }
    for (std::size_t k = 3; k-- > 0;) {
        for (std::size_t column = k + 1; column < 3; ++column)
            right[k] -= m[k][column] * right[column];
        right[k] /= m[k][k];
    }
    return right;
}

constexpr double rigid = 1e9;

} // namespace

void StonePress::shape(std::size_t cells) {
    if (m_turn.size() == cells) return;
    m_turn.resize(cells);
    m_bow.resize(cells);
    m_overlap.resize(cells);
    for (std::size_t j = 0; j < cells; ++j) {
        const double x = 1 - 2 * (static_cast<double>(j) + 0.5) / static_cast<double>(cells);
        m_turn[j] = x;
        m_bow[j] = (3 * x * x - 1) / 2;
    }
}

void StonePress::settle(const Holding& holding, const std::vector<double>& gap,
                        const std::vector<double>& bears) {
    shape(gap.size());
    if (holding.loose <= 0) m_place[1] = 0;
    if (holding.soft <= 0) m_place[2] = 0;
    for (int round = 0; round < 60; ++round)
        if (step(holding, gap, bears, round < 12 ? 1 : 0.5)) break;
    for (std::size_t j = 0; j < gap.size(); ++j)
        m_overlap[j] = bears[j] <= 0 ? 0
                                     : std::max(0.0, m_place[0] + m_place[1] * m_turn[j] +
                                                         m_place[2] * m_bow[j] - gap[j]);
}

// One round of Newton; true where it moved no more.
bool StonePress::step(const Holding& holding, const std::vector<double>& gap,
                      const std::vector<double>& bears, double share) {
    const auto n = static_cast<double>(gap.size());
    const double turnStiff = holding.loose > 0 ? n / (3 * holding.loose) : rigid;
    const double bowStiff = holding.soft > 0 ? n / (5 * holding.soft) : rigid;
    double s = 0, sx = 0, sq = 0, sxx = 0, sxq = 0, sqq = 0, f = 0, fx = 0, fq = 0;
    double nearest = rigid;
    for (std::size_t j = 0; j < gap.size(); ++j) {
        if (bears[j] <= 0) continue;
        const double x = m_turn[j], q = m_bow[j], b = bears[j];
        const double o = m_place[0] + m_place[1] * x + m_place[2] * q - gap[j];
        nearest = std::min(nearest, -o);
        if (o <= 0) continue;
        s += b, sx += b * x, sq += b * q, sxx += b * x * x, sxq += b * x * q, sqq += b * q * q;
        f += b * o, fx += b * o * x, fq += b * o * q;
    }
    if (s <= 0) { // nothing touches yet: go forward
        m_place[0] += nearest + holding.compliance_um;
        return nearest >= rigid;
    }
    const Three slope{f - n * holding.compliance_um, fx + turnStiff * m_place[1],
                      fq + bowStiff * m_place[2]};
    const Three move =
        solved({{{s, sx, sq}, {sx, sxx + turnStiff, sxq}, {sq, sxq, sqq + bowStiff}}}, slope);
    for (std::size_t k = 0; k < 3; ++k)
        m_place[k] -= share * move[k];
    return std::fabs(move[0]) + std::fabs(move[1]) + std::fabs(move[2]) < 1e-4;
}

} // namespace borewright::test
