// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/object_reader.h"
#include "core/storage/record_reader.h"

namespace borewright {

// Named so that the templates of object_reader.h find them.
void readValue(const JsonValue& value, OldValue& old, Trouble& trouble);
void readValue(const JsonValue& value, PrintedSheet& sheet, Trouble& trouble);
void readValue(const JsonValue& value, HistoryEntry& entry, Trouble& trouble);

void readValue(const JsonValue& value, OldValue& old, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("at", old.at);
    if (const JsonValue* was = fields.find("was")) old.was = compactJson(*was);
    Splice splice;
    fields.take("now", splice.now);
    if (const JsonValue* from = fields.find("from")) {
        readValue(*from, splice.from, trouble);
        old.splice = splice;
    }
    old.unknown = fields.rest();
}

void readValue(const JsonValue& value, PrintedSheet& sheet, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("code", sheet.code);
    fields.need("units", sheet.units);
    fields.take("shop", sheet.shop);
    fields.take("record", sheet.record);
    fields.take("readings", sheet.readings);
    sheet.unknown = fields.rest();
}

void readValue(const JsonValue& value, HistoryEntry& entry, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.need("time", entry.time);
    fields.take("who", entry.who);
    fields.take("what", entry.what);
    fields.take("was", entry.was);
    fields.take("dropped", entry.dropped);
    fields.take("sheet", entry.sheet);
    entry.unknown = fields.rest();
}

void readValue(const JsonValue& value, History& history, Trouble& trouble) {
    ObjectReader fields(value, trouble);
    fields.take("id", history.id);
    fields.take("entries", history.entries);
    history.unknown = fields.rest();
}

} // namespace borewright
