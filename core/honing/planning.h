// SPDX-License-Identifier: GPL-3.0-or-later
// The next set-up: a receding horizon. Sequences of up to a few set-ups, each up to three windows
// with ends and strokes free, are fitted by bounded Gauss–Newton on the final wall over the whole
// fine grid, through the contact model at the mean of the belief; of the best the first set-up is
// taken, its strokes scaled so that the chance of any depth going over stays under its limit given
// all that is in doubt, rounded to whole strokes and handy depths; then he measures, and everything
// is planned afresh. The same belief gives the same plan: starts are fixed, random draws seeded.
#pragma once

#include "core/honing/learning.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace borewright {

// What a bore is honed towards, µm beyond finish size (so the finish size is 0).
struct HoneAim {
    double aim_um = -0.5;      // where the wall should end
    double cap_um = 2;         // the wall may pass this with no more than `chance`
    double upperLimit_um = 5;  // over it the bore is over size: what `chanceOver` speaks of
    double lowest_um = -6;     // smaller than this it is not finished
    double straight_um = 6.35; // largest less smallest along an axis over the stations
    double chance = 0.01;
    double finishStock_um = 20;  // what rough stones leave for the finish stone …
    double finishLeast_um = 6;   // … and at the very least, everywhere
    double fullStops_um = 0;     // what full rough stones leave, where a short one goes on
    std::vector<Look> stations;  // where straightness is asked for
    std::vector<Look> readable;  // where the gauge can read: stations and other levels
    double gaugeDoubt_um = 1.1;  // of one reading, standard
    double gaugeShared_um = 0.5; // moving all readings of a survey alike
};

struct PlanOptions {
    std::vector<bool> mayUse; // by stone; empty = all
    int mostSetUps = 3;       // looked ahead
    int mostWindows = 3;
    double setUpCost_um = 2.6; // what a stop to measure must be worth, of straightness
    double changeCost_um = 0;  // the same for a change of stone, from `fitted`
    std::optional<std::size_t> fitted;
    std::optional<std::size_t> first; // the first set-up has to be with this stone
    bool quick = false;               // from `warm` only
    double cell_mm = 1;               // windows are rounded to this
};

enum class HoneOutcome {
    next,            // a set-up is proposed
    done,            // straight and to size, as sure as asked: stop
    asGoodAsItGets,  // these stones promise less than a set-up is worth
    gaugeCannotTell, // straight or not lies within the gauge's doubt, and more readings would not
                     // do
    wouldGoOver,     // no set-up worth its while keeps the chance
    overAlready,     // some depth is over the upper limit
    noStone,         // none reaches, or none may be used
    notMeasured,     // no survey yet
};

struct Foreseen {
    Eigen::VectorXd wall;      // a cell each, mean of the axes
    Eigen::VectorXd deviation; // standard, of the larger axis
    Eigen::VectorXd largest;   // mean of the larger axis
    double chanceOver = 0;     // that any depth on either axis is over the upper limit
    double chanceOverCap = 0;  // the same of the cap
    double spread_um = 0;      // over the stations, worse axis, of the mean
    double spreadAll_um = 0;   // over every depth the stones reach
    double chanceDone = 0;     // straight, not over, not under, over the stations
};

struct HonePlan {
    HoneOutcome outcome = HoneOutcome::notMeasured;
    std::vector<SetUp> setUps;      // the first as to be done, the rest in outline
    std::vector<Foreseen> foreseen; // after each
    Foreseen now;
    std::vector<Look> measure; // where to read after the first, most telling first
    double cost_um = 0;        // of the whole sequence: compares plans
    bool cautious = false;     // strokes of the first were cut back for safety
    int setUpsLeft = 0; // expected, this one included: more than planned, as plans are made anew
};

// Called now and then with 0 … 1; false = give up (the best so far is returned).
using PlanProgress = std::function<bool(double)>;

// Plans one bore. `warm`: the plan before this survey, if there was one.
HonePlan planBore(const HoneLearner& learner, std::size_t bore, const HoneAim& aim,
                  const PlanOptions& options, const HonePlan* warm = nullptr,
                  const PlanProgress& progress = {});

// What a set-up of the user's own would do.
Foreseen foresee(const HoneLearner& learner, std::size_t bore, const HoneAim& aim,
                 const SetUp& setUp);
// What stands now, nothing done.
Foreseen asItStands(const HoneLearner& learner, std::size_t bore, const HoneAim& aim);

// What to read now that the bore was honed: few depths while there is far to go, every station near
// the end; those that cut the doubt most, greedy over the summed variance of the wall. As the plan
// says it beforehand (`HonePlan::measure`), should all have gone as planned.
std::vector<Look> worthReading(const HoneLearner& learner, std::size_t bore, const HoneAim& aim);

} // namespace borewright
