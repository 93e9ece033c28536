// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/save_worker.h"

#include "app/document/copies_of_save.h"
#include "core/storage/hash.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"

#include <algorithm>
#include <filesystem>

namespace borewright {
namespace {

bool sameFile(const FileFacts& a, const FileFacts& b) {
    return a.size == b.size && a.modified == b.modified && a.id == b.id;
}

// What stands at the job's path: what was last read or written here or what a failed attempt left
// there (or nothing, so that nothing can be lost), somebody else's, or nobody can say why not.
struct Standing {
    bool ours = false;
    std::optional<FileFault> hidden;
};

Standing standingOf(FileSystem& files, const SaveJob& job) {
    const auto facts = files.facts(job.path);
    if (!facts && facts.error() == FileFault::notFound) return {true, {}};
    if (!facts) return {false, facts.error()};
    if (job.mark && sameFile(job.mark->facts, *facts)) return {true, {}};
    const auto content = files.read(job.path, largestWorkbookFile);
    if (!content && content.error() == FileFault::tooLarge) return {false, {}};
    if (!content) return {false, content.error()};
    const std::uint64_t hash = fnv1a(*content);
    return {(job.mark && job.mark->hash == hash) ||
                std::ranges::find(job.attempted, hash) != job.attempted.end(),
            {}};
}

// A name in the rescue folder that no file has: what an earlier failure left there is kept.
std::string freeRescuePath(FileSystem& files, const SaveJob& job) {
    const std::filesystem::path folder(job.rescueFolder);
    const std::string stem = "rescue-" + std::filesystem::path(job.path).stem().string();
    std::string name = stem;
    for (int n = 2; n < 1000; ++n) {
        const auto facts = files.facts((folder / (name + ".borebook")).string());
        if (!facts && facts.error() == FileFault::notFound) break;
        name = stem + "-" + std::to_string(n);
    }
    return (folder / (name + ".borebook")).string();
}

void rescue(FileSystem& files, const SaveJob& job, const std::string& bytes, SaveAnswer& answer) {
    answer.rescuePath = job.rescuePath;
    answer.rescuedRevision = job.rescuedRevision;
    if (!job.rescuePath.empty() && job.rescuedRevision == job.revision) return;
    if (auto made = files.makeFolders(job.rescueFolder); !made) {
        answer.rescueProblem = inWords(made.error());
        return;
    }
    const std::string path = job.rescuePath.empty() ? freeRescuePath(files, job) : job.rescuePath;
    if (auto saved = save(files, path, bytes); !saved) {
        answer.rescueProblem = saved.error().message();
        return;
    }
    answer.rescuePath = path;
    answer.rescuedRevision = job.revision;
}

} // namespace

std::optional<FileMark> markOf(FileSystem& files, const std::string& path,
                               const Workbook& workbook) {
    const auto facts = files.facts(path);
    const auto content = files.read(path, largestWorkbookFile);
    const auto held = content ? readWorkbook(*content) : refuse("not readable");
    if (!facts || !held || *held != workbook) return std::nullopt;
    return FileMark{fnv1a(*content), *facts};
}

SaveAnswer runSave(FileSystem& files, const SaveJob& job) {
    SaveAnswer answer;
    answer.id = job.id;
    answer.revision = job.revision;
    const std::string bytes = writeWorkbook(job.workbook);
    answer.hash = fnv1a(bytes);
    const auto back = readWorkbook(bytes);
    const Standing standing = job.overwrite ? Standing{true, {}} : standingOf(files, job);
    if (!back || *back != job.workbook) {
        answer.problem = "the file could not be opened again (" +
                         (back ? "it would differ" : back.error().message()) + ")";
    } else if (standing.hidden) {
        answer.problem = inWords(*standing.hidden);
    } else if (!standing.ours) {
        answer.changedUnderneath = true;
        answer.problem = "somebody else changed the file";
    } else if (const auto saved = save(files, job.path, bytes)) {
        answer.mark = FileMark{answer.hash, saved->facts};
        answer.otherNames = saved->otherNames;
        if (!job.rescuePath.empty()) (void)files.remove(job.rescuePath);
        return answer;
    } else {
        answer.problem = saved.error().message();
    }
    rescue(files, job, bytes, answer);
    return answer;
}

SaveWorker::SaveWorker(FileSystem& files, std::function<void()> answered)
    : m_files(files)
    , m_answered(std::move(answered))
    , m_thread([this] { work(); }) {}

SaveWorker::~SaveWorker() {
    {
        const std::lock_guard lock(m_mutex);
        m_ending = true;
    }
    m_changed.notify_all();
    m_thread.join();
}

void SaveWorker::post(SaveJob job) {
    {
        const std::lock_guard lock(m_mutex);
        m_answer.reset();
        m_job = std::move(job);
    }
    m_changed.notify_all();
}

std::optional<SaveAnswer> SaveWorker::take() {
    const std::lock_guard lock(m_mutex);
    return std::exchange(m_answer, std::nullopt);
}

std::optional<CopyAnswer> SaveWorker::takeCopied() {
    const std::lock_guard lock(m_mutex);
    return std::exchange(m_copied, std::nullopt);
}

bool SaveWorker::wait(std::chrono::milliseconds most) {
    std::unique_lock lock(m_mutex);
    return m_changed.wait_for(lock, most, [this] { return m_answer.has_value(); });
}

void SaveWorker::work() {
    std::unique_lock lock(m_mutex);
    for (;;) {
        m_changed.wait(lock, [this] { return m_ending || m_job; });
        if (!m_job) return;
        const SaveJob job = std::move(*m_job);
        m_job.reset();
        lock.unlock();
        answer(job);
        lock.lock();
    }
}

void SaveWorker::answer(const SaveJob& job) {
    const bool copies = wantsCopies(job.copies);
    const auto earlier = copies && job.keepEarlier ? earlierContent(m_files, job) : std::nullopt;
    SaveAnswer saved = runSave(m_files, job);
    const bool done = saved.mark.has_value();
    const auto tell = [this](auto& slot, auto&& what) {
        {
            const std::lock_guard lock(m_mutex);
            slot = std::forward<decltype(what)>(what);
        }
        m_changed.notify_all();
        m_answered();
    };
    tell(m_answer, std::move(saved));
    if (done && copies) tell(m_copied, CopyAnswer{job.id, keepCopies(m_files, job, earlier)});
}

} // namespace borewright
