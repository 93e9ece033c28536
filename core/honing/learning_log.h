// SPDX-License-Identifier: GPL-3.0-or-later
// The learner over a log whose stones are as long as the bench says: learning_state.h with looking
// back. As HoneLearner, which tries several of these.
#pragma once

#include "core/honing/learning_state.h"

#include <memory>

namespace borewright {

class LogLearner {
public:
    LogLearner() = default;
    LogLearner(Bench bench, std::size_t bores, const LearningOptions& options);

    // What was found, where it is a survey.
    Found take(LearningEvent event);

    [[nodiscard]] const Bench& bench() const { return m_bench; }
    [[nodiscard]] const LearningOptions& options() const { return m_options; }
    [[nodiscard]] Belief belief(std::size_t bore) const;
    [[nodiscard]] int passes(std::size_t stone) const;
    [[nodiscard]] double errorFactor() const { return m_errorFactor; }
    [[nodiscard]] bool surveyed(std::size_t bore) const;
    // Of all surveys so far (LearningState::likelihood).
    [[nodiscard]] double likelihood() const { return m_state->likelihood(); }

private:
    struct Log; // what happened since no set-up waited for its survey
    void honedOrCared(LearningEvent event);
    Found survey(LearningEvent event);
    void becomes(std::shared_ptr<const LearningState> state);

    Bench m_bench;
    LearningOptions m_given, m_options;
    std::shared_ptr<const LearningState> m_state; // never null but in a default learner
    std::shared_ptr<const Log> m_log;
    double m_errorFactor = 1;
};

} // namespace borewright
