// SPDX-License-Identifier: GPL-3.0-or-later
// Which readings cut the doubt about the wall most.
#pragma once

#include "core/honing/plan_prospect.h"

namespace borewright {

// As mostTelling() of planning.h, with the covariance of wall and oval (in that order). Those of
// `must` come first, in any case.
std::vector<Look> tellingLooks(const Eigen::MatrixXd& covariance, const WallGrid& grid,
                               const HoneAim& aim, std::size_t count,
                               const std::vector<Look>& must);
// After the first set-up of a plan: few while there is far to go, every station near the end.
std::vector<Look> looksAfter(const PlanGround& ground, const Prospect& after);

} // namespace borewright
