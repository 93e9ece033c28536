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

// The largest departure from the aim among the pairs as they stand.
Length worstChosen(const Matching& matching) {
    Length worst;
    for (std::size_t b = 0; b < matching.chosen.size(); ++b)
        if (matching.chosen[b])
            worst = std::max(worst, matching.cells[b][*matching.chosen[b]].miss);
    return worst;
}

// "no clearance more than 0.1 thou from 4.2", "every clearance 4.2 thou, as aimed".
std::string missWords(const Workbook& workbook, const DisplayUnits& units,
                      const Matching& matching) {
    const auto aim = aimOf(workbook.fit.clearance);
    const Length worst = worstChosen(matching);
    if (!aim) return "no clearance to aim at";
    if (worst == Length()) return "every clearance " + smallWithUnit(*aim, units) + ", as aimed";
    return "no clearance more than " + claimed(worst, units) + " from " + formatSmall(*aim, units);
}

bool allDecided(const Matching& matching) {
    return !matching.fixed.empty() &&
           std::ranges::all_of(matching.fixed, [](bool fixed) { return fixed; });
}

// A decided piston that does not go into its bore comes before all else.
std::string tooLargeWords(const Workbook& workbook, const DisplayUnits& units,
                          const Matching& matching) {
    for (std::size_t b = 0; b < matching.chosen.size(); ++b) {
        if (!matching.chosen[b]) continue;
        const auto& clearance = matching.cells[b][*matching.chosen[b]].clearance;
        if (!clearance || clearance->value > Length()) continue;
        return fmt::format(
            "Piston {} does not go into bore {}: {}.",
            nameOf(workbook.fit.pistons[matching.pistons[*matching.chosen[b]]]), matching.bores[b],
            clearance->value == Length()
                ? "it is as large as the bore"
                : "it is larger by " + smallWithUnit(clearance->value.magnitude(), units));
    }
    return {};
}

std::string matchingHeadline(const Workbook& workbook, const DisplayUnits& units,
                             const Matching& matching) {
    if (std::string words = tooLargeWords(workbook, units, matching); !words.empty()) return words;
    if (allDecided(matching))
        return "Decided: " + pairsWords(workbook, matching, matching.chosen) + ", " +
               missWords(workbook, units, matching) + ".";
    if (matching.anyOfThese && matching.chosen == matching.ownOrder->piston)
        return "Any of these: " + cannotTell(matching, units) + ".";
    return "Best: " + pairsWords(workbook, matching, matching.chosen) + ", " +
           missWords(workbook, units, matching) + equalsWords(matching) + ".";
}

} // namespace

std::string numbersInShort(const std::vector<int>& numbers) {
    if (numbers.size() > 2 &&
        numbers.back() - numbers.front() == static_cast<int>(numbers.size()) - 1)
        return std::to_string(numbers.front()) + "–" + std::to_string(numbers.back());
    return listed(numbers);
}

std::string cannotTell(const Matching& matching, const DisplayUnits& units) {
    return fmt::format("the pistons' own order misses by at most {}, and this gauge cannot tell "
                       "the difference ({} {})",
                       claimed(matching.ownOrder->worst, units),
                       upward(matching.tellApart.value_or(Length()), units), symbol(units.small));
}

std::string nameOf(const Piston& piston) {
    return piston.label.empty() ? piston.id : piston.label;
}

std::string nameOf(const Ring& ring) {
    return ring.label.empty() ? ring.id : ring.label;
}

std::string pairsWords(const Workbook& workbook, const Matching& matching,
                       const std::vector<std::optional<std::size_t>>& pistons) {
    std::vector<int> bores;
    std::vector<std::string> labels;
    for (std::size_t b = 0; b < pistons.size(); ++b) {
        if (!pistons[b]) continue;
        bores.push_back(matching.bores[b]);
        labels.push_back(nameOf(workbook.fit.pistons[matching.pistons[*pistons[b]]]));
    }
    const bool one = bores.size() == 1;
    return fmt::format("{} {} {} {}", one ? "bore" : "bores", numbersInShort(bores),
                       one ? "takes piston" : "take pistons", fmt::join(labels, " "));
}

bool pistonsFirst(const FitResult& result) {
    return result.measured.empty() && std::ranges::any_of(result.bores, &BoreFit::toHone);
}

std::string pistonHeadline(const Workbook& workbook, const DisplayUnits& units,
                           const FitResult& result) {
    if (workbook.fit.pistons.empty())
        return "Enter the pistons: label, size across the skirt, and the height it is measured at.";
    if (pistonsFirst(result)) {
        std::vector<int> bores;
        for (const BoreFit& bore : result.bores)
            if (bore.toHone) bores.push_back(bore.bore);
        return fmt::format(
            "{} {} still to be honed: {}.",
            capitalized((bores.size() == 1 ? "bore " : "bores ") + numbersInShort(bores)),
            bores.size() == 1 ? "is" : "are",
            !result.finish.empty()         ? "the finish size follows the piston"
            : result.finishRefused.empty() ? "no piston that is here may be honed for"
                                           : result.finishRefused);
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
