// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/shape_design.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>
#include <optional>
#include <utility>

namespace borewright {
namespace {

constexpr std::size_t mostDepths = 200;
constexpr double tooAlike = 0.995;
// Beyond this many shapes the limit is Bonferroni's, a little higher, and no pairs are looked at.
constexpr std::size_t mostPaired = 80;

double dot(const std::vector<double>& a, const std::vector<double>& b) {
    return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

std::optional<Error> trouble(const Profile& profile) {
    const auto& points = profile.points;
    if (points.size() < 2) return Error{{}, "one depth has no shape"};
    if (points.size() > mostDepths) return Error{"shape", "more than 200 depths"};
    if (!profile.covariance_um2.empty() &&
        profile.covariance_um2.size() != points.size() * points.size())
        return Error{"shape", "a covariance that does not fit the depths"};
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (!isDepthAndSize(points[i].depth_mm, points[i].size_um))
            return Error{"shape", "a depth or size that is no number"};
        if (i > 0 && points[i].depth_mm <= points[i - 1].depth_mm)
            return Error{"shape", "depths that do not rise"};
        if (!isWeighable(points[i].u_um))
            return Error{"shape", "a size without a doubt above zero; a shape is weighed "
                                  "against it"};
    }
    return std::nullopt;
}

// Cholesky's factor; empty where the matrix is no covariance.
std::vector<double> factorOf(const Profile& profile) {
    const std::size_t n = profile.points.size();
    std::vector<double> l = profile.covariance_um2;
    if (l.empty()) {
        l.resize(n * n);
        for (std::size_t i = 0; i < n; ++i)
            l[i * n + i] = profile.points[i].u_um * profile.points[i].u_um;
    }
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j <= i; ++j) {
            double sum = l[i * n + j];
            for (std::size_t k = 0; k < j; ++k)
                sum -= l[i * n + k] * l[j * n + k];
            if (i == j && !(sum > 0)) return {};
            l[i * n + j] = i == j ? std::sqrt(sum) : sum / l[j * n + j];
        }
    return l;
}

// Solves L·x = y in place.
void whiten(const std::vector<double>& factor, std::vector<double>& y) {
    const std::size_t n = y.size();
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t k = 0; k < i; ++k)
            y[i] -= factor[i * n + k] * y[k];
        y[i] /= factor[i * n + i];
    }
}

// P(X > c and Y > c), both standard normal with correlation r ≥ 0 (W. F. Sheppard's integral, in
// the form of Genz, Stat. Comput. 14 (2004) 251), by Gauss and Legendre's rule with five points
// (Abramowitz & Stegun, table 25.4; good to 10⁻⁴ of the value here):
//   Q(c)² + 1/(2π) ∫ exp(−c²/(1 + sin t)) dt, t = 0 … asin r
double bothAbove(double c, double r, double above) {
    constexpr std::array<std::array<double, 2>, 5> rule{{{-0.9061798459386640, 0.2369268850561891},
                                                         {-0.5384693101056831, 0.4786286704993665},
                                                         {0, 0.5688888888888889},
                                                         {0.5384693101056831, 0.4786286704993665},
                                                         {0.9061798459386640, 0.2369268850561891}}};
    const double half = std::asin(std::min(r, 1.0)) / 2;
    double sum = 0;
    for (const auto& [at, weight] : rule)
        sum += weight * std::exp(-c * c / (1 + std::sin(half * (1 + at))));
    return above * above + sum * half / (2 * std::numbers::pi);
}

// Correlations along the spanning tree whose correlations are largest (Prim's way).
std::vector<double> strongestTree(const std::vector<const TriedShape*>& shapes) {
    std::vector<double> best(shapes.size(), -1), tree;
    std::vector<bool> in(shapes.size());
    std::size_t last = 0;
    while (tree.size() + 1 < shapes.size()) {
        in[last] = true;
        std::size_t next = last;
        for (std::size_t i = 0; i < shapes.size(); ++i) {
            if (in[i]) continue;
            best[i] =
                std::max(best[i], std::fabs(dot(shapes[i]->direction, shapes[last]->direction)));
            if (in[next] || best[i] > best[next]) next = i;
        }
        tree.push_back(best[next]);
        last = next;
    }
    return tree;
}

// An upper bound of the chance that the largest of `count` |z| passes c, less what the pairs of the
// tree share (Hunter, Worsley). That one passes upward and its partner downward is left out, which
// only raises the bound.
double chanceBound(std::size_t count, const std::vector<double>& tree, double c) {
    const double above = normalBelow(-c);
    double chance = 2 * above * static_cast<double>(count);
    for (const double r : tree)
        chance -= 2 * bothAbove(c, r, above);
    return chance;
}

// The c at which the bound is `risk`, from above.
double limitFor(const std::vector<const TriedShape*>& shapes, double risk, std::size_t freedom) {
    const double bonferroni = -normalQuantile(risk / 2 / static_cast<double>(shapes.size()));
    // No |z| passes the length of the whitened sizes.
    const double length = std::sqrt(chiSquareQuantile(1 - risk, static_cast<double>(freedom)));
    if (shapes.size() > mostPaired) return std::min(bonferroni, length);
    const std::vector<double> tree = strongestTree(shapes);
    // Down from Bonferroni's limit by Newton's way, with c + 1/c for the slope of the bound's
    // logarithm: it is a little too steep, so that no step goes too far.
    double c = bonferroni;
    for (int i = 0; i < 4; ++i)
        c += std::log(chanceBound(shapes.size(), tree, c) / risk) / (c + 1 / c);
    return std::min(c, length);
}

} // namespace

