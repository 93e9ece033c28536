// SPDX-License-Identifier: GPL-3.0-or-later
// Refusing what cannot be a reading.
#include "core/gauging/gauging.h"

#include "core/length/format.h"

#include <algorithm>

namespace borewright {
namespace {

int decimalsIn(const std::string& text) {
    const std::size_t separator = text.find_first_of(".,");
    return separator == std::string::npos ? 0 : static_cast<int>(text.size() - separator - 1);
}

// Decimals of a dial's graduation when told in `unit`: 0.1 thou has 1 in thou, 4 in inches.
int graduationDecimals(const Dial& dial, Unit unit) {
    return decimalsIn(typedFrom(dial.graduation.value(), unit).text());
}

bool nearSize(Length value, Length size) {
    return (value - size).magnitude().picometres() <= size.picometres() / 10;
}

// "3.4215" typed in thou reads as a small deviation; typed so finely, and so close to the bore's
// size in inches, it was meant as a diameter.
bool looksLikeDiameter(const TypedLength& typed, const GaugeSetting& gauge, Length size) {
    if (nearSize(typed.value(), size)) return true;
    const Unit sizeUnit = isInchFamily(typed.unit()) ? Unit::inch : Unit::millimetre;
    const auto asSize = readLength(typed.text(), sizeUnit);
    return asSize && nearSize(*asSize, size) &&
           decimalsIn(typed.text()) >= graduationDecimals(gauge.dial, typed.unit()) + 2;
}

std::string told(const TypedLength& typed) {
    return typed.text() + " " + std::string(symbol(typed.unit()));
}

std::string sizeTold(const TypedLength& size) {
    return size.text() + " " + std::string(symbol(size.unit()));
}

Result<void> checkDeviation(const TypedLength& typed, const GaugeSetting& gauge) {
    if (!gauge.setSize) return refuse("enter the size the gauge was set to first");
    if (looksLikeDiameter(typed, gauge, gauge.setSize->value()))
        return refuse(told(typed) + " looks like a diameter; this survey takes deviations from " +
                      sizeTold(*gauge.setSize));
    if (typed.value().magnitude() > gauge.dial.travel.value())
        return refuse(told(typed) + " is beyond the dial, which moves " +
                      sizeTold(gauge.dial.travel) + " either way");
    return {};
}

Result<void> checkDiameter(const TypedLength& typed, const GaugeSetting& gauge,
                           std::optional<Length> standardSize) {
    const auto size = gauge.setSize ? std::optional(gauge.setSize->value()) : standardSize;
    if (typed.value() <= Length() || (size && typed.value().picometres() < size->picometres() / 2))
        return refuse(told(typed) + " is no diameter; this survey takes the size itself");
    if (gauge.setSize &&
        (typed.value() - gauge.setSize->value()).magnitude() > gauge.dial.travel.value())
        return refuse(told(typed) + " is beyond the dial, which moves " +
                      sizeTold(gauge.dial.travel) + " either way from " + sizeTold(*gauge.setSize));
    if (size && !nearSize(typed.value(), *size))
        return refuse(told(typed) + " is more than a tenth off this bore's size");
    return {};
}

} // namespace

Result<void> checkReading(const TypedLength& typed, const GaugeSetting& gauge,
                          std::optional<Length> standardSize) {
    return gauge.entry == Entry::deviation ? checkDeviation(typed, gauge)
                                           : checkDiameter(typed, gauge, standardSize);
}

} // namespace borewright
