// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/change_file.h"

#include "app/cli/common.h"
#include "core/storage/history_log.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"

#include <ostream>

namespace borewright {

Result<std::string> contentOf(FileSystem& files, const std::string& path) {
    auto bytes = files.read(path, largestWorkbookFile);
    if (!bytes) return refuse(path, std::string(inWords(bytes.error())));
    return std::move(*bytes);
}

Result<OpenedFile> openToChange(FileSystem& files, const std::string& path) {
    auto bytes = contentOf(files, path);
    if (!bytes) {
        const auto named = loadNamed(files, path); // says best what is wrong with a place
        return tl::unexpected(named ? bytes.error() : named.error());
    }
    auto read = readWorkbook(*bytes);
    if (!read) return tl::unexpected(read.error().within(path));
    return OpenedFile{path, std::move(*bytes), std::move(*read)};
}

Result<void> saveChange(const CliOutside& outside, OpenedFile& opened, const Writing& writing) {
    if (const auto before = readWorkbook(opened.bytes)) {
        HistoryEntry entry{outside.clock.now(), outside.bench.person, writing.what, {}};
        entry.was = oldValues(*before, opened.workbook);
        (void)noteChange(opened.workbook, std::move(entry));
    }
    return replaceFile(outside, opened, writing.anyway);
}

Result<void> replaceFile(const CliOutside& outside, const OpenedFile& opened, bool anyway) {
    if (outside.processes != nullptr && !anyway) {
        const auto lock = askLock(outside.files, opened.path, outside.bench, *outside.processes);
        if (lock.other)
            return refuse(opened.path, inWords(*lock.other) + " has had it open since " +
                                           dateInWords(lock.other->since) + ", " +
                                           clockTime(lock.other->since) +
                                           "; nothing was written (--anyway writes all the same)");
    }
    const std::string bytes = writeWorkbook(opened.workbook);
    if (const auto back = readWorkbook(bytes); !back || *back != opened.workbook)
        return refuse(opened.path,
                      "it could not be opened again, so nothing was written (" +
                          (back ? std::string("it would differ") : back.error().message()) + ")");
    // Somebody may have changed it meanwhile.
    const auto now = contentOf(outside.files, opened.path);
    if (!now || *now != opened.bytes)
        return refuse(opened.path, "it changed while this was taken in; try again");
    const auto saved = save(outside.files, opened.path, bytes);
    if (!saved) return tl::unexpected(saved.error().within(opened.path));
    if (saved->otherNames > 0)
        outside.err << "borewright: " << opened.path << " had other names on the disk (hard "
                    << "links); these keep what it held before.\n";
    return {};
}

} // namespace borewright
