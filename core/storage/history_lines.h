// SPDX-License-Identifier: GPL-3.0-or-later
// A workbook's history in the user's words: who changed what and when, what stood before and what
// stood there then, and which sheets were printed.
#pragma once

#include "core/storage/differences.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// One change of one entry; an entry that changed much has several.
struct HistoryLine {
    std::size_t entry = 0; // place in the history, from 0
    Timestamp time;
    std::string who;                   // empty = not known
    std::string what;                  // "strike out", "sheet printed"
    std::string where;                 // "as found, bore 3, 1.75 in, B: reading"; may be empty
    std::optional<int> bore;           // engine number, where it belongs to one bore
    std::optional<std::string> before; // nothing = a sheet, or it was not kept
    std::optional<std::string> after;  // nothing = a sheet, or it cannot be known any more
    std::string code;                  // of a printed sheet, as printed
    friend bool operator==(const HistoryLine&, const HistoryLine&) = default;
};

// Lines of one entry at most; the last of so many says how many more there are.
inline constexpr std::size_t mostLinesOfEntry = 100;

// The newest first. Where the way back is broken (history_log.h) what stood before is still told of
// the entries further back, but not what stood there then.
std::vector<HistoryLine> historyLines(const Workbook& workbook);

// The lines as CSV: when, who, what, where, bore, before, after, check code.
std::string historyCsv(const std::vector<HistoryLine>& lines);
// As JSON, resources/history.schema.json.
std::string historyJson(const Workbook& workbook, const std::vector<HistoryLine>& lines);

} // namespace borewright
