// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/honing/plan_worth.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace borewright {

namespace {

// The range of six normal values is 2.5 of their standard deviations, of which about half is left
// when what follows has put right what it can.
constexpr double worthOfRoot = 1.5;
// What the spread over the stations turns out beside what a course promises: standard, trials on
// simulated benches.
constexpr double promiseDoubt_um = 1.8;

double chanceOfCrooked(const PlanGround& ground, const Eigen::VectorXd& wall) {
    if (ground.stations.empty()) return 0;
    double least = std::numeric_limits<double>::infinity(), most = -least;
    for (const PlanStation& station : ground.stations) {
        const double there = station.at.of(wall);
        least = std::min(least, there);
        most = std::max(most, there);
    }
    const double room = (ground.aim.straight_um - (most - least)) / promiseDoubt_um;
    return 0.5 * std::erfc(room / std::numbers::sqrt2);
}

int changesOf(const Course& course, const PlanOptions& options) {
    int changes = 0;
    std::optional<std::size_t> fitted = options.fitted;
    for (const SetUp& setUp : course) {
        if (fitted && *fitted != setUp.stone) ++changes;
        fitted = setUp.stone;
    }
    return changes;
}

} // namespace

double worthOfOff(double meanSquare_um2) {
    return worthOfRoot * std::sqrt(meanSquare_um2);
}

double costOfEnd(const PlanGround& ground, const CourseEnd& end, double more_um2) {
    return worthOfOff(end.square() + more_um2) + crookedCost_um * chanceOfCrooked(ground, end.wall);
}

double costOfStops(const Course& course, const PlanOptions& options) {
    return options.setUpCost_um * static_cast<double>(course.size()) +
           options.changeCost_um * changesOf(course, options);
}

double costOfLeaving(const PlanGround& ground) {
    double square = 0;
    for (Eigen::Index i = 0; i < ground.wall.size(); ++i)
        square += ground.weight[i] * std::pow(ground.wall[i] - ground.level_um, 2);
    for (const PlanStation& station : ground.stations)
        square +=
            ground.weightOfStation() * std::pow(station.at.of(ground.wall) - ground.level_um, 2);
    return worthOfOff(square);
}

} // namespace borewright
