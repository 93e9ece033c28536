// SPDX-License-Identifier: GPL-3.0-or-later
// Readings chosen one by one for what they tell (greedy; for summed variance it is close to the
// best choice: Krause, Singh & Guestrin, J. Mach. Learn. Res. 9 (2008) 235, on a like measure).
#include "core/honing/plan_telling.h"

#include <algorithm>
#include <cmath>

namespace borewright {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

// A reading left out is soon paid for: with eight of twelve read while there is far to go, the
// bores of the gentle bench take one set-up more.
constexpr double farToGo_um = 50;
constexpr std::size_t leastAsked = 8, mostAsked = 14;

VectorXd rowOf(const WallGrid& grid, const Look& look) {
    const auto cells = static_cast<Index>(grid.cells);
    VectorXd row = VectorXd::Zero(2 * cells);
    const BetweenCells at = betweenCells(grid, look.depth_mm);
    const auto lower = static_cast<Index>(at.lower);
    row[lower] = 1 - at.share;
    row[cells + lower] = look.axis * (1 - at.share);
    if (at.share > 0) {
        row[lower + 1] = at.share;
        row[cells + lower + 1] = look.axis * at.share;
    }
    return row;
}

bool same(const Look& a, const Look& b) {
    return a.depth_mm == b.depth_mm && a.axis == b.axis;
}

class Choice {
public:
    Choice(const MatrixXd& covariance, const WallGrid& grid, double doubt_um)
        : m_covariance(covariance)
        , m_grid(grid)
        , m_noise(doubt_um * doubt_um) {}

    // By how much a reading there would cut the summed variance of both axes.
    double gain(const Look& look) const {
        const VectorXd row = rowOf(m_grid, look);
        const VectorXd seen = m_covariance * row;
        return seen.squaredNorm() / (row.dot(seen) + m_noise);
    }
    void take(const Look& look) {
        const VectorXd row = rowOf(m_grid, look);
        const VectorXd seen = m_covariance * row;
        m_covariance.noalias() -= seen * seen.transpose() / (row.dot(seen) + m_noise);
        looks.push_back(look);
    }
    bool has(const Look& look) const {
        return std::ranges::any_of(looks, [&](const Look& other) { return same(look, other); });
    }
    std::vector<Look> looks;

private:
    MatrixXd m_covariance;
    const WallGrid& m_grid;
    double m_noise;
};

} // namespace

std::vector<Look> tellingLooks(const MatrixXd& covariance, const WallGrid& grid, const HoneAim& aim,
                               std::size_t count, const std::vector<Look>& must) {
    const std::vector<Look>& readable = aim.readable.empty() ? aim.stations : aim.readable;
    Choice choice(covariance, grid, aim.gaugeDoubt_um);
    std::vector<Look> first = must;
    while (!first.empty() || choice.looks.size() < count) {
        const std::vector<Look>& from = first.empty() ? readable : first;
        const Look* best = nullptr;
        double most = -1;
        for (const Look& look : from) {
            if (choice.has(look)) continue;
            const double gain = choice.gain(look);
            if (gain > most) {
                most = gain;
                best = &look;
            }
        }
        if (!best) {
            if (first.empty()) break;
            first.clear();
            continue;
        }
        const Look taken = *best;
        choice.take(taken);
        std::erase_if(first, [&](const Look& look) { return same(look, taken); });
    }
    // An oval shows on two axes only.
    const auto onOther = [](const Look& look) { return look.axis < 0; };
    if (must.empty() && choice.looks.size() > 1 && std::ranges::none_of(choice.looks, onOther)) {
        const Look* other = nullptr;
        for (const Look& look : readable)
            if (onOther(look) && (!other || choice.gain(look) > choice.gain(*other))) other = &look;
        if (other) choice.looks.back() = *other;
    }
    return choice.looks;
}

std::vector<Look> looksAfter(const PlanGround& ground, const Prospect& after) {
    const Index cells = after.wall.size();
    MatrixXd by(2 * cells, after.sources());
    by << after.wallBy, after.ovalBy;
    const double toGo = ground.aim.aim_um - ground.weight.dot(after.wall);
    const WallGrid& grid = ground.bench.grid;
    const std::size_t stations = ground.aim.stations.size();
    if (toGo > farToGo_um)
        return tellingLooks(by * by.transpose(), grid, ground.aim,
                            std::clamp(stations, leastAsked, mostAsked), {});
    return tellingLooks(by * by.transpose(), grid, ground.aim, std::min(mostAsked, stations),
                        ground.aim.stations);
}

} // namespace borewright
