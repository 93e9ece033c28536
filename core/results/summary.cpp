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
    if (!now.bores.empty())
        sentences.push_back(now.honing ? honingSentence(now, units)
                                       : finalSentence(workbook, results, now, units));
    if (std::ranges::any_of(results.stories, &BoreStory::plateDiffers))
        sentences.push_back("Before and after were not both measured with the torque plate, so "
                            "they do not compare exactly.");
    return sentences;
}

} // namespace borewright
