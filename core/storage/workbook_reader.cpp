// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/object_reader.h"
#include "core/storage/record_reader.h"
#include "core/storage/workbook_file.h"

namespace borewright {
namespace {

constexpr std::string_view formatName = "borewright workbook";

// Whether these bytes are a workbook at all, of a version read here. Told before anything else, so
// that a newer file is not called damaged.
Result<void> checkKind(const JsonValue& root) {
    const tl::unexpected<Error> foreign = refuse("this is not a Borewright workbook");
    if (root.kind != JsonValue::Kind::object) return foreign;
    Trouble trouble;
    ObjectReader fields(root, trouble);
    std::string format;
    int version = 0;
    fields.take("format", format);
    if (!trouble.none() || format != formatName) return foreign;
    fields.need("version", version);
    if (!trouble.none()) return tl::unexpected(trouble.error());
    if (version > workbookVersion)
        return refuse("this workbook was made by a newer Borewright (version " +
                      std::to_string(version) + " of the file; this one reads version " +
                      std::to_string(workbookVersion) + ")");
    if (version < 1) trouble.at(*fields.find("version"), "there was never such a version");
    if (!trouble.none()) return tl::unexpected(trouble.error());
    return {};
}

Workbook readRoot(const JsonValue& root, Trouble& trouble) {
    ObjectReader fields(root, trouble);
    Workbook workbook;
    (void)fields.find("format");
    (void)fields.find("version");
    fields.take("invented", workbook.invented);
    fields.take("job", workbook.job);
    fields.need("block", workbook.block);
    fields.take("limitSets", workbook.limitSets);
    fields.take("straightAim", workbook.straightAim);
    fields.take("surveys", workbook.surveys);
    fields.take("studies", workbook.studies);
    fields.take("sizing", workbook.sizing);
    takeTargets(fields, workbook.targets, trouble);
    fields.take("fit", workbook.fit);
    fields.take("hone", workbook.hone);
    fields.take("sheet", workbook.sheet);
    fields.take("history", workbook.history);
    workbook.unknown = fields.rest();
    if (trouble.none()) checkRecord(root, workbook, trouble);
    if (trouble.none()) checkPassesIn(root, workbook, trouble);
    return workbook;
}

Result<void> checkPlace(const FileResult<FileFacts>& facts) {
    if (!facts) {
        if (facts.error() == FileFault::notFound || facts.error() == FileFault::notAFolder)
            return refuse("there is no such file");
        if (facts.error() == FileFault::noRight) return refuse("no right to read it");
        return refuse(std::string(inWords(facts.error())));
    }
    if (facts->kind == FileFacts::Kind::folder) return refuse("that is a folder, not a workbook");
    if (facts->kind == FileFacts::Kind::other) return refuse("that is a device, not a workbook");
    if (facts->size > largestWorkbookFile)
        return refuse("the file is over 64 MB, which no workbook is");
    return {};
}

} // namespace

Result<Workbook> readWorkbook(std::string_view bytes) {
    if (bytes.size() > largestWorkbookFile)
        return refuse("the file is over 64 MB, which no workbook is");
    const std::size_t start = bytes.find_first_not_of(" \t\r\n");
    if (start == std::string_view::npos) return refuse("the file is empty");
    const std::string_view front = bytes.substr(start);
    // A picture or a letter is not a damaged workbook. A mark before a brace is told by the parser.
    if (!front.starts_with('{') && !front.starts_with("\xEF\xBB\xBF{"))
        return refuse("this is not a Borewright workbook");
    const auto root = parseJson(bytes);
    if (!root) return tl::unexpected(root.error());
    if (auto known = checkKind(*root); !known) return tl::unexpected(known.error());
    Trouble trouble;
    Workbook workbook = readRoot(*root, trouble);
    if (!trouble.none()) return tl::unexpected(trouble.error());
    return workbook;
}

Result<Workbook> loadWorkbook(FileSystem& files, const std::string& path) {
    if (auto good = checkPlace(files.facts(path)); !good) return tl::unexpected(good.error());
    const auto content = files.read(path, largestWorkbookFile);
    if (content) return readWorkbook(*content);
    if (content.error() == FileFault::tooLarge)
        return refuse("the file is over 64 MB, which no workbook is");
    if (content.error() == FileFault::noRight) return refuse("no right to read it");
    return refuse(std::string(inWords(content.error())));
}

} // namespace borewright
