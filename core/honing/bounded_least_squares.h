// SPDX-License-Identifier: GPL-3.0-or-later
// Linear least squares between bounds: smallest |A·x − b| with lower ≤ x ≤ upper.
//
// Method: active sets. All start at a bound; that one is set free whose step inward gains most, the
// free ones are solved for by QR, and where one of them would pass its bound the step ends there
// and it is held (Lawson & Hanson, Solving Least Squares Problems, 1974, ch. 23, for x ≥ 0; Stark &
// Parker, Comput. Stat. 10 (1995) 129, for two bounds). A is first reduced to its triangle.
#pragma once

#include <Eigen/Core>

namespace borewright {

struct BoundedSolution {
    Eigen::VectorXd x;
    double residual = 0; // |A·x − b|
    bool settled = true; // false: gave up after as many changes as are ever needed, many times over
};

// Bounds may be infinite, but lower ≤ upper, not NaN; each variable needs one finite bound, or
// starts from 0. Columns that depend on each other are allowed: one of the equal answers is given.
BoundedSolution boundedLeastSquares(const Eigen::MatrixXd& a, const Eigen::VectorXd& b,
                                    const Eigen::VectorXd& lower, const Eigen::VectorXd& upper);

} // namespace borewright
