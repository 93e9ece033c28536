// SPDX-License-Identifier: GPL-3.0-or-later
// What does not fit together in what was entered for choosing the size.
#include "core/results/sizing_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

// "Bore 1: even its smallest reading is 20.3 thou over the standard size. Say what it was last made
// to; until then the original axis is not reckoned with."
void boredBefore(const DisplayUnits& units, const SizingResult& result,
                 std::vector<std::string>& sentences) {
    std::vector<int> bores;
    std::optional<Length> least;
    for (const auto& cleanUp : result.cleanUps)
        if (cleanUp && cleanUp->boredBefore) {
            bores.push_back(cleanUp->bore);
            const Length over = cleanUp->smallest.diameter - *cleanUp->standardSize;
            least = std::min(least.value_or(over), over);
        }
    if (!least) return;
    const bool one = bores.size() == 1;
    sentences.push_back(fmt::format(
        "{}: even the smallest reading is {} or more over the standard size. Say what {} last made "
        "to; until then the original axis is not reckoned with.",
        capitalized(boresWords(bores)), smallWithUnit(*least, units),
        one ? "it was" : "they were"));
}

void notForEveryBore(const Workbook& workbook, const SizingResult& result,
                     std::vector<std::string>& sentences) {
    for (std::size_t o = 0; o < result.choice.offers.size(); ++o) {
        const Offer& offer = result.choice.offers[o].offer;
        std::vector<int> bores;
        for (std::size_t b = 0; b < offer.bores.size(); ++b) {
            const Bore* bore = findBore(workbook.block, result.bores[b]);
            if (!offer.bores[b] && bore != nullptr && bore->standardSize)
                bores.push_back(result.bores[b]);
        }
        if (!bores.empty())
            sentences.push_back(fmt::format(
                "{} is not offered to {}: the limits given for it are far from the standard size "
                "and this oversize together.",
                capitalized(offerWords(result, o)), boresWords(bores)));
    }
}

// Bores where the hone aims at something that the chosen size does not allow.
void aimsElsewhere(const Workbook& workbook, const DisplayUnits& units, const SizingResult& result,
                   std::vector<std::string>& sentences) {
    const Length aLittle = Length::whole(25, Unit::micrometre);
    for (std::size_t b = 0; b < result.bores.size(); ++b) {
        const auto target = workbook.targets.find(result.bores[b]);
        if (target == workbook.targets.end()) continue;
        const auto place = workbook.sizing.ownSizes && b < result.choice.own.size()
                               ? result.choice.own[b]
                               : result.choice.chosen;
        if (!place || !result.choice.offers[*place].offer.bores[b]) continue;
        const OfferedBore& wanted = *result.choice.offers[*place].offer.bores[b];
        const Length size = target->second.size.value();
        if (size >= wanted.lower.value_or(wanted.finish - aLittle) &&
            size <= wanted.upper.value_or(wanted.finish + aLittle))
            continue;
        sentences.push_back(
            fmt::format("Bore {}: the hone aims at {} ({}), not at what is chosen here.",
                        result.bores[b], sizeWithUnit(size, units), target->second.from));
    }
}

} // namespace

std::vector<std::string> sizingOddities(const Workbook& workbook, const DisplayUnits& units,
                                        const SizingResult& result) {
    std::vector<std::string> sentences;
    boredBefore(units, result, sentences);
    notForEveryBore(workbook, result, sentences);
    aimsElsewhere(workbook, units, result, sentences);
    return sentences;
}

} // namespace borewright
