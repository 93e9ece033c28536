// SPDX-License-Identifier: GPL-3.0-or-later
// What was changed in a workbook, by whom and when, with what stood before, and which sheets were
// printed from it. Entries are only ever added, so that a sheet once printed can be printed again.
//
// A reading appended to its survey needs no entry: readings are never deleted, and each sheet says
// how many there were. What an old value is and how a workbook goes back through its history is
// told by core/storage/history_log.h.
#pragma once

#include "core/workbook/block.h"
#include "core/workbook/timestamp.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// Items [from, from + now) of a list that stand where others stood before.
struct Splice {
    int from = 0;
    int now = 0;
    friend bool operator==(const Splice&, const Splice&) = default;
};

// A value that was replaced, in the form that the file has.
struct OldValue {
    std::string at;                   // place in the file, as a JSON pointer: "/limitSets/0/limits"
    std::optional<std::string> was{}; // its JSON; nothing = there was none
    std::optional<Splice> splice{};   // of a list: `was` is the list of the items that stood there
    UnknownFields unknown{};
    friend bool operator==(const OldValue&, const OldValue&) = default;
};

// How a sheet shows sizes, and small amounts.
enum class SheetUnits {
    inch,   // with thou
    metric, // millimetre, with micrometre
    inchTenth,
    inchHundredth,
    inchMicrometre,
    metricThou,
    metricTenth,
    metricHundredth,
    inchMillimetre,
    metricMillimetre,
};

// A sheet as it was handed out: what is needed, beside the workbook of then, to print it again.
struct PrintedSheet {
    std::string code; // its check code, as printed
    SheetUnits units = SheetUnits::inch;
    std::string shop;          // name and address at its head, a line each
    std::string record;        // hash of all that was recorded, to prove the way back; hexadecimal
    std::vector<int> readings; // how many each survey had, in the order of the surveys
    UnknownFields unknown{};
    friend bool operator==(const PrintedSheet&, const PrintedSheet&) = default;
};

struct HistoryEntry {
    Timestamp time;
    std::string who;             // as the bench calls him; empty = not known
    std::string what;            // "limits", "reading bore 3, 1.75 in, B"
    std::vector<OldValue> was{}; // put back in this order
    // The change was so large that what stood before was not kept: no way back beyond it.
    bool dropped = false;
    std::optional<PrintedSheet> sheet{}; // printed at this point of the history
    UnknownFields unknown{};
    friend bool operator==(const HistoryEntry&, const HistoryEntry&) = default;
};

struct History {
    // Tells this workbook from all others, whatever its file is called; empty = none yet.
    std::string id;
    std::vector<HistoryEntry> entries; // in the order made, whatever the clocks say
    UnknownFields unknown{};
    friend bool operator==(const History&, const History&) = default;
};

} // namespace borewright
