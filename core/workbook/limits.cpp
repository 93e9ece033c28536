// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/workbook/limits.h"

namespace borewright {

const Limits& limitsFor(const LimitSet& set, int bore) {
    const auto own = set.perBore.find(bore);
    return own == set.perBore.end() ? set.limits : own->second;
}

std::optional<Length> finishSizeFor(const LimitSet& set, const Bore& bore) {
    if (set.finishSize) return set.finishSize->value();
    if (set.purpose != LimitPurpose::finish || !set.oversize || !bore.standardSize)
        return std::nullopt;
    return bore.standardSize->value() + set.oversize->value();
}

double riskOf(const DecisionRule& rule) {
    switch (rule.kind) {
    case DecisionRule::Kind::plain:
        return 0.5;
    case DecisionRule::Kind::fivePercent:
        return 0.05;
    case DecisionRule::Kind::twoAndHalfPercent:
        return 0.025;
    case DecisionRule::Kind::own:
        return rule.ownPercent / 100;
    }
    return 0.05;
}

Result<void> checkDecision(const DecisionRule& rule) {
    if (rule.kind == DecisionRule::Kind::own &&
        !(rule.ownPercent >= 0.001 && rule.ownPercent <= 50))
        return refuse("chance of a wrong verdict", "lies between 0.001 and 50 %");
    return {};
}

Result<void> checkLimits(const Limits& limits) {
    if (limits.sizeLower && limits.sizeLower->value() <= Length())
        return refuse("size from", "a size must be more than zero");
    if (limits.sizeUpper && limits.sizeUpper->value() <= Length())
        return refuse("size to", "a size must be more than zero");
    if (limits.sizeLower && limits.sizeUpper &&
        limits.sizeLower->value() > limits.sizeUpper->value())
        return refuse("size to", "the largest size allowed is below the smallest");
    if (limits.outOfRound && limits.outOfRound->value() < Length())
        return refuse("out-of-round", "an allowance cannot be below zero");
    if (limits.taper && limits.taper->value() < Length())
        return refuse("taper", "an allowance cannot be below zero");
    return {};
}

} // namespace borewright
