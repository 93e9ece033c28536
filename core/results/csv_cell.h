// SPDX-License-Identifier: GPL-3.0-or-later
// A cell of a CSV file that holds what somebody typed.
#pragma once

#include <string>

namespace borewright {

// Quoted where RFC 4180 asks for it. Text that a spreadsheet would run as a formula (one that
// begins with = + - @, a tab or a line break, spaces before it or not) has an apostrophe put before
// it, which spreadsheets take as "text follows". For numbers of the program's own use them as they
// are.
std::string csvCell(const std::string& text);

} // namespace borewright
