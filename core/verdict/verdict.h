// SPDX-License-Identifier: GPL-3.0-or-later
// A characteristic against its limits, with a guard band of w = 1.65 u by default (ISO
// 14253-1:2017, 5 % risk of calling wrongly; JCGM 106). With no uncertainty known w = 0, and the
// sheet says so.
#pragma once

#include "core/form/form.h"
#include "core/form/trials.h"

#include <optional>
#include <string_view>

namespace borewright {

enum class Verdict {
    notJudged,      // no limit given
    notMeasured,    // an asked reading that it needs is missing
    within,         // upper limit: value ≤ limit − w; lower: value ≥ limit + w
    outside,        // upper limit: value > limit + w'; lower: value < limit − w'; w' ≥ w
    tooCloseToCall, // neither
    notYet,         // outside, in a check while honing is under way: not yet there
};

// "within", "outside", "too close to call", "not measured", "not yet", "not judged".
std::string_view nameOf(Verdict verdict);
// The weightier of two: outside, tooCloseToCall, notMeasured, notYet, within, notJudged.
Verdict worse(Verdict a, Verdict b);

// What of a bore is judged.
enum class Quality { largestSize, smallestSize, outOfRound, taper };
std::string_view nameOf(Quality quality);

// How far from its limit a value has to be. `within` is w = k·u of the deciding readings; `outside`
// is w', no less, which also allows for what noise adds to a largest of many.
struct Guard {
    Length within;
    Length outside;
};
// k is 1.65 for a risk of 5 % (ISO 14253-1:2017), 1.96 for 2.5 %, z(1 − risk) for the user's own;
// Student's t of the same risk where u is known by few degrees of freedom. Plain comparison: 0.
double guardFactor(const DecisionRule& rule, double freedom);
// How much wider the trials hold the deciding readings than Student's t of the effective freedom
// does; 1 where the standard uncertainty is well known.
double tailWidening(const FigureDoubt& doubt);
Guard guardOf(const FigureDoubt& doubt, const DecisionRule& rule);
// A value against one limit; no guard where the doubt is not known.
Verdict judgeUpper(Length value, Length limit, const Guard& guard);
Verdict judgeLower(Length value, Length limit, const Guard& guard);

struct Judgement {
    Quality quality;
    std::optional<Length> value;
    std::optional<Length> limit;
    Verdict verdict = Verdict::notJudged;
    // Where the doubt is known:
    std::optional<Length> below{};        // the true value lies between value − below
    std::optional<Length> above{};        // and value + above, 95 %
    std::optional<Length> guard{};        // w
    std::optional<Length> guardOutside{}; // w'
    std::optional<Length> gaugeAlone{};   // what the gauge alone would show on a perfect bore
    // The chance that "within" or "outside" is wrong; where neither is said, that it is outside.
    std::optional<double> chanceWrong{};
};

// A bore's form against its limits. `missing`: asked judged stations were not all measured, which
// turns "within" (what was measured holds) into "not measured", but never hides an "outside".
// A check while honing (`underWay`) gives "not yet" for what more honing can mend: everything but
// a largest size over its limit.
// `doubt` null: not known, w = 0.
std::vector<Judgement> judge(const std::optional<BoreForm>& form, const Limits& limits,
                             bool missing, bool underWay, const BoreDoubt* doubt = nullptr,
                             const DecisionRule& rule = {});
Verdict overall(const std::vector<Judgement>& judgements);

// The answer to an aim.
enum class AimAnswer {
    noAim,
    notMeasured,
    met,        // value ≤ aim − w
    notYet,     // value > aim + w'
    cannotTell, // neither: this gauge cannot tell
};
std::string_view nameOf(AimAnswer answer);
// `doubt` null: not known, w = w' = 0.
AimAnswer answerAim(Length value, Length aim, const FigureDoubt* doubt, const DecisionRule& rule);

} // namespace borewright
