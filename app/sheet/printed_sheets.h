// SPDX-License-Identifier: GPL-3.0-or-later
// The sheets that were printed from a workbook, as its history has them: to note one, to print one
// again as it was, and to say which sheet a check code belongs to.
#pragma once

#include "app/sheet/sheet_data.h"
#include "core/result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// Places in the history of the sheets printed, the latest first.
std::vector<std::size_t> printedSheets(const Workbook& workbook);

// "14 March 2026, 09:26, A. Example".
QString printedInWords(const HistoryEntry& entry);

// What the history keeps of a sheet with these figures, made from this workbook.
PrintedSheet printedSheet(const Workbook& workbook, const SheetData& data,
                          const Preferences& preferences, const DisplayUnits& units);

// A sheet as it was printed, text for text: with the shop's head and the date of then. Its picture,
// if there is one, is the shop's of now.
struct SheetOfThen {
    Workbook workbook; // as it stood, without its history
    DisplayUnits units;
    SheetData data;
    // Its words or figures come out otherwise by this version of the program, so its code does too.
    bool reworded = false;
};
// Refuses, saying why, where the way back is broken (core/storage/history_log.h).
Result<SheetOfThen> sheetOfThen(const Workbook& now, std::size_t entry,
                                const Preferences& preferences);

// Which sheet of a workbook a code belongs to.
struct CodeAnswer {
    enum class Says {
        asNow,   // the sheet as the workbook stands now
        earlier, // one that was printed; the workbook was changed since
        none,    // no sheet of this workbook
    };
    Says says = Says::none;
    QString code;
    std::optional<DisplayUnits> units; // that it shows
    std::optional<std::size_t> entry;  // of the history, where it was noted
    std::optional<Workbook> then;      // of an earlier one, where the way back is whole
    std::string broken;                // why it is not
};
// Refuses a code that is mistyped, as readCheckCode() does.
Result<CodeAnswer> askForCode(const Workbook& workbook, const std::string& typed);

} // namespace borewright
