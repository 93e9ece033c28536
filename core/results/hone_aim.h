// SPDX-License-Identifier: GPL-3.0-or-later
// What a bore is honed towards, and its readings as the learner takes them. Part of results.
#pragma once

#include "core/honing/planning.h"
#include "core/results/results.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

// What stands before the doubt of a reading where a survey does not say (common practice, no
// source).
inline constexpr double assumedOwnDoubt_um = 1.3;
inline constexpr double assumedSharedDoubt_um = 0.5;

// The doubt of a survey's readings, standard, by what the learner tells apart: a reading's own,
// what moves this survey's readings alike, and what moves those of all surveys alike (the master):
// that one is no doubt of what a pass took off, only of the size reached.
struct HoneDoubt {
    double own_um = assumedOwnDoubt_um;
    double shared_um = assumedSharedDoubt_um;
    double lasting_um = 0;
    bool assumed = true;
};
HoneDoubt honeDoubt(const SurveyResult& survey);

struct HoneReadings {
    std::vector<BoreReading> readings;
    double shared_um = assumedSharedDoubt_um;
    int leftOut = 0; // that look like slips
};
HoneReadings honeReadings(const Workbook& workbook, const SurveyResult& survey, int bore,
                          Length finishSize);

// Along which of the first two axes, as lookRow takes it.
double axisShare(const Block& block, const std::string& axis);

// The finish size of a bore: its target, else that of the finish set which judges the last survey
// under way, else of the only finish set. Nothing where none says.
std::optional<Length> honeSize(const Workbook& workbook, int bore);

struct BoreAim {
    HoneAim aim;
    Length size;
    std::optional<Length> upper; // as given, without any guard
    std::optional<Length> lower;
    std::vector<std::string> says; // what was assumed
};
// `last`: the survey that read the bore last. Refuses where there is no size.
Result<BoreAim> boreAim(const Workbook& workbook, const SurveyResult* last, const Bore& bore);

} // namespace borewright
