// SPDX-License-Identifier: GPL-3.0-or-later
// Said before he measures: what this gear can decide against these limits, and what would help.
#pragma once

#include "core/length/format.h"
#include "core/workbook/workbook.h"

#include <string>
#include <vector>

namespace borewright {

// What a band between two limits leaves to call "within" in: band − 2·factor·u. Below nothing,
// nothing can ever be called within.
double acceptBand_um(double band_um, double u_um, double factor);

// The chance that a truly straight bore shows more than `aim` largest less smallest by noise alone,
// the worse of `axes` axes with `levels` readings each: 1 − P(range ≤ aim/s)^axes.
double straightShowsMore(double aim_um, double own_um, int levels, int axes);

// Sentences for the survey's heading, most telling first; empty where the doubt is not known or
// nothing limits. The first bore of the block speaks for all.
std::vector<std::string> prospect(const Workbook& workbook, const SurveyHeader& survey,
                                  const DisplayUnits& units);

} // namespace borewright
