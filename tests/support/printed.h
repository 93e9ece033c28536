// SPDX-License-Identifier: GPL-3.0-or-later
// Published figures in tests. A figure stands as it was printed, and counts as met where ours
// rounds to it: within half a unit of its last digit. A failure prints actual, expected and
// tolerance.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <gtest/gtest.h>
#include <sstream>
#include <string>

namespace borewright::test {

inline testing::AssertionResult near(double actual, double expected, double tolerance,
                                     const std::string& unit = {}) {
    if (std::fabs(actual - expected) <= tolerance) return testing::AssertionSuccess();
    std::ostringstream out;
    out.precision(17);
    out << "actual " << actual << ", expected " << expected << ", tolerance " << tolerance << ' '
        << unit;
    return testing::AssertionFailure() << out.str();
}

// "2.92", "-.171", "4.2e-4", "1640": half a unit of the last digit printed.
inline testing::AssertionResult printed(double actual, const std::string& text,
                                        const std::string& unit = {}) {
    const std::size_t mantissaEnds = std::min(text.find_first_of("eE"), text.size());
    const std::size_t point = text.find('.');
    const std::size_t decimals = point < mantissaEnds ? mantissaEnds - point - 1 : std::size_t{0};
    const int exponent =
        mantissaEnds < text.size() ? std::atoi(text.c_str() + mantissaEnds + 1) : 0;
    const double half = 0.5 * std::pow(10.0, exponent - static_cast<int>(decimals));
    // A tie may have been rounded either way: a billionth of the half unit decides nothing.
    return near(actual, std::strtod(text.c_str(), nullptr), half * (1 + 1e-9), unit);
}

// Agreement in the first `digits` significant digits: certified values hold more than doubles do.
inline testing::AssertionResult certified(double actual, double expected, int digits) {
    const double scale = expected == 0 ? 1 : std::fabs(expected);
    return near(actual, expected, scale * std::pow(10.0, -digits));
}

} // namespace borewright::test
