// SPDX-License-Identifier: GPL-3.0-or-later
// The words that stand in files for the record's choices; one table for reading and writing.
#pragma once

#include "core/workbook/workbook.h"

#include <array>
#include <string_view>
#include <utility>

namespace borewright {

template<class Choice, std::size_t N>
using WordTable = std::array<std::pair<Choice, std::string_view>, N>;

constexpr WordTable<Arrangement, 3> wordsOf(Arrangement) {
    return {{{Arrangement::inLine, "in line"},
             {Arrangement::vee, "vee"},
             {Arrangement::opposed, "opposed"}}};
}
constexpr WordTable<Surface, 4> wordsOf(Surface) {
    return {{{Surface::iron, "iron"},
             {Surface::ironSleeveInAluminium, "iron sleeve in aluminium"},
             {Surface::plated, "plated"},
             {Surface::bareAluminium, "bare aluminium"}}};
}
constexpr WordTable<End, 2> wordsOf(End) {
    return {{{End::open, "open"}, {End::closed, "closed"}}};
}
constexpr WordTable<Judging, 3> wordsOf(Judging) {
    return {{{Judging::byMap, "by map"}, {Judging::always, "always"}, {Judging::never, "never"}}};
}
constexpr WordTable<LimitPurpose, 2> wordsOf(LimitPurpose) {
    return {{{LimitPurpose::worn, "worn"}, {LimitPurpose::finish, "finish"}}};
}
constexpr WordTable<TaperRule, 2> wordsOf(TaperRule) {
    return {{{TaperRule::largestLessSmallest, "largest less smallest"},
             {TaperRule::endToEnd, "end to end"}}};
}
constexpr WordTable<SurveyKind, 4> wordsOf(SurveyKind) {
    return {{{SurveyKind::asFound, "as found"},
             {SurveyKind::beforeBoring, "before boring"},
             {SurveyKind::check, "check"},
             {SurveyKind::final, "final"}}};
}
constexpr WordTable<Dial::Face, 2> wordsOf(Dial::Face) {
    return {{{Dial::Face::balanced, "balanced"}, {Dial::Face::round, "round"}}};
}
constexpr WordTable<Dial::Larger, 2> wordsOf(Dial::Larger) {
    return {{{Dial::Larger::plus, "plus"}, {Dial::Larger::minus, "minus"}}};
}
constexpr WordTable<Entry, 2> wordsOf(Entry) {
    return {{{Entry::deviation, "deviation"}, {Entry::diameter, "diameter"}}};
}
constexpr WordTable<Meant, 3> wordsOf(Meant) {
    return {{{Meant::limits, "limits"}, {Meant::expanded, "k = 2"}, {Meant::standard, "standard"}}};
}
constexpr WordTable<DecisionRule::Kind, 4> wordsOf(DecisionRule::Kind) {
    return {{{DecisionRule::Kind::plain, "plain"},
             {DecisionRule::Kind::fivePercent, "5 percent"},
             {DecisionRule::Kind::twoAndHalfPercent, "2.5 percent"},
             {DecisionRule::Kind::own, "own"}}};
}
constexpr WordTable<Expansion, 4> wordsOf(Expansion) {
    return {{{Expansion::greyIron, "grey iron"},
             {Expansion::sleeveInAluminium, "sleeve in aluminium"},
             {Expansion::aluminium, "aluminium"},
             {Expansion::gaugeSteel, "gauge steel"}}};
}
constexpr WordTable<WearSide, 3> wordsOf(WearSide) {
    return {{{WearSide::notSaid, "not said"},
             {WearSide::oneSide, "one side"},
             {WearSide::bothSides, "both sides"}}};
}
constexpr WordTable<CutMethod, 2> wordsOf(CutMethod) {
    return {{{CutMethod::honeOnly, "hone only"}, {CutMethod::boreAndHone, "bore and hone"}}};
}
constexpr WordTable<Centring, 2> wordsOf(Centring) {
    return {{{Centring::wornBore, "worn bore"}, {Centring::originalAxis, "original axis"}}};
}
constexpr WordTable<StoneKind, 2> wordsOf(StoneKind) {
    return {{{StoneKind::rough, "rough"}, {StoneKind::finish, "finish"}}};
}
constexpr WordTable<StoneCare::Kind, 3> wordsOf(StoneCare::Kind) {
    return {{{StoneCare::Kind::turnedEndForEnd, "turned end for end"},
             {StoneCare::Kind::runInReverse, "run in reverse"},
             {StoneCare::Kind::dressed, "dressed"}}};
}
constexpr WordTable<SheetUnits, 10> wordsOf(SheetUnits) {
    return {{{SheetUnits::inch, "inch"},
             {SheetUnits::metric, "metric"},
             {SheetUnits::inchTenth, "inch, tenth"},
             {SheetUnits::inchHundredth, "inch, hundredth"},
             {SheetUnits::inchMicrometre, "inch, micrometre"},
             {SheetUnits::metricThou, "metric, thou"},
             {SheetUnits::metricTenth, "metric, tenth"},
             {SheetUnits::metricHundredth, "metric, hundredth"},
             {SheetUnits::inchMillimetre, "inch, millimetre"},
             {SheetUnits::metricMillimetre, "metric, millimetre"}}};
}

template<class Choice>
constexpr std::string_view wordFor(Choice choice) {
    for (const auto& [meaning, word] : wordsOf(choice))
        if (meaning == choice) return word;
    return {};
}

} // namespace borewright
