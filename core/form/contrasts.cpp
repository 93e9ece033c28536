// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/form/contrasts.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace borewright {
namespace {

using Indices = std::vector<int>;

const TrialStation& at(const TrialBore& bore, int i) {
    return bore.stations[static_cast<std::size_t>(i)];
}
double size(const TrialBore& bore, int i) {
    return at(bore, i).size_um;
}
double ownOf(const TrialBore& bore, int i) {
    return std::sqrt(at(bore, i).own.square());
}

// The margins were found by simulation; see trials.h.
constexpr double sizeMargin = 0.7;
constexpr double differenceMargin = 0.6;

double kappa(std::size_t n, double margin) {
    return std::sqrt(2 * std::log(static_cast<double>(std::max<std::size_t>(n, 2)))) - margin;
}

bool counts(const TrialStation& station, Figure figure) {
    return station.judged || figure == Figure::straightness;
}

Indices stationsOf(const TrialBore& bore, Figure figure) {
    Indices indices;
    for (std::size_t i = 0; i < bore.stations.size(); ++i)
        if (counts(bore.stations[i], figure)) indices.push_back(static_cast<int>(i));
    return indices;
}

std::map<int, Indices> byAxis(const TrialBore& bore, const Indices& indices) {
    std::map<int, Indices> axes;
    for (const int i : indices)
        axes[at(bore, i).axis].push_back(i);
    std::erase_if(axes, [](const auto& axis) { return axis.second.size() < 2; });
    return axes;
}

// Those within κ of the best; `sign` −1 looks for the smallest. `share` narrows what is allowed.
Indices near(const TrialBore& bore, const Indices& indices, int sign, double k, double share) {
    const int best =
        *std::ranges::max_element(indices, {}, [&](int i) { return sign * size(bore, i); });
    Indices found;
    for (const int i : indices) {
        const double gap = sign * (size(bore, best) - size(bore, i));
        if (gap <= share * k * std::hypot(ownOf(bore, i), ownOf(bore, best))) found.push_back(i);
    }
    // The deciding one first.
    std::iter_swap(found.begin(), std::ranges::find(found, best));
    return found;
}

std::optional<Running> ofSize(const TrialBore& bore, Figure figure) {
    const Indices indices = stationsOf(bore, figure);
    if (indices.empty()) return std::nullopt;
    const bool largest = figure == Figure::largest;
    Indices found = near(bore, indices, largest ? 1 : -1, kappa(indices.size(), sizeMargin), 1);
    Running running;
    (largest ? running.deciding.plus : running.deciding.minus) = found.front();
    running.bunches.push_back(largest ? Bunch{std::move(found), {}} : Bunch{{}, std::move(found)});
    return running;
}

double spread(const TrialBore& bore, const Contrast& pair) {
    return size(bore, pair.plus) - size(bore, pair.minus);
}

// Pairs, each both ways round: the largest decides, those near it are in the running.
std::optional<Running> ofPairs(const TrialBore& bore, const std::vector<Contrast>& pairs,
                               std::size_t stations) {
    if (pairs.empty()) return std::nullopt;
    Running running;
    running.deciding = *std::ranges::max_element(
        pairs, {}, [&](const Contrast& pair) { return spread(bore, pair); });
    const auto own = [&](const Contrast& pair) {
        return std::hypot(ownOf(bore, pair.plus), ownOf(bore, pair.minus));
    };
    const double k = kappa(stations, differenceMargin);
    for (const Contrast& pair : pairs)
        if (spread(bore, running.deciding) - spread(bore, pair) <=
            k * std::hypot(own(pair), own(running.deciding)))
            running.bunches.push_back({{pair.plus}, {pair.minus}});
    return running;
}

std::vector<Contrast> pairsAcross(const TrialBore& bore, const Indices& indices) {
    std::vector<Contrast> pairs;
    for (const int i : indices)
        for (const int j : indices)
            if (i != j && at(bore, i).level == at(bore, j).level) pairs.push_back({i, j});
    return pairs;
}

std::vector<Contrast> pairsOfEnds(const TrialBore& bore, const Indices& indices) {
    std::vector<Contrast> pairs;
    for (const auto& [axis, along] : byAxis(bore, indices)) {
        pairs.push_back({along.front(), along.back()});
        pairs.push_back({along.back(), along.front()});
    }
    return pairs;
}

bool byEnds(const TrialBore& bore, Figure figure) {
    return figure == Figure::taper && bore.rule == TaperRule::endToEnd;
}

std::optional<Running> ofTaper(const TrialBore& bore, Figure figure) {
    const Indices indices = stationsOf(bore, figure);
    if (byEnds(bore, figure)) return ofPairs(bore, pairsOfEnds(bore, indices), indices.size());
    struct Axis {
        const Indices* along;
        Contrast ends;
    };
    const std::map<int, Indices> axes = byAxis(bore, indices);
    std::vector<Axis> found;
    for (const auto& [axis, along] : axes) {
        const auto [least, most] =
            std::ranges::minmax_element(along, {}, [&](int i) { return size(bore, i); });
        found.push_back({&along, {*most, *least}});
    }
    if (found.empty()) return std::nullopt;
    const auto worst =
        std::ranges::max_element(found, {}, [&](const Axis& a) { return spread(bore, a.ends); });
    Running running{worst->ends, {}};
    const double k = kappa(indices.size(), differenceMargin);
    for (const Axis& axis : found) {
        // What an axis is short of the worst is taken off what its own readings may be short.
        const double allowed =
            k *
            std::hypot(ownOf(bore, axis.ends.plus), ownOf(bore, axis.ends.minus),
                       std::hypot(ownOf(bore, worst->ends.plus), ownOf(bore, worst->ends.minus)));
        const double gap = spread(bore, worst->ends) - spread(bore, axis.ends);
        if (gap > allowed) continue;
        const double share = allowed > 0 ? 1 - gap / allowed : 1;
        running.bunches.push_back(
            {near(bore, *axis.along, 1, k, share), near(bore, *axis.along, -1, k, share)});
    }
    return running;
}

} // namespace

