// SPDX-License-Identifier: GPL-3.0-or-later
// A temperature as typed, Celsius or Fahrenheit.
#pragma once

#include "core/result.h"

#include <string>
#include <string_view>

namespace borewright {

enum class Scale { celsius, fahrenheit };

// The text as typed, its scale, and the value in °C: (°F − 32) · 5/9.
class TypedTemperature {
public:
    [[nodiscard]] const std::string& text() const { return m_text; }
    [[nodiscard]] Scale scale() const { return m_scale; }
    [[nodiscard]] double celsius() const { return m_celsius; }
    // "22.5 C": as files hold it.
    [[nodiscard]] std::string withScale() const;
    friend bool operator==(const TypedTemperature& a, const TypedTemperature& b) {
        return a.m_text == b.m_text && a.m_scale == b.m_scale;
    }

private:
    friend Result<TypedTemperature> readTemperature(std::string_view text, Scale scale);
    std::string m_text = "20";
    Scale m_scale = Scale::celsius;
    double m_celsius = 20.0;
};

// Reads "22.5", "72 F", "22,5 °C"; a scale behind the number counts before `scale`. Refuses what
// is not a number, and what no shop has: below −30 °C or above 120 °C.
Result<TypedTemperature> readTemperature(std::string_view text, Scale scale);

} // namespace borewright
