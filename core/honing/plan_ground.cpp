// SPDX-License-Identifier: GPL-3.0-or-later
// The belief taken apart for planning.
#include "core/honing/plan_ground.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

// Next to where the stones' reach ends little is cut and little depends on it.
constexpr double lastMillimetres = 4;
constexpr double weightThere = 0.2;

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
        ground.inside[i] = at > all.top + lastMillimetres && at < all.bottom - lastMillimetres;
        const double land =
            ground.bench.land.size() > 0 ? ground.bench.land[static_cast<Eigen::Index>(i)] : 1.0;
        ground.weight[static_cast<Eigen::Index>(i)] =
            (ground.inside[i] ? 1 : weightThere) * std::max(0.1, land);
    }
    const double sum = ground.weight.sum();
    if (sum > 0) ground.weight /= sum;
}

} // namespace

double PlanGround::capOf(std::size_t stone) const {
    return rough(stone) && finishes ? -aim.finishLeast_um : aim.cap_um;
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
    ground.oval.resize(ground.wall.size());
    for (std::size_t i = 0; i < ground.cells(); ++i)
        ground.oval[static_cast<Eigen::Index>(i)] = std::fabs(belief.mean[belief.layout.oval(i)]);
    ground.ground = {belief.hardness(), ground.bench.land};
    for (std::size_t s = 0; s < ground.bench.stones.size(); ++s) {
        ground.faces.push_back(belief.face(s));
        ground.settings.push_back(belief.settings(s));
        const bool allowed = mayUse.empty() || (s < mayUse.size() && mayUse[s]);
        ground.may.push_back(allowed && canWork(ground.bench.stones[s].grid));
        ground.finishes = ground.finishes || (ground.may[s] && ground.bench.stones[s].finish);
    }
    weigh(ground);
    return ground;
}

} // namespace borewright
