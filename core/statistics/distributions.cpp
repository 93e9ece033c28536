// SPDX-License-Identifier: GPL-3.0-or-later
// Guards round Boost.Math: every argument is checked here, so that its answer at and beyond the
// edges is the one that the header promises.
#include "core/statistics/distributions.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/policies/policy.hpp>

#include <cmath>
#include <limits>

namespace borewright {
namespace {

namespace policies = boost::math::policies;
// Nothing throws, and no machine computes with more digits than another.
using Quiet = policies::policy<
    policies::domain_error<policies::ignore_error>, policies::pole_error<policies::ignore_error>,
    policies::overflow_error<policies::ignore_error>,
    policies::evaluation_error<policies::ignore_error>,
    policies::rounding_error<policies::ignore_error>, policies::promote_double<false>>;
using Normal = boost::math::normal_distribution<double, Quiet>;
using Student = boost::math::students_t_distribution<double, Quiet>;
using ChiSquare = boost::math::chi_squared_distribution<double, Quiet>;
using FisherF = boost::math::fisher_f_distribution<double, Quiet>;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

bool isProbability(double p) {
    return p >= 0 && p <= 1;
}
bool isCount(double freedom) {
    return freedom > 0 && std::isfinite(freedom);
}

// Quantile of a distribution over 0 … infinity.
template<class D>
double quantileFromZero(const D& distribution, double p) {
    if (p == 0) return 0;
    if (p == 1) return infinity;
    return quantile(distribution, p);
}

// P(X > x) of the same.
template<class D>
double aboveFromZero(const D& distribution, double x) {
    if (std::isinf(x)) return 0;
    return cdf(complement(distribution, x));
}

} // namespace

double normalBelow(double z) {
    if (std::isnan(z)) return nan;
    if (std::isinf(z)) return z < 0 ? 0 : 1;
    return cdf(Normal(), z);
}

double normalQuantile(double p) {
    if (!isProbability(p)) return nan;
    if (p == 0 || p == 1) return p == 0 ? -infinity : infinity;
    return quantile(Normal(), p);
}

double studentBelow(double t, double freedom) {
    if (!(freedom > 0) || std::isnan(t)) return nan;
    if (std::isinf(freedom) || std::isinf(t)) return normalBelow(t);
    return cdf(Student(freedom), t);
}

double studentQuantile(double p, double freedom) {
    if (!(freedom > 0) || !isProbability(p)) return nan;
    if (std::isinf(freedom) || p == 0 || p == 1) return normalQuantile(p);
    return quantile(Student(freedom), p);
}

double chiSquareAbove(double x, double freedom) {
    if (!(x >= 0) || !isCount(freedom)) return nan;
    return aboveFromZero(ChiSquare(freedom), x);
}

double chiSquareQuantile(double p, double freedom) {
    if (!isProbability(p) || !isCount(freedom)) return nan;
    return quantileFromZero(ChiSquare(freedom), p);
}

double fAbove(double f, double freedom1, double freedom2) {
    if (!(f >= 0) || !isCount(freedom1) || !isCount(freedom2)) return nan;
    return aboveFromZero(FisherF(freedom1, freedom2), f);
}

double fQuantile(double p, double freedom1, double freedom2) {
    if (!isProbability(p) || !isCount(freedom1) || !isCount(freedom2)) return nan;
    return quantileFromZero(FisherF(freedom1, freedom2), p);
}

} // namespace borewright
