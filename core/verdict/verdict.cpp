// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verdict/verdict.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

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
    Figure figure;
    std::optional<Length> value;
    const std::optional<TypedLength>& limit;
    bool lower = false;
};

Length fromUm(double um) {
    return Length::nearest(um, Unit::micrometre);
}

// How far the value lies inside its limit, in the direction that is good.
double room_um(const Judgement& judgement, bool lower) {
    const Length room =
        lower ? *judgement.value - *judgement.limit : *judgement.limit - *judgement.value;
    return room.in(Unit::micrometre);
}

void addDoubt(Judgement& judgement, const FigureDoubt& doubt, bool lower) {
    judgement.below = fromUm(doubt.below_um);
    judgement.above = fromUm(doubt.above_um);
    if (judgement.quality == Quality::outOfRound || judgement.quality == Quality::taper) {
        // A difference is never below nothing.
        judgement.below = std::min(*judgement.below, *judgement.value);
        judgement.gaugeAlone = fromUm(doubt.gaugeAlone_um);
    }
    if (!judgement.limit || doubt.u_um <= 0) return;
    const double room = room_um(judgement, lower);
    judgement.chanceWrong =
        judgement.verdict == Verdict::outside
            ? doubt.chanceOfMore(-room)
            : studentBelow(-room / (doubt.u_um * tailWidening(doubt)), doubt.freedom);
}

Judgement judgeOne(const Asked& asked, bool missing, bool underWay, const FigureDoubt* doubt,
                   const DecisionRule& rule) {
    Judgement judgement{asked.quality, asked.value, std::nullopt, Verdict::notJudged};
    if (asked.value && doubt != nullptr) addDoubt(judgement, *doubt, asked.lower);
    if (!asked.limit) return judgement;
    judgement.limit = asked.limit->value();
    if (!asked.value) {
        judgement.verdict = missing ? Verdict::notMeasured : Verdict::notJudged;
        return judgement;
    }
    const Guard guard = doubt != nullptr ? guardOf(*doubt, rule) : Guard{};
    judgement.verdict = asked.lower ? judgeLower(*asked.value, *judgement.limit, guard)
                                    : judgeUpper(*asked.value, *judgement.limit, guard);
    if (doubt != nullptr) {
        judgement.guard = guard.within;
        judgement.guardOutside = guard.outside;
        addDoubt(judgement, *doubt, asked.lower);
    }
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

Verdict judgeUpper(Length value, Length limit, const Guard& guard) {
    if (value <= limit - guard.within) return Verdict::within;
    return value > limit + guard.outside ? Verdict::outside : Verdict::tooCloseToCall;
}

Verdict judgeLower(Length value, Length limit, const Guard& guard) {
    if (value >= limit + guard.within) return Verdict::within;
    return value < limit - guard.outside ? Verdict::outside : Verdict::tooCloseToCall;
}

double guardFactor(const DecisionRule& rule, double freedom) {
    if (rule.kind == DecisionRule::Kind::plain) return 0;
    if (std::isinf(freedom) && rule.kind == DecisionRule::Kind::fivePercent) return 1.65;
    if (std::isinf(freedom) && rule.kind == DecisionRule::Kind::twoAndHalfPercent) return 1.96;
    return std::max(0.0, oneSidedFactor(riskOf(rule), freedom));
}

double tailWidening(const FigureDoubt& doubt) {
    if (std::isinf(doubt.freedom) || !(doubt.u_um > 0)) return 1;
    // The nearer end of the interval is that of the deciding readings alone.
    const double single = std::min(doubt.below_um, doubt.above_um);
    return std::max(1.0, single / (coverageFactor(0.95, doubt.freedom) * doubt.u_um));
}

Guard guardOf(const FigureDoubt& doubt, const DecisionRule& rule) {
    const double w = guardFactor(rule, doubt.freedom) * doubt.u_um * tailWidening(doubt);
    if (rule.kind == DecisionRule::Kind::plain) return {};
    const double outside = doubt.noise_um.empty() ? w : std::max(w, doubt.noiseAt(riskOf(rule)));
    return {fromUm(w), fromUm(outside)};
}

AimAnswer answerAim(Length value, Length aim, const FigureDoubt* doubt, const DecisionRule& rule) {
    switch (judgeUpper(value, aim, doubt != nullptr ? guardOf(*doubt, rule) : Guard{})) {
    case Verdict::within:
        return AimAnswer::met;
    case Verdict::outside:
        return AimAnswer::notYet;
    default:
        return AimAnswer::cannotTell;
    }
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
                             bool missing, bool underWay, const BoreDoubt* doubt,
                             const DecisionRule& rule) {
    Asked asked[] = {{Quality::largestSize, Figure::largest, {}, limits.sizeUpper},
                     {Quality::smallestSize, Figure::smallest, {}, limits.sizeLower, true},
                     {Quality::outOfRound, Figure::outOfRound, {}, limits.outOfRound},
                     {Quality::taper, Figure::taper, {}, limits.taper}};
    if (form) {
        asked[0].value = form->largest.value;
        asked[1].value = form->smallest.value;
        if (form->outOfRound) asked[2].value = form->outOfRound->value;
        if (form->worstTaper) asked[3].value = form->worstTaper->taper;
    }
    std::vector<Judgement> judgements;
    for (const Asked& one : asked) {
        const bool known = doubt != nullptr && doubt->of(one.figure);
        judgements.push_back(
            judgeOne(one, missing, underWay, known ? &*doubt->of(one.figure) : nullptr, rule));
    }
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
    case AimAnswer::cannotTell:
        return "this gauge cannot tell";
    }
    return "";
}

} // namespace borewright
