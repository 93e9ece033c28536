// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/length/number_text.h"

#include "core/length/format.h"
#include "core/utf8.h"

#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

__extension__ using Int128 = __int128;

constexpr std::string_view typographicMinus = "\u2212";
constexpr int mostDigits = 18; // 10^18 < 2^63

std::string_view trimmed(std::string_view text) {
    const auto isSpace = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string quoted(std::string_view text) {
    // A pasted novel is not repeated back whole.
    return "'" + shortened(text, 24) + "'";
}

// Takes a leading sign off `text`; true for a minus.
bool takeSign(std::string_view& text) {
    if (text.starts_with(typographicMinus)) {
        text.remove_prefix(typographicMinus.size());
        return true;
    }
    if (text.starts_with('-') || text.starts_with('+')) {
        const bool negative = text.front() == '-';
        text.remove_prefix(1);
        return negative;
    }
    return false;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

} // namespace

Result<Decimal> readDecimal(std::string_view text) {
    const std::string_view whole = trimmed(text);
    if (whole.empty()) return refuse("nothing was typed");
    std::string_view rest = whole;
    const bool negative = takeSign(rest);

    Decimal result;
    int digits = 0;
    bool separator = false;
    for (const char c : rest) {
        if (isDigit(c)) {
            if (++digits > mostDigits)
                return refuse(quoted(whole) + " has more digits than any reading");
            result.digits = result.digits * 10 + (c - '0');
            if (separator) ++result.decimals;
        } else if (c == '.' || c == ',') {
            if (separator) return refuse(quoted(whole) + " has two decimal points");
            separator = true;
        } else {
            return refuse(quoted(whole) + " is not a number");
        }
    }
    if (digits == 0) return refuse(quoted(whole) + " is not a number");
    if (negative) result.digits = -result.digits;
    return result;
}

double toDouble(Decimal decimal) {
    return static_cast<double>(decimal.digits) / std::pow(10.0, decimal.decimals);
}

std::string TypedLength::withUnit() const {
    return m_text + " " + std::string(key(m_unit));
}

Result<TypedLength> readTyped(std::string_view text, Unit unit) {
    const std::string_view whole = trimmed(text);
    std::size_t numberEnd = whole.size();
    while (numberEnd > 0 && !isDigit(whole[numberEnd - 1]) && whole[numberEnd - 1] != '.' &&
           whole[numberEnd - 1] != ',')
        --numberEnd;
    const std::string_view number = trimmed(whole.substr(0, numberEnd));
    const std::string_view suffix = trimmed(whole.substr(numberEnd));
    if (!suffix.empty() && !number.empty()) {
        const auto named = unitFromText(suffix);
        if (!named)
            return refuse(quoted(whole) + " is not a number with a unit this program knows");
        unit = *named;
    }
    const auto decimal = readDecimal(number.empty() ? whole : number);
    if (!decimal) return tl::unexpected(decimal.error());

    Int128 divisor = 1;
    for (int i = 0; i < decimal->decimals; ++i)
        divisor *= 10;
    const Int128 scaled = Int128(decimal->digits) * picometresPer(unit);
    if (scaled % divisor != 0)
        return refuse(quoted(whole) + " has more decimals than a length can hold exactly");
    const Int128 picometres = scaled / divisor;
    const Int128 bound = Length::largest().picometres();
    if (picometres > bound || picometres < -bound)
        return refuse(quoted(whole) + " is beyond ten metres");

    TypedLength typed;
    typed.m_text = std::string(number);
    typed.m_unit = unit;
    typed.m_value = Length::fromPicometres(static_cast<std::int64_t>(picometres));
    return typed;
}

Result<TypedLength> readAmount(std::string_view text, Unit unit) {
    auto typed = readTyped(text, unit);
    if (!typed || unit == Unit::inch || unit == Unit::millimetre) return typed;
    const Unit large = isInchFamily(unit) ? Unit::inch : Unit::millimetre;
    const Length least =
        isInchFamily(unit) ? Length::whole(1, Unit::tenth) : Length::whole(1, Unit::micrometre);
    const auto likely = readTyped(text, large);
    const bool saysUnit = !likely || likely->unit() != large || typed->unit() != unit;
    const bool next = typed->value() != Length() && typed->value().magnitude() < least;
    if (saysUnit || !next) return typed;
    return refuse(fmt::format("{} {} is next to nothing: write {}, or {} {}", typed->text(),
                              symbol(unit), typedFrom(likely->value(), unit).text(), likely->text(),
                              symbol(large)));
}

Result<Length> readLength(std::string_view text, Unit unit) {
    return readTyped(text, unit).map([](const TypedLength& typed) { return typed.value(); });
}

TypedLength typedFrom(Length value, Unit unit) {
    for (int decimals = 0; decimals <= 12; ++decimals) {
        auto typed = readTyped(format(value, unit, decimals, Sign::plain), unit);
        if (typed && typed->value() == value) return *typed;
    }
    return *readTyped(format(value, Unit::micrometre, 6, Sign::plain), Unit::micrometre);
}

} // namespace borewright
