// SPDX-License-Identifier: GPL-3.0-or-later
// borewright copies: the dated copies of a workbook, newest first. The workbook itself need not be
// there any more.
#include "app/cli/commands.h"
#include "app/cli/kept_preferences.h"
#include "app/shell/system_outside.h"
#include "core/storage/dated_copies.h"
#include "core/storage/json_writer.h"
#include "core/storage/workbook_file.h"

#include <QFileInfo>

#include <algorithm>
#include <functional>
#include <ostream>

namespace borewright {
namespace {

// Where the window keeps them.
std::string usualFolder(FileSystem& files) {
    const Preferences preferences = keptPreferences(files);
    const QString& own = preferences.copiesFolder;
    return (own.isEmpty() ? copiesFolder() : own).toStdString();
}

std::string inJson(const std::vector<DatedCopy>& copies) {
    JsonWriter json;
    json.beginObject({});
    json.beginList("copies");
    for (const DatedCopy& copy : copies) {
        json.beginObject({}, Lines::one);
        json.text("time", toIso(copy.time));
        json.text("path", copy.path);
        json.endObject();
    }
    json.endList();
    json.endObject();
    return json.take();
}

} // namespace

Result<int> copiesCommand(const CopiesOptions& options, const CliOutside& outside) {
    CopyRules rules;
    rules.folder = options.folder.empty() ? usualFolder(outside.files) : options.folder;
    const std::string path =
        QFileInfo(QString::fromStdString(options.file)).absoluteFilePath().toStdString();
    auto copies = datedCopies(outside.files, rules, path);
    if (!copies) return tl::unexpected(copies.error().within(rules.folder));
    if (const auto workbook = loadWorkbook(outside.files, path)) {
        const auto before = copiesOfEarlierPlaces(outside.files, rules, path, workbook->history.id);
        copies->insert(copies->end(), before.begin(), before.end());
        std::ranges::stable_sort(*copies, std::ranges::greater(), &DatedCopy::time);
    }
    if (options.json) {
        outside.out << inJson(*copies);
    } else if (copies->empty()) {
        outside.out << "There is no earlier copy of " << path << " in " << rules.folder << ".\n";
    } else {
        for (const DatedCopy& copy : *copies)
            outside.out << toIso(copy.time) << "  " << copy.path << '\n';
    }
    return exitWithin;
}

} // namespace borewright
