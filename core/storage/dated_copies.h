// SPDX-License-Identifier: GPL-3.0-or-later
// Earlier states of a workbook, kept as dated copies: the last few, then one a day, then one a
// month. Each workbook has a folder of its own in the folder of copies, told apart by its path;
// a copy is named by the workbook and the time: "Saltmarsh V6 2026-03-14T092653+0100.borebook".
// A copy is an ordinary workbook. What has no such name is none of ours and is never removed.
#pragma once

#include "core/result.h"
#include "core/storage/file_system.h"
#include "core/workbook/timestamp.h"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace borewright {

struct CopyRules {
    std::string folder; // of all copies; empty = none are made
    int latest = 20;    // of these, whatever their age; 0 and more
    int days = 30;      // then the last of a day, of so many days
    int months = 120;   // then the last of a month, of so many months
    // A workbook is saved at every reading: between two copies at least this passes, or the last
    // twenty would reach no further back than a minute.
    std::chrono::seconds apart{300};
    friend bool operator==(const CopyRules&, const CopyRules&) = default;
};

// Whether any copy is wanted.
bool wantsCopies(const CopyRules& rules);

struct DatedCopy {
    std::string path;
    Timestamp time;
    friend bool operator==(const DatedCopy&, const DatedCopy&) = default;
};

// Which of the copies made at these times are kept, each by its place in `times`. Walks from the
// newest: the first `latest` stay; then whichever is the first seen of its day, for `days` days;
// then of its month, for `months` months. A day or month that has a copy among those kept already
// gets no other. Days are those of the clock that the copy was made by.
std::vector<bool> worthKeeping(const std::vector<Timestamp>& times, const CopyRules& rules);

// The folder that holds the copies of the workbook at `path` (absolute).
std::string copiesOf(const CopyRules& rules, const std::string& path);

// The copies of the workbook at `path`, newest first; none where none was made. Refuses, in words,
// a folder that cannot be read.
Result<std::vector<DatedCopy>> datedCopies(FileSystem& files, const CopyRules& rules,
                                           const std::string& path);

// Whether a copy is due: the newest was made more than `apart` before `now`, or lies in the future
// of a clock that was wrong.
bool copyIsDue(const std::vector<DatedCopy>& copies, const CopyRules& rules, Timestamp now);

// Keeps `bytes` as the copy of `time`, making the folder, and removes what is no longer worth
// keeping. Refuses, in words, where the copy is not on the disk; the others are then all left.
// With the workbook's `id` (core/workbook/history.h) a small file beside the copies says whose they
// are, so that they are found again where the workbook is moved.
Result<void> keepCopy(FileSystem& files, const CopyRules& rules, const std::string& path,
                      std::string_view bytes, Timestamp time, const std::string& id = {});

// Copies of the same workbook from when it had another name or place, newest first: those with its
// id whose own file is gone. What cannot be read is passed over.
std::vector<DatedCopy> copiesOfEarlierPlaces(FileSystem& files, const CopyRules& rules,
                                             const std::string& path, const std::string& id);

} // namespace borewright
