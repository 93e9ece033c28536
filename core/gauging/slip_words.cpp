// SPDX-License-Identifier: GPL-3.0-or-later
// The words that suspicions share.
#include "core/gauging/slip_parts.h"

#include "core/length/format.h"

#include <algorithm>

namespace borewright::slips {
namespace {

// Nobody reads a dial finer than a tenth of a division.
constexpr std::int64_t finestShare = 10;

} // namespace

int decimalsIn(const std::string& text) {
    const std::size_t separator = text.find_first_of(".,");
    return separator == std::string::npos ? 0 : static_cast<int>(text.size() - separator - 1);
}

std::string reasonOf(Slip slip) {
    switch (slip) {
    case Slip::digitsSwapped:
        return "digits swapped";
    case Slip::signTurned:
        return "sign turned";
    case Slip::turnsMissed:
        return "turn of the dial missed";
    case Slip::complement:
        return "read the wrong way round the dial";
    case Slip::graduation:
        return "graduation misread";
    case Slip::unit:
        return "wrong unit";
    case Slip::axesExchanged:
        return "axes exchanged";
    case Slip::stationsExchanged:
        return "stations exchanged";
    case Slip::columnReversed:
        return "typed from the wrong end";
    case Slip::stationSkipped:
        return "station skipped";
    case Slip::typedAgain:
        return "last reading typed again";
    case Slip::gaugeKnocked:
        return "gauge knocked";
    case Slip::unexplained:
        return "does not fit its bore";
    }
    return {};
}

TypedLength typedLike(Length value, const TypedLength& like) {
    const int decimals = std::min(decimalsIn(like.text()), 12);
    const auto same = readTyped(format(value, like.unit(), decimals, Sign::plain), like.unit());
    return same && same->value() == value ? *same : typedFrom(value, like.unit());
}

std::string shown(const TypedLength& typed) {
    std::string text = typed.text();
    if (text.starts_with('-')) text.replace(0, 1, "−");
    return text;
}

bool isFinerThanTheDial(const Reading& reading, const GaugeSetting& gauge) {
    const TypedLength& graduation = gauge.dial.graduation;
    if (reading.accepted || isInchFamily(reading.typed.unit()) != isInchFamily(graduation.unit()))
        return false;
    std::int64_t finest = graduation.value().picometres() / finestShare;
    if (gauge.gear.step) finest = std::min(finest, gauge.gear.step->value().picometres());
    return finest > 0 && reading.typed.value().picometres() % finest != 0;
}

} // namespace borewright::slips
