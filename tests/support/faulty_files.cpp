// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/faulty_files.h"

#include <algorithm>

namespace borewright::test {

using Way = PlannedFault::Way;

std::size_t FaultyFiles::struck() const {
    return static_cast<std::size_t>(std::ranges::count_if(
        m_faults, [this](const PlannedFault& fault) { return fault.call < m_calls; }));
}

const PlannedFault* FaultyFiles::step() {
    const std::size_t call = m_calls++;
    for (const PlannedFault& fault : m_faults)
        if (fault.call == call || (fault.fromThenOn && call > fault.call)) return &fault;
    return nullptr;
}

template<class Call>
auto FaultyFiles::through(Call call) -> decltype(call()) {
    const PlannedFault* due = step();
    if (due == nullptr || due->way == Way::shortWrite) return call();
    if (due->way == Way::doneAndLost) (void)call();
    return tl::unexpected(due->fault);
}

FileResult<std::string> FaultyFiles::resolve(const std::string& path) {
    return through([&] { return m_files.resolve(path); });
}

FileResult<FileFacts> FaultyFiles::facts(const std::string& path) {
    return through([&] { return m_files.facts(path); });
}

FileResult<FileFacts> FaultyFiles::factsOf(Handle file) {
    return through([&] { return m_files.factsOf(file); });
}

FileResult<std::vector<std::string>> FaultyFiles::list(const std::string& folder) {
    return through([&] { return m_files.list(folder); });
}

FileResult<std::string> FaultyFiles::read(const std::string& path, std::size_t most) {
    return through([&] { return m_files.read(path, most); });
}

// Whoever is told that nothing was opened cannot close it: the system does.
FileResult<FileSystem::Handle> FaultyFiles::openUnnamed(const std::string& folder) {
    const PlannedFault* due = step();
    if (due != nullptr && due->way != Way::shortWrite) return tl::unexpected(due->fault);
    return m_files.openUnnamed(folder);
}

FileResult<FileSystem::NamedFile> FaultyFiles::openNamed(const std::string& folder,
                                                         const std::string& prefix) {
    const PlannedFault* due = step();
    const bool fails = due != nullptr && due->way != Way::shortWrite;
    if (fails && due->way == Way::refused) return tl::unexpected(due->fault);
    auto opened = m_files.openNamed(folder, prefix);
    if (!fails) return opened;
    if (opened) (void)m_files.close(opened->handle);
    return tl::unexpected(due->fault);
}

FileResult<std::size_t> FaultyFiles::write(Handle file, std::string_view bytes) {
    const PlannedFault* due = step();
    if (due != nullptr && due->way == Way::refused) return tl::unexpected(due->fault);
    if (due != nullptr && due->way == Way::shortWrite) bytes = bytes.substr(0, 1);
    auto written = m_files.write(file, bytes);
    if (due != nullptr && due->way == Way::doneAndLost) return tl::unexpected(due->fault);
    return written;
}

FileResult<void> FaultyFiles::copyMetadata(const std::string& path, Handle file) {
    return through([&] { return m_files.copyMetadata(path, file); });
}

FileResult<void> FaultyFiles::flush(Handle file) {
    return through([&] { return m_files.flush(file); });
}

FileResult<std::string> FaultyFiles::readBack(Handle file, std::size_t most) {
    return through([&] { return m_files.readBack(file, most); });
}

FileResult<std::string> FaultyFiles::giveName(Handle file, const std::string& folder,
                                              const std::string& prefix) {
    return through([&] { return m_files.giveName(file, folder, prefix); });
}

FileResult<void> FaultyFiles::close(Handle file) {
    const PlannedFault* due = step();
    auto closed = m_files.close(file); // closed even where an error is told, as on Linux
    if (due != nullptr && due->way != Way::shortWrite) return tl::unexpected(due->fault);
    return closed;
}

FileResult<void> FaultyFiles::rename(const std::string& from, const std::string& to) {
    return through([&] { return m_files.rename(from, to); });
}

FileResult<void> FaultyFiles::flushFolder(const std::string& folder) {
    return through([&] { return m_files.flushFolder(folder); });
}

FileResult<void> FaultyFiles::remove(const std::string& path) {
    return through([&] { return m_files.remove(path); });
}

FileResult<void> FaultyFiles::makeFolders(const std::string& path) {
    return through([&] { return m_files.makeFolders(path); });
}

} // namespace borewright::test
