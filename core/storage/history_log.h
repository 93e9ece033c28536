// SPDX-License-Identifier: GPL-3.0-or-later
// The way through a workbook's history: what an entry has to hold so that a change can be taken
// back, and the workbook as it was when a sheet was printed.
//
// Old values are kept in the form that the file has, so that no field of any kind is passed over.
#pragma once

#include "core/result.h"
#include "core/workbook/edit.h"

#include <cstddef>
#include <string>
#include <vector>

namespace borewright {

// Old values of one entry, and of a whole history, are bounded in bytes: beyond, entries are made
// without them (HistoryEntry::dropped).
inline constexpr std::size_t largestEntry = 2UL * 1024 * 1024;
inline constexpr std::size_t largestHistory = 8UL * 1024 * 1024;

// What makes `was` again out of `is`, histories apart; empty where they are equal.
std::vector<OldValue> oldValues(const Workbook& was, const Workbook& is);

// The same after an edit of readings alone (InsertReading, EraseReading, SetStrike, SetKept, or a
// group of these) from the inverse that apply() gave: quick enough for every key. Readings appended
// to their survey need nothing.
std::vector<OldValue> oldReadings(const Workbook& is, const Edit& inverse);

// Appends an entry to the workbook's history, unless nothing is to be kept. True where it did.
bool noteChange(Workbook& workbook, HistoryEntry entry);

// Appends a printed sheet, with the number of readings filled in.
void noteSheet(Workbook& workbook, HistoryEntry entry);

// The workbook, history left out, as it stood when its history had this many entries; readings that
// were appended later stand there still. Refuses, saying why, where the way back is broken.
Result<Workbook> behind(const Workbook& workbook, std::size_t count);

// The workbook, history left out, as it stood at the sheet in this entry. Refuses, saying why,
// where that is no sheet, or where the way back is broken: a change whose old values were not kept,
// or a file that something changed without noting it.
Result<Workbook> atSheet(const Workbook& workbook, std::size_t entry);

// Whether anything that is recorded was changed since the sheet in this entry.
bool changedSince(const Workbook& workbook, std::size_t entry);

} // namespace borewright
