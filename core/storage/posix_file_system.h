// SPDX-License-Identifier: GPL-3.0-or-later
// The real file system. Its source is the only file with POSIX in it; a port to another system is
// another such file.
#pragma once

#include "core/storage/file_system.h"

namespace borewright {

class PosixFileSystem final : public FileSystem {
public:
    // Ignores SIGXFSZ in the whole process, so that a file that grows too large is an answer and
    // not a death.
    PosixFileSystem();

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
};

} // namespace borewright
