// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/csv_rows.h"

#include <algorithm>

namespace borewright {
namespace {

constexpr std::size_t mostCells = 1000;
constexpr std::string_view formulaStarts = "=+-@\t\r";

char separatorOf(std::string_view text) {
    const std::string_view first = text.substr(0, text.find('\n'));
    char best = ',';
    auto most = std::ranges::count(first, ',');
    for (const char candidate : {';', '\t'})
        if (const auto count = std::ranges::count(first, candidate); count > most) {
            best = candidate;
            most = count;
        }
    return best;
}

std::string trimmed(std::string_view text) {
    const auto start = text.find_first_not_of(" \t\r");
    if (start == std::string_view::npos) return {};
    return std::string(text.substr(start, text.find_last_not_of(" \t\r") - start + 1));
}

class RowReader {
public:
    explicit RowReader(std::string_view text)
        : m_text(text)
        , m_separator(separatorOf(text)) {}

    Result<std::vector<CsvRow>> read() {
        std::vector<CsvRow> rows;
        while (m_at < m_text.size()) {
            CsvRow row;
            row.line = m_line;
            if (auto good = readRow(row); !good) return tl::unexpected(good.error());
            const bool empty =
                std::ranges::all_of(row.cells, [](const auto& cell) { return cell.empty(); });
            if (!empty) rows.push_back(std::move(row));
        }
        return rows;
    }

private:
    Result<void> readRow(CsvRow& row) {
        for (;;) {
            if (row.cells.size() == mostCells)
                return refuse("line " + std::to_string(row.line), "has over 1000 cells");
            if (auto good = readCell(row); !good) return good;
            if (m_at == m_text.size()) return {};
            const char end = m_text[m_at++];
            if (end == '\n') {
                ++m_line;
                return {};
            }
        }
    }

    // Leaves m_at on the separator, the line's end or the text's.
    Result<void> readCell(CsvRow& row) {
        std::size_t start = m_at;
        while (start < m_text.size() && m_text[start] == ' ')
            ++start;
        if (start < m_text.size() && m_text[start] == '"') {
            m_at = start + 1;
            return readQuoted(row);
        }
        while (m_at < m_text.size() && m_text[m_at] != m_separator && m_text[m_at] != '\n')
            ++m_at;
        row.cells.push_back(trimmed(m_text.substr(start, m_at - std::min(start, m_at))));
        return {};
    }

    Result<void> readQuoted(CsvRow& row) {
        const int opened = m_line;
        std::string cell;
        for (;; ++m_at) {
            if (m_at == m_text.size())
                return refuse("line " + std::to_string(opened), "a quote is never closed");
            const char c = m_text[m_at];
            if (c == '"') {
                if (m_at + 1 == m_text.size() || m_text[m_at + 1] != '"') break;
                ++m_at;
            }
            if (c == '\n') ++m_line;
            cell += c;
        }
        ++m_at;
        while (m_at < m_text.size() && (m_text[m_at] == ' ' || m_text[m_at] == '\r'))
            ++m_at;
        if (m_at < m_text.size() && m_text[m_at] != m_separator && m_text[m_at] != '\n')
            return refuse("line " + std::to_string(m_line), "text stands behind a closing quote");
        row.cells.push_back(std::move(cell));
        return {};
    }

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    int m_line = 1;
};

} // namespace

Result<std::vector<CsvRow>> readCsvRows(std::string_view text) {
    return RowReader(text).read();
}

std::string csvCell(std::string_view text) {
    const bool spaced = !text.empty() && (text.front() == ' ' || text.back() == ' ');
    if (!spaced && text.find_first_of(",;\"\t\r\n") == std::string_view::npos)
        return std::string(text);
    std::string cell = "\"";
    for (const char c : text) {
        if (c == '"') cell += '"';
        cell += c;
    }
    return cell + '"';
}

// An apostrophe that was there is doubled up as well, so that taking one off gives back the text.
std::string guardedCell(std::string_view text) {
    const bool guard = !text.empty() && (text.front() == '\'' || formulaStarts.find(text.front()) !=
                                                                     std::string_view::npos);
    return csvCell(guard ? "'" + std::string(text) : std::string(text));
}

std::string unguardedCell(std::string_view text) {
    const bool guarded = text.size() > 1 && text[0] == '\'' &&
                         (text[1] == '\'' || formulaStarts.find(text[1]) != std::string_view::npos);
    return std::string(guarded ? text.substr(1) : text);
}

} // namespace borewright
