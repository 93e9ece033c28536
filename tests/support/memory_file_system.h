// SPDX-License-Identifier: GPL-3.0-or-later
// A file system in memory that can fail at any call and can lose power. Content that was not
// flushed, and names whose folder was not flushed, may be lost or kept: both are tried.
#pragma once

#include "core/storage/file_system.h"

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace borewright {

class MemoryFileSystem final : public FileSystem {
public:
    // What a file is worth when power comes back.
    enum class Crash {
        nothingUnflushedKept, // names as of the last folder flush, content as of the last flush
        namesKept,            // every rename arrived, content only as flushed
        tornContent,          // every rename arrived, unflushed content arrived by half
    };
    // What fails, and at which call, counting from 0.
    struct Fault {
        std::size_t call = 0;
        bool persistent = false; // every later call too
        FileFault fault = FileFault::diskFull;
        bool shortWrite = false; // a write takes one byte instead of failing; others pass
    };

    MemoryFileSystem();

    // For the test: no faults, no counting.
    void put(const std::string& path, std::string content, std::string attributes = {});
    void link(const std::string& path, const std::string& target) { m_links[path] = target; }
    void makeFolder(const std::string& path);
    void removeFolder(const std::string& path);
    std::optional<std::string> content(const std::string& path) const;
    std::string attributes(const std::string& path) const;
    std::vector<std::string> names(const std::string& folder) const;
    void setWritable(const std::string& path, bool writable);
    void letTimePass(std::int64_t seconds);
    std::size_t openHandles() const;

    void inject(std::optional<Fault> fault);
    // Also called before each call, with its number.
    void onCall(std::function<void(std::size_t)> watcher) { m_watcher = std::move(watcher); }
    std::size_t calls() const;
    void forgetCalls();
    // Unnamed files cannot be made, as on some shares.
    void refuseUnnamed(bool refuse) { m_refuseUnnamed = refuse; }
    // The disk keeps other bytes than were written.
    void corruptWrites(bool corrupt) { m_corrupt = corrupt; }
    void limitBytes(std::size_t bytes) { m_room = bytes; }
    // The content at `path` if power went now; nothing where there would be no file.
    std::optional<std::string> afterCrash(const std::string& path, Crash crash) const;
    // How many things a loss of power now may take: writes and changes of names not yet flushed.
    std::size_t unflushed() const;
    // The disk as it comes back two minutes after power went now. Bit i of `arrived` says whether
    // the i-th of those things had reached it; a lost write before one that arrived leaves zeros.
    std::unique_ptr<MemoryFileSystem> afterPowerCut(std::uint64_t arrived) const;
    // A write takes no more bytes than this at a time.
    void limitWrites(std::size_t bytes) { m_mostPerWrite = bytes; }

    FileResult<std::string> resolve(const std::string& path) override;
    FileResult<FileFacts> facts(const std::string& path) override;
    FileResult<FileFacts> factsOf(Handle file) override;
    FileResult<std::vector<std::string>> list(const std::string& folder) override;
    FileResult<std::string> read(const std::string& path, std::size_t most) override;
    FileResult<Handle> openUnnamed(const std::string& folder) override;
    FileResult<NamedFile> openNamed(const std::string& folder, const std::string& prefix) override;
    FileResult<std::size_t> write(Handle file, std::string_view bytes) override;
    FileResult<void> copyMetadata(const std::string& path, Handle file) override;
    FileResult<void> flush(Handle file) override;
    FileResult<std::string> readBack(Handle file, std::size_t most) override;
    FileResult<std::string> giveName(Handle file, const std::string& folder,
                                     const std::string& prefix) override;
    FileResult<void> close(Handle file) override;
    FileResult<void> rename(const std::string& from, const std::string& to) override;
    FileResult<void> flushFolder(const std::string& folder) override;
    FileResult<void> remove(const std::string& path) override;
    FileResult<void> makeFolders(const std::string& path) override;

private:
    struct File {
        std::string now;
        std::string flushed;
        std::vector<std::string> unflushed; // writes since the last flush
        std::string attributes;
        std::int64_t modified = 0;
        std::uint64_t id = 0;
        bool writable = true;
    };
    using FilePointer = std::shared_ptr<File>;
    // Names given to a file, or taken away (no file), in one step.
    using NameChange = std::vector<std::pair<std::string, FilePointer>>;

    // The fault due at this call, if any. Every override begins with it.
    std::optional<FileFault> step();
    FileFacts factsFrom(const File& file) const;
    bool hasFolder(const std::string& folder) const;
    FilePointer fresh();
    Handle handleFor(FilePointer file);
    std::string freshName(const std::string& folder, const std::string& prefix);
    std::size_t used() const;
    void change(NameChange names);
    std::vector<FilePointer> filesAtRisk() const;

    mutable std::recursive_mutex m_mutex;
    std::map<std::string, FilePointer> m_files;
    std::map<std::string, FilePointer> m_flushedNames;
    std::vector<NameChange> m_unflushedNames;
    std::map<std::string, std::string> m_links;
    std::set<std::string> m_folders;
    std::map<Handle, FilePointer> m_handles;
    std::optional<Fault> m_fault;
    std::function<void(std::size_t)> m_watcher;
    std::size_t m_calls = 0;
    std::optional<std::size_t> m_room;
    std::optional<std::size_t> m_mostPerWrite;
    bool m_refuseUnnamed = false;
    bool m_corrupt = false;
    Handle m_nextHandle = 1;
    std::uint64_t m_nextId = 1;
    std::int64_t m_clock = 1'000'000'000;
};

} // namespace borewright
