// SPDX-License-Identifier: GPL-3.0-or-later
// The dated copies that go with a save, made on the worker's thread after the save was answered.
#pragma once

#include "app/document/save_worker.h"

#include <optional>
#include <string>

namespace borewright {

// What stands in the file's place before a save, and since when.
struct EarlierContent {
    std::string bytes;
    Timestamp time;
};

// What the job's file holds now; nothing where it cannot be read, or holds nothing.
std::optional<EarlierContent> earlierContent(FileSystem& files, const SaveJob& job);

// Keeps the earlier content, unless the newest copy holds it already, and what was saved, where a
// copy is due. Returns why that was not possible; empty = done.
std::string keepCopies(FileSystem& files, const SaveJob& job,
                       const std::optional<EarlierContent>& earlier);

} // namespace borewright
