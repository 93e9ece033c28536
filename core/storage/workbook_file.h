// SPDX-License-Identifier: GPL-3.0-or-later
// A workbook as a file: JSON in a stable order, one line a reading, numbers as typed
// (resources/workbook.schema.json). read(write(w)) equals w, and write(read(text)) equals text for
// every file written here.
#pragma once

#include "core/result.h"
#include "core/storage/file_system.h"
#include "core/workbook/workbook.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace borewright {

inline constexpr std::string_view workbookExtension = ".borebook";
inline constexpr std::size_t largestWorkbookFile = 64UL * 1024 * 1024;
inline constexpr int workbookVersion = 1;

// The bytes of the file.
std::string writeWorkbook(const Workbook& workbook);

// What is recorded of stones alone: the lists "stones" and "care" as they stand in the part "hone"
// of that file, after "format": "borewright stones".
std::string writeStones(const HoneRecord& record);

// Reads strictly: refuses, naming line and field, whatever is damaged, contradicts itself, cannot
// be, or was made by a newer version. Fields it does not know are kept.
Result<Workbook> readWorkbook(std::string_view bytes);

// Reads the file at `path`; refuses too, each in its own sentence: no such file, a folder, no
// right to read, over 64 MB.
Result<Workbook> loadWorkbook(FileSystem& files, const std::string& path);

} // namespace borewright
