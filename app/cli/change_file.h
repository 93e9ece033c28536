// SPDX-License-Identifier: GPL-3.0-or-later
// Changing a workbook from a script: what somebody else wrote meanwhile is not overwritten.
#pragma once

#include "app/cli/cli.h"
#include "core/workbook/workbook.h"

#include <string>

namespace borewright {

// A whole file of at most 64 MB; a refusal names it.
Result<std::string> contentOf(FileSystem& files, const std::string& path);

struct OpenedFile {
    std::string path;
    std::string bytes; // as they were read
    Workbook workbook;
};
Result<OpenedFile> openToChange(FileSystem& files, const std::string& path);

// How a change is written.
struct Writing {
    std::string what;    // that was done, for the workbook's history: "pass h3"
    bool anyway = false; // though another bench has it open
};

// Writes the changed workbook and notes the change in its history. Refuses, writing nothing, where
// another bench has it open, where the file is no longer what was opened, and what could not be
// read again.
Result<void> saveChange(const CliOutside& outside, OpenedFile& opened, const Writing& writing);

// Only the last part of that: the file on the disk becomes `workbook`.
Result<void> replaceFile(const CliOutside& outside, const OpenedFile& opened, bool anyway);

} // namespace borewright
