// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that a command line offers: a CSV file, or typed on the line. Part of the record
// command.
#pragma once

#include "app/cli/commands.h"
#include "core/workbook/workbook.h"

#include <string>
#include <utility>
#include <vector>

namespace borewright {

struct OfferedReadings {
    std::string from;                                      // the file, or "--reading"
    std::vector<std::pair<std::string, Reading>> readings; // with the place of each: "line 4"
    std::vector<Error> errors;                             // of what is none
};

// Reads them; what has no time is from now. A typed reading without a unit is in the unit of the
// bore's size where `entry` is diameter, else in thou or micrometres. Refuses a file that cannot be
// read, both ways at once, and neither.
Result<OfferedReadings> offeredReadings(const RecordOptions& options, const Workbook& workbook,
                                        Entry entry, const CliOutside& outside);

} // namespace borewright
