// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/results/hone_aim.h"

#include "core/honing/stages.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace borewright {
namespace {

double um(Length length) {
    return length.in(Unit::micrometre);
}

// The finish set whose limits count: that of the last survey under way, else the only one.
const LimitSet* finishSet(const Workbook& workbook) {
    for (auto survey = workbook.surveys.rbegin(); survey != workbook.surveys.rend(); ++survey) {
        if (purposeOf(survey->header.kind) != LimitPurpose::finish) continue;
        if (const auto set = judgingSet(workbook, survey->header)) return *set;
    }
    const LimitSet* only = nullptr;
    for (const LimitSet& set : workbook.limitSets) {
        if (set.purpose != LimitPurpose::finish) continue;
        if (only != nullptr) return nullptr;
        only = &set;
    }
    return only;
}

// Both a target's limit and the set's count, where they speak of this size: the tighter.
std::optional<Length> limitOf(const std::optional<TypedLength>& target,
                              const std::optional<TypedLength>& set, Length size, bool upper) {
    std::optional<Length> limit;
    for (const auto* typed : {&target, &set}) {
        if (!*typed || !limitBelongs((*typed)->value(), size)) continue;
        const Length here = (*typed)->value();
        if (upper ? here < size : here > size) continue;
        if (!limit) limit = here;
        limit = upper ? std::min(*limit, here) : std::max(*limit, here);
    }
    return limit;
}

void takeLimits(const Workbook& workbook, const Bore& bore, BoreAim& aim) {
    const auto target = workbook.targets.find(bore.number);
    const bool targeted = target != workbook.targets.end();
    const LimitSet* set = finishSet(workbook);
    const Limits limits = set != nullptr ? limitsFor(*set, bore.number) : Limits();
    const std::optional<TypedLength> none;
    aim.upper = limitOf(targeted ? target->second.upper : none, limits.sizeUpper, aim.size, true);
    aim.lower = limitOf(targeted ? target->second.lower : none, limits.sizeLower, aim.size, false);
}

// Where the wall may end. The finish size is meant; it is reached from below, half a micrometre
// under, and passed by no more than 2 µm: nearer the upper limit where that lies closer.
void placeAim(double lasting_um, BoreAim& bore) {
    constexpr double guardFactor = 1.65; // 5 %, ISO 14253-1:2017
    HoneAim& aim = bore.aim;
    const double guard = guardFactor * lasting_um;
    if (bore.upper)
        aim.upperLimit_um = um(*bore.upper - bore.size);
    else
        bore.says.emplace_back("No upper limit of the size is given: 5 µm (0.2 thou) over the "
                               "finish size is taken for one.");
    aim.cap_um = std::min(aim.cap_um, aim.upperLimit_um - guard);
    if (bore.lower) aim.lowest_um = std::max(aim.lowest_um, um(*bore.lower - bore.size));
    constexpr double below = 1.5; // what the aim keeps from its cap at least
    aim.aim_um = std::min(aim.aim_um, aim.cap_um - below);
    if (aim.aim_um < aim.lowest_um) aim.aim_um = 0.5 * (aim.lowest_um + aim.cap_um);
}

void placeStages(const Workbook& workbook, HoneAim& aim) {
    const Stages stages = stagesOf(workbook.hone.stages);
    // Of what the finish stones may take at the most: what the plan leaves them on the whole, and
    // everywhere.
    constexpr double usualShare = 0.8, leastShare = 0.25;
    aim.finishStock_um = usualShare * um(stages.nextStopsAt);
    aim.finishLeast_um = leastShare * um(stages.nextStopsAt);
    // A stage of practice only tells a man without a plan when to change; his own is an order.
    if (workbook.hone.stages.roughStopsAt) aim.fullStops_um = um(stages.roughStopsAt);
}

void placeStations(const Workbook& workbook, const Bore& bore, BoreAim& result) {
    std::vector<Length> depths;
    for (const Level& level : bore.levels)
        depths.push_back(level.depth.value());
    constexpr std::size_t enough = 4;
    const std::size_t planned = depths.size();
    const auto look = [&](Length depth, const Axis& axis) {
        return Look{depth.in(Unit::millimetre), axisShare(workbook.block, axis.id)};
    };
    if (planned < enough)
        for (const Level& level : proposeLevels(bore))
            if (std::ranges::find(depths, level.depth.value()) == depths.end())
                depths.push_back(level.depth.value());
    for (std::size_t i = 0; i < depths.size(); ++i)
        for (const Axis& axis : workbook.block.axes) {
            if (!hasWall(bore, depths[i], axis.id)) continue;
            result.aim.readable.push_back(look(depths[i], axis));
            if (i < planned || planned == 0) result.aim.stations.push_back(look(depths[i], axis));
        }
    if (planned < enough)
        result.says.push_back("Only " + std::to_string(planned) +
                              (planned == 1 ? " depth is" : " depths are") +
                              " measured in this bore: what lies between is guessed, so the plan "
                              "is cautious. Measure at more depths.");
}

} // namespace

