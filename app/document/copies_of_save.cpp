// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document/copies_of_save.h"

#include "core/storage/workbook_file.h"

#include <algorithm>

namespace borewright {
namespace {

bool holds(FileSystem& files, const DatedCopy& copy, const std::string& bytes) {
    const auto content = files.read(copy.path, largestWorkbookFile);
    return content && *content == bytes;
}

} // namespace

std::optional<EarlierContent> earlierContent(FileSystem& files, const SaveJob& job) {
    const auto facts = files.facts(job.path);
    if (!facts || facts->kind != FileFacts::Kind::file) return std::nullopt;
    auto content = files.read(job.path, largestWorkbookFile);
    if (!content || content->empty()) return std::nullopt;
    // A second before now at the latest, so that it stands before what replaces it.
    constexpr std::int64_t nanoseconds = 1'000'000'000;
    const std::int64_t since =
        std::min(facts->modified / nanoseconds, job.now.secondsSinceEpoch - 1);
    return EarlierContent{std::move(*content), {since, job.now.offsetMinutes}};
}

std::string keepCopies(FileSystem& files, const SaveJob& job,
                       const std::optional<EarlierContent>& earlier) {
    auto copies = datedCopies(files, job.copies, job.path);
    if (!copies) return copies.error().message();
    if (earlier && (copies->empty() || !holds(files, copies->front(), earlier->bytes))) {
        const auto kept = keepCopy(files, job.copies, job.path, earlier->bytes, earlier->time,
                                   job.workbook.history.id);
        if (!kept) return kept.error().message();
        copies->insert(copies->begin(), DatedCopy{{}, earlier->time});
    }
    if (!copyIsDue(*copies, job.copies, job.now)) return {};
    const auto kept = keepCopy(files, job.copies, job.path, writeWorkbook(job.workbook), job.now,
                               job.workbook.history.id);
    return kept ? std::string() : kept.error().message();
}

} // namespace borewright
