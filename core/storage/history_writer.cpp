// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/record_writer.h"

namespace borewright {

void RecordWriter::fields(const History& history) {
    if (!history.id.empty()) field("id", history.id);
    list("entries", history.entries, Lines::one);
}

void RecordWriter::fields(const HistoryEntry& entry) {
    field("time", entry.time);
    if (!entry.who.empty()) field("who", entry.who);
    if (!entry.what.empty()) field("what", entry.what);
    if (!entry.was.empty()) {
        m_json.beginList("was", Lines::one);
        for (const OldValue& old : entry.was)
            object({}, old, Lines::one);
        m_json.endList();
    }
    if (entry.dropped) field("dropped", true);
    if (entry.sheet) object("sheet", *entry.sheet, Lines::one);
}

void RecordWriter::fields(const OldValue& old) {
    field("at", old.at);
    if (old.splice) {
        field("from", old.splice->from);
        field("now", old.splice->now);
    }
    if (old.was) m_json.raw("was", *old.was);
}

void RecordWriter::fields(const PrintedSheet& sheet) {
    field("code", sheet.code);
    field("units", sheet.units);
    if (!sheet.shop.empty()) field("shop", sheet.shop);
    if (!sheet.record.empty()) field("record", sheet.record);
    m_json.beginList("readings", Lines::one);
    for (const int count : sheet.readings)
        m_json.raw({}, std::to_string(count));
    m_json.endList();
}

} // namespace borewright
