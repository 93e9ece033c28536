// SPDX-License-Identifier: GPL-3.0-or-later
// Trials run in batches held as columns, a station a column, so that the largest over stations is
// taken for many trials at a time. Each column's draws come from a generator of its own, seeded by
// run and station: a bore gives the same doubt whatever other bores run beside it.
#include "core/form/trials.h"

#include "core/form/contrasts.h"
#include "core/form/tally.h"
#include "core/statistics/random.h"

#include <algorithm>
#include <cmath>

namespace borewright {
namespace {

constexpr std::size_t batch = trialsABatch;
constexpr std::size_t quantiles = 257;
constexpr double covered = 0.95;
using Column = std::array<float, batch>;

enum class Stream : std::uint64_t { normal, steps, scale, shared };

Random stream(Stream kind, int run, std::size_t place) {
    return Random((static_cast<std::uint64_t>(kind) << 56) +
                  (static_cast<std::uint64_t>(run) << 24) + place);
}

// Unit draws of one batch for every station: what bores share.
struct Draws {
    struct Own {
        Column normal;
        Column step;  // rectangular, standard deviation 1
        Column local; // rectangular
    };
    std::vector<Own> own;
    std::vector<Column> shared;
    Column scale; // of the normal parts, where their standard deviation is known by few readings
};

class DrawMaker {
public:
    DrawMaker(std::size_t stations, const std::vector<SharedDoubt>& shared, double ownFreedom)
        : m_shared(shared)
        , m_freedom(ownFreedom)
        , m_stations(stations) {}

    void startRun(int run) {
        m_own.clear();
        m_flat.clear();
        m_factors.clear();
        for (std::size_t i = 0; i < m_stations; ++i) {
            m_own.push_back(stream(Stream::normal, run, i));
            m_flat.push_back(stream(Stream::steps, run, i));
        }
        for (std::size_t k = 0; k < m_shared.size(); ++k)
            m_factors.push_back(stream(Stream::shared, run, k));
        m_scale.emplace(stream(Stream::scale, run, 0));
    }

    void next(Draws& draws) {
        draws.own.resize(m_stations);
        draws.shared.resize(m_shared.size());
        for (std::size_t i = 0; i < m_stations; ++i) {
            for (float& z : draws.own[i].normal)
                z = static_cast<float>(m_own[i].normal());
            for (std::size_t t = 0; t < batch; ++t) {
                const std::uint64_t bits = m_flat[i].next();
                draws.own[i].step[t] = flat(bits >> 40);
                draws.own[i].local[t] = flat((bits >> 8) & 0xffffff);
            }
        }
        for (std::size_t k = 0; k < m_shared.size(); ++k)
            for (float& f : draws.shared[k])
                f = static_cast<float>(sharedDraw(m_shared[k], m_factors[k]));
        for (float& scale : draws.scale)
            scale = static_cast<float>(std::isinf(m_freedom) ? 1 : freedomScale(*m_scale));
    }

private:
    // 24 bits become an even draw with mean 0 and standard deviation 1.
    static float flat(std::uint64_t bits) {
        constexpr float root12 = 3.46410162F;
        return root12 *
               ((static_cast<float>(static_cast<std::int32_t>(bits)) + 0.5F) / 16777216.0F - 0.5F);
    }

    // √(ν/χ²): Student's t is a normal draw times this (JCGM 101, 6.4.9).
    double freedomScale(Random& random) const {
        constexpr double many = 60; // beyond, χ² is a cube of a normal (Wilson & Hilferty 1931)
        if (m_freedom > many) {
            const double spread = 2 / (9 * m_freedom);
            const double cube = 1 - spread + random.normal() * std::sqrt(spread);
            return 1 / std::sqrt(cube * cube * cube);
        }
        double chi = 0;
        for (int i = 0; i < static_cast<int>(m_freedom); ++i) {
            const double z = random.normal();
            chi += z * z;
        }
        return std::sqrt(m_freedom / std::max(chi, 1e-12));
    }

