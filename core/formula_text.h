// SPDX-License-Identifier: GPL-3.0-or-later
// Texts that a spreadsheet would run as a formula where it finds them in a table.
#pragma once

#include <string_view>

namespace borewright {

// Whether the text begins like one, apostrophes before it left aside. Numbers with a sign do too:
// ask only of names and sentences.
inline bool beginsLikeFormula(std::string_view text) {
    const std::size_t first = text.find_first_not_of('\'');
    return first != std::string_view::npos &&
           std::string_view("=+-@\t\r\n").find(text[first]) != std::string_view::npos;
}

} // namespace borewright
