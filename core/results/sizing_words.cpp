// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/sizing_words.h"

#include "core/results/doubt_words.h"
#include "core/results/words.h"

#include <algorithm>
#include <fmt/format.h>

namespace borewright {
namespace {

// What the named bores are to the whole block: "all six", "both", "the bore", "bores 1 and 3".
std::string ofTheBlock(const std::vector<int>& numbers, const SizingResult& result) {
    const std::size_t count = result.bores.size();
    if (numbers.size() == count) {
        if (count == 1) return "the bore";
        return count == 2 ? "both" : "all " + numberWord(static_cast<int>(count));
    }
    if (count >= 4 && numbers.size() + 1 == count) {
        const auto left = std::ranges::find_if(result.bores, [&](int number) {
            return std::ranges::find(numbers, number) == numbers.end();
        });
        return "all but bore " + std::to_string(*left);
    }
    return boresWords(numbers);
}

std::vector<int> cleanedBy(const SizingResult& result, const OfferResult& offer) {
    std::vector<int> numbers;
    for (std::size_t b = 0; b < result.bores.size(); ++b)
        if (offer.cells[b].cleans == Cleans::yes) numbers.push_back(result.bores[b]);
    return numbers;
}

std::string ownSizesHeadline(const SizingResult& result) {
    std::vector<std::string> parts;
    for (std::size_t o = 0; o < result.choice.offers.size(); ++o) {
        std::vector<int> numbers;
        for (std::size_t b = 0; b < result.bores.size(); ++b)
            if (result.choice.own[b] == o) numbers.push_back(result.bores[b]);
        if (!numbers.empty())
            parts.push_back(offerWords(result, o) + " cleans " + ofTheBlock(numbers, result));
    }
    return capitalized("each bore its own size: " + fmt::format("{}", fmt::join(parts, "; "))) +
           ".";
}

// Before a size is on offer: what the worst bore wants.
std::string wantedWords(const SizingResult& result, const DisplayUnits& units) {
    std::optional<Length> most;
    int bore = 0;
    for (const auto& cleanUp : result.cleanUps) {
        if (!cleanUp) continue;
        const Length wants = cleanUpBy(*cleanUp, result.centring).size;
        if (most && wants <= *most) continue;
        most = wants;
        bore = cleanUp->bore;
    }
    return most ? fmt::format("Bore {} wants the most: {} and {} below the last mark. ", bore,
                              sizeWithUnit(*most, units),
                              smallWithUnit(result.finishAllowance, units))
                : std::string();
}

std::string nothingOnOffer(const Workbook& workbook, const SizingResult& result,
                           const DisplayUnits& units) {
    return wantedWords(result, units) +
           (workbook.sizing.sizes.empty()
                ? "Enter the sizes that pistons are to be had for."
                : "Enter the standard size: the sizes on offer are counted from it.");
}

std::string noneCleans(const SizingResult& result) {
    std::vector<int> beyond;
    for (std::size_t b = 0; b < result.bores.size(); ++b)
        if (result.choice.beyond[b]) beyond.push_back(result.bores[b]);
    if (beyond.empty()) return "No one size on offer is for every bore.";
    return fmt::format("No size on offer cleans {} for certain: a sleeve, or a new block.",
                       boresWords(beyond));
}

std::string boreWord(const Workbook& workbook, const SizingResult& result, std::size_t b,
                     const DisplayUnits& units) {
    if (!result.cleanUps[b]) return result.notKnown[b];
    const CleanUp& cleanUp = cleanUpBy(*result.cleanUps[b], result.centring);
    const Damage* damage = decidingDamage(workbook.sizing, result.bores[b], cleanUp);
    std::string words = fmt::format("{}: {} at {}", sizeWithUnit(cleanUp.size, units),
                                    damage != nullptr ? damageWord(*damage) : "wear",
                                    formatDepth(cleanUp.depth, units));
    if (!cleanUp.axis.empty()) words += ", " + cleanUp.axis;
    return words;
}

// Pistons are named by the size on offer that they are made for: their own differences and the
// clearance make a little of it.
bool besides(const Offer& size, const Offer& pistons) {
    const Length close = Length::whole(50, Unit::micrometre);
    for (std::size_t b = 0; b < size.bores.size(); ++b)
        if (!size.bores[b] || !pistons.bores[b] ||
            (size.bores[b]->finish - pistons.bores[b]->finish).magnitude() > close)
            return false;
    return true;
}

std::vector<std::string> cautionsOf(const Workbook& workbook, const SizingResult& result) {
    std::vector<std::string> cautions{
        "Wall thickness is not seen by any of this: where a wall may be thin, have it measured "
        "before anything is cut."};
    cautions.emplace_back(workbook.sizing.greatest
                              ? "The greatest oversize is the engine maker's to give; none beyond "
                                "it is advised here."
                              : "The engine maker's greatest oversize is not entered: see the "
                                "manual before ordering.");
    if (std::ranges::all_of(result.cleanUps,
                            [](const auto& one) { return !one || one->undamaged; }))
        cautions.emplace_back("A bore gauge misses scores and pits: enter the depth of any that "
                              "is seen or felt.");
    if (result.centring == Centring::wornBore)
        cautions.emplace_back("Wear that reaches far round between the gauge's axes can take more "
                              "than this, up to what the original axis needs.");
    std::vector<int> plated;
    for (const Bore& bore : workbook.block.bores)
        if (bore.surface == Surface::plated) plated.push_back(bore.number);
    if (!plated.empty())
        cautions.push_back(capitalized(boresWords(plated)) + (plated.size() == 1 ? " is" : " are") +
                           " plated: taken oversize, the plating is cut through and has to be laid "
                           "on anew.");
    return cautions;
}

} // namespace

std::string marginWords(Length margin, const std::optional<Length>& u, double coverage,
                        const DisplayUnits& units) {
    const std::string unit(symbol(units.small));
    if (!u) return formatSmall(margin, units) + " " + unit;
    const Length around = Length::nearest(coverage * u->in(Unit::micrometre), Unit::micrometre);
    return formatSmall(margin, units) + " ± " + upward(around, units) + " " + unit;
}

bool onlyJust(const SizeCell& cell, double coverage) {
    return cell.u && cell.margin.in(Unit::micrometre) < coverage * cell.u->in(Unit::micrometre);
}

std::string offerWords(const SizingResult& result, std::size_t place) {
    const Offer& offer = result.choice.offers[place].offer;
    if (offer.oversize) return *offer.oversize == Length() ? "the standard size" : offer.name;
    for (const OfferResult& other : result.choice.offers)
        if (other.offer.oversize && *other.offer.oversize > Length() && besides(other.offer, offer))
            return other.offer.name + " for the " + offer.name;
    return "the size for the " + offer.name;
}

std::string damageWord(const Damage& damage) {
    const std::string word = damage.what.substr(0, damage.what.find(','));
    return word.empty() ? "damage" : word;
}

const Damage* decidingDamage(const SizingPlan& plan, int bore, const CleanUp& cleanUp) {
    const auto wear = plan.bores.find(bore);
    if (!cleanUp.damage || wear == plan.bores.end() ||
        *cleanUp.damage >= wear->second.damages.size())
        return nullptr;
    return &wear->second.damages[*cleanUp.damage];
}

std::string boresWords(const std::vector<int>& numbers) {
    return (numbers.size() == 1 ? "bore " : "bores ") + listed(numbers);
}

std::string capitalized(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

std::string sizingHeadline(const Workbook& workbook, const DisplayUnits& units,
                           const SizingResult& result) {
    if (result.bores.empty()) return "Describe the block first.";
    if (std::ranges::none_of(result.cleanUps, &std::optional<BoreCleanUp>::has_value))
        return "No bore has been read as found: measure the block first.";
    const SizeChoice& choice = result.choice;
    const bool anyBore = std::ranges::any_of(choice.offers, [](const OfferResult& offer) {
        return std::ranges::any_of(offer.offer.bores, &std::optional<OfferedBore>::has_value);
    });
    if (!anyBore) return nothingOnOffer(workbook, result, units);
    if (workbook.sizing.ownSizes &&
        std::ranges::any_of(choice.own, &std::optional<std::size_t>::has_value))
        return ownSizesHeadline(result);
    if (!choice.chosen) return noneCleans(result);
    const OfferResult& chosen = choice.offers[*choice.chosen];
    const std::string cleaned = ofTheBlock(cleanedBy(result, chosen), result);
    const std::string size = offerWords(result, *choice.chosen);
    if (!chosen.deciding) return capitalized(size) + " cleans " + cleaned + ".";
    const SizeCell& cell = chosen.cells[*chosen.deciding];
    const double coverage = result.cleanUps[*chosen.deciding]->coverage;
    const std::string cleans =
        size + (onlyJust(cell, coverage) ? " only just cleans " : " cleans ") + cleaned;
    const std::string margin =
        ", margin " + marginWords(cell.margin, cell.u, coverage, units) + ".";
    if (result.bores.size() == 1) return capitalized(cleans) + margin;
    return fmt::format("Bore {} decides: {}{}", result.bores[*chosen.deciding], cleans, margin);
}

void wordSizing(const Workbook& workbook, const DisplayUnits& units, const DecisionRule& rule,
                SizingResult& result) {
    for (std::size_t b = 0; b < result.bores.size(); ++b)
        result.boreWords.push_back(boreWord(workbook, result, b, units));
    result.headline = sizingHeadline(workbook, units, result);
    result.cautions = cautionsOf(workbook, result);
    result.sentences = sizingSentences(workbook, units, rule, result);
    result.how = howToCut(workbook, units, result);
}

} // namespace borewright
