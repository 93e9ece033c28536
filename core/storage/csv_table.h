// SPDX-License-Identifier: GPL-3.0-or-later
// Rows and fields of comma-separated text (RFC 4180), also with semicolons or tabs between the
// fields, as spreadsheets write them.
#pragma once

#include "core/result.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace borewright {

struct CsvRow {
    int line = 1; // on which it begins
    std::vector<std::string> fields;
};

struct CsvTable {
    std::vector<CsvRow> rows; // rows whose every field is empty are left out
    char separator = ',';
};

// Bounds that no table of readings comes near; beyond them it is refused as absurd.
inline constexpr std::size_t mostCsvFields = 1'000'000; // of the whole table
inline constexpr std::size_t mostCsvColumns = 1000;

// Splits `text`; a byte order mark and any line end are taken. The separator is the one of
// semicolon, tab, comma that stands in the first row, in this order. Refuses, naming the line:
// other encodings than UTF-8, a quote that is never closed or stands within a field, what is beyond
// the bounds.
Result<CsvTable> readCsvTable(std::string_view text);

// A field as CSV: in quotes where it must be.
std::string csvField(std::string_view text, char separator);

// Free text, kept from being taken for a formula by a spreadsheet: an apostrophe goes before what
// begins like one. csvTextFrom() takes it off again; csvTextFrom(csvText(t)) is t.
std::string csvText(std::string_view text);
std::string csvTextFrom(std::string_view field);

} // namespace borewright
