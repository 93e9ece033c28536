// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/length/format.h"

#include <algorithm>

namespace borewright {
namespace {

__extension__ using Int128 = __int128;

// numerator / denominator, ties to even, both positive.
Int128 roundedQuotient(Int128 numerator, Int128 denominator) {
    Int128 quotient = numerator / denominator;
    const Int128 remainder = numerator % denominator;
    const Int128 rest = denominator - remainder;
    if (remainder > rest || (remainder == rest && quotient % 2 != 0)) ++quotient;
    return quotient;
}

std::string digitsOf(Int128 value) {
    std::string digits;
    do {
        digits.insert(digits.begin(), static_cast<char>('0' + static_cast<int>(value % 10)));
        value /= 10;
    } while (value != 0);
    return digits;
}

std::string withSymbol(std::string number, Unit unit) {
    return number + " " + std::string(symbol(unit));
}

// A depth wants fewer decimals than a size; enough to show it whole, up to the size's own.
int depthDecimals(Length value, Unit unit) {
    const int least = unit == Unit::inch ? 2 : 0;
    const int most = std::max(least, usualDecimals(unit));
    for (int decimals = least; decimals < most; ++decimals) {
        std::int64_t step = picometresPer(unit);
        for (int i = 0; i < decimals && step % 10 == 0; ++i)
            step /= 10;
        if (value.picometres() % step == 0) return decimals;
    }
    return most;
}

} // namespace

std::string format(Length value, Unit unit, int decimals, Sign sign) {
    Int128 scale = 1;
    for (int i = 0; i < decimals; ++i)
        scale *= 10;
    const Int128 magnitude = value.magnitude().picometres();
    const Int128 rounded = roundedQuotient(magnitude * scale, picometresPer(unit));

    std::string text = digitsOf(rounded);
    if (decimals > 0) {
        const auto places = static_cast<std::size_t>(decimals);
        if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
        text.insert(text.size() - places, 1, '.');
    }
    if (rounded == 0) return text;
    if (value < Length()) return (sign == Sign::plain ? "-" : "\u2212") + text;
    return sign == Sign::always ? "+" + text : text;
}

int usualDecimals(Unit unit) {
    switch (unit) {
    case Unit::inch:
        return 4;
    case Unit::thou:
        return 1;
    case Unit::tenth:
        return 0;
    case Unit::millimetre:
        return 3;
    case Unit::hundredth:
        return 1;
    case Unit::micrometre:
        return 0;
    }
    return 0;
}

std::string formatSize(Length value, const DisplayUnits& units, int extra) {
    return format(value, units.size, usualDecimals(units.size) + extra);
}

std::string formatSmall(Length value, const DisplayUnits& units, Sign sign, int extra) {
    return format(value, units.small, usualDecimals(units.small) + extra, sign);
}

std::string formatDepth(Length value, const DisplayUnits& units) {
    return format(value, units.size, depthDecimals(value, units.size));
}

std::string sizeWithUnit(Length value, const DisplayUnits& units, int extra) {
    return withSymbol(formatSize(value, units, extra), units.size);
}

std::string smallWithUnit(Length value, const DisplayUnits& units, Sign sign, int extra) {
    return withSymbol(formatSmall(value, units, sign, extra), units.small);
}

std::string depthWithUnit(Length value, const DisplayUnits& units) {
    return withSymbol(formatDepth(value, units), units.size);
}

} // namespace borewright
