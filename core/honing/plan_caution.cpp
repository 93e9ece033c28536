// SPDX-License-Identifier: GPL-3.0-or-later
// The largest share of a set-up that keeps its chance.
#include "core/honing/plan_caution.h"

#include "core/honing/plan_course.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

constexpr Index drawsWeighed = 300;
constexpr double felt_um = 0.03;     // less than this is not cut
constexpr double unknownRate = 0.55; // standard doubt of its logarithm
// What goes past the stock that the finish stone needs spoils nothing yet.
constexpr double roughChance = 10;

SetUp scaled(SetUp setUp, double share) {
    for (Stroking& window : setUp.windows) {
        window.strokes *= share;
        window.held *= share;
    }
    return setUp;
}

double strokesOf(const SetUp& setUp) {
    double sum = 0;
    for (const Stroking& window : setUp.windows)
        sum += window.strokes + window.held;
    return sum;
}

double rateDoubt(const PlanGround& ground, std::size_t stone) {
    const Index at = ground.belief.layout.figure(stone, ToolFigure::rate);
    return std::sqrt(std::max(0.0, ground.belief.covariance(at, at)));
}

double mostShare(const PlanGround& ground, const SetUp& wanted) {
    if (!rateUnknown(ground, wanted.stone)) return 1;
    return std::min(1.0, firstStrokes / std::max(1e-9, strokesOf(wanted)));
}

// What surprises at the stations surprises more between them, where windows meet and nobody reads:
// the draws know of that only what the model knows.
double marginOf(const PlanGround& ground) {
    constexpr double aSurprise_um = 6, most_um = 12;
    return std::min(most_um, aSurprise_um * ground.surprise());
}

class Weighing {
public:
    Weighing(const PlanGround& ground, const Prospect& now, const SetUp& wanted, double reserve_um)
        : m_ground(ground)
        , m_before(rateFirst(now, wanted.stone))
        , m_limit(ground.aim.upperLimit_um - marginOf(ground))
        , m_cap(std::min(ground.capOf(wanted.stone) - marginOf(ground), m_limit) - reserve_um)
        , m_chance(ground.aim.chance * roughChance) {}

    // By how much the wall would pass its cap, but for the chance; minus = room.
    double excess(const SetUp& setUp) const {
        const Prospect after = prospectAfter(m_ground, m_before, setUp);
        const VectorXd stock = after.wall - m_before.wall;
        std::vector<bool> cut(m_ground.cells());
        bool any = false;
        for (std::size_t i = 0; i < cut.size(); ++i)
            any = (cut[i] = stock[static_cast<Index>(i)] > felt_um) || any;
        if (!any) return -1;
        const Draws draws = drawsAfter(m_ground, m_before, after, setUp, drawsWeighed);
        const double over = largestExcess(draws, m_limit, cut, m_ground.aim.chance);
        return std::max(over, excessOfEach(draws, m_cap, cut, m_chance));
    }

private:
    const PlanGround& m_ground;
    Prospect m_before;
    double m_limit;
    double m_cap;
    double m_chance;
};

// The excess grows nearly as a straight line with the share: the false position, halved where it
// sticks (Illinois).
double largestShare(const Weighing& weighing, const SetUp& wanted, double most, double guess) {
    double high = most;
    double atHigh = weighing.excess(scaled(wanted, most));
    if (atHigh <= 0) return most;
    double low = 0, atLow = 0;
    double trial = std::clamp(guess, 0.02 * most, 0.9 * most);
    for (int turn = 0; turn < 6 && high - low > 0.04 * high; ++turn) {
        const double at = weighing.excess(scaled(wanted, trial));
        (at <= 0 ? low : high) = trial;
        (at <= 0 ? atLow : atHigh) = at;
        const double line =
            low > 0 ? low + (high - low) * (-atLow / std::max(1e-9, atHigh - atLow)) : high / 3;
        // A little to the safe side of the line, so that it closes from both sides.
        trial = std::clamp(line * 0.98, low + 0.05 * (high - low), high - 0.05 * (high - low));
    }
    return low;
}

double toStep(double depth_mm, double step, double highest, double lowest) {
    const double rounded = step > 0 ? std::round(depth_mm / step) * step : depth_mm;
    if (rounded < highest) return step > 0 ? std::ceil(highest / step - 1e-9) * step : highest;
    if (rounded > lowest) return step > 0 ? std::floor(lowest / step + 1e-9) * step : lowest;
    return rounded;
}

SetUp rounded(const PlanGround& ground, const SetUp& setUp, double cell_mm) {
    const WindowBounds bounds = windowBounds(ground, setUp.stone);
    SetUp whole{setUp.stone, {}};
    for (Stroking window : setUp.windows) {
        window.strokes = std::round(window.strokes);
        window.held = std::round(window.held);
        if (window.strokes + window.held < 1) continue;
        window.from_mm = toStep(window.from_mm, cell_mm, bounds.highest_mm, bounds.lowest_mm);
        // The stop is felt: what ends next to it ends at it.
        window.to_mm = window.to_mm > bounds.lowest_mm - cell_mm
                           ? bounds.lowest_mm
                           : toStep(window.to_mm, cell_mm, bounds.highest_mm, bounds.lowest_mm);
        window.to_mm = std::max(window.from_mm, window.to_mm);
        // A stroke goes somewhere.
        const double shortest = std::min(std::max(cell_mm, 0.1), bounds.room_mm());
        if (window.to_mm - window.from_mm < shortest && window.strokes > 0) {
            window.from_mm = std::max(bounds.highest_mm, window.to_mm - shortest);
            window.to_mm = std::max(window.to_mm, window.from_mm + shortest);
        }
        const auto like = std::ranges::find_if(whole.windows, [&](const Stroking& other) {
            return other.from_mm == window.from_mm && other.to_mm == window.to_mm;
        });
        if (like == whole.windows.end())
            whole.windows.push_back(window);
        else {
            like->strokes += window.strokes;
            like->held += window.held;
        }
    }
    return whole;
}

