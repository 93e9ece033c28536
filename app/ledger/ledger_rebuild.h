// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger made anew from the workbooks.
#pragma once

#include "app/ledger/ledger_store.h"
#include "core/storage/file_system.h"

#include <functional>
#include <string>
#include <vector>

namespace borewright {

struct UnreadFile {
    std::string file;
    std::string reason; // a sentence part: "it is damaged at line 12"
};

struct Rebuilt {
    std::int64_t taken = 0;         // jobs entered
    std::int64_t gone = 0;          // jobs taken out, since their file is no longer there
    std::vector<UnreadFile> unread; // files and folders; a job entered before from one stays
    bool cancelled = false;         // the ledger is as it was
};

// Workbooks read so far, and how many there are; false = give up.
using RebuildProgress = std::function<bool(std::int64_t done, std::int64_t all)>;

// Enters every workbook of these folders, whatever lies below them, and of these files. Jobs that
// came from there and whose file is gone are taken out; jobs from elsewhere stay. All of it becomes
// true together, or nothing. A file that cannot be read is listed and stops nothing. Refuses only
// where the ledger itself fails. `files` must allow calls from several threads at once. `goesOn` is
// asked at each folder while workbooks are still looked for; false = give up.
Result<Rebuilt> rebuildLedger(LedgerStore& store, FileSystem& files,
                              const std::vector<std::string>& folders,
                              const RebuildProgress& progress = {},
                              const std::function<bool()>& goesOn = {});

// What one workbook's file puts into the ledger.
Result<JobEntry> readJob(FileSystem& files, const std::string& file);

} // namespace borewright
