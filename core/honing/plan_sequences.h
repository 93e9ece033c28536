// SPDX-License-Identifier: GPL-3.0-or-later
// Which stones in which order are worth fitting, and where the fits start.
#pragma once

#include "core/honing/plan_course.h"

namespace borewright {

using StoneOrder = std::vector<std::size_t>;

// Orders of up to options.mostSetUps of the stones that may be used, rough before finish but for a
// rough one between two of finish; those first that most often come out best. At most `most`.
std::vector<StoneOrder> stoneOrders(const PlanGround& ground, const PlanOptions& options,
                                    std::size_t most);

// Courses to start a fit of that order from. Each set-up has a short window at the stop, as only
// that takes as much off at the closed end as above it; one that ends where another kind of stone
// begins to cut, so that both together leave no seam; and a wider one.
enum class StartShape { above, below, throughout }; // where the wider one lies
inline constexpr StartShape startShapes[] = {StartShape::above, StartShape::below,
                                             StartShape::throughout};
Course startOf(const PlanGround& ground, const StoneOrder& order, int windows, StartShape shape);

// The order a course has.
StoneOrder orderOf(const Course& course);
// The same course with further windows of small dose, up to `windows` a set-up, so that a fit has
// something to work with.
Course withRoom(const PlanGround& ground, Course course, int windows);

} // namespace borewright
