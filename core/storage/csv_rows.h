// SPDX-License-Identifier: GPL-3.0-or-later
// Rows and cells of a table in text, with the line each row begins on.
#pragma once

#include "core/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace borewright {

struct CsvRow {
    int line = 0;
    std::vector<std::string> cells; // unquoted, spaces around taken off
};

// Every row that is not empty. The separator is the one of ; , and tabulator that stands most
// often in the first row. Refuses a quote that is never closed, text behind a closing quote, and
// rows of over 1000 cells.
Result<std::vector<CsvRow>> readCsvRows(std::string_view text);

// A cell for writing: in quotes where it must be. Free text that a spreadsheet would take for a
// formula (=, +, -, @ in front) gets an apostrophe before it; unguardedCell() takes it off again.
std::string csvCell(std::string_view text);
std::string guardedCell(std::string_view text);
std::string unguardedCell(std::string_view text);

} // namespace borewright
