// SPDX-License-Identifier: GPL-3.0-or-later
// borewright history: who changed what in a workbook, and which sheets were printed, newest first.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "core/storage/history_lines.h"

#include <ostream>

namespace borewright {
namespace {

std::string inTable(const std::vector<HistoryLine>& lines) {
    std::vector<std::vector<std::string>> rows{{"when", "who", "what", "where", "before", "after"}};
    for (const HistoryLine& line : lines)
        rows.push_back(
            {toIso(line.time), line.who, line.what,
             line.code.empty() ? line.where : "check code " + line.code, line.before.value_or(""),
             line.before && !line.after ? "not known any more" : line.after.value_or("")});
    return alignedTable(rows);
}

} // namespace

Result<int> historyCommand(const HistoryOptions& options, const CliOutside& outside) {
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const std::vector<HistoryLine> lines = historyLines(*workbook);
    if (options.json)
        outside.out << historyJson(*workbook, lines);
    else if (options.csv)
        outside.out << historyCsv(lines);
    else if (lines.empty())
        outside.out << "Nothing has been changed in " << options.file
                    << " and no sheet was printed.\n";
    else
        outside.out << inTable(lines);
    return exitWithin;
}

} // namespace borewright
