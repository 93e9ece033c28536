// SPDX-License-Identifier: GPL-3.0-or-later
// Chances of the factors: what a survey says is added in logarithms; what was said before fades.
#include "core/honing/learning_memory.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

constexpr double spreadOfLog = 0.7; // of a factor, before anything was seen
constexpr double keeps = 0.94;      // of what was learned of it, from survey to survey
constexpr double tempered = 0.7;    // what one survey says: its readings are not independent

// Centred so that the mean square is 1.
double priorOfFactor(double factor) {
    const double log = std::log(factor) / spreadOfLog + spreadOfLog;
    return -0.5 * log * log;
}

} // namespace

double priorOf(std::size_t error, std::size_t stray) {
    return priorOfFactor(ErrorMemory::errorFactor(error)) +
           priorOfFactor(ErrorMemory::strayFactor(stray));
}

double normalise(ErrorMemory::Logs& logs) {
    double most = logs[0][0], sum = 0;
    overAll([&](std::size_t e, std::size_t s) { most = std::max(most, logs[e][s]); });
    overAll([&](std::size_t e, std::size_t s) { sum += std::exp(logs[e][s] - most); });
    overAll([&](std::size_t e, std::size_t s) { logs[e][s] -= most + std::log(sum); });
    return most + std::log(sum);
}

AddedFactors meanSquares(const ErrorMemory::Logs& logs) {
    AddedFactors squares{0, 0};
    overAll([&](std::size_t e, std::size_t s) {
        const double chance = std::exp(logs[e][s]);
        squares.error += chance * std::pow(ErrorMemory::errorFactor(e), 2);
        squares.strays += chance * std::pow(ErrorMemory::strayFactor(s), 2);
    });
    return squares;
}

ErrorMemory::ErrorMemory() {
    overAll([&](std::size_t e, std::size_t s) { m_logChance[e][s] = priorOf(e, s); });
    normalise(m_logChance);
}

double ErrorMemory::errorFactor(std::size_t step) {
    return 0.45 * std::pow(1.5, static_cast<double>(step));
}

double ErrorMemory::strayFactor(std::size_t step) {
    return 0.5 * std::pow(1.4, static_cast<double>(step));
}

AddedFactors ErrorMemory::expected() const {
    const AddedFactors squares = meanSquares(m_logChance);
    return {std::sqrt(squares.error), std::sqrt(squares.strays)};
}

void ErrorMemory::learn(const Logs& logLikelihood) {
    overAll([&](std::size_t e, std::size_t s) {
        m_logChance[e][s] = keeps * m_logChance[e][s] + (1 - keeps) * priorOf(e, s) +
                            tempered * logLikelihood[e][s];
    });
    normalise(m_logChance);
}

} // namespace borewright
