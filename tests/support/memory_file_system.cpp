// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/memory_file_system.h"

#include <filesystem>

namespace borewright {
namespace {

std::string folderOf(const std::string& path) {
    return std::filesystem::path(path).parent_path().string();
}

} // namespace

using Lock = std::lock_guard<std::recursive_mutex>;

#define BOREWRIGHT_STEP()                                                                          \
    const Lock lock(m_mutex);                                                                      \
    if (const auto due = step()) return tl::unexpected(*due)

MemoryFileSystem::MemoryFileSystem()
    : m_folders{"/", "/shop"} {}

void MemoryFileSystem::put(const std::string& path, std::string content, std::string attributes) {
    const Lock lock(m_mutex);
    FilePointer file = fresh();
    file->now = file->flushed = std::move(content);
    file->attributes = std::move(attributes);
    m_files[path] = file;
    m_flushedNames[path] = file;
}

void MemoryFileSystem::makeFolder(const std::string& path) {
    const Lock lock(m_mutex);
    m_folders.insert(path);
}

void MemoryFileSystem::removeFolder(const std::string& path) {
    const Lock lock(m_mutex);
    m_folders.erase(path);
    std::erase_if(m_files, [&](const auto& entry) { return folderOf(entry.first) == path; });
}

std::optional<std::string> MemoryFileSystem::content(const std::string& path) const {
    const Lock lock(m_mutex);
    const auto found = m_files.find(path);
    if (found == m_files.end()) return std::nullopt;
    return found->second->now;
}

std::string MemoryFileSystem::attributes(const std::string& path) const {
    const Lock lock(m_mutex);
    return m_files.at(path)->attributes;
}

std::vector<std::string> MemoryFileSystem::names(const std::string& folder) const {
    const Lock lock(m_mutex);
    std::vector<std::string> result;
    for (const auto& [path, file] : m_files)
        if (folderOf(path) == folder)
            result.push_back(std::filesystem::path(path).filename().string());
    return result;
}

void MemoryFileSystem::setWritable(const std::string& path, bool writable) {
    const Lock lock(m_mutex);
    m_files.at(path)->writable = writable;
}

void MemoryFileSystem::letTimePass(std::int64_t seconds) {
    const Lock lock(m_mutex);
    m_clock += seconds * 1'000'000'000;
}

std::size_t MemoryFileSystem::openHandles() const {
    const Lock lock(m_mutex);
    return m_handles.size();
}

void MemoryFileSystem::inject(std::optional<Fault> fault) {
    const Lock lock(m_mutex);
    m_fault = fault;
    m_calls = 0;
}

std::size_t MemoryFileSystem::calls() const {
    const Lock lock(m_mutex);
    return m_calls;
}

void MemoryFileSystem::forgetCalls() {
    const Lock lock(m_mutex);
    m_calls = 0;
}

std::optional<std::string> MemoryFileSystem::afterCrash(const std::string& path,
                                                        Crash crash) const {
    const Lock lock(m_mutex);
    const auto& names = crash == Crash::nothingUnflushedKept ? m_flushedNames : m_files;
    const auto found = names.find(path);
    if (found == names.end()) return std::nullopt;
    const File& file = *found->second;
    if (crash != Crash::tornContent || file.now == file.flushed) return file.flushed;
    return file.now.substr(0, file.now.size() / 2);
}

std::optional<FileFault> MemoryFileSystem::step() {
    if (m_watcher) m_watcher(m_calls);
    const std::size_t call = m_calls++;
    if (!m_fault || call < m_fault->call || (call > m_fault->call && !m_fault->persistent))
        return std::nullopt;
    if (m_fault->shortWrite) return std::nullopt; // write() sees to it
    return m_fault->fault;
}

FileFacts MemoryFileSystem::factsFrom(const File& file) const {
    return {FileFacts::Kind::file, file.now.size(), file.modified, file.id, file.writable};
}

bool MemoryFileSystem::hasFolder(const std::string& folder) const {
    return m_folders.contains(folder);
}

MemoryFileSystem::FilePointer MemoryFileSystem::fresh() {
    auto file = std::make_shared<File>();
    file->id = m_nextId++;
    file->modified = ++m_clock;
    return file;
}

FileSystem::Handle MemoryFileSystem::handleFor(FilePointer file) {
    m_handles[m_nextHandle] = std::move(file);
    return m_nextHandle++;
}

std::string MemoryFileSystem::freshName(const std::string& folder, const std::string& prefix) {
    return (std::filesystem::path(folder) / (prefix + std::to_string(m_nextId++))).string();
}

std::size_t MemoryFileSystem::used() const {
    std::size_t sum = 0;
    std::set<const File*> counted;
    for (const auto& [path, file] : m_files)
        if (counted.insert(file.get()).second) sum += file->now.size();
    for (const auto& [handle, file] : m_handles)
        if (counted.insert(file.get()).second) sum += file->now.size();
    return sum;
}

FileResult<std::string> MemoryFileSystem::resolve(const std::string& path) {
    BOREWRIGHT_STEP();
    const auto found = m_links.find(path);
    return found == m_links.end() ? path : found->second;
}

FileResult<FileFacts> MemoryFileSystem::facts(const std::string& path) {
    BOREWRIGHT_STEP();
    const auto link = m_links.find(path);
    const std::string& real = link == m_links.end() ? path : link->second;
    if (hasFolder(real)) return FileFacts{FileFacts::Kind::folder, 0, 0, 0, true};
    const auto found = m_files.find(real);
    if (found == m_files.end()) return tl::unexpected(FileFault::notFound);
    return factsFrom(*found->second);
}

FileResult<FileFacts> MemoryFileSystem::factsOf(Handle file) {
    BOREWRIGHT_STEP();
    return factsFrom(*m_handles.at(file));
}

FileResult<std::vector<std::string>> MemoryFileSystem::list(const std::string& folder) {
    BOREWRIGHT_STEP();
    if (!hasFolder(folder)) return tl::unexpected(FileFault::notFound);
    return names(folder);
}

FileResult<std::string> MemoryFileSystem::read(const std::string& path, std::size_t most) {
    BOREWRIGHT_STEP();
    const auto link = m_links.find(path);
    const auto found = m_files.find(link == m_links.end() ? path : link->second);
    if (found == m_files.end()) return tl::unexpected(FileFault::notFound);
    if (found->second->now.size() > most) return tl::unexpected(FileFault::tooLarge);
    return found->second->now;
}

FileResult<FileSystem::Handle> MemoryFileSystem::openUnnamed(const std::string& folder) {
    BOREWRIGHT_STEP();
    if (m_refuseUnnamed || !hasFolder(folder)) return tl::unexpected(FileFault::notFound);
    return handleFor(fresh());
}

FileResult<FileSystem::NamedFile> MemoryFileSystem::openNamed(const std::string& folder,
                                                              const std::string& prefix) {
    BOREWRIGHT_STEP();
    if (!hasFolder(folder)) return tl::unexpected(FileFault::notFound);
    const std::string path = freshName(folder, prefix);
    change({{path, fresh()}});
    return NamedFile{handleFor(m_files[path]), path};
}

FileResult<std::size_t> MemoryFileSystem::write(Handle file, std::string_view bytes) {
    BOREWRIGHT_STEP();
    // The step has counted this call already.
    const bool cut =
        m_fault && m_fault->shortWrite &&
        (m_calls - 1 == m_fault->call || (m_fault->persistent && m_calls - 1 >= m_fault->call));
    if (cut) bytes = bytes.substr(0, 1);
    if (m_room) {
        const std::size_t taken = used();
        const std::size_t left = taken < *m_room ? *m_room - taken : 0;
        if (left == 0 && !bytes.empty()) return tl::unexpected(FileFault::diskFull);
        bytes = bytes.substr(0, left);
    }
    if (m_mostPerWrite) bytes = bytes.substr(0, *m_mostPerWrite);
    File& target = *m_handles.at(file);
    target.now += bytes;
    if (!bytes.empty()) target.unflushed.emplace_back(bytes);
    if (m_corrupt && !bytes.empty()) target.now.back() ^= 1;
    target.modified = ++m_clock;
    return bytes.size();
}

FileResult<void> MemoryFileSystem::copyMetadata(const std::string& path, Handle file) {
    BOREWRIGHT_STEP();
    const auto found = m_files.find(path);
    if (found == m_files.end()) return tl::unexpected(FileFault::notFound);
    m_handles.at(file)->attributes = found->second->attributes;
    return {};
}

FileResult<void> MemoryFileSystem::flush(Handle file) {
    BOREWRIGHT_STEP();
    File& target = *m_handles.at(file);
    target.flushed = target.now;
    target.unflushed.clear();
    return {};
}

FileResult<std::string> MemoryFileSystem::readBack(Handle file, std::size_t most) {
    BOREWRIGHT_STEP();
    const File& source = *m_handles.at(file);
    if (source.now.size() > most) return tl::unexpected(FileFault::tooLarge);
    return source.now;
}

FileResult<std::string> MemoryFileSystem::giveName(Handle file, const std::string& folder,
                                                   const std::string& prefix) {
    BOREWRIGHT_STEP();
    if (!hasFolder(folder)) return tl::unexpected(FileFault::notFound);
    const std::string path = freshName(folder, prefix);
    change({{path, m_handles.at(file)}});
    return path;
}

FileResult<void> MemoryFileSystem::close(Handle file) {
    const Lock lock(m_mutex);
    const auto due = step();
    m_handles.erase(file); // closed even where an error is told, as on Linux
    if (due) return tl::unexpected(*due);
    return {};
}

FileResult<void> MemoryFileSystem::rename(const std::string& from, const std::string& to) {
    BOREWRIGHT_STEP();
    const auto found = m_files.find(from);
    if (found == m_files.end()) return tl::unexpected(FileFault::notFound);
    change({{to, found->second}, {from, nullptr}});
    return {};
}

FileResult<void> MemoryFileSystem::flushFolder(const std::string& folder) {
    BOREWRIGHT_STEP();
    if (!hasFolder(folder)) return tl::unexpected(FileFault::notFound);
    std::erase_if(m_flushedNames,
                  [&](const auto& entry) { return folderOf(entry.first) == folder; });
    for (const auto& [path, file] : m_files)
        if (folderOf(path) == folder) m_flushedNames[path] = file;
    std::erase_if(m_unflushedNames,
                  [&](const NameChange& names) { return folderOf(names.front().first) == folder; });
    return {};
}

FileResult<void> MemoryFileSystem::remove(const std::string& path) {
    BOREWRIGHT_STEP();
    if (!m_files.contains(path)) return tl::unexpected(FileFault::notFound);
    change({{path, nullptr}});
    return {};
}

FileResult<void> MemoryFileSystem::makeFolders(const std::string& path) {
    BOREWRIGHT_STEP();
    for (std::filesystem::path at = path; !at.empty() && at != at.parent_path();
         at = at.parent_path())
        m_folders.insert(at.string());
    return {};
}

} // namespace borewright
