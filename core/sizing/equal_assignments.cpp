// SPDX-License-Identifier: GPL-3.0-or-later
// Columns left over are taken by idle rows behind the real ones, which may have any column that a
// best assignment can do without; so the tight pairs always hold a complete pairing, and changing
// one pair means finding one alternating path (Burkard et al., section 3.2). Idle rows may all have
// the same columns, so that what one of them cannot do none can: they are kept as one, which holds
// several columns and is asked once a search.
#include "core/sizing/equal_assignments.h"

#include <algorithm>
#include <numeric>

namespace borewright {
namespace {

class Enumeration {
public:
    Enumeration(const AssignmentProblem& problem, std::int64_t most, const LeastSum& least)
        : m_rows(static_cast<std::size_t>(problem.rows))
        , m_tight(m_rows + 1)
        , m_column(least.column.begin(), least.column.end()) {
        for (int i = 0; i < problem.rows; ++i)
            for (int j = 0; j < problem.columns; ++j)
                if (isOpen(problem, i, j, most) && isTight(problem, least, i, j))
                    m_tight[static_cast<std::size_t>(i)].push_back(static_cast<std::size_t>(j));
        addIdleRow(least);
    }

    EqualAssignments run() {
        place(0);
        return std::move(m_found);
    }

private:
    static bool isTight(const AssignmentProblem& problem, const LeastSum& least, int row,
                        int column) {
        const auto i = static_cast<std::size_t>(row);
        const auto j = static_cast<std::size_t>(column);
        const auto cost = problem.cost[i * least.columnValue.size() + j];
        return least.columnValue[j] <= least.spare &&
               *cost == least.columnValue[j] - least.rowValue[i];
    }

    void addIdleRow(const LeastSum& least) {
        m_spare.assign(least.columnValue.size(), false);
        m_owner.assign(least.columnValue.size(), m_rows);
        for (std::size_t j = 0; j < least.columnValue.size(); ++j)
            if (least.columnValue[j] >= least.spare) {
                m_spare[j] = true;
                m_tight[m_rows].push_back(j);
            }
        for (std::size_t i = 0; i < m_rows; ++i)
            m_owner[m_column[i]] = i;
    }

    // Every equal in which the rows before `row` stay as they stand.
    void place(std::size_t row) {
        if (row == m_rows) {
            if (m_found.count++ == 0) m_found.first.assign(m_column.begin(), m_column.end());
            return;
        }
        for (const std::size_t column : m_tight[row]) {
            if (m_found.count == mostTies) return;
            if (take(row, column)) place(row + 1);
        }
    }

    // Gives `row` the column, and whoever had it another one, without touching the rows before.
    bool take(std::size_t row, std::size_t column) {
        if (m_column[row] == column) return true;
        const std::size_t owner = m_owner[column];
        if (owner < row) return false;
        m_seen.assign(m_owner.size(), false);
        m_seen[column] = true;
        m_idleSeen = false;
        if (!moveAway(owner, m_column[row], row)) return false;
        settle(row, column);
        return true;
    }

    // Moves `row` to another column, in the end to the `vacant` one.
    bool moveAway(std::size_t row, std::size_t vacant, std::size_t fixedTo) {
        if (row == m_rows) {
            if (m_idleSeen) return false;
            m_idleSeen = true;
            if (m_spare[vacant]) {
                settle(row, vacant);
                return true;
            }
        }
        for (const std::size_t column : m_tight[row]) {
            if (m_seen[column] || m_owner[column] < fixedTo) continue;
            m_seen[column] = true;
            if (column == vacant || moveAway(m_owner[column], vacant, fixedTo)) {
                settle(row, column);
                return true;
            }
        }
        return false;
    }

    void settle(std::size_t row, std::size_t column) {
        if (row < m_rows) m_column[row] = column;
        m_owner[column] = row;
    }

    std::size_t m_rows;
    std::vector<std::vector<std::size_t>> m_tight; // by row, the idle one last: columns, rising
    std::vector<std::size_t> m_column;             // by row, without the idle one
    std::vector<std::size_t> m_owner;              // by column
    std::vector<bool> m_spare;                     // by column: the idle row may hold it
    std::vector<bool> m_seen;
    bool m_idleSeen = false;
    EqualAssignments m_found;
};

} // namespace

EqualAssignments equalAssignments(const AssignmentProblem& problem, std::int64_t most,
                                  const LeastSum& least) {
    return Enumeration(problem, most, least).run();
}

} // namespace borewright
