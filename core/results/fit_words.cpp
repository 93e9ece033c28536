// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/fit_words.h"

#include "core/results/doubt_words.h"
#include "core/results/sizing_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

// Behind the last of several alike: "; eight ways are as good".
std::string equalsWords(const Matching& matching) {
    if (matching.equals <= 1) return {};
    if (matching.equals >= mostTies)
        return "; " + std::to_string(mostTies) + " ways or more are as good";
    return "; " + numberWord(matching.equals) + " ways are as good";
}

std::string aimWords(const Workbook& workbook, const DisplayUnits& units) {
    const auto aim = aimOf(workbook.fit.clearance);
    return aim ? " from " + formatSmall(*aim, units) : std::string();
}

// The largest departure from the aim among the pairs as they stand.
Length worstChosen(const Matching& matching) {
    Length worst;
    for (std::size_t b = 0; b < matching.chosen.size(); ++b)
        if (matching.chosen[b])
            worst = std::max(worst, matching.cells[b][*matching.chosen[b]].miss);
    return worst;
}

bool allDecided(const Matching& matching) {
    return !matching.fixed.empty() &&
           std::ranges::all_of(matching.fixed, [](bool fixed) { return fixed; });
}

std::string matchingHeadline(const Workbook& workbook, const DisplayUnits& units,
                             const Matching& matching) {
    const std::string unit = " " + std::string(symbol(units.small));
    if (allDecided(matching))
        return fmt::format("Decided: {}, no clearance more than {}{}.",
                           pairsWords(workbook, matching, matching.chosen),
                           claimed(worstChosen(matching), units), aimWords(workbook, units));
    if (matching.anyOfThese && matching.ownOrder && matching.tellApart &&
        matching.ownOrder->worst > matching.best->worst)
        return fmt::format("Any of these: the pistons' own order misses by at most {}, and this "
                           "gauge cannot tell the difference ({}{}).",
                           claimed(matching.ownOrder->worst, units),
                           upward(*matching.tellApart, units), unit);
    const bool ownOrder =
        matching.ownOrder && matching.anyOfThese && matching.chosen == matching.ownOrder->piston;
    return fmt::format(
        "{}: {}, no clearance more than {}{}{}.", ownOrder ? "The pistons' own order" : "Best",
        pairsWords(workbook, matching, matching.chosen), claimed(worstChosen(matching), units),
        aimWords(workbook, units), ownOrder ? std::string() : equalsWords(matching));
}

} // namespace

std::string numbersInShort(const std::vector<int>& numbers) {
    if (numbers.size() > 2 &&
        numbers.back() - numbers.front() == static_cast<int>(numbers.size()) - 1)
        return std::to_string(numbers.front()) + "–" + std::to_string(numbers.back());
    return listed(numbers);
}

std::string pairsWords(const Workbook& workbook, const Matching& matching,
                       const std::vector<std::optional<std::size_t>>& pistons) {
    std::vector<int> bores;
    std::vector<std::string> labels;
    for (std::size_t b = 0; b < pistons.size(); ++b) {
        if (!pistons[b]) continue;
        bores.push_back(matching.bores[b]);
        labels.push_back(workbook.fit.pistons[matching.pistons[*pistons[b]]].label);
    }
    const bool one = bores.size() == 1;
    return fmt::format("{} {} {} {}", one ? "bore" : "bores", numbersInShort(bores),
                       one ? "takes piston" : "take pistons", fmt::join(labels, " "));
}

bool pistonsFirst(const Workbook& workbook, const FitResult& result) {
    if (result.finish.empty()) return false;
    bool toHone = result.measured.empty();
    for (const BoreFit& bore : result.bores) {
        const Survey* survey = findSurvey(workbook, bore.survey);
        const bool honing = survey != nullptr && survey->header.kind == SurveyKind::check;
        const bool tooLarge = bore.clearance && bore.clearance->value <= Length();
        toHone = toHone || (!bore.finished && (honing || tooLarge));
    }
    return toHone;
}

std::string pistonHeadline(const Workbook& workbook, const DisplayUnits& units,
                           const FitResult& result) {
    if (workbook.fit.pistons.empty())
        return "Enter the pistons: label, size across the skirt, and the height it is measured at.";
    if (pistonsFirst(workbook, result)) {
        std::vector<int> bores;
        for (const FinishForPiston& one : result.finish)
            bores.push_back(one.bore);
        std::ranges::sort(bores);
        return fmt::format(
            "{} {} still to be honed: the finish size follows the piston.",
            capitalized((bores.size() == 1 ? "bore " : "bores ") + numbersInShort(bores)),
            bores.size() == 1 ? "is" : "are");
    }
    if (result.measured.empty()) return "No bore has been read: measure the block first.";
    if (!result.matching.best) {
        const std::string& why = result.matching.why;
        return why.empty() ? "No matching." : "No matching: " + why + ".";
    }
    return matchingHeadline(workbook, units, result.matching);
}

void wordPistons(const Workbook& workbook, const DisplayUnits& units, FitResult& result) {
    result.headline = pistonHeadline(workbook, units, result);
    result.sentences = pistonSentences(workbook, units, result);
    result.cautions = {"Clearances and ring gaps are the engine maker's to give; his manual rules "
                       "over what is worked out here.",
                       "Too tight seizes, and a seizure at speed on the water can hurt."};
}

} // namespace borewright
