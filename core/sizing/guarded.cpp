// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sizing/guarded.h"

#include <cmath>
#include <limits>

namespace borewright {
namespace {

Verdict asRead(Verdict verdict, bool complete) {
    return verdict == Verdict::within && !complete ? Verdict::notMeasured : verdict;
}

} // namespace

Guard guardOf(const std::optional<Length>& u, const DecisionRule& rule) {
    if (!u) return {};
    const double k = guardFactor(rule, std::numeric_limits<double>::infinity());
    const Length w = Length::nearest(k * u->in(Unit::micrometre), Unit::micrometre);
    return {w, w};
}

Verdict judgeLeast(Length value, const FitLimits& limits, const Guard& guard, bool complete) {
    if (value <= Length()) return Verdict::outside;
    if (!limits.lower) return Verdict::notJudged;
    return asRead(judgeLower(value, limits.lower->value(), guard), complete);
}

Verdict judgeMost(Length value, const FitLimits& limits, const Guard& guard, bool complete) {
    if (!limits.upper) return Verdict::notJudged;
    return asRead(judgeUpper(value, limits.upper->value(), guard), complete);
}

Length together(Length a, Length b) {
    return Length::nearest(std::hypot(a.in(Unit::micrometre), b.in(Unit::micrometre)),
                           Unit::micrometre);
}

DisplayUnits unitsOf(const TypedLength& typed) {
    return isInchFamily(typed.unit()) ? DisplayUnits::inch() : DisplayUnits::metric();
}

} // namespace borewright
