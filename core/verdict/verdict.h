// SPDX-License-Identifier: GPL-3.0-or-later
// A characteristic against its limits, with a guard band of w = 1.65 u (ISO 14253-1:2017, 5 % risk
// of calling wrongly). With no uncertainty known w = 0, and the sheet says so.
#pragma once

#include "core/form/form.h"

#include <optional>
#include <string_view>

namespace borewright {

enum class Verdict {
    notJudged,      // no limit given
    notMeasured,    // an asked reading that it needs is missing
    within,         // upper limit: value ≤ limit − w; lower: value ≥ limit + w
    outside,        // upper limit: value > limit + w; lower: value < limit − w
    tooCloseToCall, // neither
    notYet,         // outside, in a check while honing is under way: not yet there
};

// "within", "outside", "too close to call", "not measured", "not yet", "not judged".
std::string_view nameOf(Verdict verdict);
// The weightier of two: outside, tooCloseToCall, notMeasured, notYet, within, notJudged.
Verdict worse(Verdict a, Verdict b);

// A value against one limit; `standardUncertainty` is u, ≥ 0, nothing where unknown.
Verdict judgeUpper(Length value, Length limit, std::optional<Length> standardUncertainty);
Verdict judgeLower(Length value, Length limit, std::optional<Length> standardUncertainty);

// What of a bore is judged.
enum class Quality { largestSize, smallestSize, outOfRound, taper };
std::string_view nameOf(Quality quality);

struct Judgement {
    Quality quality;
    std::optional<Length> value;
    std::optional<Length> limit;
    Verdict verdict = Verdict::notJudged;
};

// A bore's form against its limits. `missing`: asked judged stations were not all measured, which
// turns "within" (what was measured holds) into "not measured", but never hides an "outside".
// A check while honing (`underWay`) gives "not yet" for what more honing can mend: everything but
// a largest size over its limit.
std::vector<Judgement> judge(const std::optional<BoreForm>& form, const Limits& limits,
                             bool missing, bool underWay);
Verdict overall(const std::vector<Judgement>& judgements);

// The answer to an aim.
enum class AimAnswer { noAim, notMeasured, met, notYet };
std::string_view nameOf(AimAnswer answer);

} // namespace borewright
