// SPDX-License-Identifier: GPL-3.0-or-later
// Which readings cut the doubt about the wall most.
#pragma once

#include "core/honing/plan_prospect.h"

namespace borewright {

// `count` of aim.readable that cut the summed variance of wall and oval (their covariance, in that
// order) the most, one after another. Those of `must` come first, in any case.
std::vector<Look> tellingLooks(const Eigen::MatrixXd& covariance, const WallGrid& grid,
                               const HoneAim& aim, std::size_t count,
                               const std::vector<Look>& must);
// After a set-up: the most telling of many while there is far to go, every station near the end.
std::vector<Look> looksAfter(const PlanGround& ground, const Prospect& after);

} // namespace borewright
