// SPDX-License-Identifier: GPL-3.0-or-later
// A lock beside a workbook, as advice: who has it open, on which machine, since when. It tells the
// second bench to look first and never keeps anyone out of his own file; what protects the file is
// that its content is compared before each save.
//
// The lock of "job.borebook" is the hidden file ".job.borebook.lock" beside it, a few lines of
// text. A lock is stale where its process has ended or its number belongs to another process by
// now; that can only be told on the same machine, so another machine's lock stays.
#pragma once

#include "core/result.h"
#include "core/storage/file_system.h"
#include "core/workbook/timestamp.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace borewright {

struct LockHolder {
    std::string person;       // as the bench calls him; may be empty
    std::string machine;      // name of the computer
    std::string machineId;    // tells two computers of one name apart; may be empty
    Timestamp since;          // when it was opened
    std::int64_t process = 0; // number of the process
    // What tells this process from a later one with the same number (when it began); empty where
    // the machine cannot say.
    std::string began;
    friend bool operator==(const LockHolder&, const LockHolder&) = default;
};

// "A. Example at bench-2": who has it, in a sentence.
std::string inWords(const LockHolder& holder);

// Asks the machine for its processes; passed in, so that tests have their own.
class Processes {
public:
    virtual ~Processes() = default;
    struct Found {
        bool known = false;   // the machine can be asked
        bool running = false; // a process with this number
        std::string began;    // of that process; empty where it cannot be told
    };
    virtual Found find(std::int64_t process) = 0;
};

struct LockAnswer {
    std::optional<LockHolder> other; // who has it; nothing = it is ours, or nobody's
    bool ours = false;               // the lock stands on the disk with our name
    std::string problem;             // why there is no lock of ours though nobody has it
    // Whose process ended on this machine without leaving its lock, where there was such a one.
    std::optional<LockHolder> dead;
};

// Where the lock of a workbook lies; symbolic links are followed.
std::string lockPath(FileSystem& files, const std::string& workbook);

// Who has it, or had it when he died; writes nothing.
LockAnswer askLock(FileSystem& files, const std::string& workbook, const LockHolder& me,
                   Processes& processes);

// Takes the lock, unless another bench that is still there has it. A stale lock, and one that
// cannot be read, is taken over. With `anyway` it is taken from whoever has it.
LockAnswer takeLock(FileSystem& files, const std::string& workbook, const LockHolder& me,
                    Processes& processes, bool anyway = false);

// Removes the lock where it is still this holder's.
void releaseLock(FileSystem& files, const std::string& workbook, const LockHolder& me);

// Who is named in a lock's text; refused where it is none.
Result<LockHolder> readLock(std::string_view text);
std::string writeLock(const LockHolder& holder);

} // namespace borewright
