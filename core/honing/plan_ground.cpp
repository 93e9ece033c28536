// SPDX-License-Identifier: GPL-3.0-or-later
// The belief taken apart for planning.
#include "core/honing/plan_ground.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

// At the mouth, and next to where the stones' reach ends inside the bore, little depends on the
// wall.
constexpr double mouth_mm = 4;
constexpr double lastMillimetre = 5;
constexpr double weightThere = 0.02;
// Above and below these the wall's ends decide whether it is straight, and what stands out there no
// later window takes away: towards the stop any stroke but a short one takes off less and less.
constexpr double nearEnd_mm = 14;
constexpr double weightNearEnd = 5;

// The depths a stone's face can pass over.
struct Swept {
    double top = 0;
    double bottom = 0;
};

Swept sweptBy(const WallGrid& grid, const StoneOnGrid& stone) {
    return {std::max(0.0, stone.highest_mm - stone.length_mm),
            std::min(grid.depth_mm(), stone.lowest_mm)};
}

bool canWork(const StoneOnGrid& stone) {
    return stone.cells > 0 && stone.lowest_mm >= stone.highest_mm && stone.lowest_mm > 0;
}

void weigh(PlanGround& ground) {
    const WallGrid& grid = ground.bench.grid;
    ground.weight = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(grid.cells));
    ground.reached.assign(grid.cells, false);
    ground.inside.assign(grid.cells, false);
    Swept all{grid.depth_mm(), 0};
    for (std::size_t s = 0; s < ground.may.size(); ++s) {
        if (!ground.may[s]) continue;
        const Swept one = sweptBy(grid, ground.bench.stones[s].grid);
        all.top = std::min(all.top, one.top);
        all.bottom = std::max(all.bottom, one.bottom);
    }
    for (std::size_t i = 0; i < grid.cells; ++i) {
        const double at = grid.middle_mm(i);
        if (at < all.top || at > all.bottom) continue;
        ground.reached[i] = true;
        ground.inside[i] = at > std::max(mouth_mm, all.top + lastMillimetre) &&
                           at < std::min(grid.depth_mm() - mouth_mm, all.bottom - lastMillimetre);
        const double land =
            ground.bench.land.size() > 0 ? ground.bench.land[static_cast<Eigen::Index>(i)] : 1.0;
        const bool nearEnd = std::min(at - all.top, all.bottom - at) < nearEnd_mm;
        const double counts = !ground.inside[i] ? weightThere : nearEnd ? weightNearEnd : 1;
        ground.weight[static_cast<Eigen::Index>(i)] = counts * std::max(0.1, land);
    }
    const double sum = ground.weight.sum();
    if (sum > 0) ground.weight /= sum;
}

// Each axis of each cell: how far beyond the mean, how surely.
void axes(PlanGround& ground) {
    const Belief& belief = ground.belief;
    ground.oval.resize(ground.wall.size());
    ground.doubt.resize(ground.wall.size());
    for (std::size_t cell = 0; cell < ground.cells(); ++cell) {
        const auto i = static_cast<Eigen::Index>(cell);
        const Eigen::Index wall = belief.layout.wall(cell), oval = belief.layout.oval(cell);
        const double side = belief.mean[oval] < 0 ? -1 : 1;
        const double variance = belief.covariance(wall, wall) + belief.covariance(oval, oval) +
                                2 * side * belief.covariance(wall, oval);
        ground.oval[i] = std::fabs(belief.mean[oval]);
        ground.doubt[i] = std::sqrt(std::max(0.0, variance));
    }
}

void placeStations(PlanGround& ground) {
    ground.stations.clear();
    for (const Look& look : ground.aim.stations)
        ground.stations.push_back({betweenCells(ground.bench.grid, look.depth_mm), look.axis});
}

// As near the aim as the cap and the usual doubt allow: it matters more that it is straight.
double levelOf(const PlanGround& ground) {
    const HoneAim& aim = ground.aim;
    const double usual = ground.weight.dot(ground.doubt);
    const double oval = ground.weight.dot(ground.oval);
    const double held = aim.cap_um - sigmasBelow * usual - oval;
    const double least = aim.lowest_um + 0.35 * (aim.aim_um - aim.lowest_um);
    return std::clamp(held, std::min(least, aim.aim_um), aim.aim_um);
}

