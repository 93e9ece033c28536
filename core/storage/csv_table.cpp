// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/csv_table.h"

#include "core/formula_text.h"
#include "core/utf8.h"

#include <algorithm>

namespace borewright {
namespace {

std::string lineName(std::ptrdiff_t line) {
    return "line " + std::to_string(line);
}

class Splitter {
public:
    Splitter(std::string_view text, char separator)
        : m_text(text)
        , m_separator(separator) {}

    Result<std::vector<CsvRow>> split() {
        std::vector<CsvRow> rows;
        std::size_t fields = 0;
        while (m_at < m_text.size()) {
            if (m_text[m_at] == '\n' || m_text[m_at] == '\r') { // an empty line
                takeLineEnd();
                continue;
            }
            auto row = readRow();
            if (!row) return tl::unexpected(row.error());
            if ((fields += row->fields.size()) > mostCsvFields)
                return refuse(lineName(row->line), "the table holds more than any survey");
            const auto isEmpty = [](const std::string& field) { return field.empty(); };
            if (!std::ranges::all_of(row->fields, isEmpty)) rows.push_back(std::move(*row));
        }
        return rows;
    }

private:
    Result<CsvRow> readRow() {
        CsvRow row{m_line, {}};
        for (;;) {
            auto field = readField();
            if (!field) return tl::unexpected(field.error());
            if (row.fields.size() == mostCsvColumns)
                return refuse(lineName(row.line), "has more columns than any table of readings");
            row.fields.push_back(std::move(*field));
            if (m_at < m_text.size() && m_text[m_at] == m_separator) {
                ++m_at;
                continue;
            }
            takeLineEnd();
            return row;
        }
    }

    Result<std::string> readField() {
        if (m_at < m_text.size() && m_text[m_at] == '"') return readQuoted();
        const std::size_t start = m_at;
        while (m_at < m_text.size() && !atFieldEnd()) {
            if (m_text[m_at] == '"')
                return refuse(lineName(m_line), "a quote stands within a field");
            ++m_at;
        }
        return std::string(m_text.substr(start, m_at - start));
    }

    Result<std::string> readQuoted() {
        const int opened = m_line;
        std::string field;
        for (++m_at; m_at < m_text.size(); ++m_at) {
            const char c = m_text[m_at];
            if (c == '\n') ++m_line;
            if (c != '"') {
                field += c;
            } else if (m_at + 1 < m_text.size() && m_text[m_at + 1] == '"') {
                field += '"';
                ++m_at;
            } else {
                ++m_at;
                if (m_at < m_text.size() && !atFieldEnd())
                    return refuse(lineName(m_line), "something stands behind a closing quote");
                return field;
            }
        }
        return refuse(lineName(opened), "the closing quote is missing");
    }

    [[nodiscard]] bool atFieldEnd() const {
        const char c = m_text[m_at];
        return c == m_separator || c == '\n' || c == '\r';
    }

    void takeLineEnd() {
        if (m_at < m_text.size() && m_text[m_at] == '\r') ++m_at;
        if (m_at < m_text.size() && m_text[m_at] == '\n')
            ++m_at;
        else if (m_at >= m_text.size())
            return;
        ++m_line;
    }

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    int m_line = 1;
};

} // namespace

Result<CsvTable> readCsvTable(std::string_view text) {
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
        return refuse("line 1", "the file is in UTF-16: keep it as UTF-8 and try again");
    if (text.starts_with(byteOrderMark)) text.remove_prefix(byteOrderMark.size());
    if (const std::size_t bad = firstBadUtf8(text); bad < text.size())
        return refuse(lineName(1 + std::ranges::count(text.substr(0, bad), '\n')),
                      "what stands here is not UTF-8: keep the file as UTF-8 and try again");
    CsvTable table;
    const std::string_view first = text.substr(0, text.find_first_of("\r\n"));
    for (const char candidate : {';', '\t', ','}) {
        table.separator = candidate;
        if (first.find(candidate) != std::string_view::npos) break;
    }
    auto rows = Splitter(text, table.separator).split();
    if (!rows) return tl::unexpected(rows.error());
    table.rows = std::move(*rows);
    return table;
}

std::string csvField(std::string_view text, char separator) {
    const auto mustQuote = [&](char c) {
        return c == separator || c == '"' || c == '\n' || c == '\r' || c == ',' || c == ';' ||
               c == '\t';
    };
    if (std::ranges::none_of(text, mustQuote)) return std::string(text);
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + "\"";
}

std::string csvText(std::string_view text) {
    return (beginsLikeFormula(text) ? "'" : "") + std::string(text);
}

std::string csvTextFrom(std::string_view field) {
    if (field.starts_with('\'') && beginsLikeFormula(field)) field.remove_prefix(1);
    return std::string(field);
}

} // namespace borewright
