// SPDX-License-Identifier: GPL-3.0-or-later
// What a set of depths can show: the shapes that are tried, each as one direction in the space of
// the whitened sizes, and how large each must come out before a bore is no longer called straight.
// shape.h tells the method; this is the part that does not depend on the sizes.
#pragma once

#include "core/form/shape.h"

#include <vector>

namespace borewright {

// A shape of amount 1. Its values over the depths run from 0 to 1: 1 at the end of a bell, at the
// closed end of a V, at the waist of a barrel, at a ridge.
struct TriedShape {
    ShapeKind kind;
    End end = End::closed;
    double where_mm = 0;
    bool plain = true; // false for a bell-mouth whose other end leans: it counts for naming
    std::vector<double> values{};
    // Whitened, mean taken off, length 1; so that z = direction · whitened sizes.
    std::vector<double> direction{};
    double perUm = 0; // z of an amount of 1 µm
};

// The set, from the depths x in the zone from the topmost (0) to the lowest (1):
//   V            x
//   bell-mouth   0 to h, then rising to 1; h = 0.5, 0.6, 0.7, 0.8, and the end level alone; at
//                either end; also with the other end leaning by half as much the other way, for
//                h = 0.4, 0.5, 0.6 (a worn bore that was belled)
//   barrel       1 − (distance to the waist / distance of its end)²; waist at 0.35, 0.5, 0.65
//   ridge        1 at one inner level, else 0; from four depths on
// A shape that differs from an earlier one by less than 0.1 (correlation above 0.995) is left out.
class ShapeDesign {
public:
    // Refuses as shapeOf does.
    static Result<ShapeDesign> make(const Profile& profile);

    [[nodiscard]] const std::vector<TriedShape>& shapes() const { return m_shapes; }
    // |z| that a shape must pass.
    [[nodiscard]] double limit(const TriedShape& shape) const {
        return shape.kind == ShapeKind::vee ? m_veeLimit : m_otherLimit;
    }
    [[nodiscard]] SmallestSeen smallest() const;
    // Sizes whitened, mean taken off.
    [[nodiscard]] std::vector<double> whitened(const std::vector<double>& sizes) const;

private:
    ShapeDesign() = default;
    void tryShape(TriedShape shape);
    void tryAll(const std::vector<ProfilePoint>& points);
    void tryBells(const std::vector<ProfilePoint>& points, const std::vector<double>& x);
    void setLimits();

    std::size_t m_count = 0;
    std::vector<double> m_factor; // lower Cholesky factor of the covariance, a row a point
    std::vector<double> m_mean;   // the constant: whitened, length 1
    std::vector<TriedShape> m_shapes;
    double m_veeLimit = 0;
    double m_otherLimit = 0;
};

} // namespace borewright