std::optional<Running> runningFor(const TrialBore& bore, Figure figure) {
    switch (figure) {
    case Figure::largest:
    case Figure::smallest:
        return ofSize(bore, figure);
    case Figure::outOfRound: {
        const Indices indices = stationsOf(bore, figure);
        return ofPairs(bore, pairsAcross(bore, indices), indices.size());
    }
    case Figure::taper:
    case Figure::straightness:
        return ofTaper(bore, figure);
    }
    return std::nullopt;
}

std::vector<Bunch> perfect(const TrialBore& bore, Figure figure) {
    const Indices indices = stationsOf(bore, figure);
    std::vector<Bunch> bunches;
    const auto addPairs = [&](const std::vector<Contrast>& pairs) {
        for (const Contrast& pair : pairs)
            bunches.push_back({{pair.plus}, {pair.minus}});
    };
    if (figure == Figure::outOfRound)
        addPairs(pairsAcross(bore, indices));
    else if (byEnds(bore, figure))
        addPairs(pairsOfEnds(bore, indices));
    else
        for (const auto& [axis, along] : byAxis(bore, indices))
            bunches.push_back({along, along});
    return bunches;
}

ContrastDoubt doubtOfContrast(const TrialBore& bore, const Contrast& contrast) {
    double normal = 0, rest = 0;
    for (const int i : {contrast.plus, contrast.minus}) {
        if (i < 0) continue;
        const OwnDoubt& own = at(bore, i).own;
        normal += own.normal_um * own.normal_um;
        rest += own.step_um * own.step_um + own.local_um * own.local_um;
    }
    std::vector<Contribution> parts{{std::sqrt(normal), bore.ownFreedom},
                                    {std::sqrt(rest), std::numeric_limits<double>::infinity()}};
    double square = normal + rest;
    for (const SharedDoubt& shared : bore.shared) {
        double loading = 0;
        if (contrast.plus >= 0) loading += shared.at(static_cast<std::size_t>(contrast.plus));
        if (contrast.minus >= 0) loading -= shared.at(static_cast<std::size_t>(contrast.minus));
        const double u = shared.u_um * std::abs(loading);
        if (u == 0) continue;
        parts.push_back({u, shared.freedom});
        square += u * u;
    }
    return {std::sqrt(square), welchSatterthwaite(parts)};
}

} // namespace borewright
