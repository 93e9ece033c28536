// SPDX-License-Identifier: GPL-3.0-or-later
// What the user says for choosing the size: damage that no gauge sees, which side is worn, what
// sizes there are, how the cut is made. What follows from it is reckoned in core/sizing.
#pragma once

#include "core/workbook/block.h"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

inline constexpr std::size_t mostSizesOnOffer = 50;
inline constexpr std::size_t mostDamages = 50; // of one bore

// A score, pit or ring mark: deeper than the wall around it.
struct Damage {
    TypedLength depth; // along the bore
    std::string axis;  // id of the axis on whose line it lies; empty = not said
    TypedLength deep;  // into the wall, > 0: half of what it adds to the diameter
    bool felt = false; // "feels about": not measured, taken as ± half of `deep`
    std::string what;  // "score, exhaust side"
    UnknownFields unknown{};
    friend bool operator==(const Damage&, const Damage&) = default;
};

// On which side a bore wore. A gauge with two contacts cannot tell.
enum class WearSide {
    notSaid, // reckoned as one side, the worse, and said so
    oneSide,
    bothSides, // alike
};

struct BoreWear {
    WearSide side = WearSide::notSaid;
    std::optional<TypedLength> madeTo; // last bored to; nothing = the standard size
    std::vector<Damage> damages;
    UnknownFields unknown{};
    friend bool operator==(const BoreWear&, const BoreWear&) = default;
};

// One of the sizes that pistons are to be had for.
struct SizeOnOffer {
    TypedLength oversize;             // above the standard size; 0 = standard
    std::optional<TypedLength> lower; // smallest and largest finished size; nothing = the limits of
    std::optional<TypedLength> upper; // the finish set with this oversize, if there is one
    UnknownFields unknown{};
    friend bool operator==(const SizeOnOffer&, const SizeOnOffer&) = default;
};

enum class CutMethod {
    honeOnly,    // a hone follows the worn bore
    boreAndHone, // a boring bar first, then the hone
};
// Where the new bore's axis lies.
enum class Centring { wornBore, originalAxis };

struct SizingPlan {
    std::vector<SizeOnOffer> sizes;      // by rising oversize
    std::optional<TypedLength> greatest; // the engine maker's greatest oversize
    CutMethod method = CutMethod::honeOnly;
    // Nothing = as the method: a hone stays on the worn bore, a bar is set on the original axis.
    std::optional<Centring> centring;
    // On the diameter; nothing = common practice (core/sizing/clean_up.h).
    std::optional<TypedLength> finishAllowance; // to come off below the deepest mark
    std::optional<TypedLength> honeStock;       // left for the hone by the bar
    bool ownSizes = false;                      // each bore may have a size of its own
    std::map<int, BoreWear> bores;              // by engine number
    UnknownFields unknown{};
    friend bool operator==(const SizingPlan&, const SizingPlan&) = default;
};

// Where the cut is centred under this plan.
Centring centringOf(const SizingPlan& plan);

// What the hone aims at in one bore, handed over from choosing the size or from its piston.
struct FinishTarget {
    TypedLength size;
    std::optional<TypedLength> lower; // smallest and largest finished size
    std::optional<TypedLength> upper;
    std::string from; // "0.020 in over", "piston 3 and 4.2 thou"
    UnknownFields unknown{};
    friend bool operator==(const FinishTarget&, const FinishTarget&) = default;
};
using FinishTargets = std::map<int, FinishTarget>; // by engine number

// Refuse, with the place, what cannot stand: sizes out of order or repeated, limits crossed or
// away from their size by more than a tenth, damage of no depth, allowances below nothing.
Result<void> checkSizing(const SizingPlan& plan);
// The same beside a block: a size that a bore cannot have been made to, damage below its closed
// end, limits that belong to no bore's standard size + oversize.
Result<void> checkSizing(const SizingPlan& plan, const Block& block);
// Whether a finished size may be a limit of this nominal size: within 0.2 % of it, seven thou at
// 3.5 in. More is a slip of the hand, such as the limits of another oversize.
bool limitBelongs(Length limit, Length nominal);
Result<void> checkTargets(const FinishTargets& targets);

} // namespace borewright
