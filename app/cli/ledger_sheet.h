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
    [[nodiscard]] std::string table() const;
    [[nodiscard]] std::string csv() const;                         // RFC 4180
    [[nodiscard]] std::string json(const std::string& list) const; // under this name

private:
    std::vector<LedgerSheetRow> m_rows;
};

} // namespace borewright
