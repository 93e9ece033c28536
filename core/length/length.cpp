// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/length/length.h"

#include <cmath>

namespace borewright {

Length Length::nearest(double value, Unit unit) {
    // std::nearbyint in the default rounding mode rounds ties to even.
    return Length(static_cast<std::int64_t>(
        std::nearbyint(value * static_cast<double>(picometresPer(unit)))));
}

std::int64_t divideHalfToEven(std::int64_t numerator, std::int64_t denominator) {
    std::int64_t quotient = numerator / denominator;
    std::int64_t remainder = numerator % denominator;
    if (remainder < 0) {
        remainder += denominator;
        --quotient;
    }
    const std::int64_t rest = denominator - remainder;
    if (remainder > rest || (remainder == rest && quotient % 2 != 0)) ++quotient;
    return quotient;
}

Length mean(std::span<const Length> lengths) {
    Length sum;
    for (const Length length : lengths)
        sum += length;
    return Length::fromPicometres(
        divideHalfToEven(sum.picometres(), static_cast<std::int64_t>(lengths.size())));
}

} // namespace borewright
