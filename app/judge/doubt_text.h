// SPDX-License-Identifier: GPL-3.0-or-later
// How the Judge page says the doubt of a cell, of a bore and of the survey.
#pragma once

#include "core/results/results.h"

#include <QString>

namespace borewright::doubt_text {

// "±0.3", in the small unit; empty where there is none.
QString cell(const BoreResult& bore, int column, const Budget& budget, const DisplayUnits& units);

// What follows a cell's value in words: " ± 0.26 thou"; empty where there is none.
QString around(const BoreResult& bore, int column, const Budget& budget, const DisplayUnits& units);

// What follows a cell's verdict: the guard band, the chance of being wrong, what the gauge alone
// would show, what two contacts do not see.
QString behind(const BoreResult& bore, int column, const DisplayUnits& units);

// The chosen bore: its shape, and what would settle what is too close to call.
QString bore(const BoreResult& bore);

// What would help most, what this gear can decide, what to beware of, as rich text.
QString page(const SurveyResult& survey, const DisplayUnits& units);

} // namespace borewright::doubt_text
