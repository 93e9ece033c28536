// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of an outlook, a source file each: what is planned put into what is shown. Part of
// results.
#pragma once

#include "core/results/hone_plans.h"

#include <optional>
#include <string>
#include <vector>

namespace borewright {

struct HoneScene {
    const Workbook& workbook;
    const Results& results;
    const DisplayUnits& units;
};

// hone_bore.cpp: a set-up of the plan as it is done and shown.
PlannedSetUp plannedSetUp(const HoneScene& scene, const PlannedBore& bore, const HonePlan& plan,
                          std::optional<std::size_t> fitted);
HoneCurves curvesOf(const PlannedBore& bore, const Foreseen& now, const Foreseen* then);
// Everything of a bore but what the block decides and the alternatives.
BoreOutlook boreOutlook(const HoneScene& scene, const PlannedBore& bore,
                        std::optional<std::size_t> fitted, std::optional<std::size_t> fit);
// Stations that the looks mean.
std::vector<Station> stationsOf(const Block& block, int bore, const std::vector<Look>& looks);

// hone_state.cpp: straightness and size as they are believed to be.
struct BoreState {
    double spread_um = 0;      // over the stations, worse axis
    double spreadDoubt_um = 0; // ± 95 %
    double mean_um = 0;        // over the stations, beyond the finish size
    double largest_um = 0, largestAt_mm = 0;
    double smallest_um = 0, smallestAt_mm = 0;
};
BoreState stateOf(const PlannedBore& bore);
// Straight within the aim, as far as 95 % of the doubt reach, no station too small, and nothing
// likely to be over: as good as done, whatever ended it.
bool isGood(const PlannedBore& bore);
std::string headlineOf(const HoneScene& scene, const PlannedBore& bore);

// hone_remarks.cpp: lead and its trend, warmth, what was assumed.
std::vector<std::string> remarksOf(const HoneScene& scene, const PlannedBore& bore);
std::vector<std::string> honeOddities(const HoneScene& scene, const PlannedBore& bore);

// hone_checked.cpp: the last check against what was expected of it.
std::optional<BoreOutlook::Checked> checkedOf(const HoneScene& scene, const PlannedBore& bore);

// hone_stones.cpp
std::vector<StoneOutlook> stoneOutlooks(const HoneScene& scene,
                                        const std::vector<LearnedGroup>& groups);

// hone_alternatives.cpp
std::vector<HoneAlternative> alternativesOf(const HoneScene& scene, const PlannedBore& bore,
                                            const HoneWishes& wishes, HonePlanner& planner);

} // namespace borewright
