// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/shape.h"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace borewright {
namespace {

// As a length; a doubt without end is shown as nine metres, which a length can hold.
Length lengthOf(double amount_um) {
    return Length::nearest(std::min(amount_um, 9e6), Unit::micrometre);
}

// The next step that is shown, upward: what is claimed is never better than it was.
Length upward(double amount_um, const DisplayUnits& units) {
    const double steps = std::pow(10.0, usualDecimals(units.small));
    const double amount = lengthOf(amount_um).in(units.small);
    return Length::nearest(std::ceil(amount * steps - 1e-6) / steps, units.small);
}

std::string amountWords(const BoreShape& shape, const DisplayUnits& units) {
    return formatSmall(lengthOf(shape.amount_um), units) + " ± " +
           smallWithUnit(upward(1.96 * shape.u_um, units), units);
}

std::string_view nameOf(ShapeKind kind) {
    switch (kind) {
    case ShapeKind::straight:
        return "a straight bore";
    case ShapeKind::vee:
        return "a V";
    case ShapeKind::bellMouth:
        return "a bell-mouth or narrowed end";
    case ShapeKind::barrel:
        return "a barrel";
    case ShapeKind::hourglass:
        return "an hourglass";
    case ShapeKind::ridge:
        return "a ridge or groove";
    }
    return {};
}

std::string plainly(const BoreShape& shape, const DisplayUnits& units) {
    const std::string amount = amountWords(shape, units);
    const std::string depth =
        depthWithUnit(Length::nearest(shape.where_mm, Unit::millimetre), units);
    const std::string end = shape.end == End::closed ? "closed end" : "open end";
    switch (shape.kind) {
    case ShapeKind::straight:
        return "straight as far as this gauge can tell";
    case ShapeKind::vee:
        return "V, " + amount + (shape.wide ? " wide" : " narrow") + " at the " + end;
    case ShapeKind::bellMouth:
        return (shape.wide ? "bell-mouth at the " : "narrowed at the ") + end + ", " + amount +
               " from " + depth + (shape.end == End::closed ? " down" : " up");
    case ShapeKind::barrel:
        return "barrel, " + amount + " larger in the middle";
    case ShapeKind::hourglass:
        return "hourglass, " + amount + " smaller in the middle";
    case ShapeKind::ridge:
        return (shape.wide ? "groove at " : "ridge at ") + depth + ", " + amount +
               (shape.wide ? " larger" : " smaller") + " there";
    }
    return {};
}

} // namespace

std::string smallestSeenWords(const BoreShape& shape, const DisplayUnits& units) {
    if (!shape.smallest.vee_um) return {};
    return "a V of " + smallWithUnit(upward(*shape.smallest.vee_um, units), units) +
           " would have been seen";
}

std::string shapeWords(const BoreShape& shape, const DisplayUnits& units) {
    std::string words = plainly(shape, units);
    if (shape.kind == ShapeKind::straight) return words + "; " + smallestSeenWords(shape, units);
    if (shape.uneven) words += ", unevenly";
    for (std::size_t i = 0; i < shape.orElse.size(); ++i)
        words += (i == 0 ? "; could also be " : " or ") + std::string(nameOf(shape.orElse[i]));
    return words;
}

} // namespace borewright
