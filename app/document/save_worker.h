// SPDX-License-Identifier: GPL-3.0-or-later
// One save of a workbook, and the thread that does them one after another. Used by the autosaver
// alone.
#pragma once

#include "core/storage/dated_copies.h"
#include "core/storage/file_system.h"
#include "core/workbook/workbook.h"

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace borewright {

// What the file held when it was last read or written here.
struct FileMark {
    std::uint64_t hash = 0; // of the content
    FileFacts facts;
};

// Of the file at `path` where it holds this workbook. A file that holds something else is not the
// document's to replace; without a mark it counts as changed by somebody else.
std::optional<FileMark> markOf(FileSystem& files, const std::string& path,
                               const Workbook& workbook);

struct SaveJob {
    std::uint64_t id = 0;
    Workbook workbook;
    std::uint64_t revision = 0;
    std::string path;
    std::optional<FileMark> mark; // nothing: the file is not there yet
    // Of contents that failed attempts may have left in place (all but the last flush worked).
    std::vector<std::uint64_t> attempted;
    bool overwrite = false; // whatever is there
    std::string rescueFolder;
    std::string rescuePath; // of the copy that stands for this workbook; empty: none yet
    std::uint64_t rescuedRevision = 0;
    // Dated copies: what the file holds now is kept too where it is about to be replaced for the
    // first time, or though somebody else wrote it.
    CopyRules copies;
    bool keepEarlier = false;
    Timestamp now;
};

struct SaveAnswer {
    std::uint64_t id = 0;
    std::uint64_t revision = 0;
    std::uint64_t hash = 0;       // of the bytes that were to be saved
    std::optional<FileMark> mark; // present: they are on the disk, at the job's path
    std::uint64_t otherNames = 0; // of the earlier file, which keep what it held
    std::string problem;          // why not: "the disk is full"
    bool changedUnderneath = false;
    std::string rescuePath;
    std::uint64_t rescuedRevision = 0;
    std::string rescueProblem; // why there is no rescue copy of this revision
};

// Saves at the job's path, unless somebody else changed the file there or the bytes could not be
// read back as this very workbook; where that fails, in the rescue folder. Removes the rescue copy
// when the path holds the workbook.
SaveAnswer runSave(FileSystem& files, const SaveJob& job);

// What came of the dated copies of a save.
struct CopyAnswer {
    std::uint64_t id = 0;
    std::string problem; // why none could be kept; empty = all is well
};

class SaveWorker {
public:
    // `answered` is called from the worker's thread when an answer can be taken, of a save or of
    // its copies: these are made afterwards, so that no save waits for its own.
    SaveWorker(FileSystem& files, std::function<void()> answered);
    ~SaveWorker(); // waits for the job under way
    SaveWorker(const SaveWorker&) = delete;
    SaveWorker& operator=(const SaveWorker&) = delete;

    // Starts a job; the answer of the one before must have been taken.
    void post(SaveJob job);
    // The answer, once.
    std::optional<SaveAnswer> take();
    std::optional<CopyAnswer> takeCopied();
    // Waits until an answer can be taken, at most this long.
    bool wait(std::chrono::milliseconds most);

private:
    void work();
    void answer(const SaveJob& job);

    FileSystem& m_files;
    std::function<void()> m_answered;
    std::mutex m_mutex;
    std::condition_variable m_changed;
    std::optional<SaveJob> m_job;
    std::optional<SaveAnswer> m_answer;
    std::optional<CopyAnswer> m_copied;
    bool m_ending = false;
    std::thread m_thread;
};

} // namespace borewright
