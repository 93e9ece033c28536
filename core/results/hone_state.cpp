// SPDX-License-Identifier: GPL-3.0-or-later
// How a bore stands as it is believed to be, and its headline.
#include "core/results/doubt_words.h"
#include "core/results/hone_scene.h"
#include "core/results/hone_words.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace borewright {
namespace {

constexpr double normal95 = 1.96;
// Where no lower limit was entered: a size that he would not hone for.
constexpr double nearlyThere_um = 12;

std::string size(const PlannedBore& bore, double um, const DisplayUnits& units) {
    return sizeWithUnit(bore.aim->size + Length::nearest(um, Unit::micrometre), units);
}

std::string depth(double mm, const DisplayUnits& units) {
    return depthWithUnit(Length::nearest(mm, Unit::millimetre), units);
}

// "straight within 0.19 ± 0.06 thou, 3.4402 in".
std::string straightAndSize(const HoneScene& scene, const PlannedBore& bore) {
    const BoreState state = stateOf(bore);
    const std::string unit = " " + std::string(symbol(scene.units.small));
    std::string within = claimWords(state.spread_um, scene.units);
    within = within.substr(0, within.size() - unit.size());
    const Length doubt = Length::nearest(state.spreadDoubt_um, Unit::micrometre);
    return "straight within " + within + " ± " + upward(doubt, scene.units, 1) + unit + ", " +
           size(bore, state.mean_um, scene.units);
}

std::string overAlready(const HoneScene& scene, const PlannedBore& bore) {
    const BoreState state = stateOf(bore);
    const std::string limit =
        bore.aim->upper ? "its limit of " + sizeWithUnit(*bore.aim->upper, scene.units)
                        : "its finish size of " + sizeWithUnit(bore.aim->size, scene.units);
    if (state.smallest_um > 0)
        return fmt::format("The bore as it is, {} at its smallest, is larger than its target of "
                           "{}: nothing is left to hone. Was the right size handed over?",
                           size(bore, state.smallest_um, scene.units),
                           sizeWithUnit(bore.aim->size, scene.units));
    return fmt::format("Over size: {} at {} against {}. A hone only makes it larger: stop, and "
                       "choose the next size or a sleeve.",
                       size(bore, state.largest_um, scene.units),
                       depth(state.largestAt_mm, scene.units), limit);
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

// The depth that stands highest with its doubt.
struct Highest {
    Eigen::Index cell = 0;
    double reached_um = 0; // passed once in a hundred
};
constexpr double sigmas = 2.33; // passed once in a hundred

std::optional<Highest> highestOf(const PlannedBore& bore) {
    const Foreseen& now = bore.plan.now;
    if (now.largest.size() == 0) return std::nullopt;
    Highest highest;
    highest.reached_um = (now.largest + sigmas * now.deviation).maxCoeff(&highest.cell);
    return highest;
}

// Why a bore waits for a reading and not for a stone: doubt of a depth that nobody has read, which
// may be over already, or which leaves the next set-up no room. Empty where doubt is not the cause.
std::string measureFirst(const HoneScene& scene, const PlannedBore& bore) {
    const std::optional<Highest> highest = highestOf(bore);
    if (!highest) return {};
    const Foreseen& now = bore.plan.now;
    const HoneAim& aim = bore.aim->aim;
    const double deviation = now.deviation[highest->cell];
    const bool overPerhaps = now.chanceOver > aim.chance;
    if (!overPerhaps) {
        // Known much worse than where it was read, higher than anything read, and so high that it
        // is what leaves no room.
        constexpr double readings = 2;
        const double read_um = stateOf(bore).largest_um + sigmas * aim.gaugeDoubt_um;
        if (deviation < readings * aim.gaugeDoubt_um || highest->reached_um <= read_um ||
            highest->reached_um <= -aim.finishStock_um)
            return {};
    }
    // As a gauge is set to it: millimetres, or twentieths of an inch.
    const double step_mm = isInchFamily(scene.units.size) ? 1.27 : 1;
    const auto cell = static_cast<std::size_t>(highest->cell);
    const double cell_mm = bore.group->group.bench.grid.middle_mm(cell);
    const double at_mm = step_mm * std::round(cell_mm / step_mm);
    const Length doubt = Length::nearest(normal95 * deviation, Unit::micrometre);
    return fmt::format("Between the depths that were read it {}: about {} at {}, known to ± {} {} "
                       "only. Measure there before going on.",
                       overPerhaps ? "may be over already" : "is not known well enough to go on",
                       size(bore, now.largest[highest->cell], scene.units),
                       depth(at_mm, scene.units), upward(doubt, scene.units, 1),
                       symbol(scene.units.small));
}

std::string wouldGoOver(const HoneScene& scene, const PlannedBore& bore) {
    const BoreState state = stateOf(bore);
    const std::string stands = straightAndSize(scene, bore);
    // What he wants to know first, where that is good news.
    if (isGood(bore))
        return capital(stands) + ": done, stop. Its largest is " +
               size(bore, state.largest_um, scene.units) + " at " +
               depth(state.largestAt_mm, scene.units) + ".";
    const bool straight = state.spread_um <= bore.aim->aim.straight_um;
    if (std::string text = measureFirst(scene, bore); !text.empty()) {
        const bool overPerhaps = bore.plan.now.chanceOver > bore.aim->aim.chance;
        return straight && !overPerhaps ? capital(stands) + ": stop. " + text : text;
    }
    const std::string over = fmt::format(
        "Going on would put it over: {} at {} now, and it is to end at {}.",
        size(bore, state.largest_um, scene.units), depth(state.largestAt_mm, scene.units),
        sizeWithUnit(bore.aim->size, scene.units));
    if (straight) return capital(stands) + ": stop. " + over;
    return over + " It is " + stands + ": stop.";
}

} // namespace

BoreState stateOf(const PlannedBore& bore) {
    const Belief belief = bore.group->learner.belief(bore.place);
    const WallGrid& grid = bore.group->group.bench.grid;
    BoreState state;
    double sum = 0;
    bool first = true;
    for (const Look& look : bore.aim->aim.stations) {
        const double here = expectedAt(belief, grid, look).mean_um;
        sum += here;
        if (first || here > state.largest_um) {
            state.largest_um = here;
            state.largestAt_mm = look.depth_mm;
        }
        if (first || here < state.smallest_um) {
            state.smallest_um = here;
            state.smallestAt_mm = look.depth_mm;
        }
        first = false;
    }
    if (first) return state;
    state.mean_um = sum / static_cast<double>(bore.aim->aim.stations.size());
    // The doubt of largest less smallest along an axis: of the two stations it lies between.
    for (const Look& high : bore.aim->aim.stations)
        for (const Look& low : bore.aim->aim.stations) {
            if (high.axis != low.axis) continue;
            const Eigen::RowVectorXd row = lookRow(belief, grid, high) - lookRow(belief, grid, low);
            const double between = row.dot(belief.mean);
            if (between < state.spread_um) continue;
            state.spread_um = between;
            state.spreadDoubt_um =
                normal95 * std::sqrt(std::max(0.0, (row * belief.covariance).dot(row)));
        }
    return state;
}

bool isGood(const PlannedBore& bore) {
    const BoreState state = stateOf(bore);
    const BoreAim& aim = *bore.aim;
    const double least_um =
        aim.lower ? (*aim.lower - aim.size).in(Unit::micrometre) : -nearlyThere_um;
    // Nor between the stations: there it is only believed.
    return bore.plan.now.chanceOver <= aim.aim.chance && state.smallest_um >= least_um &&
           state.largest_um <= aim.aim.upperLimit_um &&
           state.spread_um + state.spreadDoubt_um <= aim.aim.straight_um;
}

std::string headlineOf(const HoneScene& scene, const PlannedBore& bore) {
    if (!bore.refused.empty()) return capital(bore.refused) + ".";
    if (bore.learned->passSince) return "Honed since it was measured: measure it first.";
    switch (bore.outcome) {
    case HoneOutcome::done:
        return capital(straightAndSize(scene, bore)) + ": stop.";
    case HoneOutcome::asGoodAsItGets:
        return capital(straightAndSize(scene, bore)) +
               ": with these stones it cannot get straighter. Stop.";
    case HoneOutcome::gaugeCannotTell:
        return capital(straightAndSize(scene, bore)) + ": whether that is within " +
               claimWords(bore.aim->aim.straight_um, scene.units) +
               " this gauge cannot tell. Stop.";
    case HoneOutcome::wouldGoOver:
        return wouldGoOver(scene, bore);
    case HoneOutcome::overAlready:
        return overAlready(scene, bore);
    case HoneOutcome::noStone:
        return "No stone that may be used reaches what is to be cut.";
    case HoneOutcome::notMeasured:
        return "It has not been measured yet: measure it first.";
    case HoneOutcome::next:
        break;
    }
    return {};
}

} // namespace borewright
