// SPDX-License-Identifier: GPL-3.0-or-later
// Draws from a prospect and what is told of them.
#include "core/honing/plan_foresee.h"

#include "core/statistics/distributions.h"
#include "core/statistics/random.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr std::uint64_t seed = 0x10e57a16;
constexpr Index drawsTold = 400;

MatrixXd drawnAnew(Index rows, Index columns) {
    Random random(seed);
    MatrixXd draws(rows, columns);
    for (Index j = 0; j < columns; ++j)
        for (Index i = 0; i < rows; ++i)
            draws(i, j) = random.normal();
    return draws;
}

// The same each time; drawn once as far as is usually asked for.
MatrixXd normals(Index rows, Index columns) {
    constexpr Index usualSources = 256;
    static const MatrixXd usual = drawnAnew(usualSources, drawsTold);
    if (rows > usual.rows() || columns > usual.cols()) return drawnAnew(rows, columns);
    return usual.topLeftCorner(rows, columns);
}

// `from`: sources before it are told otherwise.
void draw(const Prospect& prospect, Index from, Index count, Draws& draws) {
    const Index sources = prospect.sources() - from;
    const MatrixXd xi = normals(sources, count);
    const MatrixXd wall = prospect.wallBy.rightCols(sources) * xi;
    const MatrixXd oval = prospect.ovalBy.rightCols(sources) * xi;
    draws.oval = prospect.oval;
    draws.first = (wall + oval).colwise() + prospect.oval;
    draws.second = (wall - oval).colwise() - prospect.oval;
    const auto wallBy = prospect.wallBy.rightCols(sources);
    const auto ovalBy = prospect.ovalBy.rightCols(sources);
    draws.firstDoubt = (wallBy + ovalBy).rowwise().norm();
    draws.secondDoubt = (wallBy - ovalBy).rowwise().norm();
}

// Spreads on the first axis, the second, and of looks between them.
struct Spreads {
    double least[3], most[3];
    Spreads() {
        std::fill(least, least + 3, std::numeric_limits<double>::infinity());
        std::fill(most, most + 3, -std::numeric_limits<double>::infinity());
    }
    void take(double axis, double value) {
        const int group = axis > 0.5 ? 0 : axis < -0.5 ? 1 : 2;
        least[group] = std::min(least[group], value);
        most[group] = std::max(most[group], value);
    }
    [[nodiscard]] double worst() const {
        return std::max({0.0, most[0] - least[0], most[1] - least[1], most[2] - least[2]});
    }
    [[nodiscard]] double smallest() const { return std::min({least[0], least[1], least[2]}); }
    [[nodiscard]] double largest() const { return std::max({most[0], most[1], most[2]}); }
};

double chanceDoneOf(const PlanGround& ground, const Draws& draws) {
    if (ground.stations.empty()) return 0;
    double chance = 0;
    for (const Draws::AtRate& rate : draws.atRate) {
        int good = 0;
        for (Index j = 0; j < draws.first.cols(); ++j) {
            Spreads spreads;
            for (const PlanStation& look : ground.stations) {
                const double base = look.at.of(rate.wall);
                const double first = look.at.of(draws.first.col(j));
                const double second = look.at.of(draws.second.col(j));
                spreads.take(look.axis,
                             base + (first + second) / 2 + look.axis * (first - second) / 2);
            }
            if (spreads.worst() <= ground.aim.straight_um &&
                spreads.smallest() >= ground.aim.lowest_um &&
                spreads.largest() <= ground.aim.upperLimit_um)
                ++good;
        }
        chance += rate.weight * good / static_cast<double>(draws.first.cols());
    }
    return chance;
}

struct Weighted {
    double value, weight;
};

// The value that is passed with this chance only.
double exceeded(std::vector<Weighted>& all, double chance) {
    std::ranges::sort(all, [](const Weighted& a, const Weighted& b) { return a.value > b.value; });
    double sum = 0;
    for (const Weighted& one : all) {
        sum += one.weight;
        if (sum > chance) return one.value;
    }
    return all.empty() ? 0 : all.back().value;
}

// Of a normal about each wall that a rate makes, mixed by their weights: by halving.
double quantile(const Draws& draws, Index cell, double sigma, double chance) {
    const double farthest = -normalQuantile(chance) * sigma;
    if (draws.atRate.size() == 1) return draws.atRate.front().wall[cell] + farthest;
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const Draws::AtRate& rate : draws.atRate) {
        low = std::min(low, rate.wall[cell]);
        high = std::max(high, rate.wall[cell] + std::max(0.0, farthest));
    }
    for (int turn = 0; turn < 24 && high - low > 0.01; ++turn) {
        const double middle = (low + high) / 2;
        double above = 0;
        for (const Draws::AtRate& rate : draws.atRate)
            above += rate.weight * normalBelow((rate.wall[cell] - middle) / std::max(1e-6, sigma));
        (above > chance ? low : high) = middle;
    }
    return high;
}

} // namespace

Draws drawsNow(const Prospect& now, Index count) {
    Draws draws;
    draw(now, 0, count, draws);
    draws.atRate.push_back({1, now.wall});
    return draws;
}

