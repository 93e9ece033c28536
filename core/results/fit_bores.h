// SPDX-License-Identifier: GPL-3.0-or-later
// Which bores pistons and rings are tried in, and which have to be honed to their pistons first.
// Part of results.
#pragma once

#include "core/results/results.h"

namespace borewright {

// Fills `bores` and `measured`: each bore by its last final survey, else its last check, else its
// last survey as found.
void measureForFit(const Workbook& workbook, const Results& results, FitResult& fit);

// Fills `finish` and its warnings, once the pistons of measured bores are placed: those are dealt
// to no other bore.
void finishByPistons(const Workbook& workbook, const Results& results, const DisplayUnits& units,
                     FitResult& fit);

} // namespace borewright
