// SPDX-License-Identifier: GPL-3.0-or-later
// The one way a file is written: workbook, PDF, CSV, settings. At every moment, also when power is
// lost, the path holds either the whole earlier content or the whole new one, and success is told
// only when the new one is on the disk.
//
// Method: follow a symbolic link; write a new file beside the old one, checking every count; give
// it the old one's owner, mode, access list and attributes; flush; read back and compare; put it
// in the old one's place in one step; flush the folder.
#pragma once

#include "core/result.h"
#include "core/storage/file_system.h"

#include <string>
#include <string_view>

namespace borewright {

struct SaveReport {
    std::string path; // where it really is: symbolic links followed
    FileFacts facts;  // of the new file
    // Hard links: so many other names of the earlier file keep what it held. Writing into it would
    // keep them together, and could lose it all half way.
    std::uint64_t otherNames = 0;
};

// Replaces the content of `path`, or makes the file. The folder must be there. Refuses, in words:
// a full disk, no right, a folder that is gone, a write-protected file, what is not a plain file,
// a disk that gives back something else than was written. After a refusal the earlier content is
// in place — or, where only the last flush failed, the new one, whole.
Result<SaveReport> save(FileSystem& files, const std::string& path, std::string_view bytes);

} // namespace borewright
