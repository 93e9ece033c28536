// SPDX-License-Identifier: GPL-3.0-or-later
// How the block is brought to its size: what the bar cuts, what the hone takes.
#include "core/results/sizing_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

// Bores that go to one size with one pair of limits, and what there is to take off them.
struct Cut {
    OfferedBore to;
    std::vector<int> bores;
    std::optional<Length> least; // finish less the largest as found
    std::optional<Length> most;  // finish less the smallest
};

std::optional<std::size_t> offerFor(const SizingResult& result, bool ownSizes, std::size_t b) {
    if (result.choice.beyond[b]) return std::nullopt;
    return ownSizes ? result.choice.own[b] : result.choice.chosen;
}

bool same(const OfferedBore& a, const OfferedBore& b) {
    return a.finish == b.finish && a.lower == b.lower && a.upper == b.upper;
}

std::vector<Cut> cutsOf(const SizingResult& result, bool ownSizes) {
    std::vector<Cut> cuts;
    for (std::size_t b = 0; b < result.bores.size(); ++b) {
        const auto offer = offerFor(result, ownSizes, b);
        if (!offer || !result.choice.offers[*offer].offer.bores[b]) continue;
        const OfferedBore& to = *result.choice.offers[*offer].offer.bores[b];
        auto cut = std::ranges::find_if(cuts, [&](const Cut& one) { return same(one.to, to); });
        if (cut == cuts.end()) cut = cuts.insert(cut, Cut{to, {}, {}, {}});
        cut->bores.push_back(result.bores[b]);
        if (!result.cleanUps[b]) continue;
        const Length least = to.finish - result.cleanUps[b]->largest.diameter;
        const Length most = to.finish - result.cleanUps[b]->smallest.diameter;
        cut->least = std::min(cut->least.value_or(least), least);
        cut->most = std::max(cut->most.value_or(most), most);
    }
    return cuts;
}

std::string to(const Cut& cut, const DisplayUnits& units) {
    std::string words = sizeWithUnit(cut.to.finish, units);
    if (cut.to.lower && cut.to.upper)
        return words + " (" + formatSize(*cut.to.lower, units) + "–" +
               formatSize(*cut.to.upper, units) + ")";
    if (cut.to.lower) return words + " (at least " + formatSize(*cut.to.lower, units) + ")";
    if (cut.to.upper) return words + " (at most " + formatSize(*cut.to.upper, units) + ")";
    return words + " (no limits entered)";
}

std::string fromTo(Length least, Length most, const DisplayUnits& units) {
    const std::string a = formatSmall(std::max(least, Length()), units);
    const std::string b = formatSmall(most, units);
    return (a == b ? b : a + " to " + b) + " " + std::string(symbol(units.small));
}

std::string honeOnly(const Cut& cut, const DisplayUnits& units) {
    return "hone only: " + fromTo(*cut.least, *cut.most, units) + " to take on the diameter, to " +
           to(cut, units) + ".";
}

std::string boreAndHone(const Cut& cut, Length stock, const DisplayUnits& units) {
    if (*cut.most <= stock)
        return honeOnly(cut, units) + " That is less than the bar would leave for the hone.";
    std::string words =
        fmt::format("bore to {}, then hone {} to {}; the bar takes {} on the diameter.",
                    sizeWithUnit(cut.to.finish - stock, units), smallWithUnit(stock, units),
                    to(cut, units), fromTo(*cut.least - stock, *cut.most - stock, units));
    if (*cut.least < stock)
        words += " At its largest the bore is wider than the bar: the hone finishes it there.";
    return words;
}

} // namespace

std::vector<std::string> howToCut(const Workbook& workbook, const DisplayUnits& units,
                                  const SizingResult& result) {
    const SizingPlan& plan = workbook.sizing;
    if (result.choice.offers.empty() || (!plan.ownSizes && !result.choice.chosen)) return {};
    std::vector<Cut> cuts = cutsOf(result, plan.ownSizes);
    std::erase_if(cuts, [](const Cut& cut) { return !cut.least; });
    std::vector<std::string> how;
    for (const Cut& cut : cuts) {
        const std::string words = plan.method == CutMethod::honeOnly
                                      ? honeOnly(cut, units)
                                      : boreAndHone(cut, result.honeStock, units);
        how.push_back(capitalized(cuts.size() == 1 ? words : boresWords(cut.bores) + ": " + words));
    }
    if (!how.empty())
        how.push_back(smallWithUnit(result.finishAllowance, units) +
                      " on the diameter is counted to come off below the deepest mark (" +
                      (plan.finishAllowance ? "as entered" : "common practice") + ").");
    return how;
}

} // namespace borewright
