// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/shape.h"

#include "core/form/shape_design.h"
#include "core/statistics/distributions.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <numeric>

namespace borewright {
namespace {

constexpr double evidenceCovered = 0.95;
constexpr double fitsWithin = 0.99;

// What can be named: both ends' bell-mouths are weighed apart.
constexpr std::size_t families = 5;
std::size_t familyOf(const TriedShape& shape) {
    switch (shape.kind) {
    case ShapeKind::vee:
        return 0;
    case ShapeKind::bellMouth:
        return shape.end == End::open ? 1 : 2;
    case ShapeKind::ridge:
        return 3;
    default:
        return 4;
    }
}

// Weight before the readings are seen. Two ends share a bell-mouth's; a third more than half for
// each confuses V and bell-mouth alike often on five uneven levels (shape_simulation_test.cpp).
double weightOf(const TriedShape& shape) {
    return shape.kind == ShapeKind::bellMouth ? 2.0 / 3 : 1;
}

struct Tried {
    const TriedShape* shape;
    double z; // signed
};

// The weightiest member of a family, and the evidence of all its members together.
struct Family {
    Tried best{nullptr, 0};
    double evidence = 0;
    int members = 0;
};

// Residual χ² over its freedom where it is beyond chance, else 1.
double misfit(double chiSquare, std::size_t freedom) {
    if (freedom < 1) return 1;
    const double dof = static_cast<double>(freedom);
    return chiSquare > chiSquareQuantile(fitsWithin, dof) ? chiSquare / dof : 1;
}

// ∫ likelihood over the amount, up to what all shapes share.
double evidenceOf(const Tried& one, double largest, double factor) {
    return std::exp((one.z * one.z - largest * largest) / (2 * factor)) / one.shape->perUm;
}

std::array<Family, families> weigh(const std::vector<Tried>& tried, double largest, double factor) {
    std::array<Family, families> weighed;
    for (const Tried& one : tried) {
        Family& family = weighed[familyOf(*one.shape)];
        family.evidence += evidenceOf(one, largest, factor);
        ++family.members;
        if (!family.best.shape || std::fabs(one.z) > std::fabs(family.best.z)) family.best = one;
    }
    for (Family& family : weighed)
        if (family.members > 0) family.evidence *= weightOf(*family.best.shape) / family.members;
    std::ranges::stable_sort(weighed, std::greater{}, &Family::evidence);
    return weighed;
}

// Mean square of how far the members of the named family are from its amount, by their evidence:
// where the shape starts is not known either.
double spread_um2(const std::vector<Tried>& tried, const Tried& named, double factor) {
    double all = 0, squares = 0;
    for (const Tried& one : tried) {
        if (familyOf(*one.shape) != familyOf(*named.shape)) continue;
        const double weight = evidenceOf(one, named.z, factor);
        const double off = one.z / one.shape->perUm - named.z / named.shape->perUm;
        all += weight;
        squares += weight * off * off;
    }
    return squares / all;
}

// A shape of the set with its sign: the words that it goes by.
ShapeKind kindOf(const Tried& tried) {
    if (tried.shape->kind != ShapeKind::barrel) return tried.shape->kind;
    return tried.z > 0 ? ShapeKind::barrel : ShapeKind::hourglass;
}

void describe(BoreShape& shape, const Tried& named, const std::vector<ProfilePoint>& points) {
    shape.kind = kindOf(named);
    shape.amount_um = std::fabs(named.z) / named.shape->perUm;
    shape.end = named.shape->end;
    shape.where_mm = named.shape->where_mm;
    shape.wide = named.z > 0 && shape.kind != ShapeKind::barrel;
    if (shape.kind != ShapeKind::bellMouth) return;
    // The last level that is still straight; the start itself lies between two levels.
    const bool closed = shape.end == End::closed;
    double last = closed ? points.front().depth_mm : points.back().depth_mm;
    for (const ProfilePoint& point : points)
        if (closed ? point.depth_mm <= named.shape->where_mm + 1e-9
                   : point.depth_mm >= named.shape->where_mm - 1e-9 && point.depth_mm < last)
            last = point.depth_mm;
    shape.where_mm = last;
}

void listOthers(BoreShape& shape, const std::array<Family, families>& weighed) {
    double all = 0, covered = weighed[0].evidence;
    for (const Family& family : weighed)
        all += family.evidence;
    for (std::size_t i = 1; i < families && covered < evidenceCovered * all; ++i) {
        covered += weighed[i].evidence;
        const ShapeKind kind = kindOf(weighed[i].best);
        if (kind != shape.kind && std::ranges::find(shape.orElse, kind) == shape.orElse.end())
            shape.orElse.push_back(kind);
    }
}

} // namespace

Result<BoreShape> shapeOf(const Profile& profile) {
    const auto design = ShapeDesign::make(profile);
    if (!design) return tl::unexpected<Error>(design.error());
    BoreShape shape;
    shape.smallest = design->smallest();

    std::vector<double> sizes;
    for (const ProfilePoint& point : profile.points)
        sizes.push_back(point.size_um - profile.points.front().size_um);
    const std::vector<double> whitened = design->whitened(sizes);
    std::vector<Tried> tried;
    double largest = 0;
    bool seen = false;
    for (const TriedShape& one : design->shapes()) {
        const double z =
            std::inner_product(whitened.begin(), whitened.end(), one.direction.begin(), 0.0);
        tried.push_back({&one, z});
        largest = std::max(largest, std::fabs(z));
        seen = seen || std::fabs(z) > design->limit(one);
    }
    if (!seen) return shape;

    const double total =
        std::inner_product(whitened.begin(), whitened.end(), whitened.begin(), 0.0);
    const std::size_t freedom = profile.points.size() - 2;
    const auto weighed = weigh(tried, largest, misfit(total - largest * largest, freedom));
    const Tried& named = weighed[0].best;
    describe(shape, named, profile.points);
    const double left = misfit(total - named.z * named.z, freedom);
    shape.uneven = left > 1;
    shape.u_um = std::sqrt(left / (named.shape->perUm * named.shape->perUm) +
                           spread_um2(tried, named, left));
    listOthers(shape, weighed);
    return shape;
}

} // namespace borewright
