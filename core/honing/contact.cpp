// SPDX-License-Identifier: GPL-3.0-or-later
// Mid-point steps through a window.
#include "core/honing/contact.h"

#include "core/honing/contact_carry.h"

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
    Honing(Sweep& sweep, const Path& path, std::vector<double> before,
           std::vector<DirectionBlock> directions)
        : blocks(std::move(directions))
        , state(std::move(before))
        , sweep_(sweep)
        , carrier_(sweep.contact(), path)
        , wide_(state.size() * blockWidth)
        , middle_(state.size())
        , laneMiddles_(blocks.size() * wide_)
        , laneRate_(wide_) {}

    void run(double largestStep) {
        double done = 0;
        while (done < 1) {
            const std::vector<double>& rate = ratesAt(state);
            const double left = 1 - done;
            const double steps = stepsFor(left, largestStep);
            step(steps > 1 ? left / steps : left, rate);
            done = steps > 1 ? done + left / steps : 1;
        }
    }

    std::vector<DirectionBlock> blocks;
    std::vector<double> state;

private:
    const std::vector<double>& ratesAt(const std::vector<double>& at) {
        const std::vector<double>& rate = sweep_.rates(at);
        if (!blocks.empty()) carrier_.follow();
        return rate;
    }

    // Whole steps over what is left, so that a small change of the input changes no step.
    [[nodiscard]] double stepsFor(double left, double largestStep) const {
        const double byMove = sweep_.fastest() / (largestStep * sweep_.contact().compliance);
        const double fineness = std::max(byMove, sweep_.stiffest() / stiffestStep);
        return std::max(1.0, std::ceil(left * std::min(fineness, mostSteps) - 1e-9));
    }

    void step(double length, const std::vector<double>& rate) {
        for (std::size_t i = 0; i < state.size(); ++i)
            middle_[i] = state[i] + length / 2 * rate[i];
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            if (blocks[b].stands) continue;
            const std::vector<double>& before = blocks[b].state;
            carrier_.rates(blocks[b], before.data(), laneRate_.data());
            double* middle = laneMiddles_.data() + b * wide_;
            for (std::size_t i = 0; i < wide_; ++i)
                middle[i] = before[i] + length / 2 * laneRate_[i];
        }
        const std::vector<double>& halfway = ratesAt(middle_);
        for (std::size_t i = 0; i < state.size(); ++i)
            state[i] += length * halfway[i];
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            if (blocks[b].stands) continue;
            carrier_.rates(blocks[b], laneMiddles_.data() + b * wide_, laneRate_.data());
            for (std::size_t i = 0; i < wide_; ++i)
                blocks[b].state[i] += length * laneRate_[i];
        }
    }

    Sweep& sweep_;
    Carrier carrier_;
    std::size_t wide_;
    std::vector<double> middle_, laneMiddles_, laneRate_;
};

} // namespace

void hone(const WallGrid& grid, const StoneOnGrid& stone, const ContactSettings& settings,
          const WallGround& ground, const Stroking& stroking, WallAndFace& state,
          Directions* directions) {
    if (!(std::max(0.0, stroking.strokes) + std::max(0.0, stroking.held) > 0)) return;
    const Path path = pathOf(grid, stone, settings.reversal_mm, stroking);
    std::vector<DirectionBlock> blocks;
    if (directions) blocks = blocksOf(*directions);
    const bool pathMoves = std::ranges::any_of(blocks, &DirectionBlock::movesPath);
    Sweep sweep(grid, stone, settings, ground, path, pathMoves);

    std::vector<double> rows(state.diameter.begin(), state.diameter.end());
    for (Eigen::Index j = state.face.size(); j-- > 0;)
        rows.push_back(state.face[j]);
    Honing honing(sweep, path, std::move(rows), std::move(blocks));
    honing.run(settings.largestStep);

    std::copy_n(honing.state.begin(), state.diameter.size(), state.diameter.begin());
    std::reverse_copy(honing.state.begin() + state.diameter.size(), honing.state.end(),
                      state.face.begin());
    if (directions) takeBack(honing.blocks, *directions);
}

} // namespace borewright
