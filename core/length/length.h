// SPDX-License-Identifier: GPL-3.0-or-later
// An exact length: a whole number of picometres in 64 bits. Any decimal typed in inches to 10⁻⁶ or
// in millimetres to 10⁻⁹ is held without error, so that a value exactly on its limit compares
// equal to it. Formulas that need a double name its unit (`depth_mm`, `removal_um`).
#pragma once

#include "core/length/unit.h"

#include <compare>
#include <cstdint>
#include <span>

namespace borewright {

class Length {
public:
    constexpr Length() = default;
    static constexpr Length fromPicometres(std::int64_t picometres) { return Length(picometres); }
    // `count` whole units; exact.
    static constexpr Length whole(std::int64_t count, Unit unit) {
        return Length(count * picometresPer(unit));
    }
    // Nearest picometre to `value` units, ties to even. For results of formulas, never for typed
    // text. `value` must be finite and within ±largest().
    static Length nearest(double value, Unit unit);

    // What parsing accepts: ten metres either way. Sums of a thousand such lengths still fit.
    static constexpr Length largest() { return Length(10'000'000'000'000); }

    [[nodiscard]] constexpr std::int64_t picometres() const { return m_picometres; }
    // As a double in `unit`, for formulas and pictures; not for display (see format.h).
    [[nodiscard]] constexpr double in(Unit unit) const {
        return static_cast<double>(m_picometres) / static_cast<double>(picometresPer(unit));
    }
    [[nodiscard]] constexpr Length magnitude() const {
        return Length(m_picometres < 0 ? -m_picometres : m_picometres);
    }

    constexpr Length operator-() const { return Length(-m_picometres); }
    constexpr Length& operator+=(Length other) {
        m_picometres += other.m_picometres;
        return *this;
    }
    constexpr Length& operator-=(Length other) {
        m_picometres -= other.m_picometres;
        return *this;
    }
    friend constexpr Length operator+(Length a, Length b) { return a += b; }
    friend constexpr Length operator-(Length a, Length b) { return a -= b; }
    friend constexpr Length operator*(std::int64_t factor, Length a) {
        return Length(factor * a.m_picometres);
    }
    friend constexpr auto operator<=>(Length, Length) = default;

private:
    constexpr explicit Length(std::int64_t picometres)
        : m_picometres(picometres) {}
    std::int64_t m_picometres = 0;
};

// Arithmetic mean, to the nearest picometre (ties to even). `lengths` must not be empty.
Length mean(std::span<const Length> lengths);

// numerator / denominator to the nearest whole number, ties to even; denominator > 0.
std::int64_t divideHalfToEven(std::int64_t numerator, std::int64_t denominator);

} // namespace borewright
