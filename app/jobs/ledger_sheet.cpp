// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/jobs/ledger_sheet.h"

#include "core/results/csv_cell.h"

#include <fmt/format.h>

namespace borewright {
namespace {

std::string spaced(std::string key) {
    for (char& c : key)
        if (c == '_') c = ' ';
    return key;
}

std::string joined(const std::vector<std::string>& cells) {
    std::string line;
    for (const std::string& cell : cells)
        line += (&cell == cells.data() ? "" : ",") + cell;
    return line + "\r\n";
}

} // namespace

LedgerSheetRow& LedgerSheetRow::add(Cell cell) {
    m_cells.push_back(std::move(cell));
    return *this;
}

LedgerSheetRow& LedgerSheetRow::text(const std::string& key, const std::string& value,
                                     bool inTable) {
    const std::string head = spaced(key);
    // What was typed may hold a line break; a row of the table is one line.
    std::string shown = value.empty() ? "-" : value;
    for (char& c : shown)
        if (static_cast<unsigned char>(c) < ' ') c = ' ';
    return add({key, head, head, shown, csvCell(value), value, inTable});
}

LedgerSheetRow& LedgerSheetRow::number(const std::string& key, double value, int decimals,
                                       bool inTable) {
    const std::string shown = fmt::format("{:.{}f}", value, decimals);
    nlohmann::ordered_json json = value;
    if (decimals == 0) json = static_cast<std::int64_t>(value);
    return add({key, spaced(key), spaced(key), shown, shown, json, inTable, true});
}

LedgerSheetRow& LedgerSheetRow::perStroke(const std::string& key, double micrometres) {
    constexpr double micrometresPerThou = 25.4;
    const bool inch = m_fixed && isInchFamily(m_fixed->size);
    const std::string shown = inch ? fmt::format("{:.4f} thou", micrometres / micrometresPerThou)
                                   : fmt::format("{:.3f} µm", micrometres);
    std::string head = spaced(key);
    if (const auto unit = head.find("um "); unit != std::string::npos) head.erase(unit, 3);
    return add({key, head, spaced(key), shown, fmt::format("{:.3f}", micrometres), micrometres,
                true, true});
}

LedgerSheetRow& LedgerSheetRow::size(const std::string& key, const std::optional<Length>& value,
                                     const DisplayUnits& units, bool inTable) {
    const std::string shown = value ? sizeWithUnit(*value, m_fixed.value_or(units)) : "-";
    return length(key, value, shown, Unit::inch, Unit::millimetre, inTable);
}

LedgerSheetRow& LedgerSheetRow::small(const std::string& key, const std::optional<Length>& value,
                                      const DisplayUnits& units, bool inTable) {
    const std::string shown = value ? smallWithUnit(*value, m_fixed.value_or(units)) : "-";
    return length(key, value, shown, Unit::inch, Unit::millimetre, inTable);
}

LedgerSheetRow& LedgerSheetRow::length(const std::string& key, const std::optional<Length>& value,
                                       const std::string& shown, Unit inch, Unit metric,
                                       bool inTable) {
    const Unit unit = m_fixed && isInchFamily(m_fixed->size) ? inch : metric;
    nlohmann::ordered_json json;
    if (value) json = value->in(Unit::millimetre);
    return add({key + "_mm", spaced(key),
                spaced(key) + " (" + std::string(borewright::key(unit)) + ")", shown,
                value ? format(*value, unit, usualDecimals(unit) + 1, Sign::plain) : std::string(),
                json, inTable, true});
}

std::vector<std::vector<std::string>> LedgerSheet::table() const {
    if (m_rows.empty()) return {};
    std::vector<std::vector<std::string>> rows(1);
    for (const LedgerSheetRow& row : m_rows) {
        std::vector<std::string> cells;
        for (const auto& cell : row.m_cells) {
            if (!cell.inTable) continue;
            cells.push_back(cell.shown);
            if (&row == m_rows.data()) rows.front().push_back(cell.head);
        }
        rows.push_back(std::move(cells));
    }
    return rows;
}

std::vector<bool> LedgerSheet::figures() const {
    std::vector<bool> are;
    if (m_rows.empty()) return are;
    for (const auto& cell : m_rows.front().m_cells)
        if (cell.inTable) are.push_back(cell.figure);
    return are;
}

std::string LedgerSheet::textOf(std::size_t row, const std::string& key) const {
    for (const auto& cell : m_rows.at(row).m_cells)
        if (cell.key == key && cell.json.is_string()) return cell.json.get<std::string>();
    return {};
}

void LedgerSheet::cut(std::size_t most) {
    if (m_rows.size() > most)
        m_rows.erase(m_rows.begin() + static_cast<std::ptrdiff_t>(most), m_rows.end());
}

std::string LedgerSheet::csv() const {
    std::string text;
    for (const LedgerSheetRow& row : m_rows) {
        std::vector<std::string> heads, cells;
        for (const auto& cell : row.m_cells) {
            heads.push_back(cell.csvHead);
            cells.push_back(cell.csv);
        }
        if (&row == m_rows.data()) text += joined(heads);
        text += joined(cells);
    }
    return text;
}

std::string LedgerSheet::json(const std::string& list) const {
    auto rows = nlohmann::ordered_json::array();
    for (const LedgerSheetRow& row : m_rows) {
        auto object = nlohmann::ordered_json::object();
        for (const auto& cell : row.m_cells)
            object[cell.key] = cell.json;
        rows.push_back(std::move(object));
    }
    nlohmann::ordered_json whole;
    whole["format"] = "borewright ledger";
    whole[list] = std::move(rows);
    return whole.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

} // namespace borewright
