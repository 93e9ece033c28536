// SPDX-License-Identifier: GPL-3.0-or-later
// One figure of one bore, over all runs. Part of the trials.
#pragma once

#include "core/form/contrasts.h"
#include "core/form/draws.h"
#include "core/form/tally.h"

namespace borewright {

class FigureTrial {
public:
    FigureTrial(const TrialBore& bore, Figure figure, Running running);
    // Counts a batch; `noise` is what is added to each station.
    void add(const std::vector<Column>& noise, bool firstRun);
    void endRun();
    // Whether two standard errors of both ends, from the runs so far, are within the tolerance.
    [[nodiscard]] bool stands(double tolerance) const;
    [[nodiscard]] FigureDoubt result() const;

private:
    [[nodiscard]] double scale() const;

    Figure m_figure;
    Running m_running;
    std::vector<Bunch> m_perfect;
    ContrastDoubt m_contrast;
    bool m_clear; // nothing but the deciding contrast is in the running
    Tally m_runSingle, m_runBunched, m_single, m_bunched;
    std::array<double, 2> m_sums{}, m_squares{};
    double m_alone = 0;
    std::size_t m_aloneTrials = 0;
    int m_runs = 0;
};

} // namespace borewright
