// SPDX-License-Identifier: GPL-3.0-or-later
// Learning from the log: an iterated extended Kalman filter over belief.h.
//
// A set-up pushes mean and covariance through the contact model with its derivatives; each window
// has a scatter of its own (its strokes are worth more or less), and what the model cannot know is
// added: a floor and a share of the stock, correlated over some millimetres. A survey corrects wall
// and tools together; a reading that does not fit its neighbours weighs less (Student's t by
// reweighting), and one that no doubt of model or gauge explains is called odd. Where the whole
// survey surprises, the model's error of that set-up was larger than thought and is taken so, and
// later set-ups start from the larger error too: that keeps the bands honest where the physics
// differ.
// A stone that is longer or shorter than stated is found by trying (learning_lengths.h).
// Tools are shared by all bores: between bores only what the tools carry is passed on (given the
// tools, two bores are independent).
// Sources: Jazwinski, Stochastic Processes and Filtering Theory (1970) for the iterated filter;
// Preston for the removal (contact.h). Standard deviations below: trials on simulated benches.
#pragma once

#include "core/honing/belief.h"

#include <memory>
#include <vector>

namespace borewright {

struct LearningOptions {
    // Prior of a bore's wall, µm: level and slope are wide; what remains is smooth and rough.
    double level_um = 300;
    double slope_um = 60;
    double smooth_um = 12, smoothOver_mm = 20;
    double rough_um = 2, roughOver_mm = 6;
    double oval_um = 6, ovalOver_mm = 20;
    double hardness = 0.03, hardnessOver_mm = 10;
    // The lands between ports are pressed harder and break at their edges, so they give way faster:
    // by how much, ln, differs from block to block. Common practice, no source; sizes from trials.
    double portsSofter = 0.12, portsSofterDoubt = 0.12;
    // Prior of the tools.
    double logCompliance = 3.0, complianceDoubt = 0.8, complianceOwnDoubt = 0.3;
    double logWear = -3.5, wearDoubt = 0.7;
    double logLooseness = -2.0, loosenessDoubt = 1.2;
    double faceWedge_um = 2; // what a face may be out of line when new
    // Scatter and error of a set-up.
    double windowScatter = 0.10;
    double miscounted = 0.5;     // strokes
    double strokeEnds_mm = 0.25; // where a window's ends really lay
    double faceStray = 0.1;      // share of its wear that a face wears otherwise
    double errorFloor_um = 0.4, errorShare = 0.03, errorOver_mm = 8;
    double ratesWander = 0.07; // of each logarithm, a set-up
    // Readings.
    double surpriseBeyond = 1.5; // normalised square a reading
    double oddBeyond = 4;        // standard deviations
};

struct BoreReading {
    Look look;
    double size_um = 0;  // beyond finish size, at 20 °C
    double doubt_um = 1; // its own, standard
};

// What a survey of a bore said, beside what was expected of it.
struct Found {
    struct At {
        Look look;
        Expected expected; // of the reading: the gauge's doubt included
        double found_um = 0;
        bool odd = false; // fits neither its neighbours nor the model
    };
    std::vector<At> readings;
    double surprise = 0; // mean normalised square, about 1 where all is as expected
    bool surprised = false;
    int inside = 0; // readings within the band of 95 %
    // Logarithm of the likelihood of all readings together, without what no belief changes.
    double likelihood = 0;
};

struct LearningEvent; // learning_state.h

class HoneLearner {
public:
    HoneLearner() = default;
    // All bores have the same grid and stones (`bench`).
    HoneLearner(Bench bench, std::size_t bores, const LearningOptions& options = {});

    // Honing of one bore. Several set-ups may follow each other without a survey.
    void pass(std::size_t bore, const SetUp& setUp);
    // Readings of one bore, taken together; `shared_um` the standard doubt that moves them all
    // alike (zero, warmth).
    Found survey(std::size_t bore, const std::vector<BoreReading>& readings, double shared_um);
    // The stone's face was turned round, or dressed straight (which also renews its cut); running
    // in reverse frees the grit: its rate is known less well afterwards.
    void turned(std::size_t stone);
    void dressed(std::size_t stone);
    void reversed(std::size_t stone);

    // With the stones as long as they seem to be; plans are made on this one.
    [[nodiscard]] const Bench& bench() const { return m_bench; }
    // By how much a stone seems longer than it was stated, its lower end where it was stated: 0
    // unless the surveys speak for it (learning_lengths.h). 0 without such a stone.
    [[nodiscard]] double longer_mm(std::size_t stone) const;
    // As given, but scatter, miscount and ends of the windows as they have shown themselves.
    [[nodiscard]] const LearningOptions& options() const { return m_options; }
    // What is believed of this bore and the tools now.
    [[nodiscard]] Belief belief(std::size_t bore) const;
    [[nodiscard]] int passes(std::size_t stone) const; // measured afterwards, in any bore
    // How much larger the model's error has shown itself than thought: 1 = as thought.
    [[nodiscard]] double errorFactor() const;
    [[nodiscard]] bool surveyed(std::size_t bore) const;

private:
    struct Account; // the log with stones of these lengths, and what speaks for others
    Found take(const LearningEvent& event);

    void becomes(std::shared_ptr<const Account> account);

    Bench m_bench;
    LearningOptions m_options;
    std::shared_ptr<const Account> m_account; // never null but in a default learner
};

// One step of what pass() does, on a belief alone, for prediction: mean, covariance with scatter
// and model error.
Belief pushed(const Bench& bench, const Belief& before, const SetUp& setUp,
              const LearningOptions& options, double errorFactor);

} // namespace borewright
