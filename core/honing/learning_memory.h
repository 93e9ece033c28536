// SPDX-License-Identifier: GPL-3.0-or-later
// What surveys have shown of the doubt itself: whether the model errs and the windows scatter more
// or less than the options say.
#pragma once

#include "core/honing/learning_push.h"

#include <array>

namespace borewright {

// How much larger than thought the model's error and the strays of the windows may be, as chances
// over steps of a factor each.
class ErrorMemory {
public:
    static constexpr std::size_t errorSteps = 8, straySteps = 6;
    using Logs = std::array<std::array<double, straySteps>, errorSteps>;
    ErrorMemory();
    [[nodiscard]] static double errorFactor(std::size_t step);
    [[nodiscard]] static double strayFactor(std::size_t step);
    [[nodiscard]] const Logs& logChance() const { return m_logChance; }
    [[nodiscard]] AddedFactors expected() const; // root mean squares
    // What one survey says of it: logarithm of the likelihood at each step.
    void learn(const Logs& logLikelihood);

private:
    Logs m_logChance{};
};

// Before anything was seen.
double priorOf(std::size_t errorStep, std::size_t strayStep);
// Makes the chances sum to 1; the logarithm of what they summed to.
double normalise(ErrorMemory::Logs& logs);
// Mean squares of both factors; chances normalised.
AddedFactors meanSquares(const ErrorMemory::Logs& logs);

// Calls with both steps of every pair.
template<typename Call>
void overAll(const Call& call) {
    for (std::size_t e = 0; e < ErrorMemory::errorSteps; ++e)
        for (std::size_t s = 0; s < ErrorMemory::straySteps; ++s)
            call(e, s);
}

} // namespace borewright
