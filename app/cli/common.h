// SPDX-License-Identifier: GPL-3.0-or-later
// What several commands share.
#pragma once

#include "app/cli/cli.h"
#include "core/workbook/workbook.h"

#include <string>
#include <string_view>
#include <vector>

namespace borewright {

// Loads a workbook; a refusal names the file.
Result<Workbook> loadNamed(FileSystem& files, const std::string& path);

// The survey of this name or id; the last where `wanted` is empty. Refuses one that is not there
// or a name that several have.
Result<const Survey*> chooseSurvey(const Workbook& workbook, const std::string& wanted);

// "inch", "metric", or empty for the workbook's own.
Result<DisplayUnits> chooseUnits(const Workbook& workbook, const std::string& wanted);

// Whether `path` ends in `extension` (".json"), letter case ignored.
bool hasExtension(std::string_view path, std::string_view extension);

// Rows of cells, the first of them the heads, in columns as wide as their widest cell. Figures are
// set right; words, and the first and last column, left. Widths count characters, not bytes.
std::string alignedTable(const std::vector<std::vector<std::string>>& rows);

} // namespace borewright
