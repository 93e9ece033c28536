// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdict/verdict.h"

namespace borewright {
namespace {

// Guard band w = 1.65 u; ISO 14253-1:2017, default rule, one-sided risk 4.947 %.
Length guardBand(std::optional<Length> standardUncertainty) {
    if (!standardUncertainty) return {};
    return Length::fromPicometres(divideHalfToEven(standardUncertainty->picometres() * 165, 100));
}

// The heavier, the more the user has to know of it.
int weight(Verdict verdict) {
    switch (verdict) {
    case Verdict::outside:
        return 5;
    case Verdict::tooCloseToCall:
        return 4;
    case Verdict::notMeasured:
        return 3;
    case Verdict::notYet:
        return 2;
    case Verdict::within:
        return 1;
    case Verdict::notJudged:
        return 0;
    }
    return 0;
}

struct Asked {
    Quality quality;
    std::optional<Length> value;
    const std::optional<TypedLength>& limit;
    bool lower = false;
};

Judgement judgeOne(const Asked& asked, bool missing, bool underWay) {
    Judgement judgement{asked.quality, asked.value, std::nullopt, Verdict::notJudged};
    if (!asked.limit) return judgement;
    judgement.limit = asked.limit->value();
    if (!asked.value) {
        judgement.verdict = missing ? Verdict::notMeasured : Verdict::notJudged;
        return judgement;
    }
    judgement.verdict = asked.lower ? judgeLower(*asked.value, *judgement.limit, std::nullopt)
                                    : judgeUpper(*asked.value, *judgement.limit, std::nullopt);
    if (judgement.verdict == Verdict::within && missing) judgement.verdict = Verdict::notMeasured;
    if (judgement.verdict == Verdict::outside && underWay && asked.quality != Quality::largestSize)
        judgement.verdict = Verdict::notYet;
    return judgement;
}

} // namespace

std::string_view nameOf(Verdict verdict) {
    switch (verdict) {
    case Verdict::notJudged:
        return "not judged";
    case Verdict::notMeasured:
        return "not measured";
    case Verdict::within:
        return "within";
    case Verdict::outside:
        return "outside";
    case Verdict::tooCloseToCall:
        return "too close to call";
    case Verdict::notYet:
        return "not yet";
    }
    return "";
}

Verdict worse(Verdict a, Verdict b) {
    return weight(a) >= weight(b) ? a : b;
}

Verdict judgeUpper(Length value, Length limit, std::optional<Length> standardUncertainty) {
    const Length w = guardBand(standardUncertainty);
    if (value <= limit - w) return Verdict::within;
    return value > limit + w ? Verdict::outside : Verdict::tooCloseToCall;
}

Verdict judgeLower(Length value, Length limit, std::optional<Length> standardUncertainty) {
    const Length w = guardBand(standardUncertainty);
    if (value >= limit + w) return Verdict::within;
    return value < limit - w ? Verdict::outside : Verdict::tooCloseToCall;
}

std::string_view nameOf(Quality quality) {
    switch (quality) {
    case Quality::largestSize:
        return "largest size";
    case Quality::smallestSize:
        return "smallest size";
    case Quality::outOfRound:
        return "out-of-round";
    case Quality::taper:
        return "taper";
    }
    return "";
}

std::vector<Judgement> judge(const std::optional<BoreForm>& form, const Limits& limits,
                             bool missing, bool underWay) {
    Asked asked[] = {{Quality::largestSize, {}, limits.sizeUpper},
                     {Quality::smallestSize, {}, limits.sizeLower, true},
                     {Quality::outOfRound, {}, limits.outOfRound},
                     {Quality::taper, {}, limits.taper}};
    if (form) {
        asked[0].value = form->largest.value;
        asked[1].value = form->smallest.value;
        if (form->outOfRound) asked[2].value = form->outOfRound->value;
        if (form->worstTaper) asked[3].value = form->worstTaper->taper;
    }
    std::vector<Judgement> judgements;
    for (const Asked& one : asked)
        judgements.push_back(judgeOne(one, missing, underWay));
    return judgements;
}

Verdict overall(const std::vector<Judgement>& judgements) {
    Verdict verdict = Verdict::notJudged;
    for (const Judgement& judgement : judgements)
        verdict = worse(verdict, judgement.verdict);
    return verdict;
}

std::string_view nameOf(AimAnswer answer) {
    switch (answer) {
    case AimAnswer::noAim:
        return "no aim";
    case AimAnswer::notMeasured:
        return "not measured";
    case AimAnswer::met:
        return "met";
    case AimAnswer::notYet:
        return "not yet";
    }
    return "";
}

} // namespace borewright
