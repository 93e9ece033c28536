// SPDX-License-Identifier: GPL-3.0-or-later
// What the ledger answers, as a table, as CSV or as JSON.
#pragma once

#include "core/length/format.h"

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// A row, cell by cell, the same cells in every row.
class LedgerSheetRow {
public:
    // `fixed` counts before a job's own units; CSV is in millimetres without it.
    explicit LedgerSheetRow(const std::optional<DisplayUnits>& fixed)
        : m_fixed(fixed) {}

    LedgerSheetRow& text(const std::string& key, const std::string& value, bool inTable = true);
    LedgerSheetRow& number(const std::string& key, double value, int decimals, bool inTable = true);
    // `key` without its unit; a size with its unit in the table, to a tenth of a thou or a µm.
    LedgerSheetRow& size(const std::string& key, const std::optional<Length>& value,
                         const DisplayUnits& units, bool inTable = true);
    // What comes off the diameter a stroke, `key` beginning with its unit ("um_per_stroke"); thou
    // in the table where inches are fixed.
    LedgerSheetRow& perStroke(const std::string& key, double micrometres);
    // The same of a small amount.
    LedgerSheetRow& small(const std::string& key, const std::optional<Length>& value,
                          const DisplayUnits& units, bool inTable = true);

private:
    friend class LedgerSheet;
    struct Cell {
        std::string key;
        std::string head; // of the table
        std::string csvHead;
        std::string shown;
        std::string csv;
        nlohmann::ordered_json json;
        bool inTable = true;
        bool figure = false;
    };
    LedgerSheetRow& length(const std::string& key, const std::optional<Length>& value,
                           const std::string& shown, Unit inch, Unit metric, bool inTable);
    LedgerSheetRow& add(Cell cell);

    std::optional<DisplayUnits> m_fixed;
    std::vector<Cell> m_cells;
};

class LedgerSheet {
public:
    void add(LedgerSheetRow row) { m_rows.push_back(std::move(row)); }
    [[nodiscard]] bool empty() const { return m_rows.empty(); }
    [[nodiscard]] std::size_t size() const { return m_rows.size(); }
    // The text of the row's cell of this key; empty where it has none.
    [[nodiscard]] std::string textOf(std::size_t row, const std::string& key) const;
    // No more than the first so many rows.
    void cut(std::size_t most);
    // Rows of cells, the first of them the heads; nothing where there are no rows.
    [[nodiscard]] std::vector<std::vector<std::string>> table() const;
    // Which columns of the table hold figures.
    [[nodiscard]] std::vector<bool> figures() const;
    [[nodiscard]] std::string csv() const;                         // RFC 4180
    [[nodiscard]] std::string json(const std::string& list) const; // under this name

private:
    std::vector<LedgerSheetRow> m_rows;
};

} // namespace borewright
