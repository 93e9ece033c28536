// SPDX-License-Identifier: GPL-3.0-or-later
// Readings as a table (RFC 4180 with what spreadsheets make of it): a row a reading. Columns are
// known by their heading, in any order: bore, depth, axis, reading, unit; time, angle and struck
// may be there.
#pragma once

#include "core/result.h"
#include "core/workbook/workbook.h"

#include <string>
#include <string_view>
#include <vector>

namespace borewright {

struct CsvReadings {
    std::vector<Reading> readings; // of the rows that are right
    std::vector<Error> errors;     // one a wrong row or cell, by its line; take nothing if any
};

// Reads comma- or semicolon-separated rows, quoted cells, LF or CRLF, with or without a byte order
// mark. Numbers may have a decimal comma where the comma does not separate, or in quotes. A depth
// is in the unit its bore's depth was typed in unless it carries its own; a reading without unit
// refuses. A row with no time of its own gets `now`. Refuses the whole (one error) where there is
// no heading, over 64 MB, or bad UTF-8.
CsvReadings readReadingsCsv(std::string_view bytes, const Block& block, const Timestamp& now);

// The survey's readings with every column; comma separated, decimal point or comma as typed.
std::string writeReadingsCsv(const Workbook& workbook, const Survey& survey);

} // namespace borewright
