// SPDX-License-Identifier: GPL-3.0-or-later
// The program's own planner at work on a bench: it is told what a user would enter and read, and
// its next set-up is done.
#pragma once

#include "core/honing/planning.h"
#include "tests/support/block_loop.h"
#include "tests/support/closed_loop.h"

namespace borewright::test {

// The bores and stones as the planner is told of them.
Bench benchAsStated(const BoreAsStated& stated);
// Straight over the stations, on both axes, with the gauge of the benches.
HoneAim aimAsStated(const BoreAsStated& stated);

class PlannedPolicy final : public HonePolicy {
public:
    explicit PlannedPolicy(const BoreAsStated& stated);
    std::optional<HoneSetUp> next(const HoneHistory& history) override;
    [[nodiscard]] std::string lastWord() const override;
    static std::unique_ptr<HonePolicy> make(const BoreAsStated& stated);

private:
    std::vector<HoneStation> m_all;
    HoneAim m_aim;
    HoneLearner m_learner;
    HonePlan m_plan;
    std::optional<std::size_t> m_fitted;
    std::size_t m_learned = 0; // steps of the history
};

// Bores of a block with one learner: what a stone shows in one bore counts in the next.
class PlannedBlock final : public BlockPolicy {
public:
    PlannedBlock(const BoreAsStated& stated, std::size_t bores);
    std::optional<BlockStop> next(const BlockHistory& history) override;
    static std::unique_ptr<BlockPolicy> make(const BoreAsStated& stated, std::size_t bores);

private:
    void learn(const BlockHistory& history);
    [[nodiscard]] std::size_t stoneOfMost(const std::vector<HonePlan>& plans) const;

    std::vector<HoneStation> m_all;
    HoneAim m_aim;
    HoneLearner m_learner;
    std::vector<HonePlan> m_plans;
    std::optional<std::size_t> m_fitted;
    std::size_t m_learned = 0; // entries of the history
};

} // namespace borewright::test
