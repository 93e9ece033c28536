// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/doubt_words.h"

#include "core/results/words.h"
#include "core/statistics/coverage.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace borewright {
namespace {

Length fromUm(double um) {
    return Length::nearest(um, Unit::micrometre);
}

std::optional<Around> expanded(const std::optional<Length>& u, const Budget& budget) {
    if (!u || !budget.known()) return std::nullopt;
    const Length whole = fromUm(budget.coverage * u->in(Unit::micrometre));
    return Around{whole, whole};
}

// The largest guard band that was kept from a limit of these qualities.
std::optional<Length> largestGuard(const SurveyResult& survey, bool differences) {
    std::optional<Length> largest;
    for (const BoreResult& bore : survey.bores)
        for (const Judgement& judgement : bore.judgements) {
            const bool difference =
                judgement.quality == Quality::outOfRound || judgement.quality == Quality::taper;
            if (difference != differences || !judgement.guard || !judgement.limit) continue;
            largest = std::max(largest.value_or(*judgement.guard), *judgement.guard);
        }
    return largest;
}

} // namespace

std::optional<Around> around(const BoreResult& bore, Quality quality) {
    for (const Judgement& judgement : bore.judgements)
        if (judgement.quality == quality && judgement.below && judgement.above)
            return Around{*judgement.below, *judgement.above};
    return std::nullopt;
}

std::optional<Around> aroundStraightness(const BoreResult& bore) {
    if (bore.doubt == nullptr || !bore.straightness) return std::nullopt;
    const auto& doubt = bore.doubt->of(Figure::straightness);
    if (!doubt) return std::nullopt;
    // A difference is never below nothing.
    return Around{std::min(fromUm(doubt->below_um), *bore.straightness), fromUm(doubt->above_um)};
}

std::optional<Around> aroundMean(const BoreResult& bore, const Budget& budget) {
    return bore.form ? expanded(bore.uMean, budget) : std::nullopt;
}

std::optional<Around> aroundLead(const BoreResult& bore, const Budget& budget) {
    return bore.form && bore.form->lead ? expanded(bore.uLead, budget) : std::nullopt;
}

Length wholeOfOne(const Budget& budget) {
    return fromUm(budget.coverage * budget.single_um);
}

Length wholeOfDifference(const Budget& budget) {
    const double k =
        std::isinf(budget.differenceFreedom) ? 2 : coverageFactor(0.95, budget.differenceFreedom);
    return fromUm(k * budget.difference_um);
}

std::string upward(Length doubt, const DisplayUnits& units, int extra) {
    const int decimals = usualDecimals(units.small) + extra;
    std::int64_t step = picometresPer(units.small);
    for (int i = 0; i < decimals; ++i)
        step /= 10;
    const std::int64_t steps = (doubt.picometres() + step - 1) / step;
    return format(Length::fromPicometres(steps * step), units.small, decimals);
}

std::string aroundText(const Around& around, const DisplayUnits& units) {
    const std::string below = upward(around.below, units), above = upward(around.above, units);
    return below == above ? "±" + above : "+" + above + " −" + below;
}

std::string aroundWords(const Around& around, const DisplayUnits& units) {
    const std::string below = upward(around.below, units, 1);
    const std::string above = upward(around.above, units, 1);
    return (below == above ? "± " + above : "+ " + above + " − " + below) + " " +
           std::string(symbol(units.small));
}

std::string chanceWords(double chance) {
    if (chance < 0.001) return "less than 1 chance in 1000";
    if (chance > 0.999) return "more than 999 chances in 1000";
    if (chance > 0.95) return fmt::format("{} chances in 100", std::lround(100 * chance));
    if (chance > 0.4) return fmt::format("{} chances in 10", std::lround(10 * chance));
    double in = 1 / chance;
    // No more digits than anybody counts in.
    const double step = in < 20 ? 1 : in < 100 ? 5 : in < 300 ? 10 : 100;
    in = std::round(in / step) * step;
    return fmt::format("1 chance in {}", std::lround(in));
}

std::string ruleWords(const DecisionRule& rule) {
    if (rule.kind == DecisionRule::Kind::plain) return "plain comparison";
    return fmt::format("{:g} % risk", 100 * riskOf(rule));
}

std::string calledWords(const SurveyResult& survey, const DisplayUnits& units) {
    if (!survey.hasLimits) return {};
    const SurveyDoubts& doubts = survey.doubts;
    if (!doubts.budget.known()) return "Doubt not known: values compared as they stand.";
    if (doubts.rule.kind == DecisionRule::Kind::plain)
        return "Plain comparison: values compared as they stand, whatever their doubt.";
    const std::string called = "Called with " + ruleWords(doubts.rule);
    const auto sizes = largestGuard(survey, false), differences = largestGuard(survey, true);
    const auto kept = [&](Length guard) {
        return upward(guard, units, 1) + " " + std::string(symbol(units.small));
    };
    std::vector<std::string> parts;
    if (sizes) parts.push_back(kept(*sizes) + " kept from a size limit");
    if (differences)
        parts.push_back(kept(*differences) + (sizes ? "" : " kept") +
                        " from a limit for out-of-round or taper");
    if (parts.empty()) return called + ".";
    return called + ": " + parts[0] + (parts.size() > 1 ? ", " + parts[1] : "") + ".";
}

std::string trustWords(const Budget& budget, const DisplayUnits& units) {
    if (!budget.known())
        return "How far a figure may be off is not known: not entered is " +
               listed(budget.missing) + ".";
    const std::string unit(symbol(units.small));
    return fmt::format("One diameter ± {} {}, a difference of two ± {} {} (95 %).",
                       upward(wholeOfOne(budget), units, 1), unit,
                       upward(wholeOfDifference(budget), units, 1), unit);
}

std::string shapeWord(const BoreShape& shape) {
    switch (shape.kind) {
    case ShapeKind::straight:
        return "straight";
    case ShapeKind::vee:
        return "V";
    case ShapeKind::bellMouth:
        return shape.wide ? "bell-mouth" : "narrowed end";
    case ShapeKind::barrel:
        return "barrel";
    case ShapeKind::hourglass:
        return "hourglass";
    case ShapeKind::ridge:
        return shape.wide ? "groove" : "ridge";
    }
    return {};
}

} // namespace borewright
