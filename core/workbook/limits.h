// SPDX-License-Identifier: GPL-3.0-or-later
// What a block is judged by: sets of limits, entered by the user from the engine maker's manual.
#pragma once

#include "core/length/number_text.h"
#include "core/workbook/block.h"

#include <map>
#include <optional>
#include <string>

namespace borewright {

// Each is optional; one that is not given is not judged.
struct Limits {
    std::optional<TypedLength> sizeLower;  // smallest allowed smallest size
    std::optional<TypedLength> sizeUpper;  // largest allowed largest size
    std::optional<TypedLength> outOfRound; // a difference of diameters
    std::optional<TypedLength> taper;      // a difference of diameters
    UnknownFields unknown{};
    friend bool operator==(const Limits&, const Limits&) = default;
};

enum class LimitPurpose {
    worn,   // may it be used again
    finish, // is it finished: one set per oversize
};

// Manuals mean one of two things by taper.
enum class TaperRule {
    largestLessSmallest, // of one axis within the judged zone (default)
    endToEnd,            // of one axis, topmost less lowest judged station, without its sign
};

// How sure a verdict has to be (JCGM 106; ISO 14253-1).
struct DecisionRule {
    enum class Kind {
        plain,             // the value against the limit as it stands: w = 0
        fivePercent,       // w = 1.65 u, ISO 14253-1:2017 (default)
        twoAndHalfPercent, // w = 1.96 u
        own,               // w = z(1 − ownPercent/100) u
    };
    Kind kind = Kind::fivePercent;
    double ownPercent = 1; // chance of a wrong "within" at the limit; over 0, up to 50
    UnknownFields unknown{};
    friend bool operator==(const DecisionRule&, const DecisionRule&) = default;
};
// The accepted chance of a wrong verdict at the limit, 0 … 0.5; 0.5 for plain comparison.
double riskOf(const DecisionRule& rule);

struct LimitSet {
    std::string id;   // "l1"; unique in the workbook
    std::string name; // "worn", "0.020 over"
    LimitPurpose purpose = LimitPurpose::worn;
    std::optional<TypedLength> oversize;   // of a finish set: above standard size
    std::optional<TypedLength> finishSize; // what the hone aims at; else standard size + oversize
    TaperRule taperRule = TaperRule::largestLessSmallest;
    DecisionRule decision;
    Limits limits;                 // of every bore
    std::map<int, Limits> perBore; // by engine number; replaces `limits` whole for that bore
    UnknownFields unknown;
    friend bool operator==(const LimitSet&, const LimitSet&) = default;
};

// Limits for one bore of a set.
const Limits& limitsFor(const LimitSet& set, int bore);
// The size the hone aims at for a bore: the set's finish size, else standard size + oversize.
std::optional<Length> finishSizeFor(const LimitSet& set, const Bore& bore);
// Explains what cannot be in a set: crossed sizes, a negative or zero allowance.
Result<void> checkLimits(const Limits& limits);
Result<void> checkDecision(const DecisionRule& rule);

} // namespace borewright