    static double sharedDraw(const SharedDoubt& shared, Random& random) {
        constexpr double root12 = 3.4641016151377544;
        switch (shared.distribution) {
        case Distribution::rectangular:
            return root12 * (random.uniform() - 0.5);
        case Distribution::triangular:
            return std::sqrt(6.0) * (random.uniform() + random.uniform() - 1);
        case Distribution::uShaped:
            return std::sqrt(2.0) * std::sin(2 * 3.14159265358979 * random.uniform());
        case Distribution::normal:
            break;
        }
        return random.normal();
    }

    const std::vector<SharedDoubt>& m_shared;
    double m_freedom;
    std::size_t m_stations;
    std::vector<Random> m_own, m_flat, m_factors;
    std::optional<Random> m_scale;
};

// One figure of one bore, over all runs.
class FigureTrial {
public:
    FigureTrial(const TrialBore& bore, Figure figure, Running running)
        : m_figure(figure)
        , m_running(std::move(running))
        , m_perfect(figure >= Figure::outOfRound ? perfect(bore, figure) : std::vector<Bunch>())
        , m_contrast(doubtOfContrast(bore, m_running.deciding))
        , m_runSingle(scale())
        , m_runBunched(scale())
        , m_single(scale())
        , m_bunched(scale()) {}

    void add(const std::vector<Column>& noise, bool firstRun) {
        Column drawn;
        single(noise, drawn);
        m_runSingle.add(drawn);
        bunched(noise, m_running.bunches, drawn);
        m_runBunched.add(drawn);
        if (!firstRun || m_perfect.empty()) return;
        bunched(noise, m_perfect, drawn);
        for (const float d : drawn)
            m_alone += static_cast<double>(d);
        m_aloneTrials += batch;
    }

    void endRun() {
        const auto [below, above] = ends(m_runSingle, m_runBunched);
        for (auto& [sum, square, value] :
             {std::tie(m_sums[0], m_squares[0], below), std::tie(m_sums[1], m_squares[1], above)}) {
            sum += value;
            square += value * value;
        }
        m_single.add(m_runSingle);
        m_bunched.add(m_runBunched);
        m_runSingle.clear();
        m_runBunched.clear();
        ++m_runs;
    }

    [[nodiscard]] bool stands(double tolerance) const {
        const double n = m_runs;
        for (std::size_t i = 0; i < 2; ++i) {
            const double variance =
                std::max(0.0, (m_squares[i] - m_sums[i] * m_sums[i] / n) / (n - 1));
            if (2 * std::sqrt(variance / n) > tolerance * m_contrast.u_um) return false;
        }
        return true;
    }

    [[nodiscard]] FigureDoubt result() const {
        FigureDoubt doubt;
        doubt.u_um = m_contrast.u_um;
        doubt.freedom = m_contrast.freedom;
        const auto [below, above] = ends(m_single, m_bunched);
        const bool smallest = m_figure == Figure::smallest;
        doubt.below_um = smallest ? above : below;
        doubt.above_um = smallest ? below : above;
        if (!m_perfect.empty()) doubt.gaugeAlone_um = m_alone / static_cast<double>(m_aloneTrials);
        doubt.noise_um.reserve(quantiles);
        for (std::size_t i = 0; i < quantiles; ++i)
            doubt.noise_um.push_back(static_cast<float>(
                m_bunched.quantile(static_cast<double>(i) / static_cast<double>(quantiles - 1))));
        return doubt;
    }

private:
    [[nodiscard]] double scale() const {
        // Few degrees of freedom have long tails.
        const double stretched = std::max(1.0, coverageFactor(covered, m_contrast.freedom) / 4);
        return std::max(1e-9, m_contrast.u_um) * stretched;
    }

    static const Column& column(const std::vector<Column>& noise, int i) {
        return noise[static_cast<std::size_t>(i)];
    }

    void single(const std::vector<Column>& noise, Column& drawn) const {
        const Contrast& c = m_running.deciding;
        drawn.fill(0);
        if (c.plus >= 0)
            for (std::size_t t = 0; t < batch; ++t)
                drawn[t] += column(noise, c.plus)[t];
        if (c.minus >= 0)
            for (std::size_t t = 0; t < batch; ++t)
                drawn[t] -= column(noise, c.minus)[t];
    }

    static void extreme(const std::vector<Column>& noise, const std::vector<int>& of, bool largest,
                        Column& into) {
        into = column(noise, of.front());
        for (std::size_t i = 1; i < of.size(); ++i) {
            const Column& other = column(noise, of[i]);
            for (std::size_t t = 0; t < batch; ++t)
                into[t] = largest ? std::max(into[t], other[t]) : std::min(into[t], other[t]);
        }
    }