HoneDoubt honeDoubt(const SurveyResult& survey) {
    HoneDoubt doubt;
    const Budget& budget = survey.doubts.budget;
    if (!budget.known()) return doubt;
    double shared = 0, lasting = 0;
    for (const BudgetLine& line : budget.lines) {
        if (!isShared(line.source)) continue;
        const bool lasts = line.source == Source::master ||
                           line.source == Source::masterExpansion ||
                           line.source == Source::blockExpansion;
        (lasts ? lasting : shared) += line.contribution_um * line.contribution_um;
    }
    constexpr double least_um = 0.3; // no reading is better, whatever is typed
    doubt.own_um = std::max(least_um, budget.own_um);
    doubt.shared_um = std::sqrt(shared);
    doubt.lasting_um = std::sqrt(lasting);
    doubt.assumed = false;
    return doubt;
}

double axisShare(const Block& block, const std::string& axis) {
    if (block.axes.empty()) return 0;
    const Axis* found = findAxis(block, axis);
    if (found == nullptr) return 0;
    if (found == &block.axes[0]) return 1;
    if (block.axes.size() > 1 && found == &block.axes[1]) return -1;
    const double turn = found->angleDegrees - block.axes[0].angleDegrees;
    return std::cos(2 * turn * std::numbers::pi / 180);
}

namespace {

// A reading that a story would have otherwise. What is merely finer than the dial, or fits no
// story, stays: the learning weighs it for itself.
bool looksMistaken(const SurveyResult& survey, const Station& station) {
    for (const Suspicion& suspicion : survey.suspicions)
        for (const SlipFix& fix : suspicion.stories.front().fixes)
            if (fix.station == station) return true;
    return false;
}

} // namespace

HoneReadings honeReadings(const Workbook& workbook, const SurveyResult& survey, int bore,
                          Length finishSize) {
    HoneReadings result;
    const BoreResult* read = findBoreResult(survey, bore);
    if (read == nullptr) return result;
    const HoneDoubt doubt = honeDoubt(survey);
    result.shared_um = doubt.shared_um;
    for (const StationResult& at : read->stations) {
        if (!at.diameter) continue;
        if (looksMistaken(survey, at.station)) {
            ++result.leftOut;
            continue;
        }
        result.readings.push_back(
            {{at.station.depth.in(Unit::millimetre), axisShare(workbook.block, at.station.axis)},
             um(*at.diameter - finishSize),
             doubt.own_um});
    }
    return result;
}

std::optional<Length> honeSize(const Workbook& workbook, int number) {
    if (const auto target = workbook.targets.find(number); target != workbook.targets.end())
        return target->second.size.value();
    const LimitSet* set = finishSet(workbook);
    const Bore* bore = findBore(workbook.block, number);
    if (set == nullptr || bore == nullptr) return std::nullopt;
    return finishSizeFor(*set, *bore);
}

Result<BoreAim> boreAim(const Workbook& workbook, const SurveyResult* last, const Bore& bore) {
    const auto size = honeSize(workbook, bore.number);
    if (!size)
        return refuse("there is no finish size to hone to: hand one over from choosing the size "
                      "or from a piston, or enter it with the finish limits");
    BoreAim result;
    result.size = *size;
    takeLimits(workbook, bore, result);
    const HoneDoubt doubt = last != nullptr ? honeDoubt(*last) : HoneDoubt();
    result.aim.gaugeDoubt_um = doubt.own_um;
    result.aim.gaugeShared_um = doubt.shared_um;
    if (doubt.assumed)
        result.says.emplace_back("The gauge's doubt is not known: 1.3 µm (0.05 thou) for a "
                                 "reading and 0.5 µm (0.02 thou) for zero are assumed.");
    if (workbook.straightAim) result.aim.straight_um = um(workbook.straightAim->value());
    placeAim(doubt.lasting_um, result);
    placeStages(workbook, result.aim);
    placeStations(workbook, bore, result);
    return result;
}

} // namespace borewright
