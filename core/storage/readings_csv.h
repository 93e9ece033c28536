// SPDX-License-Identifier: GPL-3.0-or-later
// Readings as a table: a row a reading. Columns, in any order and letter case: bore, depth, axis,
// reading, unit; and, where wanted, depth unit, time, angle (degrees off the axis), struck (the
// reason), struck at, struck by, accepted (the story) and kept (yes or no). Other columns are passed over.
#pragma once

#include "core/storage/csv_table.h"
#include "core/workbook/workbook.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace borewright {

struct CsvReadings {
    std::vector<Reading> readings; // of the rows that are right, in the order of the file
    std::vector<std::size_t> lines; // of the file, one for each reading
    std::vector<Error> errors;     // one for each row that is wrong, placed by its line
};

// Beyond this many wrong rows the file is given up: it is no table of readings.
inline constexpr std::size_t mostCsvErrors = 100;

// Reads a table of readings for a block. Fields stand apart by commas, semicolons
// or tabs; numbers have a decimal point or comma (in quotes where commas stand between the fields).
// A depth without a unit is in the unit of the bore's depth; a reading without a time is from
// `now`. A row is wrong that names a bore or an axis that is not there, a depth outside the bore,
// what is no number, or no unit; or that has more or fewer fields than the first line has names.
CsvReadings readReadingsCsv(std::string_view text, const Block& block, Timestamp now);
inline CsvReadings readReadingsCsv(std::string_view text, const Workbook& workbook, Timestamp now) {
    return readReadingsCsv(text, workbook.block, now);
}

// The readings of a survey as that table, everything as typed, struck ones included.
std::string writeReadingsCsv(const Workbook& workbook, const Survey& survey, char separator = ',');

} // namespace borewright