// What is left when one window has so many strokes less.
SetUp less(SetUp setUp, std::size_t window, double strokes) {
    Stroking& one = setUp.windows[window];
    (one.strokes > 0 ? one.strokes : one.held) -= strokes;
    if (one.strokes + one.held < 0.5)
        setUp.windows.erase(setUp.windows.begin() + static_cast<std::ptrdiff_t>(window));
    return setUp;
}

// Takes whole strokes away where a share of them helps the most, until the chance is kept.
SetUp broughtWithin(const Weighing& weighing, SetUp setUp) {
    constexpr double enough_um = 0.2; // more room than this is worth nothing
    double excess = setUp.windows.empty() ? -1 : weighing.excess(setUp);
    while (!setUp.windows.empty() && excess > 0) {
        std::optional<SetUp> best;
        double bestGain = 0, bestExcess = 0;
        for (std::size_t w = 0; w < setUp.windows.size(); ++w) {
            const Stroking& window = setUp.windows[w];
            const double count = window.strokes > 0 ? window.strokes : window.held;
            const double strokes = std::max(1.0, std::floor(0.06 * count));
            SetUp trial = less(setUp, w, strokes);
            const double at = trial.windows.empty() ? -1 : weighing.excess(trial);
            const double gain = (excess - std::max(at, -enough_um)) / (strokes / count);
            if (best && gain <= bestGain) continue;
            best = std::move(trial);
            bestGain = gain;
            bestExcess = at;
        }
        setUp = std::move(*best);
        excess = bestExcess;
    }
    return setUp;
}

// Each window by itself may be dared more than all of them alike.
SetUp grown(const Weighing& weighing, SetUp setUp, const SetUp& wanted, double most) {
    double left = most * strokesOf(wanted) - strokesOf(setUp);
    for (std::size_t w = 0; w < setUp.windows.size(); ++w) {
        Stroking& window = setUp.windows[w];
        const double low = window.strokes;
        const double room = std::min(wanted.windows[w].strokes - low, left);
        if (room < 0.5) continue;
        for (const double part : {1.0, 0.6, 0.3}) {
            window.strokes = low + part * room;
            if (weighing.excess(setUp) <= 0) break;
            window.strokes = low;
        }
        left -= window.strokes - low;
    }
    return setUp;
}

} // namespace

bool rateUnknown(const PlanGround& ground, std::size_t stone) {
    return rateDoubt(ground, stone) >= unknownRate;
}

double shareAbout(const PlanGround& ground, const Prospect& now, const SetUp& wanted) {
    const Prospect before = rateFirst(now, wanted.stone);
    const Prospect after = prospectAfter(ground, before, wanted);
    const double cap = std::min(ground.capOf(wanted.stone), ground.aim.upperLimit_um);
    const double doubt = rateDoubt(ground, wanted.stone);
    const double sigmas = cap < ground.aim.cap_um ? 1.3 : sigmasBelow;
    const double faster = std::exp(2.33 * doubt) - 1 - 2.33 * doubt; // beyond the straight line
    double share = mostShare(ground, wanted);
    for (Index i = 0; i < before.wall.size(); ++i) {
        const double stock = after.wall[i] - before.wall[i];
        if (stock <= felt_um) continue;
        const double oval = std::fabs(now.oval[i]);
        const double sideNow = std::hypot(before.wallBy.row(i).norm(), before.ovalBy.row(i).norm());
        const double sideThen = std::hypot(after.wallBy.row(i).norm(), after.ovalBy.row(i).norm());
        const double reachedNow = before.wall[i] + oval + sigmas * sideNow;
        const double reachedThen =
            after.wall[i] + std::fabs(after.oval[i]) + sigmas * sideThen + faster * stock;
        if (reachedThen <= cap) continue;
        share = std::min(share, std::max(0.0, (cap - reachedNow) / (reachedThen - reachedNow)));
    }
    return share;
}

CarefulSetUp carefully(const PlanGround& ground, const Prospect& now, const SetUp& wanted,
                       double cell_mm, double reserve_um) {
    const Weighing weighing(ground, now, wanted, reserve_um);
    const double most = mostShare(ground, wanted);
    const double share = largestShare(weighing, wanted, most, shareAbout(ground, now, wanted));
    const SetUp dared = share < 0.97 * most ? grown(weighing, scaled(wanted, share), wanted, most)
                                            : scaled(wanted, share);
    SetUp whole = rounded(ground, dared, cell_mm);
    if (whole.windows.empty() && strokesOf(wanted) > 0) {
        // Less than a stroke: one, should that keep the chance.
        SetUp one = wanted;
        const auto longest = std::ranges::max_element(one.windows, {}, &Stroking::strokes);
        one.windows = {*longest};
        one.windows.front().strokes = 1;
        one.windows.front().held = 0;
        whole = rounded(ground, one, cell_mm);
    }
    whole = broughtWithin(weighing, std::move(whole));
    return {whole, strokesOf(whole) / std::max(1e-9, strokesOf(wanted))};
}

} // namespace borewright
