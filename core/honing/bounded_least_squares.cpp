// SPDX-License-Identifier: GPL-3.0-or-later
// Active sets for least squares between bounds.
#include "core/honing/bounded_least_squares.h"

#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <vector>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

enum class Held { below, above, free };

class ActiveSet {
public:
    ActiveSet(MatrixXd a, VectorXd b, const VectorXd& lower, const VectorXd& upper)
        : m_a(std::move(a))
        , m_b(std::move(b))
        , m_lower(lower)
        , m_upper(upper)
        , m_x(VectorXd::Zero(m_a.cols()))
        , m_held(static_cast<std::size_t>(m_a.cols()), Held::below) {
        for (Index i = 0; i < m_a.cols(); ++i) {
            Held& held = m_held[at(i)];
            if (!std::isfinite(lower[i])) held = std::isfinite(upper[i]) ? Held::above : Held::free;
            m_x[i] = held == Held::below ? lower[i] : held == Held::above ? upper[i] : 0;
        }
        m_norms = m_a.colwise().norm();
    }

    bool solve() {
        const Index most = 10 * m_a.cols() + 20;
        moveFree();
        for (Index turn = 0; turn < most; ++turn) {
            const Index next = mostGaining();
            if (next < 0) return true;
            m_held[at(next)] = Held::free;
            moveFree(next);
        }
        return false;
    }
    [[nodiscard]] const VectorXd& x() const { return m_x; }

private:
    static std::size_t at(Index i) { return static_cast<std::size_t>(i); }

    // The held one whose step inward lowers the sum of squares fastest, per its own length; −1
    // where all are better left.
    Index mostGaining() const {
        const VectorXd slope = m_a.transpose() * (m_b - m_a * m_x);
        const double least = 1e-11 * std::max(1.0, m_b.norm());
        Index best = -1;
        double gain = 0;
        for (Index i = 0; i < m_x.size(); ++i) {
            if (m_held[at(i)] == Held::free || m_lower[i] >= m_upper[i] || m_norms[i] <= 0)
                continue;
            const double inward =
                (m_held[at(i)] == Held::below ? slope[i] : -slope[i]) / m_norms[i];
            if (inward > std::max(gain, least)) {
                gain = inward;
                best = i;
            }
        }
        return best;
    }

    // Solves for the free ones, holding each that meets its bound on the way. `fresh` was freed
    // just now: rounding may not send it outward.
    void moveFree(Index fresh = -1) {
        for (Index turn = 0; turn <= m_x.size(); ++turn) {
            std::vector<Index> free;
            for (Index i = 0; i < m_x.size(); ++i)
                if (m_held[at(i)] == Held::free) free.push_back(i);
            if (free.empty()) return;
            const VectorXd step = freeStep(free);
            if (turn == 0 && fresh >= 0 && outward(free, step, fresh)) {
                m_held[at(fresh)] = m_x[fresh] <= m_lower[fresh] ? Held::below : Held::above;
                return;
            }
            if (!takeStep(free, step)) return;
        }
    }

    VectorXd freeStep(const std::vector<Index>& free) const {
        MatrixXd columns(m_a.rows(), static_cast<Index>(free.size()));
        for (std::size_t k = 0; k < free.size(); ++k)
            columns.col(static_cast<Index>(k)) = m_a.col(free[k]);
        return columns.colPivHouseholderQr().solve(m_b - m_a * m_x);
    }

    bool outward(const std::vector<Index>& free, const VectorXd& step, Index fresh) const {
        const auto place = std::ranges::find(free, fresh) - free.begin();
        return m_x[fresh] <= m_lower[fresh] ? step[place] <= 0 : step[place] >= 0;
    }

    // True where a bound stopped the step.
    bool takeStep(const std::vector<Index>& free, const VectorXd& step) {
        double share = 1;
        Index stopped = -1;
        for (std::size_t k = 0; k < free.size(); ++k) {
            const Index i = free[k];
            const double by = step[static_cast<Index>(k)];
            const double room = by > 0 ? m_upper[i] - m_x[i] : m_lower[i] - m_x[i];
            if (by == 0 || room / by >= share) continue;
            share = std::max(0.0, room / by);
            stopped = i;
        }
        for (std::size_t k = 0; k < free.size(); ++k) {
            const Index i = free[k];
            m_x[i] =
                std::clamp(m_x[i] + share * step[static_cast<Index>(k)], m_lower[i], m_upper[i]);
            if (i != stopped) continue;
            const bool up = step[static_cast<Index>(k)] > 0;
            m_x[i] = up ? m_upper[i] : m_lower[i];
            m_held[at(i)] = up ? Held::above : Held::below;
        }
        return stopped >= 0;
    }

    MatrixXd m_a;
    VectorXd m_b;
    const VectorXd& m_lower;
    const VectorXd& m_upper;
    VectorXd m_x;
    VectorXd m_norms;
    std::vector<Held> m_held;
};

} // namespace

BoundedSolution boundedLeastSquares(const MatrixXd& a, const VectorXd& b, const VectorXd& lower,
                                    const VectorXd& upper) {
    MatrixXd triangle = a;
    VectorXd right = b;
    if (a.rows() > a.cols() && a.cols() > 0) {
        const Eigen::HouseholderQR<MatrixXd> qr(a);
        triangle = qr.matrixQR().topRows(a.cols()).triangularView<Eigen::Upper>();
        right = (qr.householderQ().adjoint() * b).head(a.cols());
    }
    ActiveSet set(std::move(triangle), std::move(right), lower, upper);
    const bool settled = set.solve();
    return {set.x(), (a * set.x() - b).norm(), settled};
}

} // namespace borewright
