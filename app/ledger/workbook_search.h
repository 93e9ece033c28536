// SPDX-License-Identifier: GPL-3.0-or-later
// Every workbook below some folders.
#pragma once

#include "core/storage/file_system.h"

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace borewright {

struct FoundWorkbooks {
    std::vector<std::string> files;                          // each once, sorted
    std::vector<std::pair<std::string, std::string>> unread; // folder or file, and why
};

// Files named here are taken whatever their ending, in folders those ending in .borebook. Hidden
// folders are left out; a folder that links lead to twice, or into itself, is looked through once.
// `goesOn` is asked at each folder; false = give up, with what was found so far.
FoundWorkbooks findWorkbooks(FileSystem& files, const std::vector<std::string>& places,
                             const std::function<bool()>& goesOn = {});

} // namespace borewright