// Two and two of these as their mean; a last one stays by itself.
Eigen::VectorXd paired(const Eigen::VectorXd& fine) {
    Eigen::VectorXd coarse((fine.size() + 1) / 2);
    for (Eigen::Index i = 0; i < coarse.size(); ++i)
        coarse[i] = 2 * i + 1 < fine.size() ? (fine[2 * i] + fine[2 * i + 1]) / 2 : fine[2 * i];
    return coarse;
}

std::vector<bool> eitherOf(const std::vector<bool>& fine) {
    std::vector<bool> coarse((fine.size() + 1) / 2);
    for (std::size_t i = 0; i < fine.size(); ++i)
        coarse[i / 2] = coarse[i / 2] || fine[i];
    return coarse;
}

} // namespace

double PlanGround::capOf(std::size_t stone) const {
    if (!rough(stone) || !finishes) return aim.cap_um;
    return -std::max(aim.finishLeast_um, shortOneGoesOn(stone) ? aim.fullStops_um : 0.0);
}

bool PlanGround::brief(std::size_t stone) const {
    double longest = 0;
    for (const BenchStone& other : bench.stones)
        longest = std::max(longest, other.grid.length_mm);
    constexpr double share = 0.6;
    return bench.stones[stone].grid.length_mm < share * longest;
}

bool PlanGround::shortOneGoesOn(std::size_t stone) const {
    if (brief(stone)) return false;
    for (std::size_t other = 0; other < may.size(); ++other)
        if (may[other] && rough(other) && brief(other)) return true;
    return false;
}

double PlanGround::rate(std::size_t stone) const {
    return std::exp(settings[stone].logRate);
}

PlanGround planGround(const HoneLearner& learner, std::size_t bore, const HoneAim& aim,
                      const std::vector<bool>& mayUse) {
    PlanGround ground;
    ground.bench = learner.bench();
    ground.belief = learner.belief(bore);
    ground.aim = aim;
    ground.learning = learner.options();
    ground.errorFactor = learner.errorFactor();
    ground.wall = ground.belief.wall();
    const Belief& belief = ground.belief;
    axes(ground);
    ground.ground = {belief.hardness(), ground.bench.land};
    for (std::size_t s = 0; s < ground.bench.stones.size(); ++s) {
        ground.faces.push_back(belief.face(s));
        ground.settings.push_back(belief.settings(s));
        const bool allowed = mayUse.empty() || (s < mayUse.size() && mayUse[s]);
        ground.may.push_back(allowed && canWork(ground.bench.stones[s].grid));
        ground.finishes = ground.finishes || (ground.may[s] && ground.bench.stones[s].finish);
    }
    weigh(ground);
    placeStations(ground);
    ground.level_um = levelOf(ground);
    return ground;
}

PlanGround coarser(const PlanGround& fine) {
    PlanGround coarse = fine;
    WallGrid& grid = coarse.bench.grid;
    grid.height_mm *= 2;
    grid.cells = (grid.cells + 1) / 2;
    for (Eigen::VectorXd* values :
         {&coarse.wall, &coarse.oval, &coarse.doubt, &coarse.ground.hardness, &coarse.weight})
        *values = paired(*values);
    if (coarse.ground.land.size() > 0) coarse.ground.land = paired(coarse.ground.land);
    if (coarse.bench.land.size() > 0) coarse.bench.land = paired(coarse.bench.land);
    if (coarse.weight.sum() > 0) coarse.weight /= coarse.weight.sum();
    coarse.reached = eitherOf(fine.reached);
    coarse.inside = eitherOf(fine.inside);
    placeStations(coarse);
    for (std::size_t s = 0; s < coarse.faces.size(); ++s) {
        StoneOnGrid& stone = coarse.bench.stones[s].grid;
        stone = stoneOnGrid(grid, stone.length_mm, stone.highest_mm, stone.lowest_mm);
        coarse.faces[s] = paired(fine.faces[s]);
        // Rounding may leave a sliver of a cell on either grid.
        coarse.faces[s].conservativeResizeLike(
            Eigen::VectorXd::Zero(static_cast<Eigen::Index>(stone.cells)));
    }
    return coarse;
}

} // namespace borewright
