// SPDX-License-Identifier: GPL-3.0-or-later
// All that the learning knows at one moment, and what each entry of the log does to it.
#pragma once

#include "core/honing/learning_correct.h"
#include "core/honing/learning_star.h"

namespace borewright {

struct LearningEvent {
    enum class Kind { pass, survey, turned, dressed, reversed };
    Kind kind = Kind::pass;
    std::size_t place = 0; // bore, or stone for what was done to one
    SetUp setUp;
    SetUpPoint about; // where the set-up was linearised
    std::vector<BoreReading> readings;
    double shared_um = 0;
};

// How a set-up since the last survey seems to have gone, by the place of its event.
struct Smoothed {
    std::size_t event = 0;
    SetUpPoint point;
};

class LearningState {
public:
    LearningState(const Bench& bench, std::size_t bores, const LearningOptions& options);

    // Fills event.about where it is empty. `place` that of the event in the log.
    void pass(const Bench& bench, const LearningOptions& options, LearningEvent& event,
              std::size_t place);
    // `smoothed`: what all set-ups look like now that still wait for a survey, those of this bore
    // for the last time.
    Found survey(const Bench& bench, const LearningOptions& options, const LearningEvent& event,
                 std::vector<Smoothed>* smoothed);
    void care(const Bench& bench, const LearningOptions& options, const LearningEvent& event);

    [[nodiscard]] bool waiting() const; // some set-up waits for its survey
    void settle();                      // no set-up will be looked back at
    [[nodiscard]] Joint look(std::size_t bore) const { return m_star.look(bore); }
    [[nodiscard]] AddedFactors factors() const { return m_memory.expected(); }
    [[nodiscard]] bool surveyed(std::size_t bore) const { return m_bores[bore].surveyed; }
    [[nodiscard]] int passes(std::size_t stone) const { return m_passes[stone]; }
    // Of all surveys so far: the sum of Found::likelihood.
    [[nodiscard]] double likelihood() const { return m_likelihood; }

private:
    struct Pending {
        std::size_t event, stone;
        Eigen::Index first, strays; // within what the bore carries
        bool carried;
    };
    struct BoreNotes {
        bool surveyed = false;
        std::vector<Pending> pending;
        Added added;           // since the last survey
        AddedFactors factors;  // with which it was added
        Eigen::VectorXd wall;  // about which the next set-up is linearised; empty = at the mean
        std::vector<Look> odd; // of the last survey
    };
    [[nodiscard]] std::vector<Smoothed> smoothed() const;
    void bound(const BeliefLayout& layout, Joint& joint) const;

    ToolStar m_star;
    ErrorMemory m_memory;
    std::vector<BoreNotes> m_bores;
    std::vector<Eigen::VectorXd> m_faces; // as BoreNotes::wall, by stone
    std::vector<int> m_passes;
    double m_likelihood = 0;
};

} // namespace borewright
