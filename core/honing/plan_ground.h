// SPDX-License-Identifier: GPL-3.0-or-later
// What one plan starts from: the mean of the belief taken apart, what each depth counts for, and
// how far each stone may go.
#pragma once

#include "core/honing/planning.h"

#include <algorithm>
#include <vector>

namespace borewright {

// A wall held so many standard doubts below a cap passes it once in a hundred.
inline constexpr double sigmasBelow = 2.33;

// What the stations weigh together in the fit, where all depths together weigh 1: the bore is
// judged by them, and there the wall is known best.
inline constexpr double stationsWeight = 3;

// Errors of the model are so much smaller than the learning begins with, once stones, iron and hand
// are known that cut as it thinks.
inline constexpr double wellKnown = 0.7;

// Where straightness is asked for, on the grid.
struct PlanStation {
    BetweenCells at;
    double axis = 0; // as in Look
};

struct PlanGround {
    Bench bench;
    Belief belief;
    HoneAim aim;
    LearningOptions learning;
    double errorFactor = 1;
    std::vector<bool> may; // by stone: its use is allowed and it reaches somewhere
    bool finishes = false; // a finish stone may be used

    Eigen::VectorXd wall;  // mean of the axes
    Eigen::VectorXd oval;  // how far the larger axis stands beyond it, ≥ 0
    Eigen::VectorXd doubt; // standard, of the larger axis
    double level_um = 0; // where the wall should end: the aim, or lower where doubt leaves no more
    std::vector<Eigen::VectorXd> faces;
    std::vector<ContactSettings> settings;
    WallGround ground;
    Eigen::VectorXd weight; // of each cell in the fit, Σ = 1
    std::vector<PlanStation> stations;
    std::vector<bool> reached; // by some stone that may be used
    std::vector<bool> inside;  // the same without the last millimetres at each end

    // How much more passes have surprised than where all is well known; 0 = no more.
    [[nodiscard]] double surprise() const { return std::max(0.0, errorFactor / wellKnown - 1); }
    [[nodiscard]] double weightOfStation() const {
        return stations.empty() ? 0 : stationsWeight / static_cast<double>(stations.size());
    }
    [[nodiscard]] std::size_t cells() const { return bench.grid.cells; }
    [[nodiscard]] bool rough(std::size_t stone) const { return !bench.stones[stone].finish; }
    // Short against the longest: it brings one end along.
    [[nodiscard]] bool brief(std::size_t stone) const;
    // Where this stone has to stop, µm beyond finish size: a rough stone leaves what the finish
    // stone needs, unless there is none, and a full one what its stage says.
    [[nodiscard]] double capOf(std::size_t stone) const;
    // What rough stones leave at the most, µm beyond finish size (minus).
    [[nodiscard]] double mostLeft() const { return -1.4 * aim.finishStock_um; }
    [[nodiscard]] double rate(std::size_t stone) const; // µm of the diameter a stroke

private:
    [[nodiscard]] bool shortOneGoesOn(std::size_t stone) const;
};

PlanGround planGround(const HoneLearner& learner, std::size_t bore, const HoneAim& aim,
                      const std::vector<bool>& mayUse);

// The same on cells of twice the height: quicker, for sorting out what is worth a closer look.
// What is believed stays on the fine grid.
PlanGround coarser(const PlanGround& fine);

} // namespace borewright