Draws drawsAfter(const PlanGround& ground, const Prospect& before, const Prospect& after,
                 const SetUp& setUp, Index count) {
    Draws draws;
    const double rateDoubt =
        std::fabs(before.figuresBy(static_cast<Index>(setUp.stone * toolFigures), 0));
    const double stock = (after.wall - before.wall).maxCoeff();
    // Where the curve of the exponential makes no odds, the rate is a source like all others.
    if (stock * rateDoubt * rateDoubt * 2.7 < 0.2) {
        draw(after, 0, count, draws);
        draws.atRate.push_back({1, after.wall});
        return draws;
    }
    draw(after, 1, count, draws);
    const double sign =
        before.figuresBy(static_cast<Index>(setUp.stone * toolFigures), 0) < 0 ? -1 : 1;
    double sum = 0;
    for (const double z : {-1.6, -0.8, 0.0, 0.7, 1.3, 1.8, 2.3, 2.8}) {
        // Half way to the neighbours: P(z) of the normal between them, as a density times a width.
        const double width = z < 0.3 ? 0.8 : z < 1.5 ? 0.6 : 0.5;
        const double weight = std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi) * width;
        draws.atRate.push_back({weight, wallAtRate(ground, before, setUp, sign * z)});
        sum += weight;
    }
    for (Draws::AtRate& rate : draws.atRate)
        rate.weight /= sum;
    return draws;
}

double largestExcess(const Draws& draws, double limit_um, const std::vector<bool>& counts,
                     double chance) {
    std::vector<Weighted> all;
    const Index count = draws.first.cols();
    for (const Draws::AtRate& rate : draws.atRate)
        for (Index j = 0; j < count; ++j) {
            double worst = -std::numeric_limits<double>::infinity();
            for (Index i = 0; i < rate.wall.size(); ++i)
                if (counts[static_cast<std::size_t>(i)])
                    worst = std::max(worst, rate.wall[i] +
                                                std::max(draws.first(i, j), draws.second(i, j)));
            all.push_back({worst, rate.weight / static_cast<double>(count)});
        }
    return exceeded(all, chance) - limit_um;
}

double excessOfEach(const Draws& draws, double limit_um, const std::vector<bool>& counts,
                    double chance) {
    double worst = -std::numeric_limits<double>::infinity();
    for (Index i = 0; i < draws.oval.size(); ++i) {
        if (!counts[static_cast<std::size_t>(i)]) continue;
        for (const double side : {1.0, -1.0}) {
            const double sigma = side > 0 ? draws.firstDoubt[i] : draws.secondDoubt[i];
            worst = std::max(worst, side * draws.oval[i] + quantile(draws, i, sigma, chance));
        }
    }
    return worst - limit_um;
}

double chanceOver(const Draws& draws, double limit_um, const std::vector<bool>& counts) {
    double chance = 0;
    for (const Draws::AtRate& rate : draws.atRate) {
        int over = 0;
        for (Index j = 0; j < draws.first.cols(); ++j)
            for (Index i = 0; i < rate.wall.size(); ++i)
                if (counts[static_cast<std::size_t>(i)] &&
                    rate.wall[i] + std::max(draws.first(i, j), draws.second(i, j)) > limit_um) {
                    ++over;
                    break;
                }
        chance += rate.weight * over / static_cast<double>(draws.first.cols());
    }
    return chance;
}

Foreseen foreseenOf(const PlanGround& ground, const Prospect& prospect, const Draws& draws,
                    double cap_um) {
    Foreseen told;
    told.wall = prospect.wall;
    told.largest = prospect.wall + prospect.oval.cwiseAbs();
    told.deviation.resize(prospect.wall.size());
    Spreads all;
    for (Index i = 0; i < prospect.wall.size(); ++i) {
        const double side = prospect.oval[i] < 0 ? -1 : 1;
        told.deviation[i] = (prospect.wallBy.row(i) + side * prospect.ovalBy.row(i)).norm();
        if (!ground.inside[static_cast<std::size_t>(i)]) continue;
        all.take(1, prospect.wall[i] + prospect.oval[i]);
        all.take(-1, prospect.wall[i] - prospect.oval[i]);
    }
    Spreads stations;
    for (const PlanStation& look : ground.stations) {
        const double there = look.at.of(prospect.wall) + look.axis * look.at.of(prospect.oval);
        stations.take(look.axis, there);
        all.take(look.axis, there); // it may lie where no stone works
    }
    told.spread_um = stations.worst();
    told.spreadAll_um = all.worst();
    told.chanceOver = chanceOver(draws, ground.aim.upperLimit_um, ground.reached);
    told.chanceOverCap = chanceOver(draws, cap_um, ground.reached);
    told.chanceDone = chanceDoneOf(ground, draws);
    return told;
}

Foreseen foreseenNow(const PlanGround& ground, const Prospect& now) {
    return foreseenOf(ground, now, drawsNow(now, drawsTold), ground.aim.cap_um);
}

Foreseen foreseenAfter(const PlanGround& ground, const Prospect& before, const SetUp& setUp,
                       Prospect* after) {
    const Prospect from = rateFirst(before, setUp.stone);
    Prospect then = prospectAfter(ground, from, setUp);
    const Draws draws = drawsAfter(ground, from, then, setUp, drawsTold);
    Foreseen told = foreseenOf(ground, then, draws, ground.capOf(setUp.stone));
    if (after) *after = std::move(then);
    return told;
}

} // namespace borewright
