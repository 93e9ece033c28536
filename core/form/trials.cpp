// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/trials.h"

#include "core/form/draws.h"
#include "core/form/figure_trial.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr std::size_t batch = trialsABatch;

class BoreTrialRun {
public:
    explicit BoreTrialRun(const TrialBore& bore)
        : m_bore(bore) {
        // Where every station is judged, straightness is taper.
        m_sameAsTaper = bore.rule == TaperRule::largestLessSmallest &&
                        std::ranges::all_of(bore.stations, &TrialStation::judged);
        for (std::size_t i = 0; i < figures - (m_sameAsTaper ? 1 : 0); ++i)
            if (auto running = runningFor(bore, static_cast<Figure>(i)))
                m_figures[i].emplace(bore, static_cast<Figure>(i), std::move(*running));
    }

    // `noise` has room for a column a station.
    void add(const TrialDraws& draws, std::vector<Column>& noise, bool firstRun) {
        const Column common = commonOf(draws);
        for (std::size_t i = 0; i < m_bore.stations.size(); ++i)
            fill(draws, common, i, noise[i]);
        for (auto& figure : m_figures)
            if (figure) figure->add(noise, firstRun);
    }

    void endRun(int runs, const TrialOptions& options) {
        bool stands = runs >= options.leastRuns;
        for (auto& figure : m_figures)
            if (figure) {
                figure->endRun();
                stands = stands && figure->stands(options.tolerance);
            }
        m_trials += static_cast<std::size_t>(options.batchesARun) * batch;
        m_done = stands || runs >= options.mostRuns;
    }
    [[nodiscard]] bool done() const { return m_done; }

    [[nodiscard]] BoreDoubt result() const {
        BoreDoubt doubt;
        for (std::size_t i = 0; i < figures; ++i)
            if (m_figures[i]) doubt.figure[i] = m_figures[i]->result();
        if (m_sameAsTaper)
            doubt.figure[static_cast<std::size_t>(Figure::straightness)] = doubt.of(Figure::taper);
        doubt.trials = m_trials;
        return doubt;
    }

private:
    // What moves every station alike, once for all of them.
    [[nodiscard]] Column commonOf(const TrialDraws& draws) const {
        Column common{};
        for (std::size_t k = 0; k < m_bore.shared.size(); ++k) {
            if (!m_bore.shared[k].loading.empty()) continue;
            const auto moved = static_cast<float>(m_bore.shared[k].u_um);
            for (std::size_t t = 0; t < batch; ++t)
                common[t] += moved * draws.shared[k][t];
        }
        return common;
    }

    void fill(const TrialDraws& draws, const Column& common, std::size_t i, Column& noise) const {
        const OwnDoubt& own = m_bore.stations[i].own;
        const auto normal = static_cast<float>(own.normal_um);
        const auto step = static_cast<float>(own.step_um);
        const auto local = static_cast<float>(own.local_um);
        const TrialDraws::Own& drawn = draws.own[i];
        for (std::size_t t = 0; t < batch; ++t)
            noise[t] = common[t] + normal * draws.scale[t] * drawn.normal[t] +
                       step * drawn.step[t] + local * drawn.local[t];
        for (std::size_t k = 0; k < m_bore.shared.size(); ++k) {
            if (m_bore.shared[k].loading.empty()) continue;
            const auto moved = static_cast<float>(m_bore.shared[k].u_um * m_bore.shared[k].at(i));
            if (moved == 0) continue;
            for (std::size_t t = 0; t < batch; ++t)
                noise[t] += moved * draws.shared[k][t];
        }
    }

    const TrialBore& m_bore;
    std::array<std::optional<FigureTrial>, figures> m_figures;
    std::size_t m_trials = 0;
    bool m_sameAsTaper = false;
    bool m_done = false;
};

// Bores that hang on like sources in the same order can share their draws.
bool drawAlike(const TrialBore& a, const TrialBore& b) {
    return a.ownFreedom == b.ownFreedom &&
           std::ranges::equal(a.shared, b.shared, {}, &SharedDoubt::distribution,
                              &SharedDoubt::distribution);
}

// Runs bores that draw alike until each stands; false where it was cancelled.
bool run(std::vector<BoreTrialRun>& trials, const TrialBore& first, std::size_t stations,
         const TrialOptions& options, const std::function<bool()>& cancelled) {
    DrawMaker maker(stations, first.shared, first.ownFreedom);
    TrialDraws draws;
    std::vector<Column> noise(stations);
    for (int run = 0; run < options.mostRuns; ++run) {
        if (cancelled && cancelled()) return false;
        maker.startRun(run);
        for (int i = 0; i < options.batchesARun; ++i) {
            maker.next(draws);
            for (BoreTrialRun& trial : trials)
                if (!trial.done()) trial.add(draws, noise, run == 0);
        }
        for (BoreTrialRun& trial : trials)
            if (!trial.done()) trial.endRun(run + 1, options);
        if (std::ranges::all_of(trials, &BoreTrialRun::done)) break;
    }
    return true;
}

} // namespace

Result<void> TrialOptions::check() const {
    if (leastRuns < 2) return refuse("trials", "two runs are the fewest that can be compared");
    if (mostRuns < leastRuns || mostRuns > 10'000)
        return refuse("trials", "the most runs lie between the least and 10 000");
    if (batchesARun < 1 || batchesARun > 1000)
        return refuse("trials", "a run has 1 to 1000 batches");
    if (!(tolerance > 0)) return refuse("trials", "the tolerance must be more than zero");
    return {};
}

double FigureDoubt::chanceOfMore(double excess_um) const {
    const auto above = std::ranges::upper_bound(noise_um, static_cast<float>(excess_um));
    if (above == noise_um.begin()) return 1;
    if (above == noise_um.end()) return 0;
    const auto i = static_cast<double>(above - noise_um.begin());
    const double low = static_cast<double>(*(above - 1)), high = static_cast<double>(*above);
    const double within = high > low ? (excess_um - low) / (high - low) : 0;
    return 1 - (i - 1 + within) / static_cast<double>(noise_um.size() - 1);
}

double FigureDoubt::noiseAt(double chance) const {
    const double place = (1 - chance) * static_cast<double>(noise_um.size() - 1);
    const auto i = static_cast<std::size_t>(
        std::clamp(std::floor(place), 0.0, static_cast<double>(noise_um.size() - 2)));
    const double within = place - static_cast<double>(i);
    return static_cast<double>(noise_um[i]) * (1 - within) +
           static_cast<double>(noise_um[i + 1]) * within;
}

std::vector<BoreDoubt> doubtsOf(std::span<const TrialBore> bores, const TrialOptions& options,
                                const std::function<bool()>& cancelled) {
    if (!options.check()) return {};
    std::vector<BoreDoubt> doubts(bores.size());
    std::vector<bool> reckoned(bores.size(), false);
    for (std::size_t first = 0; first < bores.size(); ++first) {
        if (reckoned[first]) continue;
        std::vector<std::size_t> alike;
        std::vector<BoreTrialRun> trials;
        std::size_t stations = 0;
        for (std::size_t i = first; i < bores.size(); ++i) {
            if (reckoned[i] || !drawAlike(bores[i], bores[first])) continue;
            reckoned[i] = true;
            alike.push_back(i);
            trials.emplace_back(bores[i]);
            stations = std::max(stations, bores[i].stations.size());
        }
        if (!run(trials, bores[first], stations, options, cancelled)) return {};
        for (std::size_t i = 0; i < alike.size(); ++i)
            doubts[alike[i]] = trials[i].result();
    }
    return doubts;
}

} // namespace borewright
