// SPDX-License-Identifier: GPL-3.0-or-later
// Readings of a table on their way into a survey: each is checked as if it had been typed.
#pragma once

#include "core/storage/file_system.h"
#include "core/storage/readings_csv.h"
#include "core/workbook/edit.h"

#include <QString>

namespace borewright {

// Reads the table at `path` for a survey. Refuses as a whole what cannot be read, is over 64 MB, or
// has no survey to go to; wrong rows are named one by one.
Result<CsvReadings> readImport(FileSystem& files, const std::string& path, const Workbook& workbook,
                               const std::string& survey, Timestamp now);

// The first wrong rows, a line each, and how many more there are.
QString errorList(const CsvReadings& import);

// All readings at the end of the survey, as one step.
Edit insertAll(const Workbook& workbook, const std::string& survey,
               const std::vector<Reading>& readings);

} // namespace borewright