    static void bunched(const std::vector<Column>& noise, const std::vector<Bunch>& bunches,
                        Column& drawn) {
        Column top, bottom;
        bool first = true;
        for (const Bunch& bunch : bunches) {
            top.fill(0);
            bottom.fill(0);
            if (!bunch.top.empty()) extreme(noise, bunch.top, true, top);
            if (!bunch.bottom.empty()) extreme(noise, bunch.bottom, false, bottom);
            for (std::size_t t = 0; t < batch; ++t) {
                const float here = top[t] - bottom[t];
                drawn[t] = first ? here : std::max(drawn[t], here);
            }
            first = false;
        }
    }

    struct Reach {
        double below;
        double above;
    };
    static Reach ends(const Tally& single, const Tally& bunched) {
        // Every source is symmetric, so the shortest interval is the one about zero.
        const double above = single.around(covered);
        const double missed = std::min(bunched.shareBelow(-above), 1 - covered);
        const double below = bunched.quantile(covered + missed);
        return {std::max(below, above), above};
    }

    Figure m_figure;
    Running m_running;
    std::vector<Bunch> m_perfect;
    ContrastDoubt m_contrast;
    Tally m_runSingle, m_runBunched, m_single, m_bunched;
    std::array<double, 2> m_sums{}, m_squares{};
    double m_alone = 0;
    std::size_t m_aloneTrials = 0;
    int m_runs = 0;
};

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
        m_noise.resize(bore.stations.size());
    }

    void add(const Draws& draws, bool firstRun) {
        for (std::size_t i = 0; i < m_noise.size(); ++i)
            fill(draws, i);
        for (auto& figure : m_figures)
            if (figure) figure->add(m_noise, firstRun);
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
    void fill(const Draws& draws, std::size_t i) {
        const OwnDoubt& own = m_bore.stations[i].own;
        const auto normal = static_cast<float>(own.normal_um);
        const auto step = static_cast<float>(own.step_um);
        const auto local = static_cast<float>(own.local_um);
        Column& noise = m_noise[i];
        const Draws::Own& drawn = draws.own[i];
        for (std::size_t t = 0; t < batch; ++t)
            noise[t] = normal * draws.scale[t] * drawn.normal[t] + step * drawn.step[t] +
                       local * drawn.local[t];
        for (std::size_t k = 0; k < m_bore.shared.size(); ++k) {
            const auto moved = static_cast<float>(m_bore.shared[k].u_um * m_bore.shared[k].at(i));
            if (moved == 0) continue;
            for (std::size_t t = 0; t < batch; ++t)
                noise[t] += moved * draws.shared[k][t];
        }
    }

    const TrialBore& m_bore;
    std::array<std::optional<FigureTrial>, figures> m_figures;
    std::vector<Column> m_noise;
    std::size_t m_trials = 0;
    bool m_sameAsTaper = false;
    bool m_done = false;
};

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
    std::vector<BoreDoubt> doubts;
    if (bores.empty() || !options.check()) return doubts;
    std::size_t stations = 0;
    std::vector<BoreTrialRun> trials;
    trials.reserve(bores.size());
    for (const TrialBore& bore : bores) {
        stations = std::max(stations, bore.stations.size());
        trials.emplace_back(bore);
    }
    // Bores of one survey hang on the same sources, in the same order.
    DrawMaker maker(stations, bores.front().shared, bores.front().ownFreedom);
    Draws draws;
    for (int run = 0; run < options.mostRuns; ++run) {
        if (cancelled && cancelled()) return doubts;
        maker.startRun(run);
        for (int i = 0; i < options.batchesARun; ++i) {
            maker.next(draws);
            for (BoreTrialRun& trial : trials)
                if (!trial.done()) trial.add(draws, run == 0);
        }
        for (BoreTrialRun& trial : trials)
            if (!trial.done()) trial.endRun(run + 1, options);
        if (std::ranges::all_of(trials, &BoreTrialRun::done)) break;
    }
    for (const BoreTrialRun& trial : trials)
        doubts.push_back(trial.result());
    return doubts;
}

} // namespace borewright
