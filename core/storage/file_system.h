// SPDX-License-Identifier: GPL-3.0-or-later
// The few calls that saving and loading need, as an interface, so that faults and loss of power
// can be played in memory. posix_file_system.h is the real one. Paths are UTF-8.
//
// The way in: saver.h writes any file durably, workbook_file.h reads and writes workbooks,
// readings_csv.h readings as a table.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace borewright {

// Why a call failed, as far as it makes a difference to what the user is told.
enum class FileFault {
    interrupted, // nothing happened; the call may be made again
    diskFull,
    quotaUsed,
    readOnly, // the whole disk or share
    noRight,
    notFound,
    notAFolder,
    isAFolder,
    exists,
    tooLarge,
    nameTooLong,
    inputOutput,
    unsupported, // by this kind of disk or share
    other,
};

template<class T>
using FileResult = tl::expected<T, FileFault>;

// What stands behind a path, symbolic links followed.
struct FileFacts {
    enum class Kind { file, folder, other };

    Kind kind = Kind::file;
    std::uint64_t size = 0;
    std::int64_t modified = 0; // nanoseconds, by the clock of the disk or its server
    std::uint64_t id = 0;      // another file under the same name has another id
    bool writable = true;      // by this user
    std::uint64_t names = 1;   // hard links: that many names stand for this one file
    friend bool operator==(const FileFacts&, const FileFacts&) = default;
};

class FileSystem {
public:
    using Handle = int;
    struct NamedFile {
        Handle handle = -1;
        std::string path;
    };

    FileSystem() = default;
    FileSystem(const FileSystem&) = delete;
    FileSystem& operator=(const FileSystem&) = delete;
    virtual ~FileSystem() = default;

    // The path with symbolic links of its last part followed to where the file is or would be.
    virtual FileResult<std::string> resolve(const std::string& path) = 0;
    virtual FileResult<FileFacts> facts(const std::string& path) = 0;
    virtual FileResult<FileFacts> factsOf(Handle file) = 0;
    // Names (not paths) of what stands in a folder.
    virtual FileResult<std::vector<std::string>> list(const std::string& folder) = 0;
    // The whole content; tooLarge where it is over `most` bytes.
    virtual FileResult<std::string> read(const std::string& path, std::size_t most) = 0;

    // A new file in `folder` that has no name yet and vanishes if it gets none.
    virtual FileResult<Handle> openUnnamed(const std::string& folder) = 0;
    // A new file in `folder` whose name is `prefix` and a random ending.
    virtual FileResult<NamedFile> openNamed(const std::string& folder,
                                            const std::string& prefix) = 0;
    // Writes at the end of the file; returns how many bytes were taken, which may be fewer.
    virtual FileResult<std::size_t> write(Handle file, std::string_view bytes) = 0;
    // Gives `file` the mode, attributes and access list of the file at `path`, and its owner where
    // this user may.
    virtual FileResult<void> copyMetadata(const std::string& path, Handle file) = 0;
    // Returns when the content is on the disk.
    virtual FileResult<void> flush(Handle file) = 0;
    // The whole content as the disk gives it back; tooLarge where it is over `most` bytes.
    virtual FileResult<std::string> readBack(Handle file, std::size_t most) = 0;
    // Names an unnamed file: `prefix` and a random ending. Returns its path.
    virtual FileResult<std::string> giveName(Handle file, const std::string& folder,
                                             const std::string& prefix) = 0;
    virtual FileResult<void> close(Handle file) = 0;

    // Puts `from` in the place of `to` in one step.
    virtual FileResult<void> rename(const std::string& from, const std::string& to) = 0;
    // Returns when the names in `folder` are on the disk.
    virtual FileResult<void> flushFolder(const std::string& folder) = 0;
    virtual FileResult<void> remove(const std::string& path) = 0;
    // Makes the folder and those above it that are missing.
    virtual FileResult<void> makeFolders(const std::string& path) = 0;
};

// What went wrong, as part of a sentence: "the disk is full", "the folder is gone".
std::string_view inWords(FileFault fault);

} // namespace borewright
