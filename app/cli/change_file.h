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

// Writes the changed workbook. Refuses, writing nothing, where the file is no longer what was
// opened.
Result<void> saveChange(FileSystem& files, const OpenedFile& opened);

} // namespace borewright
