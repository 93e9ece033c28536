// SPDX-License-Identifier: GPL-3.0-or-later
// The lines of a history as CSV and as JSON.
#include "core/storage/csv_table.h"
#include "core/storage/history_lines.h"
#include "core/storage/json_writer.h"

namespace borewright {

std::string historyCsv(const std::vector<HistoryLine>& lines) {
    std::string out = "when,who,what,where,bore,before,after,check code\n";
    for (const HistoryLine& line : lines) {
        const std::string bore = line.bore ? std::to_string(*line.bore) : std::string();
        out += toIso(line.time);
        for (const std::string& text :
             {line.who, line.what, line.where, bore, line.before.value_or(""),
              line.after.value_or(""), line.code})
            out += ',' + csvField(csvText(text), ',');
        out += '\n';
    }
    return out;
}

std::string historyJson(const Workbook& workbook, const std::vector<HistoryLine>& lines) {
    JsonWriter json;
    json.beginObject({});
    json.text("format", "borewright history");
    json.raw("version", "1");
    json.text("workbook", workbook.history.id);
    json.beginList("lines");
    for (const HistoryLine& line : lines) {
        json.beginObject({}, Lines::one);
        json.raw("entry", std::to_string(line.entry));
        json.text("time", toIso(line.time));
        json.text("who", line.who);
        json.text("what", line.what);
        if (!line.where.empty()) json.text("where", line.where);
        if (line.bore) json.raw("bore", std::to_string(*line.bore));
        if (line.before) json.text("before", *line.before);
        if (line.after) json.text("after", *line.after);
        if (!line.code.empty()) json.text("code", line.code);
        json.endObject();
    }
    json.endList();
    json.endObject();
    return json.take();
}

} // namespace borewright
