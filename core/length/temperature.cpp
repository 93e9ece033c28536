// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/length/temperature.h"

#include "core/length/number_text.h"

namespace borewright {

std::string TypedTemperature::withScale() const {
    return m_text + (m_scale == Scale::celsius ? " C" : " F");
}

Result<TypedTemperature> readTemperature(std::string_view text, Scale scale) {
    std::string_view number = text;
    while (!number.empty() && number.back() == ' ')
        number.remove_suffix(1);
    if (!number.empty()) {
        const char last = number.back();
        if (last == 'C' || last == 'c' || last == 'F' || last == 'f') {
            scale = last == 'C' || last == 'c' ? Scale::celsius : Scale::fahrenheit;
            number.remove_suffix(1);
        }
    }
    while (!number.empty() && number.back() == ' ')
        number.remove_suffix(1);
    if (number.ends_with("°")) number.remove_suffix(std::string_view("°").size());
    while (!number.empty() && number.back() == ' ')
        number.remove_suffix(1);
    while (!number.empty() && number.front() == ' ')
        number.remove_prefix(1);

    const auto decimal = readDecimal(number);
    if (!decimal) return tl::unexpected(decimal.error());
    TypedTemperature typed;
    typed.m_text = std::string(number);
    typed.m_scale = scale;
    const double value = toDouble(*decimal);
    typed.m_celsius = scale == Scale::celsius ? value : (value - 32.0) * 5.0 / 9.0;
    if (typed.m_celsius < -30.0 || typed.m_celsius > 120.0)
        return refuse(typed.m_text + (scale == Scale::celsius ? " °C" : " °F") +
                      " is no temperature of a block on a bench");
    return typed;
}

} // namespace borewright
