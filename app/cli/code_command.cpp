// SPDX-License-Identifier: GPL-3.0-or-later
// borewright check --code: which sheet of a workbook has the check code that stands on a paper.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/sheet/printed_sheets.h"
#include "core/storage/differences.h"
#include "core/storage/json_writer.h"

#include <ostream>

namespace borewright {
namespace {

using Says = CodeAnswer::Says;

std::string unitWords(const DisplayUnits& units) {
    return std::string(units.size == Unit::inch ? "inches" : "millimetres") + " and " +
           std::string(symbol(units.small));
}

const HistoryEntry* entryOf(const Workbook& workbook, const CodeAnswer& answer) {
    return answer.entry ? &workbook.history.entries[*answer.entry] : nullptr;
}

// Who changed what since, as the history has it.
std::vector<const HistoryEntry*> changesSince(const Workbook& workbook, const CodeAnswer& answer) {
    std::vector<const HistoryEntry*> changes;
    for (std::size_t i = answer.entry ? *answer.entry + 1 : workbook.history.entries.size();
         i < workbook.history.entries.size(); ++i)
        if (!workbook.history.entries[i].sheet) changes.push_back(&workbook.history.entries[i]);
    return changes;
}

std::vector<Difference> differencesSince(const Workbook& workbook, const CodeAnswer& answer) {
    if (answer.says != Says::earlier || !answer.then) return {};
    Workbook now = workbook;
    now.history = {};
    return differences(*answer.then, now);
}

void tell(const Workbook& workbook, const CodeAnswer& answer, const std::string& file,
          std::ostream& out) {
    const HistoryEntry* printed = entryOf(workbook, answer);
    const std::string when = printed == nullptr ? "" : printedInWords(*printed).toStdString();
    const std::string code = answer.code.toStdString();
    if (answer.says == Says::none) {
        out << "No sheet of " << file << " has the code " << code
            << ": it is another workbook's, or was printed without being noted and the workbook "
               "was changed since.\n";
        return;
    }
    const std::string in = answer.units ? ", in " + unitWords(*answer.units) : "";
    if (answer.says == Says::asNow) {
        out << code << " is the sheet as " << file << " stands now" << in << ".\n";
        if (printed != nullptr) out << "Printed " << when << ".\n";
        return;
    }
    out << code << " is the sheet of " << file << " printed " << when << in
        << "; the workbook was changed since.\n";
    for (const HistoryEntry* change : changesSince(workbook, answer))
        out << "  " << printedInWords(*change).toStdString() << (change->what.empty() ? "" : ": ")
            << change->what << "\n";
    if (!answer.broken.empty()) {
        out << "What it showed cannot be made again: " << answer.broken << ".\n";
        return;
    }
    out << "Since then:\n";
    for (const Difference& difference : differencesSince(workbook, answer))
        out << "  " << inWords(difference) << "\n";
}

void tellJson(const Workbook& workbook, const CodeAnswer& answer, std::ostream& out) {
    static constexpr const char* words[] = {"as it stands now", "printed earlier", "no sheet"};
    JsonWriter json;
    json.beginObject({});
    json.text("code", answer.code.toStdString());
    json.text("is", words[static_cast<std::size_t>(answer.says)]);
    if (answer.units) {
        json.text("sizeUnit", symbol(answer.units->size));
        json.text("smallUnit", symbol(answer.units->small));
    }
    if (const HistoryEntry* printed = entryOf(workbook, answer)) {
        json.beginObject("printed", Lines::one);
        json.text("time", toIso(printed->time));
        json.text("who", printed->who);
        json.endObject();
    }
    if (!answer.broken.empty()) json.text("broken", answer.broken);
    if (answer.says == Says::earlier) {
        json.beginList("changes");
        for (const HistoryEntry* change : changesSince(workbook, answer)) {
            json.beginObject({}, Lines::one);
            json.text("time", toIso(change->time));
            json.text("who", change->who);
            json.text("what", change->what);
            json.endObject();
        }
        json.endList();
        json.beginList("differences", Lines::many);
        for (const Difference& difference : differencesSince(workbook, answer))
            json.text({}, inWords(difference));
        json.endList();
    }
    json.endObject();
    out << json.take();
}

} // namespace

Result<int> codeCommand(const CheckOptions& options, const CliOutside& outside) {
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto answer = askForCode(*workbook, options.code);
    if (!answer) return tl::unexpected(answer.error().within("--code"));
    if (options.json)
        tellJson(*workbook, *answer, outside.out);
    else
        tell(*workbook, *answer, options.file, outside.out);
    switch (answer->says) {
    case Says::asNow:
        return exitWithin;
    case Says::earlier:
        return exitOutside;
    case Says::none:
        return exitUndecided;
    }
    return exitWrong;
}

} // namespace borewright
