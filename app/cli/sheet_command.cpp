// SPDX-License-Identifier: GPL-3.0-or-later
// borewright sheet: the sheet as a PDF file, without a display; as the workbook stands now, or one
// that was printed once more.
#include "app/cli/change_file.h"
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/kept_preferences.h"
#include "app/cli/offscreen.h"
#include "app/sheet/printed_sheets.h"
#include "app/sheet/sheet_pdf.h"
#include "core/storage/history_log.h"

#include <ostream>

namespace borewright {
namespace {

Result<int> write(const SheetOptions& options, const CliOutside& outside, const SheetData& data,
                  Preferences::Paper paper) {
    const auto saved =
        exportSheetPdf(outside.files, QString::fromStdString(options.target), data, paper);
    if (!saved) return tl::unexpected(saved.error().within(options.target));
    outside.out << "Wrote " << options.target << ", check code " << data.code.toStdString()
                << ".\n";
    return exitWithin;
}

Result<int> again(const SheetOptions& options, const CliOutside& outside, const Workbook& workbook,
                  const Preferences& preferences) {
    if (options.note) return refuse("--note", "a sheet printed again is noted already");
    const auto answer = askForCode(workbook, options.code);
    if (!answer) return tl::unexpected(answer.error().within("--code"));
    if (!answer->entry)
        return refuse("--code", "no sheet with this code was noted in " + options.file);
    const auto then = sheetOfThen(workbook, *answer->entry, preferences);
    if (!then)
        return tl::unexpected(then.error().within("that sheet cannot be made again exactly"));
    if (then->reworded)
        outside.err << "borewright: what was measured and allowed is as it was printed; this "
                       "version of Borewright words it otherwise, so its code is another.\n";
    return write(options, outside, then->data, preferences.paper);
}

// The history entry and nothing else: the sheet is on the disk already.
Result<void> note(const SheetOptions& options, const CliOutside& outside, OpenedFile& opened,
                  PrintedSheet sheet) {
    HistoryEntry entry{outside.clock.now(), outside.bench.person, {}, {}};
    entry.sheet = std::move(sheet);
    noteSheet(opened.workbook, std::move(entry));
    return replaceFile(outside, opened, options.anyway);
}

} // namespace

Result<int> sheetCommand(const SheetOptions& options, const CliOutside& outside) {
    if (!hasExtension(options.target, ".pdf"))
        return refuse(options.target, "the name of the sheet ends in .pdf");
    auto opened = openToChange(outside.files, options.file);
    if (!opened) return tl::unexpected(opened.error());
    const Workbook& workbook = opened->workbook;
    const auto units = chooseUnits(workbook, options.units);
    if (!units) return tl::unexpected(units.error());

    const Offscreen offscreen;
    Preferences preferences = keptPreferences(outside.files);
    preferences.paper =
        options.paper == "letter" ? Preferences::Paper::letter : Preferences::Paper::a4;
    if (!options.code.empty()) return again(options, outside, workbook, preferences);
    const Results results = compute(workbook, *units);
    const SheetData data = sheetData(workbook, results, preferences, *units, outside.clock.now());
    auto written = write(options, outside, data, preferences.paper);
    if (!written || !options.note) return written;
    const auto noted =
        note(options, outside, *opened, printedSheet(workbook, data, preferences, *units));
    if (!noted)
        return tl::unexpected(
            noted.error().within(options.target + " was written, but not noted in the workbook"));
    return written;
}

} // namespace borewright
