// SPDX-License-Identifier: GPL-3.0-or-later
// What comes back after a loss of power: any choice of what was not flushed.
#include "tests/support/memory_file_system.h"

#include <algorithm>

namespace borewright {
namespace {

constexpr std::int64_t twoMinutes = 120'000'000'000; // nanoseconds

} // namespace

using Lock = std::lock_guard<std::recursive_mutex>;

void MemoryFileSystem::change(NameChange names) {
    for (const auto& [path, file] : names)
        if (file)
            m_files[path] = file;
        else
            m_files.erase(path);
    m_unflushedNames.push_back(std::move(names));
}

// Files that some name may lead to after the power came back.
std::vector<MemoryFileSystem::FilePointer> MemoryFileSystem::filesAtRisk() const {
    std::vector<FilePointer> files;
    const auto take = [&](const FilePointer& file) {
        if (file && std::ranges::find(files, file) == files.end()) files.push_back(file);
    };
    for (const auto& [path, file] : m_flushedNames)
        take(file);
    for (const NameChange& names : m_unflushedNames)
        for (const auto& [path, file] : names)
            take(file);
    return files;
}

std::size_t MemoryFileSystem::unflushed() const {
    const Lock lock(m_mutex);
    std::size_t count = m_unflushedNames.size();
    for (const FilePointer& file : filesAtRisk())
        count += file->unflushed.size();
    return count;
}

std::unique_ptr<MemoryFileSystem> MemoryFileSystem::afterPowerCut(std::uint64_t arrived) const {
    const Lock lock(m_mutex);
    std::size_t thing = 0;
    const auto didArrive = [&] { return (arrived >> thing++ & 1U) != 0; };
    auto names = m_flushedNames;
    for (const NameChange& change : m_unflushedNames) {
        if (!didArrive()) continue;
        for (const auto& [path, file] : change)
            if (file)
                names[path] = file;
            else
                names.erase(path);
    }
    std::map<FilePointer, FilePointer> kept;
    for (const FilePointer& file : filesAtRisk()) {
        auto after = std::make_shared<File>(*file);
        std::size_t lost = 0;
        after->now = file->flushed;
        for (const std::string& bytes : file->unflushed) {
            if (!didArrive()) {
                lost += bytes.size();
                continue;
            }
            after->now += std::string(std::exchange(lost, 0), '\0') + bytes;
        }
        after->flushed = after->now;
        after->unflushed.clear();
        kept[file] = std::move(after);
    }
    auto disk = std::make_unique<MemoryFileSystem>();
    for (const auto& [path, file] : names)
        disk->m_files[path] = disk->m_flushedNames[path] = kept.at(file);
    disk->m_folders = m_folders;
    disk->m_links = m_links;
    disk->m_refuseUnnamed = m_refuseUnnamed;
    disk->m_nextId = m_nextId;
    disk->m_clock = m_clock + twoMinutes;
    return disk;
}

} // namespace borewright
