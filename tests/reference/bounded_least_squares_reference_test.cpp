// SPDX-License-Identifier: GPL-3.0-or-later
// Least squares between bounds against a published example and against trying every active set.
#include "core/honing/bounded_least_squares.h"
#include "core/statistics/random.h"

#include <gtest/gtest.h>

#include <Eigen/QR>

#include <algorithm>
#include <limits>
#include <vector>

namespace borewright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double infinite = std::numeric_limits<double>::infinity();

// The example printed with Lawson & Hanson's method in manuals of numerical software (seen):
// x = (0, 0.6929), residual 0.91184; without bounds (−2.5627, 3.1108).
TEST(BoundedLeastSquaresReference, NonNegativeExample) {
    MatrixXd a(4, 2);
    a << .0372, .2869, .6861, .7071, .6233, .6245, .6344, .6170;
    const VectorXd b = (VectorXd(4) << .8587, .1781, .0747, .8405).finished();
    const VectorXd high = VectorXd::Constant(2, infinite);
    const BoundedSolution bound = boundedLeastSquares(a, b, VectorXd::Zero(2), high);
    EXPECT_DOUBLE_EQ(bound.x[0], 0);
    EXPECT_NEAR(bound.x[1], 0.6929, 5e-5);
    EXPECT_NEAR(bound.residual, 0.91184, 5e-6);
    const BoundedSolution free = boundedLeastSquares(a, b, -high, high);
    EXPECT_NEAR(free.x[0], -2.5627, 5e-5);
    EXPECT_NEAR(free.x[1], 3.1108, 5e-5);
}

// Every variable low, high or free: the least residual among those that keep the bounds.
double leastByTrying(const MatrixXd& a, const VectorXd& b, double low, double high) {
    const Index n = a.cols();
    int choices = 1;
    for (Index i = 0; i < n; ++i)
        choices *= 3;
    double least = infinite;
    for (int choice = 0; choice < choices; ++choice) {
        VectorXd x = VectorXd::Constant(n, low);
        std::vector<Index> free;
        for (Index i = 0, rest = choice; i < n; ++i, rest /= 3) {
            if (rest % 3 == 1) x[i] = high;
            if (rest % 3 == 2) free.push_back(i);
        }
        MatrixXd columns(a.rows(), static_cast<Index>(free.size()));
        for (std::size_t k = 0; k < free.size(); ++k) {
            columns.col(static_cast<Index>(k)) = a.col(free[k]);
            x[free[k]] = 0;
        }
        if (!free.empty()) {
            const VectorXd solved = columns.colPivHouseholderQr().solve(b - a * x);
            for (std::size_t k = 0; k < free.size(); ++k)
                x[free[k]] = solved[static_cast<Index>(k)];
        }
        if ((x.array() < low - 1e-12).any() || (x.array() > high + 1e-12).any()) continue;
        least = std::min(least, (a * x - b).norm());
    }
    return least;
}

TEST(BoundedLeastSquaresReference, EqualsTheBestOfAllActiveSets) {
    Random random(20);
    for (int round = 0; round < 200; ++round) {
        const Index n = 1 + round % 5;
        MatrixXd a(n + round % 4, n);
        for (double& value : a.reshaped())
            value = random.normal();
        if (round % 7 == 0 && n > 1) a.col(0) = a.col(1); // columns that depend on each other
        VectorXd b(a.rows());
        for (double& value : b)
            value = 2 * random.normal();
        const double low = -0.3, high = 0.8;
        const BoundedSolution found =
            boundedLeastSquares(a, b, VectorXd::Constant(n, low), VectorXd::Constant(n, high));
        EXPECT_TRUE(found.settled);
        EXPECT_GE(found.x.minCoeff(), low);
        EXPECT_LE(found.x.maxCoeff(), high);
        EXPECT_NEAR(found.residual, leastByTrying(a, b, low, high), 1e-9) << "round " << round;
    }
}

TEST(BoundedLeastSquaresReference, EqualBoundsHold) {
    const MatrixXd a = MatrixXd::Identity(2, 2);
    const VectorXd b = (VectorXd(2) << 3, 4).finished();
    const VectorXd low = (VectorXd(2) << 1, -9).finished();
    const VectorXd high = (VectorXd(2) << 1, 9).finished();
    const BoundedSolution found = boundedLeastSquares(a, b, low, high);
    EXPECT_DOUBLE_EQ(found.x[0], 1);
    EXPECT_NEAR(found.x[1], 4, 1e-12);
}

} // namespace
} // namespace borewright
