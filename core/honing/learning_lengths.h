// SPDX-License-Identifier: GPL-3.0-or-later
// Stones that are longer or shorter than stated. Where a stone's upper end cuts decides what is
// left standing, and an error of 2 mm there is worth a tenth of the stock; no figure of belief.h
// can stand in for it. So beside the log as it is believed, each stone that was used has two
// accounts more, in which it is `step` shorter and longer. A parabola through the three logarithms
// of the likelihood tells the likeliest length; it is taken where it makes the surveys likelier by
// more than other lengths are unlikely beforehand, and the log is gone through again with it.
// (Comparing whole accounts by their likelihood: Schweppe, IEEE Trans. Inf. Theory 11 (1965) 61.)
// The accounts are reckoned on cells twice as high, which is enough to compare them.
#pragma once

#include "core/honing/learning_log.h"

#include <optional>
#include <vector>

namespace borewright {

class LengthsTried {
public:
    LengthsTried(const Bench& stated, std::size_t bores, const LearningOptions& options);

    void take(const LearningEvent& event);
    // After a survey: looks for likelier lengths; whether any was found.
    bool improve();

    [[nodiscard]] const std::vector<LearningEvent>& told() const { return m_told; }
    [[nodiscard]] double longer_mm(std::size_t stone) const;
    // Another grid's bench with the stones as long as they seem.
    [[nodiscard]] Bench with(const Bench& stated) const;

private:
    struct Beside { // nothing until the stone was used: till then they are all the same
        std::optional<LogLearner> shorter, longer;
    };
    struct Better { // a length that seems likelier
        std::size_t stone = 0;
        double longer_mm = 0;
        double gain = 0;
    };
    [[nodiscard]] LogLearner toldAgain(const std::vector<double>& longer) const;
    [[nodiscard]] std::optional<Better> likeliest() const;
    void beginBeside(std::size_t stone);
    void goOn(const LearningEvent& event);
    void tellAllAgain();

    Bench m_bench; // as stated, on the coarser grid
    std::size_t m_bores = 0;
    LearningOptions m_options;
    std::vector<double> m_longer_mm; // by stone
    std::vector<LearningEvent> m_told;
    LogLearner m_here;
    std::vector<Beside> m_beside; // by stone
};

} // namespace borewright
