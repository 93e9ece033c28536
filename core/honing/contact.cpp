// SPDX-License-Identifier: GPL-3.0-or-later
// Mid-point steps through a window.
#include "core/honing/contact.h"

#include "core/honing/contact_directions.h"
#include "core/honing/contact_path.h"
#include "core/honing/contact_sweep.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr double mostSteps = 400;
// Of the fastest answer of the contact a step: past 2 the mid-point rule would swing.
constexpr double stiffestStep = 1;

// State and its derivatives on their way through the window.
class Honing {
public:
    Honing(Sweep& sweep, std::vector<double> before, std::vector<DirectionBlock> directions)
        : blocks(std::move(directions))
        , state(std::move(before))
        , sweep_(sweep)
        , middle_(state.size())
        , rate_(state.size())
        , laneMiddles_(blocks.size() * rowsWide())
        , laneRate_(rowsWide()) {}

    void run(double largestStep) {
        double done = 0;
        while (done < 1) {
            sweep_.rates(state, rate_);
            const double left = 1 - done;
            const double steps = stepsFor(left, largestStep);
            step(left / steps);
            done = steps > 1 ? done + left / steps : 1;
        }
    }

    std::vector<DirectionBlock> blocks;
    std::vector<double> state;

private:
    [[nodiscard]] std::size_t rowsWide() const { return sweep_.rows() * blockWidth; }

    // Whole steps over what is left, so that a small change of the input changes no step.
    [[nodiscard]] double stepsFor(double left, double largestStep) const {
        const double byMove = sweep_.fastest() / (largestStep * sweep_.compliance());
        const double fineness = std::max(byMove, sweep_.stiffest() / stiffestStep);
        return std::max(1.0, std::ceil(left * std::min(fineness, mostSteps) - 1e-9));
    }

    void step(double length) {
        for (std::size_t i = 0; i < state.size(); ++i)
            middle_[i] = state[i] + length / 2 * rate_[i];
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            sweep_.rates(blocks[b], blocks[b].state.data(), laneRate_.data());
            double* middle = laneMiddles_.data() + b * rowsWide();
            for (std::size_t i = 0; i < rowsWide(); ++i)
                middle[i] = blocks[b].state[i] + length / 2 * laneRate_[i];
        }
        sweep_.rates(middle_, rate_);
        for (std::size_t i = 0; i < state.size(); ++i)
            state[i] += length * rate_[i];
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            sweep_.rates(blocks[b], laneMiddles_.data() + b * rowsWide(), laneRate_.data());
            for (std::size_t i = 0; i < rowsWide(); ++i)
                blocks[b].state[i] += length * laneRate_[i];
        }
    }

    Sweep& sweep_;
    std::vector<double> middle_, rate_, laneMiddles_, laneRate_;
};

} // namespace

void hone(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
          const WallGround& ground, const Stroking& stroking, WallAndFace& state,
          Directions* directions) {
    if (!(std::max(0.0, stroking.strokes) + std::max(0.0, stroking.held) > 0)) return;
    const Path path = pathOf(grid, stone, settings.reversal_mm, stroking);
    std::vector<DirectionBlock> blocks;
    if (directions) blocks = blocksOf(*directions);
    const bool pathMoves = std::any_of(blocks.begin(), blocks.end(),
                                       [](const DirectionBlock& b) { return b.movesPath; });
    Sweep sweep(grid, stone, settings, ground, path, pathMoves);

    std::vector<double> rows(state.diameter.begin(), state.diameter.end());
    for (Eigen::Index j = state.face.size(); j-- > 0;)
        rows.push_back(state.face[j]);
    Honing honing(sweep, std::move(rows), std::move(blocks));
    honing.run(settings.largestStep);

    std::copy_n(honing.state.begin(), state.diameter.size(), state.diameter.begin());
    std::reverse_copy(honing.state.begin() + state.diameter.size(), honing.state.end(),
                      state.face.begin());
    if (directions) takeBack(honing.blocks, *directions);
}

} // namespace borewright
