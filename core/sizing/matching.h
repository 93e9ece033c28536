// SPDX-License-Identifier: GPL-3.0-or-later
// Which piston in which bore: the worst departure from the aimed clearance least, then the sum of
// departures (assignment.h), pairs already decided respected.
#pragma once

#include "core/sizing/assignment.h"
#include "core/sizing/clearance.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace borewright {

struct MatchCell {
    std::optional<Clearance> clearance;
    std::string refused; // why there is none
    Length miss;         // |clearance − aim|
    // What the matching would cost with this piston here instead, the two pistons exchanged (or the
    // bore's piston left over): the worst miss and the sum, decided pairs moved as well. Nothing
    // where it is chosen already, where one of the two would not go in, or where the piston is
    // decided for a bore that was not measured.
    struct Swap {
        Length worst;
        Length sum;
    };
    std::optional<Swap> swap;
};

struct Matching {
    std::vector<int> bores;           // numbers, rising
    std::vector<std::size_t> pistons; // places in the record, in their own order: by label (2
                                      // before 10), then size, then id
    std::vector<std::vector<MatchCell>> cells;      // by bore, by piston as above
    std::vector<std::optional<std::size_t>> chosen; // by bore: place in `pistons`
    std::vector<bool> fixed;                        // by bore: decided by the user
    // Worst miss and sum of misses over all bores, decided ones too; a decided pair whose clearance
    // is not known counts 0.
    struct Worth {
        Length worst;
        Length sum;
        std::vector<std::optional<std::size_t>> piston; // by bore
    };
    // The exact best of what is not decided: over those bores alone the worst miss is least, then
    // the sum; decided pairs are only added to its worth. All decided: the worth of those.
    std::optional<Worth> best;
    int equals = 1;                // matchings exactly as good (up to mostTies)
    std::optional<Worth> ownOrder; // first piston in the first bore, …, decided pairs kept
    // The doubt of the difference between two clearances, 95 %: k·√(2·(ownU² + u_piston²)) with the
    // largest of each in the bores not decided; what moves all alike is left out. Nothing where
    // a bore's own is not known, or all are decided.
    std::optional<Length> tellApart;
    // Own order is another matching than the best, its worst miss over the bores not decided is no
    // more than that above the best's there, and no more of its clearances are outside the limits:
    // any of these. `chosen` is then the pistons' own order, unless that leaves more clearances not
    // proven within their limits; else the best.
    bool anyOfThese = false;
    // Why there is no matching: "no clearance to aim at", "2 pistons for 6 bores", "nothing was
    // read where the piston runs in bore 2".
    std::string why;
};

// Matches `fit`'s pistons that have a size and height to the bores, none where it does not go in.
// A decided pair stands whatever its clearance, and its miss counts with the others', as 0 where it
// is not known. Fewer usable pistons than bores: as many bores as there are pistons cannot be
// chosen for him, so no matching, with why; `chosen` then holds the decided pairs. `units` as in
// clearanceOf.
Matching matchPistons(const std::vector<MeasuredBore>& bores, const FitRecord& fit,
                      const std::optional<DisplayUnits>& units = {});

// Bores still to be honed: the finish size that a piston asks for, piston at 20 °C + aimed
// clearance, and its limits.
struct FinishForPiston {
    int bore = 1;
    std::size_t piston = 0; // place in the record
    Length finish;
    std::optional<Length> lower;
    std::optional<Length> upper;
};
// Decided pairs first; the rest in the pistons' own order, bores by number. `taken`: ids of pistons
// that go elsewhere though nothing is decided, as those proposed for finished bores; they are not
// dealt. Refuses: no aim, fewer pistons than bores, a decided piston without size or height.
Result<std::vector<FinishForPiston>> finishForPistons(const std::vector<int>& bores,
                                                      const FitRecord& fit,
                                                      const std::set<std::string>& taken = {});

// Places of pistons in their own order (see Matching::pistons).
std::vector<std::size_t> ownOrder(const std::vector<Piston>& pistons);

} // namespace borewright
