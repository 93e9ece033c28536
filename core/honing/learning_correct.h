// SPDX-License-Identifier: GPL-3.0-or-later
// A survey's readings taken into the joint of bore and tools: single readings that do not fit weigh
// less, and where all of them surprise, the model's error was larger than thought.
#pragma once

#include "core/honing/learning_joint.h"

#include <array>

namespace borewright {

// How much larger than thought the model's error may be, as chances over steps of a factor.
class ErrorMemory {
public:
    static constexpr std::size_t steps = 12;
    ErrorMemory();
    [[nodiscard]] static double factor(std::size_t step);
    [[nodiscard]] const std::array<double, steps>& logChance() const { return m_logChance; }
    [[nodiscard]] double expected() const; // root mean square
    // What one survey says of it: logarithm of the likelihood at each step.
    void learn(const std::array<double, steps>& logLikelihood);

private:
    std::array<double, steps> m_logChance{};
};

// What a correction starts from beside the joint.
struct CorrectionInput {
    std::vector<BoreReading> readings;
    double shared_um = 0;
    // Covariance of the wall that may be larger than thought, at factor 1, and the factor it was
    // added with; empty = none.
    Eigen::MatrixXd error;
    double errorFactor = 1;
    bool remembers = false;      // that error is the model's: the memory learns from it
    std::vector<Look> oddBefore; // where the last survey of this bore was not believed
};

// Corrects `joint` in place and says what was found beside what was expected.
Found correctJoint(const WallGrid& grid, const LearningOptions& options,
                   const CorrectionInput& input, ErrorMemory& memory, Joint& joint);

} // namespace borewright
