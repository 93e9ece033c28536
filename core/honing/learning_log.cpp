// SPDX-License-Identifier: GPL-3.0-or-later
// The learner over its log. A survey may show that a set-up went quite otherwise than was thought
// when it was pushed through the model; then the log since the last moment at which no set-up
// waited for its survey is gone through again, each set-up linearised where it now seems to have
// been (the iterated smoother: Bell & Cathey, IEEE Trans. Autom. Control 38 (1993) 294).
#include "core/honing/learning_log.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr int mostRounds = 3;
constexpr std::size_t longestLog = 64;
// Moves of ln rate, compliance, wear, looseness and of a window's strays that are worth going
// through the log again, and the largest taken at once.
constexpr double tells[] = {0.1, 0.2, 0.5, 0.5, 0.1, 1.0, 1.0};
constexpr double most[] = {1, 1, 1, 1, 0.3, 1.5, 1.5};

std::size_t kindOf(Index place) {
    return static_cast<std::size_t>(place < 4 ? place : 4 + (place - 4) % straysOfWindow);
}

// Moves `point` towards what it seems to have been; whether by as much as tells.
bool moved(SetUpPoint& point, const SetUpPoint& seems) {
    bool far = false;
    const auto move = [&](VectorXd& from, const VectorXd& to, Index offset) {
        for (Index i = 0; i < from.size(); ++i) {
            const std::size_t kind = kindOf(offset + i);
            far = far || std::abs(to[i] - from[i]) > tells[kind];
            from[i] += std::clamp(to[i] - from[i], -most[kind], most[kind]);
        }
    };
    move(point.figures, seems.figures, 0);
    move(point.strayed, seems.strayed, static_cast<Index>(toolFigures));
    return far;
}

} // namespace

struct LogLearner::Log {
    std::shared_ptr<const LearningState> start;
    std::vector<LearningEvent> events;
};

LogLearner::LogLearner(Bench bench, std::size_t bores, const LearningOptions& options)
    : m_bench(std::move(bench))
    , m_given(options)
    , m_options(options) {
    becomes(std::make_shared<LearningState>(m_bench, bores, options));
}

void LogLearner::becomes(std::shared_ptr<const LearningState> state) {
    m_state = std::move(state);
    const AddedFactors factors = m_state->factors();
    m_errorFactor = factors.error;
    m_options.windowScatter = factors.strays * m_given.windowScatter;
    m_options.miscounted = factors.strays * m_given.miscounted;
    m_options.strokeEnds_mm = factors.strays * m_given.strokeEnds_mm;
}

Found LogLearner::take(LearningEvent event) {
    if (event.kind == LearningEvent::Kind::survey) return survey(std::move(event));
    honedOrCared(std::move(event));
    return {};
}

void LogLearner::honedOrCared(LearningEvent event) {
    auto log = m_log ? std::make_shared<Log>(*m_log) : std::make_shared<Log>();
    auto state = std::make_shared<LearningState>(*m_state);
    if (log->events.empty()) log->start = m_state;
    if (event.kind == LearningEvent::Kind::pass)
        state->pass(m_bench, m_given, event, log->events.size());
    else
        state->care(m_bench, m_given, event);
    log->events.push_back(std::move(event));
    if (log->events.size() > longestLog) state->settle();
    const bool over = !state->waiting() || log->events.size() > longestLog;
    m_log = over ? nullptr : log;
    becomes(state);
}

Found LogLearner::survey(LearningEvent event) {
    auto state = std::make_shared<LearningState>(*m_state);
    std::vector<Smoothed> smoothed;
    Found found = state->survey(m_bench, m_given, event, &smoothed);
    if (m_log) {
        auto log = std::make_shared<Log>(*m_log);
        log->events.push_back(std::move(event));
        for (int round = 0; round < mostRounds; ++round) {
            bool far = false;
            for (const Smoothed& one : smoothed)
                far = moved(log->events[one.event].about, one.point) || far;
            if (!far) break;
            state = std::make_shared<LearningState>(*log->start);
            for (std::size_t i = 0; i < log->events.size(); ++i) {
                LearningEvent& again = log->events[i];
                if (again.kind == LearningEvent::Kind::pass)
                    state->pass(m_bench, m_given, again, i);
                else if (again.kind == LearningEvent::Kind::survey)
                    state->survey(m_bench, m_given, again, &smoothed);
                else
                    state->care(m_bench, m_given, again);
            }
        }
        m_log = state->waiting() ? log : nullptr;
    }
    becomes(state);
    return found;
}

Belief LogLearner::belief(std::size_t bore) const {
    Joint joint = m_state->look(bore);
    const Index size = joint.bore + joint.tools;
    joint.mean.conservativeResize(size);
    joint.covariance.conservativeResize(size, size);
    return {BeliefLayout(m_bench), std::move(joint.mean), std::move(joint.covariance)};
}

int LogLearner::passes(std::size_t stone) const {
    return m_state->passes(stone);
}

bool LogLearner::surveyed(std::size_t bore) const {
    return m_state->surveyed(bore);
}

} // namespace borewright
