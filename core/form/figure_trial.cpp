// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/figure_trial.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr std::size_t batch = trialsABatch;
constexpr std::size_t quantiles = 257;
constexpr double covered = 0.95;
const Column zeros{};

const Column& column(const std::vector<Column>& noise, int i) {
    return i < 0 ? zeros : noise[static_cast<std::size_t>(i)];
}

// Largest or smallest over some columns; `room` is used where there are several.
const Column& extreme(const std::vector<Column>& noise, const std::vector<int>& of, bool largest,
                      Column& room) {
    if (of.size() < 2) return column(noise, of.empty() ? -1 : of.front());
    const Column* one = &column(noise, of.front());
    for (std::size_t i = 1; i < of.size(); ++i) {
        const Column& other = column(noise, of[i]);
        if (largest)
            for (std::size_t t = 0; t < batch; ++t)
                room[t] = std::max((*one)[t], other[t]);
        else
            for (std::size_t t = 0; t < batch; ++t)
                room[t] = std::min((*one)[t], other[t]);
        one = &room;
    }
    return room;
}

void single(const std::vector<Column>& noise, const Contrast& contrast, Column& drawn) {
    const Column& plus = column(noise, contrast.plus);
    const Column& minus = column(noise, contrast.minus);
    for (std::size_t t = 0; t < batch; ++t)
        drawn[t] = plus[t] - minus[t];
}

void bunched(const std::vector<Column>& noise, const std::vector<Bunch>& bunches, Column& drawn) {
    Column topRoom, bottomRoom;
    bool first = true;
    for (const Bunch& bunch : bunches) {
        const Column& top = extreme(noise, bunch.top, true, topRoom);
        const Column& bottom = extreme(noise, bunch.bottom, false, bottomRoom);
        if (first)
            for (std::size_t t = 0; t < batch; ++t)
                drawn[t] = top[t] - bottom[t];
        else
            for (std::size_t t = 0; t < batch; ++t)
                drawn[t] = std::max(drawn[t], top[t] - bottom[t]);
        first = false;
    }
}

bool isClear(const Running& running) {
    if (running.bunches.size() != 1) return false;
    const Bunch& only = running.bunches.front();
    const auto is = [](const std::vector<int>& of, int one) {
        return one < 0 ? of.empty() : of.size() == 1 && of.front() == one;
    };
    return is(only.top, running.deciding.plus) && is(only.bottom, running.deciding.minus);
}

struct Reach {
    double below;
    double above;
};
Reach ends(const Tally& single, const Tally& bunched) {
    // Every source is symmetric, so the shortest interval is the one about zero.
    const double above = single.around(covered);
    const double missed = std::min(bunched.shareBelow(-above), 1 - covered);
    const double below = bunched.quantile(covered + missed);
    return {std::max(below, above), above};
}

} // namespace

FigureTrial::FigureTrial(const TrialBore& bore, Figure figure, Running running)
    : m_figure(figure)
    , m_running(std::move(running))
    , m_perfect(figure >= Figure::outOfRound ? perfect(bore, figure) : std::vector<Bunch>())
    , m_contrast(doubtOfContrast(bore, m_running.deciding))
    , m_clear(isClear(m_running))
    , m_runSingle(scale())
    , m_runBunched(scale())
    , m_single(scale())
    , m_bunched(scale()) {}

void FigureTrial::add(const std::vector<Column>& noise, bool firstRun) {
    Column drawn;
    single(noise, m_running.deciding, drawn);
    m_runSingle.add(drawn);
    if (!m_clear) {
        bunched(noise, m_running.bunches, drawn);
        m_runBunched.add(drawn);
    }
    if (!firstRun || m_perfect.empty()) return;
    bunched(noise, m_perfect, drawn);
    for (const float d : drawn)
        m_alone += static_cast<double>(d);
    m_aloneTrials += batch;
}

void FigureTrial::endRun() {
    const auto [below, above] = ends(m_runSingle, m_clear ? m_runSingle : m_runBunched);
    m_sums[0] += below;
    m_sums[1] += above;
    m_squares[0] += below * below;
    m_squares[1] += above * above;
    m_single.add(m_runSingle);
    m_runSingle.clear();
    if (!m_clear) {
        m_bunched.add(m_runBunched);
        m_runBunched.clear();
    }
    ++m_runs;
}

bool FigureTrial::stands(double tolerance) const {
    const double n = m_runs;
    for (std::size_t i = 0; i < 2; ++i) {
        const double variance = std::max(0.0, (m_squares[i] - m_sums[i] * m_sums[i] / n) / (n - 1));
        if (2 * std::sqrt(variance / n) > tolerance * m_contrast.u_um) return false;
    }
    return true;
}

FigureDoubt FigureTrial::result() const {
    const Tally& bunchedTally = m_clear ? m_single : m_bunched;
    FigureDoubt doubt;
    doubt.u_um = m_contrast.u_um;
    doubt.freedom = m_contrast.freedom;
    const auto [below, above] = ends(m_single, bunchedTally);
    const bool smallest = m_figure == Figure::smallest;
    doubt.below_um = smallest ? above : below;
    doubt.above_um = smallest ? below : above;
    if (!m_perfect.empty()) doubt.gaugeAlone_um = m_alone / static_cast<double>(m_aloneTrials);
    doubt.noise_um = bunchedTally.quantiles(quantiles);
    return doubt;
}

double FigureTrial::scale() const {
    // Few degrees of freedom have long tails.
    const double stretched = std::max(1.0, coverageFactor(covered, m_contrast.freedom) / 4);
    return std::max(1e-9, m_contrast.u_um) * stretched;
}

} // namespace borewright
