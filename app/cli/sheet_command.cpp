// SPDX-License-Identifier: GPL-3.0-or-later
// borewright sheet: the sheet as a PDF file, without a display.
#include "app/cli/commands.h"
#include "app/cli/common.h"
#include "app/cli/offscreen.h"
#include "app/sheet/sheet_pdf.h"
#include "app/shell/preferences_file.h"
#include "app/shell/system_outside.h"

#include <ostream>

namespace borewright {
namespace {

// The shop's name and picture, as the window keeps them; the defaults where there are none.
Preferences shopPreferences(FileSystem& files) {
    constexpr std::size_t largest = 1UL * 1024 * 1024;
    const auto bytes = files.read(preferencesPath().toStdString(), largest);
    if (!bytes) return {};
    return readPreferences(*bytes).value_or(Preferences());
}

} // namespace

Result<int> sheetCommand(const SheetOptions& options, const CliOutside& outside) {
    if (!hasExtension(options.target, ".pdf"))
        return refuse(options.target, "the name of the sheet ends in .pdf");
    const auto workbook = loadNamed(outside.files, options.file);
    if (!workbook) return tl::unexpected(workbook.error());
    const auto units = chooseUnits(*workbook, options.units);
    if (!units) return tl::unexpected(units.error());

    const Offscreen offscreen;
    Preferences preferences = shopPreferences(outside.files);
    preferences.paper =
        options.paper == "letter" ? Preferences::Paper::letter : Preferences::Paper::a4;
    const Results results = compute(*workbook, *units);
    const SheetData data = sheetData(*workbook, results, preferences, *units, outside.clock.now());
    const auto saved = exportSheetPdf(outside.files, QString::fromStdString(options.target), data,
                                      preferences.paper);
    if (!saved) return tl::unexpected(saved.error().within(options.target));
    outside.out << "Wrote " << options.target << ".\n";
    return exitWithin;
}

} // namespace borewright
