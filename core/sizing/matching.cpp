// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/matching.h"

#include "core/sizing/guarded.h"
#include "core/sizing/match_table.h"

#include <algorithm>
#include <numbers>

namespace borewright {
namespace {

using Worth = Matching::Worth;

Length lengthOf(std::int64_t cost) {
    return Length::fromPicometres(cost);
}

std::optional<Worth> worthOf(const AssignmentProblem& pairs, const std::vector<int>& column) {
    const auto cost = costOf(pairs, column);
    if (!cost) return std::nullopt;
    return Worth{lengthOf(cost->worst), lengthOf(cost->sum), {column.begin(), column.end()}};
}

// Decided pairs, then the first piston left to the first bore left. Nothing for a bore (−1) where
// none is left.
std::vector<int> inOwnOrder(const MatchTable& table) {
    std::vector<int> column;
    std::size_t next = 0;
    for (std::size_t i = 0; i < table.bores.size(); ++i) {
        if (table.matching.fixed[i]) {
            column.push_back(static_cast<int>(*table.matching.chosen[i]));
            continue;
        }
        while (next < table.pistons.size() &&
               (table.pistons[next]->bore || !sizeOf(*table.pistons[next])))
            ++next;
        column.push_back(next < table.pistons.size() ? static_cast<int>(next) : -1);
        ++next;
    }
    return column;
}

// k·√(2·(ownU² + u_piston²)), with the largest of each: bores all, pistons those of either
// matching.
std::optional<Length> tellApart(const MatchTable& table) {
    Length bore;
    double coverage = 0;
    for (const MeasuredBore* one : table.bores) {
        if (!one->ownU) return std::nullopt;
        bore = std::max(bore, *one->ownU);
        coverage = std::max(coverage, one->coverage);
    }
    Length piston;
    for (const auto& worth : {table.matching.best, table.matching.ownOrder})
        if (worth)
            for (const auto& place : worth->piston)
                if (const auto size = sizeOf(*table.pistons[*place]); size && size->u)
                    piston = std::max(piston, *size->u);
    return Length::nearest(coverage * std::numbers::sqrt2 *
                               together(bore, piston).in(Unit::micrometre),
                           Unit::micrometre);
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
void choose(Matching& matching) {
    const auto& best = matching.best;
    const auto& own = matching.ownOrder;
    const auto& doubt = matching.tellApart;
    matching.anyOfThese = own && doubt && own->piston != best->piston &&
                          own->worst - best->worst <= *doubt &&
                          unprovenIn(matching, *own).outside <= unprovenIn(matching, *best).outside;
    const bool keepOrder = matching.anyOfThese && unprovenIn(matching, *own).open <=
                                                      unprovenIn(matching, *best).open;
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

Matching matchPistons(const std::vector<MeasuredBore>& bores, const FitRecord& fit) {
    MatchTable table = layOut(bores, fit);
    Matching& matching = table.matching;
    if (!matching.why.empty()) return matching;
    const auto found = assign(table.open);
    if (!found) {
        matching.why = "no way to give every bore a piston that goes in";
        return matching;
    }
    matching.best = worthOf(table.open, found->column);
    matching.equals = found->equals;
    matching.ownOrder = worthOf(table.open, inOwnOrder(table));
    matching.tellApart = tellApart(table);
    choose(matching);
    fillSwaps(table);
    return matching;
}

} // namespace borewright
