// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/matching.h"

#include "core/sizing/guarded.h"
#include "core/sizing/match_table.h"

#include <algorithm>
#include <numbers>
#include <numeric>

namespace borewright {
namespace {

using Worth = Matching::Worth;

Length lengthOf(std::int64_t cost) {
    return Length::fromPicometres(cost);
}

// The pistons by bore, decided ones with what was dealt to the rest, and their worth.
std::optional<Worth> worthOf(const MatchTable& table, const std::vector<int>& dealt) {
    std::vector<int> column;
    std::size_t next = 0;
    for (std::size_t i = 0; i < table.bores.size(); ++i) {
        const auto place = table.matching.fixed[i]
                               ? *table.matching.chosen[i]
                               : table.openPistons[static_cast<std::size_t>(dealt[next++])];
        column.push_back(static_cast<int>(place));
    }
    const auto cost = costOf(table.pairs, column);
    if (!cost) return std::nullopt;
    return Worth{lengthOf(cost->worst), lengthOf(cost->sum), {column.begin(), column.end()}};
}

// k·√(2·(ownU² + u_piston²)), with the largest of each: bores not decided, pistons those of either
// matching there.
std::optional<Length> tellApart(const MatchTable& table) {
    if (table.openBores.empty()) return std::nullopt;
    Length bore;
    Length piston;
    double coverage = 0;
    for (const std::size_t i : table.openBores) {
        const MeasuredBore& one = *table.bores[i];
        if (!one.ownU) return std::nullopt;
        bore = std::max(bore, *one.ownU);
        coverage = std::max(coverage, one.coverage);
        for (const auto& worth : {table.matching.best, table.matching.ownOrder})
            if (worth)
                if (const auto size = sizeOf(*table.pistons[*worth->piston[i]]); size && size->u)
                    piston = std::max(piston, *size->u);
    }
    return Length::nearest(coverage * std::numbers::sqrt2 *
                               together(bore, piston).in(Unit::micrometre),
                           Unit::micrometre);
}

// The largest miss among the bores not decided.
Length worstOpen(const MatchTable& table, const Worth& worth) {
    Length worst;
    for (const std::size_t i : table.openBores)
        worst = std::max(worst, table.matching.cells[i][*worth.piston[i]].miss);
    return worst;
}

// How many of its clearances are outside their limits, and how many are not proven within.
struct Unproven {
    int outside = 0;
    int open = 0;
};
Unproven unprovenIn(const Matching& matching, const Worth& worth) {
    Unproven count;
    for (std::size_t i = 0; i < worth.piston.size(); ++i) {
        const auto& clearance = matching.cells[i][*worth.piston[i]].clearance;
        if (!clearance || clearance->verdict == Verdict::within) continue;
        ++count.open;
        if (clearance->verdict == Verdict::outside) ++count.outside;
    }
    return count;
}

// The pistons' own order where the readings cannot tell it from the best, and it leaves no more to
// be proven to the customer.
void choose(MatchTable& table) {
    Matching& matching = table.matching;
    const auto& best = matching.best;
    const auto& own = matching.ownOrder;
    const auto& doubt = matching.tellApart;
    matching.anyOfThese = own && doubt && own->piston != best->piston &&
                          worstOpen(table, *own) - worstOpen(table, *best) <= *doubt &&
                          unprovenIn(matching, *own).outside <= unprovenIn(matching, *best).outside;
    const bool keepOrder =
        matching.anyOfThese && unprovenIn(matching, *own).open <= unprovenIn(matching, *best).open;
    matching.chosen = keepOrder ? own->piston : best->piston;
}

void fillSwaps(MatchTable& table) {
    Matching& matching = table.matching;
    std::vector<int> chosen;
    for (const auto& place : matching.chosen)
        chosen.push_back(static_cast<int>(*place));
    for (std::size_t i = 0; i < table.bores.size(); ++i)
        for (std::size_t j = 0; j < table.pistons.size(); ++j) {
            if (matching.chosen[i] == j) continue;
            std::vector<int> swapped = chosen;
            std::ranges::replace(swapped, static_cast<int>(j), chosen[i]);
            swapped[i] = static_cast<int>(j);
            if (const auto cost = costOf(table.pairs, swapped))
                matching.cells[i][j].swap = {lengthOf(cost->worst), lengthOf(cost->sum)};
        }
}

} // namespace

Matching matchPistons(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                      const std::optional<DisplayUnits>& units) {
    MatchTable table = layOut(bores, fit, units);
    Matching& matching = table.matching;
    if (!matching.why.empty()) return std::move(matching);
    const auto found = assign(table.open); // nothing is open where all is decided
    if (!found) {
        matching.why = "no way to give every bore a piston that goes in";
        return std::move(matching);
    }
    std::vector<int> inOrder(table.openBores.size());
    std::iota(inOrder.begin(), inOrder.end(), 0);
    matching.best = worthOf(table, found->column);
    matching.equals = found->equals;
    matching.ownOrder = worthOf(table, inOrder);
    matching.tellApart = tellApart(table);
    choose(table);
    fillSwaps(table);
    return std::move(matching);
}

} // namespace borewright
