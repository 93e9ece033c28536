// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/saver.h"

#include "core/storage/hash.h"

#include <filesystem>
#include <fmt/format.h>
#include <optional>

namespace borewright {
namespace {

constexpr int mostInterruptions = 100;
// A file of ours this much older than one made just now belongs to a saver that died; so does one
// that is this much newer, which was left before the disk's clock was set back.
constexpr std::int64_t orphanAge = 60'000'000'000; // nanoseconds

// Makes `call` again as long as it was merely interrupted.
template<class Call>
auto persist(Call call) {
    auto result = call();
    for (int i = 0; i < mostInterruptions && !result && result.error() == FileFault::interrupted;
         ++i)
        result = call();
    return result;
}

tl::unexpected<Error> refuseFor(FileFault fault) {
    return refuse(std::string(inWords(fault)));
}

// A file being written, closed and removed again unless it took its place.
class Part {
public:
    Part(FileSystem& files, FileSystem::Handle handle, std::optional<std::string> path)
        : m_files(files)
        , m_handle(handle)
        , m_path(std::move(path)) {}
    Part(const Part&) = delete;
    Part& operator=(const Part&) = delete;
    ~Part() {
        if (m_handle) (void)m_files.close(*m_handle);
        if (m_path) (void)persist([&] { return m_files.remove(*m_path); });
    }

    [[nodiscard]] FileSystem::Handle handle() const { return *m_handle; }
    [[nodiscard]] const std::optional<std::string>& path() const { return m_path; }
    void setPath(std::string path) { m_path = std::move(path); }
    FileResult<void> close() {
        const FileSystem::Handle handle = *m_handle;
        m_handle.reset();
        return m_files.close(handle);
    }
    void tookItsPlace() { m_path.reset(); }

private:
    FileSystem& m_files;
    std::optional<FileSystem::Handle> m_handle;
    std::optional<std::string> m_path;
};

struct Saving {
    FileSystem& files;
    std::string target;
    std::string folder;
    std::string prefix; // of the names of our parts for this target
    std::string_view bytes;
    bool replaces = false; // there is an earlier file
    std::uint64_t otherNames = 0;

    Result<void> look();
    Result<SaveReport> run(bool unnamed) const;
    Result<void> fill(const Part& part) const;
    Result<void> writeAll(FileSystem::Handle file) const;
    void sweep(FileSystem::Handle fresh) const;
};

// What the target is before anything is written.
Result<void> Saving::look() {
    const auto facts = persist([&] { return files.facts(target); });
    if (!facts && facts.error() != FileFault::notFound) return refuseFor(facts.error());
    if (!facts) return {};
    if (facts->kind == FileFacts::Kind::folder) return refuseFor(FileFault::isAFolder);
    if (facts->kind == FileFacts::Kind::other) return refuse("that is a device, not a file");
    if (!facts->writable) return refuse("the file is write-protected");
    replaces = true;
    otherNames = facts->names > 1 ? facts->names - 1 : 0;
    return {};
}

// Removes what savers of the same target left that were killed. Failing is no harm: it is tried
// again with the next save.
void Saving::sweep(FileSystem::Handle fresh) const {
    const auto now = files.factsOf(fresh);
    const auto names = files.list(folder);
    if (!now || !names) return;
    for (const std::string& name : *names) {
        if (!name.starts_with(prefix)) continue;
        const std::string path = (std::filesystem::path(folder) / name).string();
        const auto found = files.facts(path);
        if (found && found->kind == FileFacts::Kind::file &&
            (found->modified < now->modified - orphanAge ||
             found->modified > now->modified + orphanAge))
            (void)files.remove(path);
    }
}

Result<void> Saving::writeAll(FileSystem::Handle file) const {
    std::string_view rest = bytes;
    int idle = 0;
    while (!rest.empty()) {
        const auto count = persist([&] { return files.write(file, rest); });
        if (!count) return refuseFor(count.error());
        if (*count == 0 && ++idle > mostInterruptions) return refuse("the disk takes nothing more");
        rest.remove_prefix(*count);
    }
    return {};
}

Result<void> Saving::fill(const Part& part) const {
    if (auto written = writeAll(part.handle()); !written) return written;
    if (replaces) {
        const auto copied = persist([&] { return files.copyMetadata(target, part.handle()); });
        // An earlier file that vanished meanwhile has nothing to hand on.
        if (!copied && copied.error() != FileFault::notFound) return refuseFor(copied.error());
    }
    if (auto flushed = persist([&] { return files.flush(part.handle()); }); !flushed)
        return refuseFor(flushed.error());
    const auto back = persist([&] { return files.readBack(part.handle(), bytes.size()); });
    if (!back && back.error() != FileFault::tooLarge) return refuseFor(back.error());
    if (!back || *back != bytes)
        return refuse("the disk gives back something else than was written");
    return {};
}

Result<SaveReport> Saving::run(bool unnamed) const {
    std::optional<Part> part;
    if (unnamed) {
        const auto handle = persist([&] { return files.openUnnamed(folder); });
        if (!handle) return run(false); // shares answer with all kinds of faults
        part.emplace(files, *handle, std::nullopt);
    } else {
        auto named = persist([&] { return files.openNamed(folder, prefix); });
        if (!named) return refuseFor(named.error());
        part.emplace(files, named->handle, named->path);
    }
    sweep(part->handle());
    if (auto filled = fill(*part); !filled) return tl::unexpected(filled.error());
    if (!part->path()) {
        const auto name = persist([&] { return files.giveName(part->handle(), folder, prefix); });
        if (!name) {
            part.reset();
            return run(false);
        }
        part->setPath(*name);
    }
    const auto facts = persist([&] { return files.factsOf(part->handle()); });
    if (!facts) return refuseFor(facts.error());
    // An interrupted close has closed, and the content was flushed before.
    if (auto closed = part->close(); !closed && closed.error() != FileFault::interrupted)
        return refuseFor(closed.error());
    if (auto put = persist([&] { return files.rename(*part->path(), target); }); !put)
        return refuseFor(put.error());
    part->tookItsPlace();
    const auto flushed = persist([&] { return files.flushFolder(folder); });
    // Some shares cannot flush a folder; their server orders names itself.
    if (!flushed && flushed.error() != FileFault::unsupported) return refuseFor(flushed.error());
    return SaveReport{target, *facts, otherNames};
}

} // namespace

Result<SaveReport> save(FileSystem& files, const std::string& path, std::string_view bytes) {
    const auto target = persist([&] { return files.resolve(path); });
    if (!target) return refuseFor(target.error());
    const std::filesystem::path place(*target);
    if (place.filename().empty()) return refuse("no name was given");
    // The name's hash and not the name, which may be as long as names can be.
    const std::string prefix =
        fmt::format(".borewright-{:08x}-", fnv1a(place.filename().string()) & 0xffffffffU);
    Saving saving{files, *target, place.parent_path().string(), prefix, bytes};
    if (auto looked = saving.look(); !looked) return tl::unexpected(looked.error());
    return saving.run(true);
}

} // namespace borewright
