// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ledger/ledger_rebuild.h"

#include "app/ledger/ledger_connection.h"
#include "app/ledger/ledger_rows.h"
#include "app/ledger/workbook_search.h"
#include "core/storage/hash.h"
#include "core/storage/workbook_file.h"

#include <QSqlQuery>

#include <algorithm>
#include <atomic>
#include <optional>
#include <thread>

namespace borewright {
namespace {

constexpr std::size_t readAtOnce = 64; // workbooks read side by side before they are entered

using Read = std::vector<std::optional<Result<JobEntry>>>;

Read readSome(FileSystem& files, const std::vector<std::string>& paths, std::size_t from,
              std::size_t to) {
    Read read(to - from);
    std::atomic<std::size_t> next{from};
    const auto work = [&] {
        for (std::size_t i = next++; i < to; i = next++)
            read[i - from] = readJob(files, paths[i]);
    };
    std::vector<std::jthread> threads(
        std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, to - from));
    for (std::jthread& thread : threads)
        thread = std::jthread(work);
    return threads.clear(), read; // each is waited for as it goes
}

// One rebuilding, within its transaction.
class Rebuilding {
public:
    Rebuilding(LedgerStore& store, FileSystem& files, const std::vector<std::string>& folders)
        : m_store(store)
        , m_files(files)
        , m_folders(folders) {}

    Result<Rebuilt> run(const RebuildProgress& progress, const std::function<bool()>& goesOn) {
        const FoundWorkbooks found = findWorkbooks(m_files, m_folders, goesOn);
        if (goesOn && !goesOn()) return cancelled(); // what was found may not be all
        for (const auto& [folder, reason] : found.unread)
            m_rebuilt.unread.push_back({folder, reason});
        if (const auto begun = nextRound(); !begun) return tl::unexpected(begun.error());
        const auto& paths = found.files;
        const auto all = static_cast<std::int64_t>(paths.size());
        for (std::size_t from = 0; from < paths.size(); from += readAtOnce) {
            if (progress && !progress(static_cast<std::int64_t>(from), all)) return cancelled();
            const std::size_t to = std::min(paths.size(), from + readAtOnce);
            Read read = readSome(m_files, paths, from, to);
            if (const auto done = enter(paths, from, read); !done)
                return tl::unexpected(done.error());
        }
        if (progress && !progress(all, all)) return cancelled();
        for (const auto& unread : m_rebuilt.unread) // what could not be seen is not gone
            if (const auto kept = keepBelow(unread.file); !kept)
                return tl::unexpected(kept.error());
        for (const std::string& folder : m_folders)
            if (const auto done = takeOut(folder); !done) return tl::unexpected(done.error());
        return m_rebuilt;
    }

private:
    Result<void> nextRound() {
        return m_store.connection().run(
            QStringLiteral("SELECT COALESCE(MAX(round), 0) + 1 FROM job"), {},
            [&](const QSqlQuery& query) { m_round = query.value(0).toLongLong(); });
    }

    Result<void> enter(const std::vector<std::string>& paths, std::size_t from, Read& read) {
        std::vector<JobEntry> jobs;
        for (std::size_t i = 0; i < read.size(); ++i) {
            Result<JobEntry>& job = *read[i];
            if (job)
                jobs.push_back(std::move(*job));
            else
                m_rebuilt.unread.push_back({paths[from + i], job.error().message()});
        }
        m_rebuilt.taken += static_cast<std::int64_t>(jobs.size());
        return m_store.putAll(jobs, m_round);
    }

    // The path itself and all below it. '0' is the character behind '/'.
    [[nodiscard]] QVariantList below(const std::string& path) const {
        const std::string bare =
            path.size() > 1 && path.ends_with('/') ? path.substr(0, path.size() - 1) : path;
        const std::string inside = bare == "/" ? bare : bare + '/';
        return {sqlText(bare), sqlText(inside), sqlText(inside)};
    }
    // The beginning is compared letter by letter: what order a server sorts in does not matter.
    static QString isBelow() {
        return QStringLiteral("(file = ? OR SUBSTR(file, 1, LENGTH(?)) = ?)");
    }

    Result<void> keepBelow(const std::string& path) {
        return m_store.connection().run(
            QStringLiteral("UPDATE job SET round = ? WHERE ") + isBelow(),
            QVariantList{static_cast<qlonglong>(m_round)} + below(path));
    }

    Result<void> takeOut(const std::string& folder) {
        return m_store.connection().run(QStringLiteral("DELETE FROM job WHERE round <> ? AND ") +
                                            isBelow() + QStringLiteral(" RETURNING id"),
                                        QVariantList{static_cast<qlonglong>(m_round)} +
                                            below(folder),
                                        [&](const QSqlQuery&) { ++m_rebuilt.gone; });
    }

    Result<Rebuilt> cancelled() {
        m_rebuilt.cancelled = true;
        return m_rebuilt;
    }

    LedgerStore& m_store;
    FileSystem& m_files;
    const std::vector<std::string>& m_folders;
    Rebuilt m_rebuilt;
    std::int64_t m_round = 0;
};

} // namespace

Result<JobEntry> readJob(FileSystem& files, const std::string& file) {
    const auto bytes = files.read(file, largestWorkbookFile);
    // The one place that says in words why a file cannot be read.
    const auto workbook = bytes ? readWorkbook(*bytes) : loadWorkbook(files, file);
    if (!workbook) return tl::unexpected(workbook.error());
    const Results results = compute(*workbook, naturalUnits(*workbook));
    return jobEntry(*workbook, results, file, bytes ? fnv1a(*bytes) : 0);
}

Result<Rebuilt> rebuildLedger(LedgerStore& store, FileSystem& files,
                              const std::vector<std::string>& folders,
                              const RebuildProgress& progress,
                              const std::function<bool()>& goesOn) {
    Result<Rebuilt> rebuilt;
    const auto done = store.connection().together([&]() -> Result<void> {
        rebuilt = Rebuilding(store, files, folders).run(progress, goesOn);
        if (!rebuilt) return tl::unexpected(rebuilt.error());
        if (rebuilt->cancelled) return refuse("given up"); // takes everything back
        if (auto settled = store.settle(); !settled) return settled;
        return store.setFolders(folders);
    });
    if (rebuilt && rebuilt->cancelled) return Rebuilt{0, 0, rebuilt->unread, true};
    if (!done) return tl::unexpected(done.error());
    return rebuilt;
}

} // namespace borewright
