// SPDX-License-Identifier: GPL-3.0-or-later
// The sentences at the head of the Judge page: what to do next, what the survey says, and what it
// cannot be compared with.
#pragma once

#include "core/results/results.h"

#include <QString>

namespace borewright::judge_words {

// What to do next: describe the block, measure, enter limits, look at an odd reading again, read
// what is missing, hone on, or hand over.
QString nextStep(const Workbook& workbook, const SurveyResult* survey, const DisplayUnits& units);

// What the survey says of the block: "Outside: bores 1, 2 and 6 on taper; bore 4 on largest size,
// taper. Within: bores 3 and 5." Empty where nothing is judged.
QString summary(const SurveyResult* survey);

// Says where an earlier survey was taken with the plate on and this one without, or the other way
// round; empty where they compare.
QString plateWarning(const Workbook& workbook, const std::string& survey);

} // namespace borewright::judge_words