Result<ShapeDesign> ShapeDesign::make(const Profile& profile) {
    if (const auto error = trouble(profile)) return tl::unexpected<Error>(*error);
    ShapeDesign design;
    design.m_count = profile.points.size();
    design.m_factor = factorOf(profile);
    if (design.m_factor.empty()) return refuse("shape", "a covariance that is none");
    design.m_mean.assign(design.m_count, 1.0);
    whiten(design.m_factor, design.m_mean);
    const double length = std::sqrt(dot(design.m_mean, design.m_mean));
    for (double& value : design.m_mean)
        value /= length;
    design.tryAll(profile.points);
    design.setLimits();
    return design;
}

std::vector<double> ShapeDesign::whitened(const std::vector<double>& sizes) const {
    std::vector<double> result = sizes;
    whiten(m_factor, result);
    const double mean = dot(result, m_mean);
    for (std::size_t i = 0; i < result.size(); ++i)
        result[i] -= mean * m_mean[i];
    return result;
}

void ShapeDesign::tryShape(TriedShape shape) {
    const auto [least, most] = std::ranges::minmax(shape.values);
    if (!(most > least)) return;
    for (double& value : shape.values)
        value = (value - least) / (most - least);
    shape.direction = whitened(shape.values);
    shape.perUm = std::sqrt(dot(shape.direction, shape.direction));
    for (double& value : shape.direction)
        value /= shape.perUm;
    for (const TriedShape& other : m_shapes)
        if (std::fabs(dot(other.direction, shape.direction)) > tooAlike) return;
    m_shapes.push_back(std::move(shape));
}

void ShapeDesign::tryAll(const std::vector<ProfilePoint>& points) {
    const double top = points.front().depth_mm, zone = points.back().depth_mm - top;
    std::vector<double> x;
    for (const ProfilePoint& point : points)
        x.push_back((point.depth_mm - top) / zone);
    const auto shaped = [&](auto value) {
        std::vector<double> values;
        for (const double at : x)
            values.push_back(value(at));
        return values;
    };
    tryShape({.kind = ShapeKind::vee, .values = x});
    if (points.size() < 3) return;
    for (const double waist : {0.5, 0.35, 0.65})
        tryShape({.kind = ShapeKind::barrel,
                  .where_mm = top + waist * zone,
                  .values = shaped([&](double at) {
                      const double r = (at - waist) / (at < waist ? waist : 1 - waist);
                      return 1 - r * r;
                  })});
    tryBells(points, x);
    for (std::size_t i = 1; points.size() > 3 && i + 1 < points.size(); ++i)
        tryShape({.kind = ShapeKind::ridge,
                  .where_mm = points[i].depth_mm,
                  .values = shaped([&](double at) { return at == x[i] ? 1.0 : 0.0; })});
}

void ShapeDesign::tryBells(const std::vector<ProfilePoint>& points, const std::vector<double>& x) {
    const double zone = points.back().depth_mm - points.front().depth_mm;
    for (const End end : {End::closed, End::open}) {
        const bool closed = end == End::closed;
        const double alone = closed ? x[x.size() - 2] : 1 - x[1];
        const auto tryOne = [&](double start, double lean) {
            if (start > alone) return;
            TriedShape bell{.kind = ShapeKind::bellMouth, .end = end, .plain = lean == 0};
            bell.where_mm = points.front().depth_mm + zone * (closed ? start : 1 - start);
            for (const double at : x) {
                const double along = closed ? at : 1 - at;
                bell.values.push_back(along > start ? (along - start) / (1 - start)
                                                    : lean * (1 - along / start));
            }
            tryShape(std::move(bell));
        };
        for (const double start : {alone, 0.8, 0.7, 0.6, 0.5})
            tryOne(start, 0);
        for (const double start : {0.6, 0.5, 0.4})
            tryOne(start, 0.5);
    }
}

void ShapeDesign::setLimits() {
    std::vector<const TriedShape*> others;
    const TriedShape* vee = &m_shapes.front();
    double alike = 0;
    for (const TriedShape& shape : m_shapes) {
        if (shape.kind == ShapeKind::vee) continue;
        others.push_back(&shape);
        alike = std::max(alike, std::fabs(dot(vee->direction, shape.direction)));
    }
    double risk = straightCalledOtherwise;
    if (!others.empty()) {
        m_otherLimit = limitFor(others, risk / 2, m_count - 1);
        // What passes both counts once: at least where both pass the higher limit.
        risk = risk / 2 + 2 * bothAbove(m_otherLimit, alike, normalBelow(-m_otherLimit));
    }
    m_veeLimit = -normalQuantile(risk / 2);
    m_otherLimit = std::max(m_otherLimit, m_veeLimit);
}

SmallestSeen ShapeDesign::smallest() const {
    SmallestSeen seen;
    const double power = normalQuantile(shapeSeenWith);
    for (const TriedShape& shape : m_shapes) {
        std::optional<double>& amount = shape.kind == ShapeKind::vee         ? seen.vee_um
                                        : shape.kind == ShapeKind::bellMouth ? seen.bellMouth_um
                                        : shape.kind == ShapeKind::barrel    ? seen.barrel_um
                                                                             : seen.ridge_um;
        if (shape.plain)
            amount = std::max(amount.value_or(0), (limit(shape) + power) / shape.perUm);
    }
    return seen;
}

} // namespace borewright
