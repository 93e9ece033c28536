// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/match_table.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

void fillCells(MatchTable& table, const FitLimits& limits,
               const std::optional<DisplayUnits>& units) {
    const auto aim = aimOf(limits);
    for (const MeasuredBore* bore : table.bores) {
        std::vector<MatchCell>& row = table.matching.cells.emplace_back();
        for (const Piston* piston : table.pistons) {
            MatchCell& cell = row.emplace_back();
            auto clearance = clearanceOf(*bore, *piston, limits, units);
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
    for (std::size_t i = 0; i < table.bores.size(); ++i)
        for (std::size_t j = 0; j < table.pistons.size(); ++j) {
            const MatchCell& cell = matching.cells[i][j];
            const bool decided = matching.fixed[i] && matching.chosen[i] == j;
            const bool goesIn = cell.clearance && cell.clearance->value > Length() &&
                                !isElsewhere(table, *table.pistons[j]);
            std::optional<std::int64_t> cost;
            if (decided || goesIn) cost = cell.miss.picometres();
            table.pairs.cost.push_back(cost);
        }
}

void fillOpen(MatchTable& table) {
    for (std::size_t i = 0; i < table.bores.size(); ++i)
        if (!table.matching.fixed[i]) table.openBores.push_back(i);
    for (std::size_t j = 0; j < table.pistons.size(); ++j)
        if (!table.pistons[j]->bore && sizeOf(*table.pistons[j])) table.openPistons.push_back(j);
    table.open.rows = static_cast<int>(table.openBores.size());
    table.open.columns = static_cast<int>(table.openPistons.size());
    for (const std::size_t i : table.openBores)
        for (const std::size_t j : table.openPistons)
            table.open.cost.push_back(table.pairs.cost[i * table.pistons.size() + j]);
}

std::string counted(std::size_t count, const char* thing) {
    return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

// Bores not decided of which only what no piston runs in was read: "bores 2, 5".
std::string notReadWords(const MatchTable& table) {
    std::vector<int> numbers;
    for (const std::size_t i : table.openBores)
        if (std::ranges::all_of(table.bores[i]->at,
                                [](const MeasuredAt& at) { return at.zone == Zone::ridgeLand; }))
            numbers.push_back(table.bores[i]->bore);
    if (numbers.empty()) return {};
    return fmt::format("bore{} {}", numbers.size() == 1 ? "" : "s", fmt::join(numbers, ", "));
}

std::string whyNone(const MatchTable& table, const FitLimits& limits) {
    if (table.bores.empty()) return "no bore measured";
    if (table.pistons.empty()) return "no pistons";
    if (!aimOf(limits)) return "no clearance to aim at";
    if (table.openBores.size() > static_cast<std::size_t>(mostRows))
        return fmt::format("more than {} bores", mostRows);
    if (const std::string bores = notReadWords(table); !bores.empty())
        return "nothing was read where the piston runs in " + bores;
    if (table.openPistons.size() >= table.openBores.size()) return {};
    const std::size_t decided = table.bores.size() - table.openBores.size();
    const auto notDecided = static_cast<std::size_t>(std::ranges::count_if(
        table.pistons, [](const Piston* piston) { return !piston->bore.has_value(); }));
    return counted(decided + table.openPistons.size(), "piston") +
           (table.openPistons.size() < notDecided ? " with size and measuring height" : "") +
           " for " + counted(table.bores.size(), "bore");
}

} // namespace

MatchTable layOut(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                  const std::optional<DisplayUnits>& units) {
    MatchTable table;
    for (const MeasuredBore& bore : bores)
        table.bores.push_back(&bore);
    std::ranges::stable_sort(table.bores, {}, &MeasuredBore::bore);
    for (const MeasuredBore* bore : table.bores)
        table.matching.bores.push_back(bore->bore);
    table.matching.pistons = ownOrder(fit.pistons);
    for (const std::size_t place : table.matching.pistons)
        table.pistons.push_back(&fit.pistons[place]);
    fillCells(table, fit.clearance, units);
    keepDecided(table);
    fillCosts(table);
    fillOpen(table);
    table.matching.why = whyNone(table, fit.clearance);
    return table;
}

} // namespace borewright
