// SPDX-License-Identifier: GPL-3.0-or-later
// The line by sums about the weighted means.
#include "core/statistics/line.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

double squared(double x) {
    return x * x;
}

Result<void> checkPoints(std::span<const LinePoint> points, LineDoubt doubt, std::size_t fewest) {
    for (const LinePoint& point : points) {
        if (!std::isfinite(point.x) || !std::isfinite(point.y))
            return refuse("a point is not a number");
        if (!(point.u > 0) || !std::isfinite(point.u))
            return refuse("the uncertainty of a point must be larger than zero");
    }
    if (doubt == LineDoubt::fromScatter && points.size() <= fewest)
        return refuse("too few points to tell the scatter about a line");
    return {};
}

double weightOf(const LinePoint& point) {
    return 1 / squared(point.u);
}

// Weighted mean of what `of` takes from a point.
template<class F>
double meanOf(std::span<const LinePoint> points, const F& of) {
    double weights = 0;
    double sum = 0;
    for (const LinePoint& point : points) {
        weights += weightOf(point);
        sum += weightOf(point) * of(point);
    }
    return sum / weights;
}

constexpr const char* outOfRange =
    "the points lie too far apart, or too close together, for a line";

bool isUsable(double sum) {
    return sum > 0 && std::isfinite(sum);
}

// Chi-square, the scatter, and from it, where asked for, the scale of the uncertainties.
Result<Line> finished(Line line, std::span<const LinePoint> points, LineDoubt doubt,
                      std::size_t parameters, double heightAtCentre) {
    for (const LinePoint& point : points)
        line.chiSquare +=
            squared(((point.y - heightAtCentre) - line.slope * (point.x - line.centre)) / point.u);
    line.freedom = static_cast<double>(points.size() - parameters);
    line.residualDeviation = line.freedom > 0 ? std::sqrt(line.chiSquare / line.freedom) : 0;
    const double scale = doubt == LineDoubt::fromScatter ? line.residualDeviation : 1;
    line.uIntercept *= scale;
    line.uSlope *= scale;
    line.uCentre *= scale;
    line.covariance *= squared(scale);
    if (!std::isfinite(line.intercept) || !std::isfinite(line.uIntercept + line.uSlope) ||
        !std::isfinite(line.covariance) || !std::isfinite(line.chiSquare))
        return refuse(outOfRange);
    return line;
}

} // namespace

double Line::correlation() const {
    const double product = uIntercept * uSlope;
    return product > 0 ? covariance / product : 0;
}

Result<Line> fitLine(std::span<const LinePoint> points, LineDoubt doubt) {
    if (auto fit = checkPoints(points, doubt, 2); !fit) return tl::unexpected(fit.error());
    const bool oneX = std::ranges::all_of(
        points, [&](const LinePoint& point) { return point.x == points.front().x; });
    if (oneX) return refuse("a line needs points at two places at least");
    Line line{};
    line.centre = meanOf(points, [](const LinePoint& point) { return point.x; });
    const double height = meanOf(points, [](const LinePoint& point) { return point.y; });
    double weights = 0;
    double xx = 0;
    double xy = 0;
    for (const LinePoint& point : points) {
        const double weight = weightOf(point);
        weights += weight;
        xx += weight * squared(point.x - line.centre);
        xy += weight * (point.x - line.centre) * (point.y - height);
    }
    if (!isUsable(xx) || !isUsable(weights)) return refuse(outOfRange);
    line.slope = xy / xx;
    line.intercept = height - line.slope * line.centre;
    line.uSlope = 1 / std::sqrt(xx);
    line.uCentre = 1 / std::sqrt(weights);
    line.uIntercept = std::hypot(line.uCentre, line.centre * line.uSlope);
    line.covariance = -line.centre * squared(line.uSlope);
    return finished(line, points, doubt, 2, height);
}

Result<Line> fitLineThroughOrigin(std::span<const LinePoint> points, LineDoubt doubt) {
    if (auto fit = checkPoints(points, doubt, 1); !fit) return tl::unexpected(fit.error());
    const bool atOrigin =
        std::ranges::all_of(points, [](const LinePoint& point) { return point.x == 0; });
    if (atOrigin) return refuse("a line through zero needs a point away from zero");
    double xx = 0;
    double xy = 0;
    for (const LinePoint& point : points) {
        const double weight = weightOf(point);
        xx += weight * squared(point.x);
        xy += weight * point.x * point.y;
    }
    if (!isUsable(xx)) return refuse(outOfRange);
    Line line{};
    line.slope = xy / xx;
    line.uSlope = 1 / std::sqrt(xx);
    return finished(line, points, doubt, 1, 0);
}

Prediction predict(const Line& line, double x) {
    return {line.intercept + line.slope * x,
            std::hypot(line.uCentre, (x - line.centre) * line.uSlope)};
}

} // namespace borewright
