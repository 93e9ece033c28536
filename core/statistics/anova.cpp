// SPDX-License-Identifier: GPL-3.0-or-later
// Everything is reckoned from the first value, so that no leading digits are carried along.
#include "core/statistics/anova.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace borewright {
namespace {

double squared(double x) {
    return x * x;
}

double meanOf(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double squaresAbout(double mean, std::span<const double> values) {
    double sum = 0;
    for (const double value : values)
        sum += squared(value - mean);
    return sum;
}

bool allFinite(std::span<const double> values) {
    return std::ranges::all_of(values, [](double value) { return std::isfinite(value); });
}

// F and its chance of being exceeded, with an end for samples without any scatter.
struct Ratio {
    double f;
    double chance;
};
Ratio ratioOf(double squares1, double freedom1, double squares2, double freedom2) {
    if (squares2 > 0) {
        const double f = (squares1 / freedom1) / (squares2 / freedom2);
        return {f, fAbove(f, freedom1, freedom2)};
    }
    if (squares1 > 0) return {std::numeric_limits<double>::infinity(), 0};
    return {0, 1};
}

Result<void> checkGroups(const std::vector<std::vector<double>>& groups) {
    if (groups.size() < 2) return refuse("a comparison needs at least two groups");
    bool repeated = false;
    for (const std::vector<double>& group : groups) {
        if (group.empty()) return refuse("a group is empty");
        if (!allFinite(group)) return refuse("a value is not a number");
        repeated = repeated || group.size() > 1;
    }
    if (!repeated)
        return refuse("without a repeat in any group there is no scatter to compare with");
    return {};
}

using Cells = std::vector<std::vector<std::vector<double>>>;

Result<void> checkCells(const Cells& cells) {
    if (cells.size() < 2) return refuse("the study needs at least two persons");
    const std::size_t spots = cells.front().size();
    if (spots < 2) return refuse("the study needs at least two spots");
    const std::size_t repeats = cells.front().front().size();
    if (repeats < 2) return refuse("the study needs at least two repeats at each spot");
    for (const auto& person : cells) {
        if (person.size() != spots) return refuse("each person must have read the same spots");
        for (const std::vector<double>& cell : person) {
            if (cell.size() != repeats)
                return refuse("each person must have read each spot the same number of times");
            if (!allFinite(cell)) return refuse("a value is not a number");
        }
    }
    return {};
}

// Means of the cells, the persons and the spots, all less one value common to the study.
struct Means {
    std::vector<std::vector<double>> cell; // [person][spot]
    std::vector<double> person;
    std::vector<double> spot;
    double grand = 0;
};

Means meansOf(const Cells& cells, double origin) {
    Means means;
    for (const auto& person : cells) {
        std::vector<double>& row = means.cell.emplace_back();
        for (std::vector<double> cell : person) {
            for (double& value : cell)
                value -= origin;
            row.push_back(meanOf(cell));
        }
        means.person.push_back(meanOf(row));
    }
    for (std::size_t spot = 0; spot < cells.front().size(); ++spot) {
        std::vector<double> column;
        for (const std::vector<double>& row : means.cell)
            column.push_back(row[spot]);
        means.spot.push_back(meanOf(column));
    }
    means.grand = meanOf(means.person);
    return means;
}

// The sums of squares and their degrees of freedom.
TwoWay squaresOf(const Cells& cells) {
    const double origin = cells.front().front().front();
    const Means means = meansOf(cells, origin);
    const auto a = static_cast<double>(cells.size());
    const auto b = static_cast<double>(cells.front().size());
    const auto n = static_cast<double>(cells.front().front().size());
    TwoWay t{};
    t.personSquares = b * n * squaresAbout(means.grand, means.person);
    t.spotSquares = a * n * squaresAbout(means.grand, means.spot);
    for (std::size_t p = 0; p < cells.size(); ++p)
        for (std::size_t s = 0; s < cells[p].size(); ++s) {
            const double mean = means.cell[p][s];
            t.interactionSquares +=
                n * squared(mean - means.person[p] - means.spot[s] + means.grand);
            for (const double value : cells[p][s]) {
                t.errorSquares += squared(value - origin - mean);
                t.totalSquares += squared(value - origin - means.grand);
            }
        }
    t.personFreedom = a - 1;
    t.spotFreedom = b - 1;
    t.interactionFreedom = (a - 1) * (b - 1);
    t.errorFreedom = a * b * (n - 1);
    t.totalFreedom = a * b * n - 1;
    return t;
}

} // namespace

std::optional<Spread> spreadOf(std::span<const double> values) {
    if (values.size() < 2 || !allFinite(values)) return std::nullopt;
    // Taken from the first value, so that equal values have a deviation of exactly 0.
    std::vector<double> shifted(values.begin(), values.end());
    for (double& value : shifted)
        value -= values.front();
    const double mean = meanOf(shifted);
    const double variance = squaresAbout(mean, shifted) / (static_cast<double>(values.size()) - 1);
    return Spread{values.front() + mean, std::sqrt(variance), static_cast<int>(values.size())};
}

Result<OneWay> oneWay(const std::vector<std::vector<double>>& groups) {
    if (auto fit = checkGroups(groups); !fit) return tl::unexpected(fit.error());
    const double origin = groups.front().front();
    std::vector<double> all;
    for (const std::vector<double>& group : groups)
        for (const double value : group)
            all.push_back(value - origin);
    const double grand = meanOf(all);
    OneWay result{};
    double sumOfSquaredCounts = 0;
    std::size_t begin = 0;
    for (const std::vector<double>& group : groups) {
        const std::span<const double> shifted(all.data() + begin, group.size());
        const auto count = static_cast<double>(group.size());
        const double mean = meanOf(shifted);
        result.withinSquares += squaresAbout(mean, shifted);
        result.betweenSquares += count * squared(mean - grand);
        sumOfSquaredCounts += squared(count);
        begin += group.size();
    }
    if (!std::isfinite(result.withinSquares + result.betweenSquares))
        return refuse("the values are too large to be squared");
    const auto total = static_cast<double>(all.size());
    result.betweenFreedom = static_cast<double>(groups.size()) - 1;
    result.withinFreedom = total - static_cast<double>(groups.size());
    result.withinVariance = result.withinSquares / result.withinFreedom;
    const double perGroup = (total - sumOfSquaredCounts / total) / result.betweenFreedom;
    const double between =
        (result.betweenSquares / result.betweenFreedom - result.withinVariance) / perGroup;
    result.betweenWasNegative = between < 0;
    result.betweenVariance = std::max(0.0, between);
    const Ratio ratio = ratioOf(result.betweenSquares, result.betweenFreedom, result.withinSquares,
                                result.withinFreedom);
    result.f = ratio.f;
    result.chance = ratio.chance;
    return result;
}

Result<TwoWay> twoWay(const Cells& cells, Interaction interaction, double level) {
    if (auto fit = checkCells(cells); !fit) return tl::unexpected(fit.error());
    if (!(level >= 0 && level <= 1)) return refuse("level", "a chance lies between 0 and 1");
    TwoWay t = squaresOf(cells);
    if (!std::isfinite(t.totalSquares + t.interactionSquares))
        return refuse("the values are too large to be squared");
    const auto a = static_cast<double>(cells.size());
    const auto b = static_cast<double>(cells.front().size());
    const auto n = static_cast<double>(cells.front().front().size());
    const Ratio ratio =
        ratioOf(t.interactionSquares, t.interactionFreedom, t.errorSquares, t.errorFreedom);
    t.interactionF = ratio.f;
    t.interactionChance = ratio.chance;
    t.interactionPooled = interaction == Interaction::pooled && ratio.chance >= level;
    const double error = t.errorSquares / t.errorFreedom;
    t.repeatabilityFreedom = t.errorFreedom;
    t.repeatabilityVariance = error;
    double against = t.interactionSquares / t.interactionFreedom; // what persons and spots face
    if (t.interactionPooled) {
        t.repeatabilityFreedom += t.interactionFreedom;
        t.repeatabilityVariance = (t.interactionSquares + t.errorSquares) / t.repeatabilityFreedom;
        against = t.repeatabilityVariance;
    } else {
        t.interactionVariance = std::max(0.0, (against - error) / n);
    }
    t.personVariance = std::max(0.0, (t.personSquares / t.personFreedom - against) / (b * n));
    t.spotVariance = std::max(0.0, (t.spotSquares / t.spotFreedom - against) / (a * n));
    return t;
}

} // namespace borewright
