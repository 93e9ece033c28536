// SPDX-License-Identifier: GPL-3.0-or-later
// Any file system with faults laid over it: chosen calls fail before or after they did their work,
// once or from then on.
#pragma once

#include "core/storage/file_system.h"

#include <vector>

namespace borewright::test {

struct PlannedFault {
    enum class Way {
        refused,     // nothing was done
        doneAndLost, // the work was done, but the answer says it was not
        shortWrite,  // a write takes one byte; other calls pass
    };
    std::size_t call = 0; // counting from 0
    bool fromThenOn = false;
    Way way = Way::refused;
    FileFault fault = FileFault::other;
};

class FaultyFiles final : public FileSystem {
public:
    explicit FaultyFiles(FileSystem& files, std::vector<PlannedFault> faults = {})
        : m_files(files)
        , m_faults(std::move(faults)) {}

    // How many calls were made.
    [[nodiscard]] std::size_t calls() const { return m_calls; }
    // How many of the planned faults have struck.
    [[nodiscard]] std::size_t struck() const;

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
    // The fault due at the call that begins, if any.
    const PlannedFault* step();
    template<class Call>
    auto through(Call call) -> decltype(call());

    FileSystem& m_files;
    std::vector<PlannedFault> m_faults;
    std::size_t m_calls = 0;
};

} // namespace borewright::test
