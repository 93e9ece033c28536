// SPDX-License-Identifier: GPL-3.0-or-later
// Which size on offer cleans up the block: margin = finish size − clean-up size − finish allowance.
// It cleans where margin ≥ w, does not where margin < −w, else it is too close to call;
// w = k·u of the clean-up size by the rule of a verdict (5 % risk: 1.65), 0 where u is not known;
// a place that is known less well than the deciding one widens it (guardBand in clean_up.h).
// Noise raises the largest of many readings: "cleans" is surer than the rule promises, "does not
// clean" less sure, where many places ask for nearly the same.
// All bores of a block go to the smallest oversize that cleans up the worst: common practice, no
// source.
#pragma once

#include "core/sizing/clean_up.h"
#include "core/verdict/verdict.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// What can be had for one bore.
struct OfferedBore {
    Length finish; // what the hone would aim at
    std::optional<Length> lower;
    std::optional<Length> upper;
};
struct Offer {
    std::string name;               // "0.020 in", "standard", "pistons at hand"
    std::optional<Length> oversize; // nothing = pistons at hand
    bool beyondGreatest = false;    // more than the engine maker allows: never advised
    std::vector<std::optional<OfferedBore>> bores; // by bore, as the input; nothing = not for it
};

enum class Cleans {
    unknown,  // no survey as found, or no such size for this bore
    yes,      // margin ≥ w
    no,       // margin < −w
    tooClose, // neither
};
std::string_view
nameOf(Cleans cleans); // "not known", "cleans", "does not clean", "too close to call"

// The same as a verdict on the size: within, outside, too close to call, not measured.
Verdict verdictOf(Cleans cleans);

struct SizeCell {
    Cleans cleans = Cleans::unknown;
    Length margin;           // with the plan's centring
    std::optional<Length> u; // standard; where w is widened, w/k
    Length stock;            // finish size less smallest diameter as found: what comes off at most
};
struct OfferResult {
    Offer offer;
    std::vector<SizeCell> cells; // by bore
    // Of bores that some advisable size cleans: every one cleans at this size.
    bool cleansBlock = false;
    std::optional<std::size_t> deciding; // the bore with the least margin − w, of those
};
struct SizeChoice {
    std::vector<OfferResult> offers; // by rising finish size (its least), of equals oversizes first
    std::optional<std::size_t> chosen; // the smallest advisable that cleans the block
    // By bore: the smallest advisable size that cleans it; nothing = beyond the last (a sleeve), or
    // not known.
    std::vector<std::optional<std::size_t>> own;
    // By bore: known, with a size on offer for it, and no advisable size surely cleans it.
    std::vector<bool> beyond;
};

// `bores` and `offers` may be in any order; offers are sorted. A bore of which nothing is known
// (nullopt) decides nothing.
SizeChoice chooseSize(const std::vector<std::optional<BoreCleanUp>>& bores,
                      std::vector<Offer> offers, Centring centring, Length finishAllowance,
                      const DecisionRule& rule = {});

} // namespace borewright
