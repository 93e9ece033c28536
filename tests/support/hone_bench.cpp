// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/hone_bench.h"

#include <algorithm>

namespace borewright::test {
namespace {

std::vector<double> depthsBetween(double from_mm, double to_mm, double step_mm) {
    std::vector<double> depths;
    for (double depth = from_mm; depth <= to_mm; depth += step_mm)
        depths.push_back(depth);
    return depths;
}

} // namespace

double HoneBench::spreadOver(const std::vector<double>& depths_mm) const {
    double worst = 0;
    for (int axis = 0; axis < benchAxes; ++axis) {
        double least = truth(depths_mm.front(), axis);
        double most = least;
        for (const double depth : depths_mm) {
            least = std::min(least, truth(depth, axis));
            most = std::max(most, truth(depth, axis));
        }
        worst = std::max(worst, most - least);
    }
    return worst;
}

double HoneBench::spreadOverAll(double aboveStop_mm) const {
    double reached = 0;
    for (std::size_t stone = 0; stone < m_stated.stones.size(); ++stone)
        reached = std::max(reached, m_stated.lowest_mm(stone));
    return spreadOver(
        depthsBetween(3, std::min(m_stated.depth_mm - 3, reached - aboveStop_mm), 0.5));
}

double HoneBench::largest() const {
    double most = truth(0, 0);
    for (int axis = 0; axis < benchAxes; ++axis)
        for (const double depth : depthsBetween(0, m_stated.depth_mm, 0.5))
            most = std::max(most, truth(depth, axis));
    return most;
}

double HoneBench::smallest() const {
    double least = truth(m_stated.stations.front(), 0);
    for (int axis = 0; axis < benchAxes; ++axis)
        for (const double depth : m_stated.stations)
            least = std::min(least, truth(depth, axis));
    return least;
}

std::vector<double> usualStations(double depth_mm) {
    std::vector<double> depths;
    for (int i = 0; i < 6; ++i)
        depths.push_back(6 + (depth_mm - 15) * i / 5);
    return depths;
}

} // namespace borewright::test
