// SPDX-License-Identifier: GPL-3.0-or-later
// Reading numbers as people type them: decimal point or decimal comma in every locale, one sign,
// nothing else. The whole text must be consumed, so "1,23" is never 1 and "1,234" never 1234.
#pragma once

#include "core/length/length.h"
#include "core/result.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace borewright {

// digits · 10^-decimals, exactly as typed ("−1,50" is −150 with 2 decimals).
struct Decimal {
    std::int64_t digits = 0;
    int decimals = 0;
};

// Reads `text` (spaces around it ignored) as a decimal number: an optional sign (+, -, or the
// typographic minus), digits, at most one point or comma with digits before or behind it.
// Refuses, in words: empty text, letters, two separators, an exponent, over 18 digits.
Result<Decimal> readDecimal(std::string_view text);

// The nearest double; for numbers that are not lengths (angles, temperatures).
double toDouble(Decimal decimal);

// A length typed by the user: the text as typed, the unit it was typed in, the exact value.
// Only readTyped() makes one from text, so text and value always agree.
class TypedLength {
public:
    TypedLength() = default;
    [[nodiscard]] const std::string& text() const { return m_text; }
    [[nodiscard]] Unit unit() const { return m_unit; }
    [[nodiscard]] Length value() const { return m_value; }
    // "3.4200 in": text and unit key, as files hold it.
    [[nodiscard]] std::string withUnit() const;

    friend bool operator==(const TypedLength& a, const TypedLength& b) {
        return a.m_text == b.m_text && a.m_unit == b.m_unit;
    }

private:
    friend Result<TypedLength> readTyped(std::string_view text, Unit unit);
    std::string m_text = "0";
    Unit m_unit = Unit::inch;
    Length m_value;
};

// Reads a length. A unit behind the number ("3.5in", "88 mm", "4.5 thou") counts before `unit`.
// Refuses what readDecimal refuses, more decimals than the length can hold exactly, and anything
// beyond Length::largest().
Result<TypedLength> readTyped(std::string_view text, Unit unit);

// The same for an amount that a small unit is meant for: a clearance, a gap, an allowance. A number
// without a unit that comes to next to nothing in it (under 0.1 thou, under 1 µm, but not nothing)
// is refused with what was likely meant: manuals print 0.012 in, and 0.012 thou is none.
Result<TypedLength> readAmount(std::string_view text, Unit unit);

// Same, where only the value matters.
Result<Length> readLength(std::string_view text, Unit unit);

// A typed length that shows `value` with exactly the decimals it needs in `unit`; for values the
// program proposes. Where `unit` cannot hold it in 12 decimals, falls back to micrometres.
TypedLength typedFrom(Length value, Unit unit);

} // namespace borewright
