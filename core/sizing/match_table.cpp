// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/match_table.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

void fillCells(MatchTable& table, const FitLimits& limits) {
    const auto aim = aimOf(limits);
    for (const MeasuredBore* bore : table.bores) {
        std::vector<MatchCell>& row = table.matching.cells.emplace_back();
        for (const Piston* piston : table.pistons) {
            MatchCell& cell = row.emplace_back();
            auto clearance = clearanceOf(*bore, *piston, limits);
            if (!clearance) {
                cell.refused = clearance.error().message();
                continue;
            }
            if (aim) cell.miss = (clearance->value - *aim).magnitude();
            cell.clearance = std::move(*clearance);
        }
    }
}

// The first in the pistons' own order, should a bore have two.
void keepDecided(MatchTable& table) {
    for (const int bore : table.matching.bores) {
        const auto decided = std::ranges::find(table.pistons, std::optional(bore), &Piston::bore);
        const bool found = decided != table.pistons.end();
        table.matching.fixed.push_back(found);
        table.matching.chosen.push_back(
            found ? std::optional(static_cast<std::size_t>(decided - table.pistons.begin()))
                  : std::nullopt);
    }
}

bool isElsewhere(const MatchTable& table, const Piston& piston) {
    return piston.bore &&
           std::ranges::find(table.matching.bores, *piston.bore) == table.matching.bores.end();
}

void fillCosts(MatchTable& table) {
    const Matching& matching = table.matching;
    table.pairs.rows = static_cast<int>(table.bores.size());
    table.pairs.columns = static_cast<int>(table.pistons.size());
    table.open = table.pairs;
    for (std::size_t i = 0; i < table.bores.size(); ++i)
        for (std::size_t j = 0; j < table.pistons.size(); ++j) {
            const MatchCell& cell = matching.cells[i][j];
            const bool decided = matching.fixed[i] && matching.chosen[i] == j;
            const bool goesIn = cell.clearance && cell.clearance->value > Length() &&
                                !isElsewhere(table, *table.pistons[j]);
            std::optional<std::int64_t> cost;
            if (decided || goesIn) cost = cell.miss.picometres();
            table.pairs.cost.push_back(cost);
            const bool isOpen = decided || !matching.fixed[i];
            table.open.cost.push_back(isOpen ? cost : std::nullopt);
        }
}

std::string counted(std::size_t count, const char* thing) {
    return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

std::string whyNone(const MatchTable& table, const FitLimits& limits) {
    if (table.bores.empty()) return "no bore measured";
    if (table.pistons.empty()) return "no pistons";
    if (!aimOf(limits)) return "no clearance to aim at";
    if (table.bores.size() > static_cast<std::size_t>(mostRows))
        return fmt::format("more than {} bores", mostRows);
    std::size_t here = 0;
    std::size_t usable = 0;
    for (const Piston* piston : table.pistons)
        if (!isElsewhere(table, *piston)) {
            ++here;
            if (piston->bore || sizeOf(*piston)) ++usable;
        }
    if (usable >= table.bores.size()) return {};
    return counted(usable, "piston") + (usable < here ? " with size and measuring height" : "") +
           " for " + counted(table.bores.size(), "bore");
}

} // namespace

MatchTable layOut(const std::vector<MeasuredBore>& bores, const FitRecord& fit) {
    MatchTable table;
    for (const MeasuredBore& bore : bores)
        table.bores.push_back(&bore);
    std::ranges::stable_sort(table.bores, {}, &MeasuredBore::bore);
    for (const MeasuredBore* bore : table.bores)
        table.matching.bores.push_back(bore->bore);
    table.matching.pistons = ownOrder(fit.pistons);
    for (const std::size_t place : table.matching.pistons)
        table.pistons.push_back(&fit.pistons[place]);
    fillCells(table, fit.clearance);
    keepDecided(table);
    fillCosts(table);
    table.matching.why = whyNone(table, fit.clearance);
    return table;
}

} // namespace borewright
