// SPDX-License-Identifier: GPL-3.0-or-later
// Lengths in tests: made from literals, printed in shop units when a check fails.
#pragma once

#include "core/length/format.h"
#include "core/length/number_text.h"

#include <ostream>
#include <stdexcept>

namespace borewright {

inline void PrintTo(Length value, std::ostream* out) {
    *out << format(value, Unit::inch, 7, Sign::plain)
         << " in = " << format(value, Unit::millimetre, 6, Sign::plain) << " mm";
}

namespace test {

inline TypedLength typed(std::string_view text, Unit unit) {
    auto result = readTyped(text, unit);
    if (!result) throw std::runtime_error("test data: " + result.error().message());
    return *result;
}
inline TypedLength typedIn(std::string_view text) {
    return typed(text, Unit::inch);
}
inline TypedLength typedThou(std::string_view text) {
    return typed(text, Unit::thou);
}
inline TypedLength typedMm(std::string_view text) {
    return typed(text, Unit::millimetre);
}
inline TypedLength typedUm(std::string_view text) {
    return typed(text, Unit::micrometre);
}
inline Length in(std::string_view text) {
    return typedIn(text).value();
}
inline Length thou(std::string_view text) {
    return typedThou(text).value();
}
inline Length mm(std::string_view text) {
    return typedMm(text).value();
}
inline Length um(std::string_view text) {
    return typedUm(text).value();
}

} // namespace test
} // namespace borewright
