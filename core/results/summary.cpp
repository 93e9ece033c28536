// SPDX-License-Identifier: GPL-3.0-or-later
// The customer's sentences, from the data. The user may change them on the sheet.
#include "core/results/doubt_words.h"
#include "core/results/words.h"

#include <algorithm>

namespace borewright {
namespace {

struct Side {
    std::vector<const BoreResult*> bores; // by number
    bool honing = false;                  // the last survey is only a check
};

const BoreResult* resultOf(const Results& results, const std::optional<std::string>& survey,
                           int bore) {
    const SurveyResult* found = survey ? findResult(results, *survey) : nullptr;
    return found == nullptr ? nullptr : findBoreResult(*found, bore);
}

Side sideOf(const Workbook& workbook, const Results& results, bool now) {
    Side side;
    for (const BoreStory& story : results.stories) {
        const auto& id = now ? story.nowSurvey : story.wasSurvey;
        if (const BoreResult* bore = resultOf(results, id, story.bore)) side.bores.push_back(bore);
        if (now && id)
            side.honing =
                side.honing || findSurvey(workbook, *id)->header.kind == SurveyKind::check;
    }
    return side;
}

std::string cylinders(const std::vector<int>& numbers) {
    return (numbers.size() == 1 ? "cylinder " : "cylinders ") + listed(numbers);
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

// "all six" / "both" / "the cylinder".
std::string all(std::size_t count) {
    if (count == 1) return "the cylinder";
    if (count == 2) return "both cylinders";
    return "all " + numberWord(static_cast<int>(count)) + " cylinders";
}

std::vector<int> outsideOn(const Side& side, Quality quality) {
    std::vector<int> numbers;
    for (const BoreResult* bore : side.bores)
        for (const Judgement& judgement : bore->judgements)
            if (judgement.quality == quality && judgement.verdict == Verdict::outside)
                numbers.push_back(bore->bore);
    return numbers;
}

std::string verb(const std::vector<int>& numbers) {
    return numbers.size() == 1 ? " was " : " were ";
}

bool allAre(const Side& side, Verdict verdict) {
    return std::ranges::all_of(side.bores,
                               [&](const BoreResult* bore) { return bore->verdict == verdict; });
}

// "cylinder 2 is too close to call on taper", a part for each reason.
std::vector<std::string> tooCloseParts(const Side& side, const std::string& one,
                                       const std::string& several) {
    std::vector<std::pair<std::string, std::vector<int>>> reasons;
    for (const BoreResult* bore : side.bores) {
        if (bore->verdict != Verdict::tooCloseToCall) continue;
        auto known = std::ranges::find(reasons, bore->why, &decltype(reasons)::value_type::first);
        if (known == reasons.end()) known = reasons.insert(known, {bore->why, {}});
        known->second.push_back(bore->bore);
    }
    std::vector<std::string> parts;
    for (const auto& [why, numbers] : reasons)
        parts.push_back(cylinders(numbers) + (numbers.size() == 1 ? one : several) +
                        "too close to call on " + why);
    return parts;
}

std::string asFoundSentence(const Side& was) {
    std::vector<std::string> parts;
    const auto add = [&](Quality quality, const std::string& what) {
        const std::vector<int> numbers = outsideOn(was, quality);
        if (!numbers.empty()) parts.push_back(cylinders(numbers) + verb(numbers) + what);
    };
    const bool one = outsideOn(was, Quality::largestSize).size() == 1;
    add(Quality::largestSize, one ? "worn past its limit" : "worn past the limit");
    add(Quality::smallestSize, "smaller than allowed");
    add(Quality::outOfRound, "out of round past the limit");
    add(Quality::taper, "tapered past the limit");
    for (const std::string& part : tooCloseParts(was, " was ", " were "))
        parts.push_back(part);
    if (parts.empty()) {
        if (allAre(was, Verdict::within))
            return capital(all(was.bores.size())) + (was.bores.size() == 1 ? " was" : " were") +
                   " within the limits as found.";
        return capital(all(was.bores.size())) + (was.bores.size() == 1 ? " was" : " were") +
               " measured as found.";
    }
    std::string sentence = parts[0];
    for (std::size_t i = 1; i < parts.size(); ++i)
        sentence += "; " + parts[i];
    return capital(sentence) + ".";
}

// "taken 0.020 in over": where every bore's finish set names the same oversize.
std::string oversizeWords(const Workbook& workbook, const Results& results) {
    std::string words;
    for (const BoreStory& story : results.stories) {
        if (!story.nowSurvey) return {};
        const auto set = judgingSet(workbook, findSurvey(workbook, *story.nowSurvey)->header);
        if (!set || !(*set)->oversize) return {};
        const TypedLength& over = *(*set)->oversize;
        if (over.value() <= Length()) return {};
        const std::string here =
            "taken " + over.text() + " " + std::string(symbol(over.unit())) + " over";
        if (!words.empty() && words != here) return {};
        words = here;
    }
    return words;
}

// "straight within 0.2 thou as measured"; where every bore's doubt is known, what it can be at
// most: "straight within 0.4 thou, the gauge's doubt included".
std::string straightWords(const Side& now, const DisplayUnits& units) {
    std::optional<Length> worst, atMost;
    bool doubtKnown = true;
    for (const BoreResult* bore : now.bores) {
        if (!bore->straightness) return "measured";
        const auto doubt = aroundStraightness(*bore);
        doubtKnown = doubtKnown && doubt.has_value();
        worst = std::max(worst.value_or(*bore->straightness), *bore->straightness);
        if (doubt) atMost = std::max(atMost.value_or(Length()), *bore->straightness + doubt->above);
    }
    if (doubtKnown && atMost)
        return "straight within " + claimed(*atMost, units) + ", the gauge's doubt included";
    if (worst == Length()) return "straight as measured, with no difference to be read";
    return worst ? "straight within " + claimed(*worst, units) + " as measured" : "measured";
}

std::string finalSentence(const Workbook& workbook, const Results& results, const Side& now,
                          const DisplayUnits& units) {
    const bool one = now.bores.size() == 1;
    std::string sentence = capital(all(now.bores.size()));
    const std::string over = oversizeWords(workbook, results);
    if (!over.empty()) sentence += (one ? " was " : " were ") + over + " and";
    sentence += (one ? " is " : " are ") + straightWords(now, units) + ".";
    std::vector<int> outside;
    for (const BoreResult* bore : now.bores)
        if (bore->verdict == Verdict::outside) outside.push_back(bore->bore);
    if (!outside.empty())
        sentence += " " + capital(cylinders(outside)) + (outside.size() == 1 ? " is" : " are") +
                    " outside the finish limits.";
    for (const std::string& part : tooCloseParts(now, " is ", " are "))
        sentence += " " + capital(part) + ".";
    return sentence;
}

// What every bore is to be taken to, where a size was chosen and the block's targets, or with none
// its finish limits, say the same: "0.020 in over", "the standard size", "3.4402 in".
std::string chosenWords(const Workbook& workbook, const SizingResult& sizing,
                        const DisplayUnits& units) {
    if (!sizing.choice.chosen || workbook.sizing.ownSizes) return {};
    const Offer& offer = sizing.choice.offers[*sizing.choice.chosen].offer;
    const FinishTargets wanted = targetsOf(sizing, *sizing.choice.chosen, units);
    bool agreed = !workbook.targets.empty();
    for (const auto& [number, target] : wanted) {
        const auto here = workbook.targets.find(number);
        agreed = agreed && here != workbook.targets.end() &&
                 here->second.size.value() == target.size.value();
    }
    if (workbook.targets.empty() && offer.oversize)
        agreed = std::ranges::any_of(workbook.limitSets, [&](const LimitSet& set) {
            return set.purpose == LimitPurpose::finish && set.oversize &&
                   set.oversize->value() == *offer.oversize;
        });
    if (!agreed || wanted.empty()) return {};
    if (!offer.oversize) return sizeWithUnit(wanted.begin()->second.size.value(), units);
    return *offer.oversize == Length() ? "the standard size" : offer.name + " over";
}

// "All six cylinders clean up at 0.020 in over; cylinder 4 decides it."
std::string sizeSentence(const Workbook& workbook, const SizingResult& sizing,
                         const DisplayUnits& units) {
    const std::string size = chosenWords(workbook, sizing, units);
    if (size.empty()) return {};
    const OfferResult& chosen = sizing.choice.offers[*sizing.choice.chosen];
    std::vector<int> cleaned, beyond;
    for (std::size_t b = 0; b < sizing.bores.size(); ++b) {
        if (chosen.cells[b].cleans == Cleans::yes) cleaned.push_back(sizing.bores[b]);
        if (sizing.choice.beyond[b]) beyond.push_back(sizing.bores[b]);
    }
    const bool one = cleaned.size() == 1;
    const std::string who =
        cleaned.size() == sizing.bores.size() ? all(cleaned.size()) : cylinders(cleaned);
    std::string sentence = capital(who) + (one ? " cleans" : " clean") + " up at " + size;
    if (!one && chosen.deciding)
        sentence += "; cylinder " + std::to_string(sizing.bores[*chosen.deciding]) + " decides it";
    if (!beyond.empty())
        sentence +=
            "; " + cylinders(beyond) + (beyond.size() == 1 ? " needs" : " need") + " a sleeve";
    return sentence + ".";
}

// "The pistons are fitted with 4.1 to 4.2 thou of clearance, within the engine maker's limits."
// where every pair is decided in a finished bore.
std::string pistonSentence(const FitResult& fit, const DisplayUnits& units) {
    std::optional<Length> least, most;
    bool within = true, outside = false;
    for (const BoreFit& bore : fit.bores) {
        if (!bore.decided || !bore.finished || !bore.clearance) return {};
        least = std::min(least.value_or(bore.clearance->value), bore.clearance->value);
        most = std::max(most.value_or(bore.clearance->value), bore.clearance->value);
        within = within && bore.clearance->verdict == Verdict::within;
        outside = outside || bore.clearance->verdict == Verdict::outside;
    }
    if (!least || *least <= Length()) return {};
    const std::string from = formatSmall(*least, units), to = formatSmall(*most, units);
    return (fit.bores.size() == 1 ? "The piston is fitted with " : "The pistons are fitted with ") +
           (from == to ? to : from + " to " + to) + " " + std::string(symbol(units.small)) +
           " of clearance" +
           (within    ? ", within the engine maker's limits."
            : outside ? ", not all within the engine maker's limits."
                      : ".");
}

std::string honingSentence(const Side& now, const DisplayUnits& units) {
    std::optional<Length> most;
    for (const BoreResult* bore : now.bores)
        if (bore->mostToGo) most = std::max(most.value_or(*bore->mostToGo), *bore->mostToGo);
    if (!most) return "Honing is under way.";
    return "Honing is under way: up to " + claimed(*most, units) + " to go.";
}

} // namespace

std::vector<std::string> suggestSummary(const Workbook& workbook, const Results& results,
                                        const DisplayUnits& units) {
    const Side was = sideOf(workbook, results, false);
    const Side now = sideOf(workbook, results, true);
    if (was.bores.empty() && now.bores.empty()) return {"Nothing has been measured yet."};
    std::vector<std::string> sentences;
    if (!was.bores.empty()) sentences.push_back(asFoundSentence(was));
    if (now.bores.empty() || now.honing)
        if (std::string size = sizeSentence(workbook, results.sizing, units); !size.empty())
            sentences.push_back(std::move(size));
    if (!now.bores.empty())
        sentences.push_back(now.honing ? honingSentence(now, units)
                                       : finalSentence(workbook, results, now, units));
    if (std::string pistons = pistonSentence(results.fit, units); !pistons.empty())
        sentences.push_back(std::move(pistons));
    if (std::ranges::any_of(results.stories, &BoreStory::plateDiffers))
        sentences.push_back("Before and after were not both measured with the torque plate, so "
                            "they do not compare exactly.");
    return sentences;
}

} // namespace borewright
