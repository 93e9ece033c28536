// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/change_file.h"

#include "app/cli/common.h"
#include "core/storage/saver.h"
#include "core/storage/workbook_file.h"

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

Result<void> saveChange(FileSystem& files, const OpenedFile& opened) {
    // Somebody may have the workbook open.
    const auto now = contentOf(files, opened.path);
    if (!now || *now != opened.bytes)
        return refuse(opened.path, "it changed while this was taken in; try again");
    const auto saved = save(files, opened.path, writeWorkbook(opened.workbook));
    if (!saved) return tl::unexpected(saved.error().within(opened.path));
    return {};
}

} // namespace borewright
